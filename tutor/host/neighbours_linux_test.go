// Inside the package: it uses the clients of load_linux_test.go.

package host

import (
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"net"
	"strings"
	"sync"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

// TestNeighboursOfAttackers lets students type in peace first, then beside each kind of
// attack. How long their keys took is for reading; that every key was answered is held.
func TestNeighboursOfAttackers(t *testing.T) {
	s, slips := newSchool(t, *loadTyping+len(attacks))
	host := s.hosts(t, 1)[0]
	c := &crowd{t: t, shown: map[string][]string{}, lessons: true}
	stop := make(chan struct{})
	var gone sync.WaitGroup
	coming := newArrivals()
	for _, s := range slips[:*loadTyping] {
		came := coming.next()
		gone.Go(func() {
			if err := c.student(host.address, s, true, came, stop); err != nil {
				t.Error(err)
			}
		})
	}
	coming.all.Wait()
	time.Sleep(time.Second) // everybody types
	c.phase(t, "in peace", host, func(context.Context) {})
	for i, a := range attacks {
		slip := slips[*loadTyping+i]
		c.phase(t, a.name, host, func(ctx context.Context) { a.run(ctx, t, host.address, slip) })
	}
	close(stop)
	gone.Wait()
	if n := c.failed.Load(); n > 0 {
		t.Errorf("%d keys or lines without an answer", n)
	}
	r := s.open(t)
	defer r.Close()
	checkShown(t, r, c)
}

// phase says how long keys took while something went on for a quarter of the load's time.
func (c *crowd) phase(t *testing.T, name string, host *childHost, does func(context.Context)) {
	t.Helper()
	c.mu.Lock()
	c.echoes, c.checks = nil, nil
	c.mu.Unlock()
	ctx, stop := context.WithTimeout(context.Background(), time.Duration(*loadSeconds)*time.Second/4)
	defer stop()
	used, begun := host.processor(), time.Now()
	does(ctx)
	<-ctx.Done()
	used = (host.processor() - used) / time.Since(begun).Seconds()
	c.mu.Lock()
	defer c.mu.Unlock()
	t.Logf("%-24s echo median %6v, p99 %6v (%d keys); verdict p99 %6v; %d MB, %.2f processors", name,
		quantile(c.echoes, 0.5).Round(100*time.Microsecond), quantile(c.echoes, 0.99).Round(100*time.Microsecond), len(c.echoes),
		quantile(c.checks, 0.99).Round(100*time.Microsecond), host.memory()>>20, used)
	if len(c.echoes) == 0 {
		t.Errorf("%s: nobody's key was answered", name)
	}
}

// attacks are what one machine, or one student, can do to the others. Each goes on until
// the context is done.
var attacks = []struct {
	name string
	run  func(context.Context, *testing.T, string, Slip)
}{
	{"wrong phrases", func(ctx context.Context, t *testing.T, address string, s Slip) {
		eightAtOnce(ctx, func(n int) {
			name := []string{s.ID, "nobody", "kim"}[n%3]
			if c, err := gossh.Dial("tcp", address, as(name, fmt.Sprint("wrong words ", n))); err == nil {
				c.Close()
				t.Errorf("a wrong phrase lets %s in", name)
			}
		})
	}},
	{"half-open connections", func(ctx context.Context, t *testing.T, address string, _ Slip) {
		eightAtOnce(ctx, func(int) {
			if c, err := net.Dial("tcp", address); err == nil {
				context.AfterFunc(ctx, func() { c.Close() })
				time.Sleep(10 * time.Millisecond)
			}
		})
	}},
	{"a first line without end", func(ctx context.Context, t *testing.T, address string, _ Slip) {
		eightAtOnce(ctx, func(int) {
			if c, err := net.Dial("tcp", address); err == nil {
				io.WriteString(c, endless)
				c.Close()
				time.Sleep(10 * time.Millisecond)
			}
		})
	}},
	{"a flood of keys", inside(func(_ *gossh.Session, in io.Writer, _ int) {
		io.WriteString(in, strings.Repeat("x1+", 3_000))
	})},
	{"lines, one after another", inside(func(_ *gossh.Session, in io.Writer, n int) {
		fmt.Fprintf(in, "T1x = %d (T1 cos %d)\r", n, rand.IntN(90))
	})},
	{"sizes, 1,000 a second", inside(func(s *gossh.Session, _ io.Writer, n int) {
		s.WindowChange(10+n%90, 20+n%300)
		time.Sleep(time.Millisecond)
	})},
	{"giant windows", inside(func(s *gossh.Session, in io.Writer, n int) {
		s.WindowChange(1<<31-1-n%2, 1<<31-1)
		time.Sleep(time.Millisecond)
	})},
}

var endless = strings.Repeat("x", 100_000)

func eightAtOnce(ctx context.Context, does func(n int)) {
	for w := range 8 {
		go func() {
			for n := w; ctx.Err() == nil; n += 8 {
				does(n)
			}
		}()
	}
}

func as(name, phrase string) *gossh.ClientConfig {
	return &gossh.ClientConfig{User: name, Auth: []gossh.AuthMethod{gossh.Password(phrase)}, HostKeyCallback: gossh.InsecureIgnoreHostKey(), Timeout: patience}
}

// inside is an attack by a student who is logged in and has a problem open.
func inside(does func(s *gossh.Session, in io.Writer, n int)) func(context.Context, *testing.T, string, Slip) {
	return func(ctx context.Context, t *testing.T, address string, slip Slip) {
		v, err := visitOf(address, slip, onAScreen)
		must(t, err)
		v.waits("titl", patience)
		if err := v.opens(slip.ID); err != nil {
			t.Error(err)
		}
		ended := make(chan struct{})
		go func() { v.session.Wait(); close(ended) }()
		go func() {
			defer v.Close()
			for n := 0; ctx.Err() == nil; n++ {
				select {
				case <-ended:
					return // the host has had enough of it
				default:
					does(v.session, v.in, n)
				}
			}
		}()
	}
}
