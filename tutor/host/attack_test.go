// Inside the package: it counts the connections that a host holds.

package host

import (
	"context"
	"flag"
	"fmt"
	"io"
	"net"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

// How many wrong phrases are tried; -tries 10000 for a long run, which ends early where the
// time is over.
var (
	attackTries  = flag.Int("tries", 24, "how many wrong phrases are tried against the host")
	attackWithin = flag.Duration("within", 15*time.Minute, "how long wrong phrases are tried at most")
)

// wrongPhrases are the kinds of tries that must not get in: the name and the phrase of the
// n-th, of forty students of whom s01 has the phrase that is given.
var wrongPhrases = []struct {
	kind  string
	guess func(n int, right string) (name, phrase string)
}{
	{"known name", func(n int, _ string) (string, string) {
		return fmt.Sprintf("s%02d", n%40+1), fmt.Sprint("wrong words number ", n)
	}},
	{"unknown name", func(n int, _ string) (string, string) {
		return fmt.Sprint("nobody", n%40), fmt.Sprint("wrong words number ", n)
	}},
	{"the teacher's name", func(n int, _ string) (string, string) { return "kim", fmt.Sprint("wrong words number ", n) }},
	{"nearly right phrase", func(n int, right string) (string, string) {
		at := n % len(right)
		return "s01", right[:at] + "q" + right[at:]
	}},
}

// Somebody tries phrases, opens connections and says nothing, and sends lines without end.
// Nobody gets in, whoever is there works on, and a student comes in meanwhile. How long
// each kind of try took is for reading.
func TestAttackersKeepNobodyOut(t *testing.T) {
	m := openLab(t, 40, func(o *Options) { o.LogIn, o.Refusal = patience, 250*time.Millisecond })
	right := m.phrase("s01")
	inside := m.come("s01", 100, 30)
	inside.sees("All problems")
	m.phrase("s02")
	m.come("s02", 0, 0).sees("Question:") // came in from this address today

	ctx, stop := context.WithTimeout(context.Background(), *attackWithin)
	defer stop()
	for range mostUnproved / 8 {
		c, err := net.Dial("tcp", m.address)
		must(t, err)
		defer c.Close() // half open: it never says anything
	}
	var attack sync.WaitGroup
	var in atomic.Int64
	var mu sync.Mutex
	took := make([][]time.Duration, len(wrongPhrases))
	for w := range 8 {
		attack.Go(func() {
			for n := w; n < *attackTries && ctx.Err() == nil; n += 8 {
				kind := (n + n/8) % len(wrongPhrases) // everybody tries every kind
				name, phrase := wrongPhrases[kind].guess(n, right)
				begun := time.Now()
				c, err := m.dial(name, gossh.Password(phrase))
				mu.Lock()
				took[kind] = append(took[kind], time.Since(begun))
				mu.Unlock()
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
		t.Errorf("%d wrong phrases let somebody in", in.Load())
	}
	for i, kind := range wrongPhrases {
		logTimes(t, kind.kind, took[i])
	}
}

// quantile is what so many of all are below.
func quantile(all []time.Duration, q float64) time.Duration {
	if len(all) == 0 {
		return 0
	}
	slices.Sort(all)
	return all[min(int(q*float64(len(all))), len(all)-1)]
}

func logTimes(t *testing.T, name string, all []time.Duration) {
	t.Helper()
	at := func(q float64) time.Duration { return quantile(all, q).Round(100 * time.Microsecond) }
	t.Logf("%-20s %5d refused; after %v at the least, median %v, 90 of 100 within %v, 99 of 100 within %v, %v at the most",
		name, len(all), at(0), at(0.5), at(0.9), at(0.99), at(1))
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
	right := m.phrase("s01")
	for _, kind := range wrongPhrases {
		var all []time.Duration
		for n := range 6 {
			name, phrase := kind.guess(n, right)
			begun := time.Now()
			if _, err := m.host.tryPhrase(m.loose(), name, phrase); err == nil {
				t.Errorf("%s: %s is let in", kind.kind, name)
			}
			all = append(all, time.Since(begun))
		}
		logTimes(t, kind.kind, all)
		if slices.Min(all) < m.host.Refusal {
			t.Errorf("%s: refused early", kind.kind)
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
