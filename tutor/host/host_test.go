// Inside the package: it reaches doors, phrases and visits behind a host, to wait for them.

package host

import (
	"bytes"
	"context"
	"crypto/ed25519"
	"crypto/rand"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// patience is how long a test waits for what must come; a test machine may be busy.
const patience = time.Minute

// lab is a host under test, with its students.
type lab struct {
	t       testing.TB
	host    *Host
	record  *record.Record
	address string
	phrases map[string]string
	log     *safeBuffer
	stop    func() error
}

type safeBuffer struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (s *safeBuffer) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.b.Write(p)
}

func (s *safeBuffer) String() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.b.String()
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// class has as many students as a test needs: s01, s02, …
func classOf(n int) tutor.Class {
	c := tutor.Class{Name: "Physics 10b", Code: "harbour-2"}
	for i := range n {
		c.Students = append(c.Students, record.Student{ID: fmt.Sprintf("s%02d", i+1), Name: fmt.Sprintf("Student %d", i+1)})
	}
	return c
}

// openLab opens a host with a record of its own.
func openLab(t testing.TB, students int, change func(*Options)) *lab {
	t.Helper()
	r, err := record.Open(filepath.Join(t.TempDir(), "record.db"), record.Options{})
	must(t, err)
	t.Cleanup(func() { r.Close() })
	return openLabOn(t, r, students, change)
}

func openLabOn(t testing.TB, r *record.Record, students int, change func(*Options)) *lab {
	t.Helper()
	m := &lab{t: t, record: r, phrases: map[string]string{}, log: &safeBuffer{}}
	o := Options{Tutor: tutor.Options{Bank: problems.Embedded(), Record: r, Class: classOf(students)}, Teacher: "kim",
		HostKey: filepath.Join(t.TempDir(), "host_key"), Refusal: time.Millisecond, PerAddress: 10_000,
		Log: slog.New(slog.NewTextHandler(m.log, nil))}
	if change != nil {
		change(&o)
	}
	var err error
	m.host, err = New(o)
	must(t, err)
	l, err := net.Listen("tcp", "127.0.0.1:0")
	must(t, err)
	m.address = l.Addr().String()
	ctx, stop := context.WithCancel(context.Background())
	served := make(chan error, 1)
	go func() { served <- m.host.Serve(ctx, l) }()
	m.stop = sync.OnceValue(func() error {
		stop()
		select {
		case err := <-served:
			return err
		case <-time.After(patience):
			return errors.New("the host does not stop")
		}
	})
	t.Cleanup(func() {
		if err := m.stop(); err != nil {
			t.Error(err)
		}
	})
	return m
}

// phrase gives a student a new pass phrase.
func (m *lab) phrase(id string) string {
	m.t.Helper()
	if m.phrases[id] == "" {
		s, _ := m.host.doors.student(id)
		slips, err := Slips(m.record, []record.Student{s}, nil)
		must(m.t, err)
		m.phrases[id] = slips[0].Phrase
	}
	return m.phrases[id]
}

// newKey makes a key and lets it open a door.
func (m *lab) newKey(id string) gossh.Signer {
	m.t.Helper()
	public, private, err := ed25519.GenerateKey(rand.Reader)
	must(m.t, err)
	signer, err := gossh.NewSignerFromKey(private)
	must(m.t, err)
	line, err := gossh.NewPublicKey(public)
	must(m.t, err)
	_, err = AddKey(m.record, id, string(gossh.MarshalAuthorizedKey(line)))
	must(m.t, err)
	return signer
}

func (m *lab) dial(name string, by ...gossh.AuthMethod) (*gossh.Client, error) {
	return gossh.Dial("tcp", m.address, &gossh.ClientConfig{User: name, Auth: by, Timeout: patience,
		HostKeyCallback: gossh.FixedHostKey(m.host.key)})
}

// client is one student's window, or lines of text.
type client struct {
	t       testing.TB
	session *gossh.Session
	in      io.WriteCloser
	ended   chan error
	drop    func() error

	mu      sync.Mutex
	out     strings.Builder
	changed chan struct{}
}

// come connects a student; cols is 0 for lines of text.
func (m *lab) come(id string, cols, rows int) *client {
	m.t.Helper()
	c, err := m.dial(id, gossh.Password(m.phrase(id)))
	must(m.t, err)
	m.t.Cleanup(func() { c.Close() })
	return m.open(c, cols, rows)
}

func (m *lab) open(c *gossh.Client, cols, rows int) *client {
	m.t.Helper()
	s, err := c.NewSession()
	must(m.t, err)
	k := &client{t: m.t, session: s, ended: make(chan error, 1), changed: make(chan struct{}), drop: c.Close}
	k.in, err = s.StdinPipe()
	must(m.t, err)
	s.Stdout, s.Stderr = k, k
	if cols > 0 {
		must(m.t, s.RequestPty("xterm-256color", rows, cols, gossh.TerminalModes{}))
	}
	must(m.t, s.Shell())
	go func() { k.ended <- s.Wait() }()
	return k
}

func (k *client) Write(b []byte) (int, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	close(k.changed)
	k.changed = make(chan struct{})
	return k.out.Write(b)
}

func (k *client) look() (string, chan struct{}) {
	k.mu.Lock()
	defer k.mu.Unlock()
	plain := controls.ReplaceAllString(k.out.String(), "")
	return strings.Join(strings.Fields(plain), " "), k.changed
}

// forget lets what has come so far count no more.
func (k *client) forget() {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.out.Reset()
}

// controls are the sequences that paint and move.
var controls = regexp.MustCompile(`\x1b\[[0-9;?]*[A-Za-z]`)

func tail(text string) string { return text[max(0, len(text)-2500):] }

// sees waits for a text in all that has come.
func (k *client) sees(text string) {
	k.t.Helper()
	late := time.After(patience)
	for {
		all, changed := k.look()
		if strings.Contains(all, text) {
			return
		}
		select {
		case <-changed:
		case <-late:
			k.t.Fatalf("%q does not come; what came last is\n%s", text, tail(all))
		}
	}
}

func (k *client) types(text string) {
	k.t.Helper()
	_, err := io.WriteString(k.in, text)
	must(k.t, err)
}

// ends waits for the end of the session and gives all that came.
func (k *client) ends() string {
	k.t.Helper()
	select {
	case <-k.ended:
	case <-time.After(patience):
		all, _ := k.look()
		k.t.Fatalf("the session does not end; what came last is\n%s", tail(all))
	}
	all, _ := k.look()
	return all
}

const (
	atLantern = "problems\ncanal-lantern\n"
	forces    = "T1 up left; T2 up right; w down"
	enter     = "\r"
	ctrlC     = "\x03"
)

// entries are those of one student.
func (m *lab) entries(id string, kind string) (all []record.Entry) {
	m.t.Helper()
	for e, err := range m.record.Entries(record.Filter{Student: id, Kinds: []string{kind}}) {
		must(m.t, err)
		all = append(all, e)
	}
	return all
}

func TestLessonInLines(t *testing.T) {
	m := openLab(t, 2, nil)
	k := m.come("s01", 0, 0)
	k.types(atLantern + forces + "\n")
	k.sees("Right: " + forces)
	k.types("student\n")
	k.sees("You are connected as Student 1")
	k.types("T1x = T1\n")
	k.sees("Wrong:")
	k.types("leave\n")
	k.ends()
	if got := m.entries("s01", record.Answer); len(got) != 2 || got[0].Text != forces {
		t.Errorf("recorded: %v", got)
	}
	if strings.Contains(m.log.String(), "s01") || strings.Contains(m.log.String(), "up left") {
		t.Errorf("the log names a student or what was typed:\n%s", m.log)
	}
}

func TestLessonOnAScreen(t *testing.T) {
	m := openLab(t, 2, nil)
	k := m.come("s01", 100, 30)
	k.sees("Student 1")
	k.types("canal" + enter)
	k.sees("▸ Forces ◂")
	k.types(forces + enter)
	k.sees("▸ Components ◂")
	k.types("T1x = T1 c")
	k.sees("T1x = T1 c")
	// The window is closed without a word: the half-typed line is there again.
	k.drop()
	k.ends()
	k = m.come("s01", 80, 24)
	k.sees("T1x = T1 c")
	k.types("\x15bench" + enter)
	k.sees("Bench")
	k.types(ctrlC)
	k.ends()
	if got := m.entries("s01", record.Answer); len(got) != 1 || got[0].Text != forces {
		t.Errorf("recorded: %v", got)
	}
}

// Only the exact id with its own phrase or key opens a door.
func TestDoors(t *testing.T) {
	m := openLab(t, 12, nil)
	own, other := m.phrase("s01"), m.phrase("s02")
	key := m.newKey("s02")
	answers := func(phrase string) gossh.AuthMethod {
		return gossh.KeyboardInteractive(func(_, _ string, questions []string, _ []bool) ([]string, error) {
			all := make([]string, len(questions))
			for i := range all {
				all[i] = phrase
			}
			return all, nil
		})
	}
	for _, c := range []struct {
		what string
		name string
		by   gossh.AuthMethod
		ok   bool
	}{
		{"the phrase", "s01", gossh.Password(own), true},
		{"the id in capitals", "S01", gossh.Password(own), true},
		{"the phrase in capitals with hyphens", "s01", gossh.Password(" " + strings.ToUpper(strings.ReplaceAll(own, " ", "-"))), true},
		{"the phrase when asked", "s01", answers(own), true},
		{"a key", "s02", gossh.PublicKeys(key), true},
		{"another's phrase", "s01", gossh.Password(other), false},
		{"another's phrase when asked", "s01", answers(other), false},
		{"another's key", "s01", gossh.PublicKeys(key), false},
		{"no phrase", "s01", gossh.Password(""), false},
		{"three words of four", "s01", gossh.Password(own[:strings.LastIndex(own, " ")]), false},
		{"an endless phrase", "s01", gossh.Password(strings.Repeat(own, 1000)), false},
		{"the beginning of an id", "s0", gossh.Password(own), false},
		{"a place on the list", "1", gossh.Password(own), false},
		{"a name", "Student 1", gossh.Password(own), false},
		{"a student without a slip", "s03", gossh.Password(""), false},
		{"nobody", "nobody", gossh.Password(own), false},
		{"the empty name", "", gossh.Password(own), false},
		{"control characters", "s01\x00\x1b[2J", gossh.Password(own), false},
		{"an endless name", strings.Repeat("s", 100_000), gossh.Password(own), false},
		{"the teacher by a phrase", "kim", gossh.Password(own), false},
	} {
		t.Run(c.what, func(t *testing.T) {
			client, err := m.dial(c.name, c.by)
			if err == nil {
				client.Close()
			}
			if (err == nil) != c.ok {
				t.Errorf("let in: %v, want %v", err == nil, c.ok)
			}
		})
	}
	if client, err := m.dial("s01"); err == nil {
		client.Close()
		t.Error("let in without any proof")
	}
}

// A connection that changes its name between two tries ends, so that one's own phrase
// cannot open another's door.
func TestNameMustNotChange(t *testing.T) {
	m := openLab(t, 2, nil)
	phrase := m.phrase("s01")
	ours, theirs := net.Pipe()
	defer theirs.Close()
	n := &conn{Conn: ours, conns: &m.host.conns, address: "192.0.2.7"}
	n.ended, n.end = context.WithCancel(context.Background())
	if _, err := m.host.tryPhrase(n, "s02", "wrong words of mine"); err == nil {
		t.Fatal("a wrong phrase is taken")
	}
	if p, err := m.host.tryPhrase(n, "s01", phrase); err == nil {
		t.Fatalf("the second name is let in: %v", p)
	}
	if n.ended.Err() == nil {
		t.Error("the connection goes on")
	}
}

// A new slip takes the old phrase and the keys away, and ends the visit.
func TestNewSlipEndsTheVisit(t *testing.T) {
	m := openLab(t, 2, nil)
	key := m.newKey("s01")
	old := m.phrase("s01") // takes the key away, too
	if c, err := m.dial("s01", gossh.PublicKeys(key)); err == nil {
		c.Close()
		t.Error("the key still opens the door")
	}
	k := m.come("s01", 0, 0)
	k.types(atLantern)
	k.sees("Stage 1 of 5")
	delete(m.phrases, "s01")
	m.phrase("s01")
	if said := k.ends(); !strings.Contains(said, saidTaken) {
		t.Errorf("the visit ends with %q", said)
	}
	if c, err := m.dial("s01", gossh.Password(old)); err == nil {
		c.Close()
		t.Error("the old phrase still opens the door")
	}
	if got := m.entries("s01", record.Renewed); len(got) != 2 {
		t.Errorf("%d renewals are written down, want 2", len(got))
	} else if got[0].Detail == "" {
		t.Error("a renewal does not say who renewed")
	}
}

// Coming again takes over where the other visit was, with what was half typed.
func TestComingAgainTakesOver(t *testing.T) {
	m := openLab(t, 2, nil)
	first := m.come("s01", 100, 30)
	first.sees("Student 1")
	first.types("canal" + enter)
	first.sees("▸ Forces ◂")
	first.types("T1 up le")
	first.sees("T1 up le")
	second := m.come("s01", 100, 30)
	if said := first.ends(); !strings.Contains(said, saidTaken) {
		t.Errorf("the first visit ends with %q", said[max(0, len(said)-300):])
	}
	second.sees("T1 up le")
	second.types("\x15" + forces + enter)
	second.sees("▸ Components ◂")
	if got := m.entries("s01", record.Answer); len(got) != 1 {
		t.Errorf("recorded: %v", got)
	}
}

// A fault of ours in one visit or log-in ends that one alone.
func TestFaultEndsOneVisit(t *testing.T) {
	var mu sync.Mutex
	bad := ""
	m := openLab(t, 3, func(o *Options) {
		o.Fault = func(place string) {
			mu.Lock()
			defer mu.Unlock()
			if place == bad {
				bad = ""
				panic("secret of a student")
			}
		}
	})
	fail := func(place string) { mu.Lock(); bad = place; mu.Unlock() }
	m.phrase("s01")
	other := m.come("s02", 100, 30)
	other.sees("Student 2")
	for place, cols := range map[string]int{"screen": 80, "plain": 0} {
		fail(place)
		k := m.come("s01", cols, 24)
		if said := k.ends(); !strings.Contains(said, "error in Standstill") || strings.Contains(said, "secret") {
			t.Errorf("%s: it ends with %q", place, said)
		}
	}
	for _, cols := range []int{80, 0} {
		k := m.come("s01", cols, 24)
		end := enter
		if cols == 0 {
			end = "\n"
			k.types(atLantern)
		} else {
			k.sees("All problems")
			k.types("canal" + end)
		}
		k.sees("Forces")
		fail("line")
		k.types("T1 up; w down" + end)
		if said := k.ends(); !strings.Contains(said, saidFault) || strings.Contains(said, "secret") {
			t.Errorf("a fault in judging a line ends with %q", tail(said))
		}
	}
	if n := len(m.entries("s01", record.Answer)); n != 2 {
		t.Errorf("%d of two lines are kept", n)
	}
	fail("log-in")
	if c, err := m.dial("s03", gossh.Password(m.phrase("s03"))); err == nil {
		c.Close()
		t.Error("a log-in with a fault is let in")
	}
	other.types("canal" + enter)
	other.sees("▸ Forces ◂")
	m.come("s01", 0, 0).sees("Student 1")
	if log := m.log.String(); strings.Count(log, "fault") != 5 || strings.Contains(log, "secret") {
		t.Errorf("the log is\n%s", log)
	}
}

// The host stops in order: everybody is told, and what was half typed is kept.
func TestStopsInOrder(t *testing.T) {
	m := openLab(t, 2, nil)
	on := m.come("s01", 100, 30)
	on.sees("Student 1")
	on.types("canal" + enter)
	on.sees("▸ Forces ◂")
	on.types("T1 up le")
	on.sees("T1 up le")
	lines := m.come("s02", 0, 0)
	lines.sees("Question:")
	must(t, m.stop())
	for _, k := range []*client{on, lines} {
		if said := k.ends(); !strings.Contains(said, "The host is stopping.") {
			t.Errorf("it ends with %q", said[max(0, len(said)-300):])
		}
	}
	drafts, err := m.record.Drafts("s01")
	if err != nil || len(drafts) != 1 || drafts[0].Text != "T1 up le" {
		t.Errorf("half typed: %v, %v", drafts, err)
	}
	if leases, err := m.record.Leases(); err != nil || len(leases) != 0 {
		t.Errorf("places that are still taken: %v, %v", leases, err)
	}
}

// A visit in which nobody types is warned, and then ends; painting the screen is no
// typing.
func TestIdleVisitEnds(t *testing.T) {
	var mu sync.Mutex
	now := time.Date(2026, 3, 2, 10, 0, 0, 0, time.UTC)
	m := openLab(t, 2, func(o *Options) {
		o.Idle = 10 * time.Minute
		o.Now = func() time.Time { mu.Lock(); defer mu.Unlock(); return now }
	})
	later := func(d time.Duration) { mu.Lock(); now = now.Add(d); mu.Unlock() }
	k := m.come("s01", 100, 30)
	k.sees("Student 1")
	later(9*time.Minute + 30*time.Second)
	k.sees("The connection closes in 30 seconds")
	k.types("canal")
	k.sees("canal")
	later(5 * time.Minute)
	k.types(enter)
	k.sees("▸ Forces ◂")
	later(11 * time.Minute)
	if said := k.ends(); !strings.Contains(said, saidIdleEnd) {
		t.Errorf("it ends with %q", said[max(0, len(said)-300):])
	}
}

// A client may send what it likes: nothing is run, copied, forwarded or kept.
func TestWhatAVisitCannotDo(t *testing.T) {
	m := openLab(t, 2, nil)
	c, err := m.dial("s01", gossh.Password(m.phrase("s01")))
	must(t, err)
	defer c.Close()
	if _, err := c.Dial("tcp", m.address); err == nil {
		t.Error("a connection is forwarded")
	}
	if _, err := c.Listen("tcp", "127.0.0.1:0"); err == nil {
		t.Error("a port is opened")
	}
	s, err := c.NewSession()
	must(t, err)
	for _, v := range [][2]string{{"LD_PRELOAD", "x"}, {"PATH", "/"}, {"LANG", strings.Repeat("x", 5000)}} {
		if s.Setenv(v[0], v[1]) == nil {
			t.Errorf("%s is taken", v[0])
		}
	}
	for range mostVariables - 4 {
		must(t, s.Setenv("LANG", "en_GB.UTF-8"))
	}
	must(t, s.Setenv("NO_COLOR", "1"))
	if s.Setenv("LANG", "C") == nil {
		t.Error("variables without end are taken")
	}
	if ok, _ := s.SendRequest("auth-agent-req@openssh.com", true, nil); ok {
		t.Error("an agent is taken")
	}
	if second, err := c.NewSession(); err == nil {
		second.Close()
		t.Error("a second session is opened")
	}
	var said bytes.Buffer
	s.Stderr = &said
	var status *gossh.ExitError
	if err := s.Run("id; ls"); !errors.As(err, &status) || status.ExitStatus() != 1 || !strings.Contains(said.String(), "does not run commands") {
		t.Errorf("a command ends with %v and %q", err, said.String())
	}
	c2, err := m.dial("s01", gossh.Password(m.phrase("s01")))
	must(t, err)
	defer c2.Close()
	s, err = c2.NewSession()
	must(t, err)
	answer, err := s.StderrPipe()
	must(t, err)
	must(t, s.RequestSubsystem("sftp"))
	if all, err := io.ReadAll(answer); err != nil || !strings.Contains(string(all), "does not run commands or copy files") {
		t.Errorf("sftp gets %q, %v", all, err)
	}
}

// Windows of any size, and sizes that change faster than a screen can follow.
func TestWindows(t *testing.T) {
	m := openLab(t, 2, nil)
	k := m.come("s01", 100_000, 100_000)
	k.sees("Student 1")
	for i := range 3000 {
		must(t, k.session.WindowChange(i%60, i%200))
	}
	// What is typed into a window that is too small is for another question, and sizes and
	// keys come on ways of their own: these are large enough.
	for i := range 3000 {
		must(t, k.session.WindowChange(20+i%60, 70+i%200))
	}
	k.sees("All problems")
	k.types("canal" + enter)
	k.sees("▸ Forces ◂")
}

// The teacher comes by key, sees who is where, and no line.
func TestTeacherLooksOn(t *testing.T) {
	m := openLab(t, 2, func(o *Options) {
		o.Report = func(_ context.Context, w io.Writer) error { _, err := io.WriteString(w, "the report\n"); return err }
	})
	k := m.come("s01", 0, 0)
	k.types(atLantern + forces + "\nT1x = secret\n")
	k.sees("Right:")
	c, err := m.dial("kim", gossh.PublicKeys(m.newKey("kim")))
	must(t, err)
	defer c.Close()
	live := m.open(c, 100, 24)
	live.sees("Student 1 A lantern over the canal")
	live.types("n")
	live.sees("student 1 A lantern over the canal")
	live.types("r")
	live.sees("the report")
	live.types("q")
	if all := live.ends(); strings.Contains(all, "secret") {
		t.Error("the teacher sees what was typed")
	}
}

// A host without a class lets anybody in under a name that is not in use, and marks what
// they do.
func TestOpenHost(t *testing.T) {
	m := openLab(t, 0, func(o *Options) { o.Open = true })
	c, err := m.dial("Nele\x1b  B")
	must(t, err)
	defer c.Close()
	k := m.open(c, 0, 0)
	k.sees("(unverified)")
	c2, err := m.dial("nele b")
	must(t, err)
	defer c2.Close()
	if said := m.open(c2, 0, 0).ends(); !strings.Contains(said, saidUsed) {
		t.Errorf("the same name ends with %q", said)
	}
	students, err := m.record.Students()
	if err != nil || len(students) != 1 || !strings.HasPrefix(students[0].ID, openMark) {
		t.Errorf("students: %v, %v", students, err)
	}
}

func TestHostKeyIsForItsOwner(t *testing.T) {
	path := filepath.Join(t.TempDir(), "deep", "host_key")
	first, err := FingerprintOf(path)
	must(t, err)
	info, err := os.Stat(path)
	must(t, err)
	if again, err := FingerprintOf(path); err != nil || again != first || info.Mode().Perm() != 0o600 {
		t.Errorf("%s, then %s, %v; mode %v", first, again, err, info.Mode())
	}
	must(t, os.WriteFile(path, []byte("no key"), 0o600))
	if _, err := New(Options{HostKey: path}); err == nil {
		t.Error("a file that is no key is taken")
	}
}

func TestWordsOfPhrases(t *testing.T) {
	words := strings.Fields(wordList)
	seen := map[string]bool{}
	for _, w := range words {
		if seen[w] || bare(w) != w || len(w) < 3 {
			t.Errorf("%q", w)
		}
		seen[w] = true
	}
	if len(words) != 1024 {
		t.Errorf("%d words; 40 bits need 1,024", len(words))
	}
	a, err := newPhrase(nil)
	must(t, err)
	b, err := newPhrase(nil)
	must(t, err)
	if len(strings.Fields(a)) != phraseWords || a == b {
		t.Errorf("%q, %q", a, b)
	}
	hash, err := hashOf(a, nil)
	must(t, err)
	if !opens(hash, a) || opens(hash, b) || opens("", a) || opens("", "") || strings.Contains(hash, a) {
		t.Errorf("the hash %q opens for what it must not, or not at all", hash)
	}
}
