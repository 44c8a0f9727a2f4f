package host

import (
	"context"
	"flag"
	"fmt"
	"io"
	"net"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

// attackTries is how many wrong phrases are tried; -tries 10000 for a long run.
var attackTries = flag.Int("tries", 24, "how many wrong phrases are tried against the host")

// Somebody tries phrases, opens connections and says nothing, and sends lines without end.
// Nobody gets in, whoever is there works on, and a student comes in meanwhile.
func TestAttackersKeepNobodyOut(t *testing.T) {
	m := openLab(t, 40, func(o *Options) { o.LogIn = patience })
	m.phrase("s01")
	inside := m.come("s01", 100, 30)
	inside.sees("All problems")
	m.phrase("s02")
	m.come("s02", 0, 0).sees("Question:") // came in from this address today

	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	for range mostUnproved / 4 {
		c, err := net.Dial("tcp", m.address)
		must(t, err)
		defer c.Close() // half open: it never says anything
	}
	var attack sync.WaitGroup
	var in, tried atomic.Int64
	for w := range 8 {
		attack.Go(func() {
			for n := w; n < *attackTries && ctx.Err() == nil; n += 8 {
				name := []string{"s03", "nobody", "kim", fmt.Sprintf("s%02d", n%40+1)}[n%4]
				c, err := m.dial(name, gossh.Password(fmt.Sprintf("wrong words number %d", n)))
				tried.Add(1)
				if err == nil {
					in.Add(1)
					c.Close()
				}
			}
		})
	}
	attack.Go(func() {
		c, err := net.Dial("tcp", m.address)
		if err != nil {
			return
		}
		defer c.Close()
		for range 200 { // a client's first line that does not end
			if _, err := io.WriteString(c, strings.Repeat("x", 10_000)); err != nil {
				return
			}
		}
	})

	inside.types("canal" + enter)
	inside.sees("▸ Forces ◂")
	again := m.come("s02", 0, 0)
	again.sees("Question:")
	again.types(strings.Repeat("(", 300_000) + "\nleave\n")
	if said := again.ends(); !strings.Contains(said, "End:") {
		t.Errorf("a line without end ends with %q", tail(said))
	}
	inside.types(forces + enter)
	inside.sees("▸ Components ◂")
	attack.Wait()
	if in.Load() > 0 {
		t.Errorf("%d wrong phrases of %d let somebody in", in.Load(), tried.Load())
	}
}

// A whole school that logs in at once waits, and nobody is refused with the right phrase
// because others wait, too.
func TestWhoeverIsConnectedMayWait(t *testing.T) {
	var checks turnstile
	for n := range mostUnproved {
		if checks.line(false) == nil {
			t.Fatalf("number %d is refused", n+1)
		}
	}
}

// A refusal does not tell by its time whether there is such a student: every way ends in
// the same computation and the same wait. The times are for reading, not for a verdict.
func TestRefusalsAreAlike(t *testing.T) {
	m := openLab(t, 2, func(o *Options) { o.Refusal = 150 * time.Millisecond })
	m.phrase("s01")
	for _, name := range []string{"s01", "s02", "nobody", "kim"} {
		var all []time.Duration
		for n := range 6 {
			begun := time.Now()
			if _, err := m.host.tryPhrase(m.loose(), name, fmt.Sprint("wrong ", n)); err == nil {
				t.Errorf("%s is let in", name)
			}
			all = append(all, time.Since(begun))
		}
		low, high := all[0], all[0]
		for _, d := range all {
			low, high = min(low, d), max(high, d)
		}
		t.Logf("%-7s refused after %v to %v", name, low.Round(100*time.Microsecond), high.Round(100*time.Microsecond))
		if low < m.host.Refusal {
			t.Errorf("%s is refused early", name)
		}
	}
}

// loose is a connection that leads nowhere.
func (m *lab) loose() *conn {
	ours, theirs := net.Pipe()
	m.t.Cleanup(func() { ours.Close(); theirs.Close() })
	n := &conn{Conn: ours, conns: &m.host.conns, address: "192.0.2.7"}
	n.ended, n.end = context.WithCancel(context.Background())
	return n
}
