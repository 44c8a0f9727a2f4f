// Inside the package: it uses the records of record_test.go.

package record

import (
	"bufio"
	"database/sql"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"
)

// These variables make the test binary a program that appends entries, and the
// tests with many processes as large as a school needs.
const (
	childVariable = "STANDSTILL_TEST_APPEND"
	heavyVariable = "STANDSTILL_HEAVY"
)

func TestMain(m *testing.M) {
	if path := os.Getenv(childVariable); path != "" {
		os.Exit(appendAndTell(path, os.Args[1], os.Args[2]))
	}
	if path := os.Getenv(holdVariable); path != "" {
		os.Exit(holdAndTell(path, os.Args[1]))
	}
	os.Exit(m.Run())
}

// holdVariable makes the test binary a program that holds a record locked.
const holdVariable = "STANDSTILL_TEST_HOLD"

// holdAndTell locks a file, tells so, and lets go when its input ends.
func holdAndTell(path, how string) int {
	db, err := sql.Open("sqlite", "file:"+path+"?_pragma=busy_timeout(10000)")
	if err == nil {
		db.SetMaxOpenConns(1)
		_, err = db.Exec("BEGIN " + how)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	fmt.Println("held")
	io.Copy(io.Discard, os.Stdin)
	db.Close()
	return 0
}

// hold starts another program that locks the record: IMMEDIATE keeps others from
// writing, EXCLUSIVE from reading too. release ends it.
func hold(t *testing.T, path, how string) (release func()) {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command(self, how)
	c.Env = append(os.Environ(), holdVariable+"="+path)
	in, err := c.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	release = sync.OnceFunc(func() {
		in.Close()
		if err := c.Wait(); err != nil {
			t.Error(err)
		}
	})
	t.Cleanup(release)
	if line, err := bufio.NewReader(out).ReadString('\n'); line != "held\n" {
		t.Fatalf("the other program said %q: %v", line, err)
	}
	return release
}

// appendAndTell appends entries and tells the id of each, once it is kept. At
// the end it tells, apart from that, how long the slowest took.
func appendAndTell(path, name, count string) int {
	n, _ := strconv.Atoi(count)
	r, err := Open(path, Options{})
	if err != nil {
		fmt.Fprintln(os.Stderr, name, err)
		return 1
	}
	var slowest time.Duration
	for i := range n {
		start := time.Now()
		e, err := r.Append(Entry{Student: name, Kind: Answer, Text: fmt.Sprintf("%s/%d", name, i)})
		if err != nil {
			fmt.Fprintln(os.Stderr, name, err)
			return 1
		}
		fmt.Println(e.ID)
		slowest = max(slowest, time.Since(start))
	}
	fmt.Fprint(os.Stderr, slowest)
	return 0
}

// child prepares a process that appends; nothing is started yet.
func child(t *testing.T, path, name string, count int) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command(self, name, strconv.Itoa(count))
	c.Env = append(os.Environ(), childVariable+"="+path)
	return c
}

func size(usual, heavy int) int {
	if os.Getenv(heavyVariable) != "" {
		return heavy
	}
	return usual
}

// Many programs begin on a record that is not there yet, and write at once.
func TestManyProcesses(t *testing.T) {
	processes, each := size(8, 50), size(25, 200)
	path := filepath.Join(t.TempDir(), "record.db")
	told, slowest := make([]string, processes), make([]time.Duration, processes)
	var wait sync.WaitGroup
	start := time.Now()
	for i := range processes {
		wait.Go(func() {
			c := child(t, path, fmt.Sprint("p", i), each)
			var says strings.Builder
			c.Stderr = &says
			out, err := c.Output()
			if err != nil {
				t.Errorf("process %d: %v\n%s", i, err, says.String())
			}
			told[i] = string(out)
			slowest[i], _ = time.ParseDuration(says.String())
		})
	}
	wait.Wait()
	t.Logf("%d processes × %d entries in %v, the slowest in %v", processes, each,
		time.Since(start).Round(time.Millisecond), slices.Max(slowest).Round(time.Millisecond))

	entries := collect(t, mustOpen(t, path).Entries(Filter{}))
	if len(entries) != processes*each {
		t.Errorf("%d entries, want %d", len(entries), processes*each)
	}
	mustHoldOnce(t, entries, strings.Fields(strings.Join(told, " ")))
	for i, e := range entries {
		if e.Number != int64(i+1) {
			t.Fatalf("entry %d has number %d", i+1, e.Number)
		}
	}
}

// mustHoldOnce checks that every id that was told is among the entries, and
// that no entry and no text is there twice.
func mustHoldOnce(t *testing.T, entries []Entry, told []string) {
	t.Helper()
	ids, texts := map[string]bool{}, map[string]bool{}
	for _, e := range entries {
		if ids[e.ID] || texts[e.Text] {
			t.Errorf("entry %s %q is there twice", e.ID, e.Text)
		}
		ids[e.ID], texts[e.Text] = true, true
	}
	for _, id := range told {
		if !ids[id] {
			t.Errorf("entry %s was told to be kept and is lost", id)
		}
	}
}

// A process is killed at any moment: what it told to be kept is kept.
func TestKilledAtAnyMoment(t *testing.T) {
	kills := size(20, 200)
	random := rand.New(rand.NewPCG(11, 7))
	path := filepath.Join(t.TempDir(), "record.db")
	var told []string
	hot := 0
	for i := range kills {
		// Some are killed while they begin, on a file of their own too.
		lines := random.IntN(12)
		after := time.Duration(random.IntN(3000)) * time.Microsecond
		if i%10 == 9 {
			early := filepath.Join(t.TempDir(), "record.db")
			killed(t, early, "early", 0, after*4)
			mustStillOpen(t, early)
		}
		told = append(told, killed(t, path, fmt.Sprint("k", i), lines, after)...)
		if info, err := os.Stat(path + "-journal"); err == nil && info.Size() > 0 {
			hot++
		}
		mustStillOpen(t, path)
	}
	entries := collect(t, mustOpen(t, path).Entries(Filter{}))
	t.Logf("%d kills, %d of them amid a commit; %d entries told, %d kept", kills, hot, len(told), len(entries))
	mustHoldOnce(t, entries, told)
	if len(told) == 0 || len(entries) > len(told)+kills {
		t.Errorf("%d entries kept, %d told", len(entries), len(told))
	}
	for i, e := range entries {
		if e.Number != int64(i+1) {
			t.Fatalf("entry %d has number %d", i+1, e.Number)
		}
	}
}

func mustStillOpen(t *testing.T, path string) {
	t.Helper()
	r, err := Open(path, Options{})
	if err != nil {
		t.Fatal(err)
	}
	r.Close()
}

// killed starts a process, kills it some time after it told so many entries,
// and gives all that it told.
func killed(t *testing.T, path, name string, lines int, after time.Duration) (told []string) {
	t.Helper()
	c := child(t, path, name, 1_000_000)
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	kill := func() { time.AfterFunc(after, func() { c.Process.Kill() }) }
	if lines == 0 {
		kill()
	}
	// What a killed process left in the pipe was told; a torn line was not.
	for in := bufio.NewReader(out); ; {
		line, err := in.ReadString('\n')
		if err != nil {
			break
		}
		if told = append(told, strings.TrimSpace(line)); len(told) == lines {
			kill()
		}
	}
	c.Wait()
	return told
}
