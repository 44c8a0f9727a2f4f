// Inside the package: database_linux_test.go uses its clients.

package host

import (
	"bufio"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"math/rand/v2"
	"net"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"runtime/pprof"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/ssh"
	"github.com/charmbracelet/wish"
	gossh "golang.org/x/crypto/ssh"
	"golang.org/x/time/rate"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// The size of the load: small by default. A large one, for example:
//
//	go test ./tutor/host -run TestLoad -v -students 500 -typing 250 -every 40 -seconds 30 -timeout 20m
var (
	loadStudents = flag.Int("students", 12, "how many students come to the host under load")
	loadTyping   = flag.Int("typing", 6, "how many of them type, two keys a second")
	loadSeconds  = flag.Int("seconds", 4, "how long they type")
	loadEvery    = flag.Int("every", 6, "after how many keys a line is checked")
	loadHosts    = flag.Int("hosts", 1, "how many hosts they come to; several need a database")
	loadKills    = flag.Int("kills", 2, "how often a host with typing students is killed")
	loadPause    = flag.Duration("pause", time.Second, "how long a student thinks between two lines of text, before a kill")
	loadComing   = flag.Int("coming", 64, "how many come at once, 30 a second at most: the others wait for one of them to have the page open")
	loadProfile  = flag.String("hostprofile", "", "the file for a profile of the host's processor time under load")
)

// childVariable makes the test binary a host of its own, so that its memory and its time
// on the processor can be told from those of the clients.
const childVariable = "STANDSTILL_TEST_HOST"

func TestMain(m *testing.M) {
	flag.Parse()
	if what := os.Getenv(childVariable); what != "" {
		if err := serveAsChild(what); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		os.Exit(0)
	}
	os.Exit(m.Run())
}

// serveAsChild serves until it is killed. what is "one screen" for a program of one screen
// behind the same library, else the number of students; the record follows.
func serveAsChild(what string) error {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return err
	}
	location, book, folder := os.Getenv("STANDSTILL_TEST_RECORD"), os.Getenv("STANDSTILL_TEST_BOOK"), os.Getenv("STANDSTILL_TEST_FOLDER")
	if what == "one screen" {
		server, err := wish.NewServer(wish.WithHostKeyPath(folder+"/host_key"), wish.WithMiddleware(oneScreen))
		if err != nil {
			return err
		}
		fmt.Println(l.Addr())
		return server.Serve(l)
	}
	debug.SetGCPercent(GarbageShare)
	n, _ := strconv.Atoi(what)
	r, err := record.Open(location, record.Options{Book: book, Host: l.Addr().String()})
	if err != nil {
		return err
	}
	h, err := New(Options{Tutor: tutor.Options{Bank: problems.Embedded(), Record: r, Class: classOf(n)}, Name: l.Addr().String(),
		HostKey: folder + "/host_key", PerAddress: 100_000, LogIn: patience, Log: slog.New(slog.DiscardHandler)})
	if err != nil {
		return err
	}
	fmt.Println(l.Addr())
	ctx, stop := signal.NotifyContext(context.Background(), syscall.SIGTERM)
	defer stop()
	if *loadProfile == "" {
		return h.Serve(ctx, l)
	}
	return profiled(func() error { return h.Serve(ctx, l) })
}

// profiled writes profiles of what a host does: its processor time from the beginning to
// the end, and whenever SIGUSR1 comes, what its memory is used for and where it waits.
func profiled(serve func() error) error {
	profile, err := os.Create(*loadProfile)
	if err != nil {
		return err
	}
	defer profile.Close()
	if err := pprof.StartCPUProfile(profile); err != nil {
		return err
	}
	defer pprof.StopCPUProfile()
	asked := make(chan os.Signal, 1)
	signal.Notify(asked, syscall.SIGUSR1)
	go func() {
		for range asked {
			writeProfiles(*loadProfile)
		}
	}()
	return serve()
}

func writeProfiles(prefix string) {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	fmt.Fprintf(os.Stderr, "before GC: %d goroutines; MB: heap %d, in use %d, idle %d, released %d, stacks %d, sys %d; %d collections, %.3f of the processors\n", runtime.NumGoroutine(),
		m.HeapAlloc>>20, m.HeapInuse>>20, m.HeapIdle>>20, m.HeapReleased>>20, m.StackInuse>>20, m.Sys>>20, m.NumGC, m.GCCPUFraction)
	runtime.GC()
	runtime.ReadMemStats(&m)
	fmt.Fprintf(os.Stderr, "after GC: %d goroutines; MB: heap %d, in use %d, idle %d, released %d, stacks %d, sys %d\n", runtime.NumGoroutine(),
		m.HeapAlloc>>20, m.HeapInuse>>20, m.HeapIdle>>20, m.HeapReleased>>20, m.StackInuse>>20, m.Sys>>20)
	for _, name := range []string{"heap", "goroutine", "block", "mutex"} {
		if file, err := os.Create(prefix + "." + name); err == nil {
			pprof.Lookup(name).WriteTo(file, 0)
			file.Close()
		}
	}
}

// typed is a program of one screen: it shows what was typed.
type typed struct {
	text  string
	style lipgloss.Style
}

func (typed) Init() tea.Cmd { return nil }

func (m typed) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if k, ok := msg.(tea.KeyMsg); ok {
		m.text += string(k.Runes)
		if k.Type == tea.KeyEnter || len(m.text) > 60 {
			m.text = ""
		}
	}
	return m, nil
}

func (m typed) View() string {
	return strings.Repeat(strings.Repeat("·", 79)+"\n", 22) + m.style.Render(m.text)
}

func oneScreen(ssh.Handler) ssh.Handler {
	return func(s ssh.Session) {
		p := tea.NewProgram(typed{style: lipgloss.NewRenderer(s).NewStyle()}, tea.WithInput(s), tea.WithOutput(s), tea.WithAltScreen(), tea.WithoutSignalHandler())
		p.Run()
	}
}

// childHost is a host in a process of its own.
type childHost struct {
	*exec.Cmd
	address string
}

func startChild(t testing.TB, what, location, book, folder string) *childHost {
	t.Helper()
	self, err := os.Executable()
	must(t, err)
	c := exec.Command(self, "-hostprofile", *loadProfile)
	c.Env = append(os.Environ(), childVariable+"="+what, "STANDSTILL_TEST_RECORD="+location, "STANDSTILL_TEST_BOOK="+book, "STANDSTILL_TEST_FOLDER="+folder)
	c.Stderr = os.Stderr
	out, err := c.StdoutPipe()
	must(t, err)
	must(t, c.Start())
	t.Cleanup(func() { c.Process.Kill(); c.Wait() })
	line, err := bufio.NewReader(out).ReadString('\n')
	must(t, err)
	return &childHost{c, strings.TrimSpace(line)}
}

// memory and processor of the child, in bytes and seconds, as Linux tells them.
func (c *childHost) memory() int64 {
	data, _ := os.ReadFile(fmt.Sprintf("/proc/%d/statm", c.Process.Pid))
	fields := strings.Fields(string(data))
	if len(fields) < 2 {
		return 0
	}
	pages, _ := strconv.ParseInt(fields[1], 10, 64)
	return pages * int64(os.Getpagesize())
}

func (c *childHost) processor() float64 {
	data, _ := os.ReadFile(fmt.Sprintf("/proc/%d/stat", c.Process.Pid))
	_, rest, _ := strings.Cut(string(data), ") ")
	fields := strings.Fields(rest)
	if len(fields) < 13 {
		return 0
	}
	user, _ := strconv.ParseFloat(fields[11], 64)
	system, _ := strconv.ParseFloat(fields[12], 64)
	return (user + system) / 100
}

// syncTime is the median time of one fdatasync where the record is.
func syncTime(t testing.TB, folder string) time.Duration {
	t.Helper()
	file, err := os.CreateTemp(folder, "sync")
	must(t, err)
	defer file.Close()
	var all []time.Duration
	for range 50 {
		file.WriteAt(make([]byte, 4096), 0)
		begun := time.Now()
		must(t, syscall.Fdatasync(int(file.Fd())))
		all = append(all, time.Since(begun))
	}
	return quantile(all, 0.5)
}

// crowd are students who type.
type crowd struct {
	t       testing.TB
	mu      sync.Mutex
	echoes  []time.Duration
	checks  []time.Duration
	shown   map[string][]string // verdicts that a student has seen, by student
	failed  atomic.Int64
	again   atomic.Int64 // log-ins that were tried again
	logIns  []time.Duration
	lessons bool
}

// late is the time that 99 of 100 kept.
func (c *crowd) late(of *[]time.Duration) time.Duration {
	c.mu.Lock()
	defer c.mu.Unlock()
	return quantile(*of, 0.99).Round(10 * time.Microsecond)
}

// settle forgets the times that were measured while students came: what follows is the
// crowd at work.
func (c *crowd) settle() {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.echoes, c.checks = nil, nil
}

func (c *crowd) add(to *[]time.Duration, d time.Duration) {
	c.mu.Lock()
	*to = append(*to, d)
	c.mu.Unlock()
}

// window is what a simulated student sees, as bytes.
type pane struct {
	mu      sync.Mutex
	recent  []byte
	changed chan struct{}
	total   int
}

func (p *pane) Write(b []byte) (int, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.recent = append(p.recent, b...)
	if over := len(p.recent) - 1<<16; over > 0 {
		p.recent = append(p.recent[:0], p.recent[over:]...)
	}
	p.total += len(b)
	close(p.changed)
	p.changed = make(chan struct{})
	return len(b), nil
}

// last gives the end of what came.
func (p *pane) last(n int) string {
	p.mu.Lock()
	defer p.mu.Unlock()
	return string(p.recent[max(0, len(p.recent)-n):])
}

func (p *pane) forget() {
	p.mu.Lock()
	p.recent = p.recent[:0]
	p.mu.Unlock()
}

// waits until a text comes; false where it does not.
func (p *pane) waits(text string, patience time.Duration) bool {
	late := time.NewTimer(patience)
	defer late.Stop()
	for {
		p.mu.Lock()
		found, changed := strings.Contains(string(p.recent), text), p.changed
		p.mu.Unlock()
		if found {
			return true
		}
		select {
		case <-changed:
		case <-late.C:
			return false
		}
	}
}

// student comes, opens a problem and stays; whoever types does so until stop.
func (c *crowd) student(address string, s Slip, types bool, ready func(), stop <-chan struct{}) error {
	ready = sync.OnceFunc(ready)
	defer ready()
	begun := time.Now()
	v, err := c.comes(address, s)
	if err != nil {
		return err
	}
	defer v.Close()
	if c.lessons {
		v.waits("titl", patience)
		c.add(&c.logIns, time.Since(begun))
		if err := v.opens(s.ID); err != nil {
			return err
		}
	}
	ready()
	if !types {
		<-stop
		return nil
	}
	return c.typeUntil(v.in, v.pane, s.ID, stop)
}

// comes tries a few times, as a student does whose connection is refused or dropped.
func (c *crowd) comes(address string, s Slip) (v *clientVisit, err error) {
	for range 5 {
		if v, err = visitOf(address, s, onAScreen); err == nil {
			break
		}
		c.again.Add(1)
		time.Sleep(time.Second + rand.N(2*time.Second))
	}
	return v, err
}

// arrivals let students come 30 a second at most, and so many at once.
type arrivals struct {
	coming chan struct{}
	pace   *rate.Limiter
	all    sync.WaitGroup
}

func newArrivals() *arrivals {
	return &arrivals{coming: make(chan struct{}, *loadComing), pace: rate.NewLimiter(30, 1)}
}

// next waits until the next may come. Whoever came calls done.
func (a *arrivals) next() (done func()) {
	a.coming <- struct{}{}
	a.pace.Wait(context.Background())
	a.all.Add(1)
	return func() {
		<-a.coming
		a.all.Done()
	}
}

// clientVisit is a visit as its client has it: what comes is in the pane.
type clientVisit struct {
	*gossh.Client
	*pane
	session *gossh.Session
	in      io.Writer
}

// onAScreen asks for a terminal; inLines asks for none.
func onAScreen(s *gossh.Session) error {
	return s.RequestPty("xterm-256color", 24, 80, gossh.TerminalModes{})
}

func inLines(*gossh.Session) error { return nil }

// visitOf logs in and begins a lesson.
func visitOf(address string, s Slip, how func(*gossh.Session) error) (v *clientVisit, err error) {
	v = &clientVisit{pane: &pane{changed: make(chan struct{})}}
	if v.Client, err = gossh.Dial("tcp", address, as(s.ID, s.Phrase)); err != nil {
		return nil, err
	}
	if v.session, err = v.NewSession(); err == nil {
		v.session.Stdout = v.pane
		v.in, _ = v.session.StdinPipe()
		err = how(v.session)
	}
	if err == nil {
		err = v.session.Shell()
	}
	if err != nil {
		v.Close()
		return nil, err
	}
	return v, nil
}

// opens opens a problem from the list.
func (v *clientVisit) opens(id string) error {
	io.WriteString(v.in, "canal\r")
	if !v.waits("T₁", patience) {
		return fmt.Errorf("%s: the problem does not open; the last that came is %q", id, v.last(2000))
	}
	return nil
}

// typeUntil types two keys a second, and checks a line every twentieth key or so.
func (c *crowd) typeUntil(in io.Writer, p *pane, id string, stop <-chan struct{}) error {
	tick := time.NewTicker(500 * time.Millisecond)
	defer tick.Stop()
	time.Sleep(time.Duration(rand.IntN(500)) * time.Millisecond)
	line := ""
	for n := rand.IntN(*loadEvery); ; n++ {
		select {
		case <-stop:
			return nil
		case <-tick.C:
		}
		p.forget()
		begun := time.Now()
		if c.lessons && n%*loadEvery == *loadEvery-1 && line != "" {
			io.WriteString(in, "\r")
			if !p.waits(shownVerdict, 10*time.Second) {
				c.failed.Add(1)
				return nil // what stands in the box is no longer known
			}
			c.add(&c.checks, time.Since(begun))
			c.mu.Lock()
			c.shown[id] = append(c.shown[id], line)
			c.mu.Unlock()
			io.WriteString(in, "\x15")
			line = ""
			continue
		}
		key := string(rune('a' + n%26))
		if len(line) > 30 {
			continue
		}
		line += key
		if _, err := io.WriteString(in, key); err != nil {
			return err
		}
		if !p.waits(key, 10*time.Second) {
			c.failed.Add(1)
			return nil
		}
		c.add(&c.echoes, time.Since(begun))
	}
}

// shownVerdict begins what is painted beside a line of nonsense.
const shownVerdict = "? "

// TestLoad measures echo and verdict times, memory and processor of a host in a process
// of its own, beside those of a program of one screen behind the same library.
func TestLoad(t *testing.T) {
	s, slips := newSchool(t, *loadStudents)
	t.Logf("one fdatasync takes %v", syncTime(t, s.folder))
	c := measure(t, "host", s.hosts(t, *loadHosts), slips, true)
	measure(t, "one screen", []*childHost{startChild(t, "one screen", "", "", s.folder)}, slips, false)
	r := s.open(t)
	defer r.Close()
	checkShown(t, r, c)
}

// school is where hosts in processes of their own keep their record: a file, or a book of
// its own in a database where there is one.
type school struct {
	folder, location, book string
	students               int
}

// newSchool makes the record of a school, with a slip for every student.
func newSchool(t *testing.T, students int) (*school, []Slip) {
	t.Helper()
	s := &school{folder: t.TempDir(), students: students}
	s.location = filepath.Join(s.folder, "record.db")
	if address := os.Getenv("STANDSTILL_POSTGRES"); address != "" {
		_, err := record.Migrate(address, record.Options{})
		must(t, err)
		s.location, s.book = address, fmt.Sprint("load ", time.Now().UnixNano())
	}
	r := s.open(t)
	defer r.Close()
	slips, err := Slips(r, classOf(students).Students, nil)
	must(t, err)
	return s, slips
}

func (s *school) open(t *testing.T) *record.Record {
	t.Helper()
	r, err := record.Open(s.location, record.Options{Book: s.book, Host: "slips"})
	must(t, err)
	return r
}

func (s *school) hosts(t *testing.T, n int) (all []*childHost) {
	t.Helper()
	if n > 1 && s.book == "" {
		t.Fatal("several hosts need a database: set STANDSTILL_POSTGRES")
	}
	for range n {
		all = append(all, startChild(t, strconv.Itoa(s.students), s.location, s.book, s.folder))
	}
	return all
}

// checkShown holds every verdict that a student has seen against the record.
func checkShown(t *testing.T, r *record.Record, c *crowd) {
	t.Helper()
	kept := map[string]int{}
	entries := 0
	for e, err := range r.Entries(record.Filter{Kinds: []string{record.Answer}}) {
		must(t, err)
		kept[e.Student+"\x00"+e.Text]++
		entries++
	}
	seen := 0
	for id, lines := range c.shown {
		for _, line := range lines {
			seen++
			if kept[id+"\x00"+line] == 0 {
				t.Errorf("%s saw a verdict for %q, which is not in the record", id, line)
			}
		}
	}
	t.Logf("%d verdicts were seen, %d lines are kept", seen, entries)
	if seen == 0 {
		t.Error("nobody saw a verdict")
	}
}

// measure lets students come to the hosts in turn, and type.
func measure(t *testing.T, name string, hosts []*childHost, slips []Slip, lessons bool) *crowd {
	t.Helper()
	memory := func() (all int64) { return total(hosts, (*childHost).memory) }
	processor := func() float64 { return total(hosts, (*childHost).processor) }
	before := memory()
	c := &crowd{t: t, shown: map[string][]string{}, lessons: lessons}
	stop := make(chan struct{})
	var gone sync.WaitGroup
	coming, first := newArrivals(), time.Now()
	for i, s := range slips {
		came := coming.next()
		gone.Go(func() {
			if err := c.student(hosts[i%len(hosts)].address, s, i < *loadTyping, came, stop); err != nil {
				t.Error(err)
			}
		})
	}
	coming.all.Wait()
	t.Logf("%s: %d came in %v, %.2f processors; echo p99 %v, verdict p99 %v meanwhile; %d log-ins were tried again", name, len(slips), time.Since(first).Round(time.Second),
		processor()/time.Since(first).Seconds(), c.late(&c.echoes), c.late(&c.checks), c.again.Load())
	c.settle()
	used, begun := processor(), time.Now()
	time.Sleep(time.Duration(*loadSeconds) * time.Second)
	used = (processor() - used) / time.Since(begun).Seconds()
	after := memory()
	if *loadProfile != "" {
		for _, h := range hosts {
			h.Process.Signal(syscall.SIGUSR1)
		}
		time.Sleep(3 * time.Second)
	}
	close(stop)
	gone.Wait()
	t.Logf("%s: %d students, %d typing: echo median %v, p99 %v (%d keys); verdict median %v, p99 %v (%d); log-in median %v, p99 %v; %d KB a student, %.2f processors; %d without an answer",
		name, len(slips), *loadTyping, quantile(c.echoes, 0.5).Round(10*time.Microsecond), quantile(c.echoes, 0.99).Round(10*time.Microsecond), len(c.echoes),
		quantile(c.checks, 0.5).Round(10*time.Microsecond), quantile(c.checks, 0.99).Round(10*time.Microsecond), len(c.checks),
		quantile(c.logIns, 0.5).Round(time.Millisecond), quantile(c.logIns, 0.99).Round(time.Millisecond),
		(after-before)/1024/int64(max(len(slips), 1)), used, c.failed.Load())
	if c.failed.Load() > 0 {
		t.Errorf("%s: %d keys or lines without an answer", name, c.failed.Load())
	}
	for _, child := range hosts {
		child.Process.Signal(syscall.SIGTERM)
		child.Wait()
	}
	return c
}

func total[N int64 | float64](hosts []*childHost, of func(*childHost) N) (sum N) {
	for _, h := range hosts {
		sum += of(h)
	}
	return sum
}

// TestHostIsKilled kills a host with typing students again and again: whatever verdict
// anybody has seen is in the record, and everybody comes back to the same place.
func TestHostIsKilled(t *testing.T) {
	s, slips := newSchool(t, *loadTyping)
	all := &crowd{t: t, shown: map[string][]string{}, lessons: true}
	for range *loadKills {
		child := s.hosts(t, 1)[0]
		stop := make(chan struct{})
		var gone sync.WaitGroup
		coming := newArrivals()
		for _, s := range slips {
			came := coming.next()
			gone.Go(func() { all.checkUntilKilled(child.address, s, came, stop) })
		}
		coming.all.Wait()
		time.Sleep(time.Duration(300+rand.IntN(700)) * time.Millisecond)
		child.Process.Kill()
		child.Wait()
		close(stop)
		gone.Wait()
	}
	r := s.open(t)
	defer r.Close()
	checkShown(t, r, all)
	data, _ := json.Marshal(len(all.shown))
	t.Logf("%d kills, %s students saw verdicts", *loadKills, data)
}

// The first line of a student's first problem, right, and where that leads.
const (
	firstRight  = "T1 up right; T2 up left; w down"
	firstStage  = "Stage 1 of"
	secondStage = "Stage 2 of"
)

// checkUntilKilled checks one line after the other in lines of text, with a pause to think
// between them. Whoever has seen that the first line is right must come back to the second
// stage.
func (c *crowd) checkUntilKilled(address string, s Slip, ready func(), stop <-chan struct{}) {
	ready = sync.OnceFunc(ready)
	defer ready()
	v, err := visitOf(address, s, inLines)
	if err != nil {
		c.t.Error(err)
		return
	}
	defer v.Close()
	if !v.waits("Question:", patience) {
		c.t.Errorf("%s: no question comes", s.ID)
		return
	}
	if c.isPast(s.ID) && !v.waits(secondStage, 0) {
		c.t.Errorf("%s was at the second stage and comes back to %q", s.ID, v.last(500))
	}
	first := v.waits(firstStage, 0)
	ready()
	ended := make(chan struct{})
	go func() { v.session.Wait(); close(ended) }()
	for n := 0; ; n++ {
		line, says := fmt.Sprintf("zz%d %d", n, rand.Int()), ": "
		if first && n == 0 {
			line, says = firstRight, secondStage
		}
		v.forget()
		if _, err := io.WriteString(v.in, line+"\n"); err != nil {
			return
		}
		if !v.saysOrEnds(says, ended, stop) {
			return
		}
		c.mu.Lock()
		c.shown[s.ID] = append(c.shown[s.ID], line)
		c.mu.Unlock()
		select {
		case <-time.After(*loadPause/2 + rand.N(*loadPause)):
		case <-stop:
			return
		}
	}
}

// isPast says whether a student has seen that the first line is right.
func (c *crowd) isPast(id string) bool {
	c.mu.Lock()
	defer c.mu.Unlock()
	return slices.Contains(c.shown[id], firstRight)
}

func (p *pane) saysOrEnds(text string, ended, stop <-chan struct{}) bool {
	for {
		p.mu.Lock()
		found, changed := strings.Contains(string(p.recent), text), p.changed
		p.mu.Unlock()
		if found {
			return true
		}
		select {
		case <-changed:
		case <-ended:
			return false
		case <-stop:
			return false
		}
	}
}
