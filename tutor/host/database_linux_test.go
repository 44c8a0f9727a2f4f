// Inside the package: it compares with the sentences of the package.

package host

import (
	"fmt"
	"io"
	"math/rand/v2"
	"net"
	"os"
	"os/exec"
	"os/user"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"example.org/standstill/tutor/record"
)

// cluster is a PostgreSQL server of the test's own, which may be stopped and come back.
type cluster struct {
	t        testing.TB
	programs string
	folder   string
	port     int
	as       *syscall.Credential
}

// startCluster makes a cluster and starts it. PostgreSQL does not run as the
// administrator: its own user does it then.
func startCluster(t testing.TB) *cluster {
	t.Helper()
	found, _ := filepath.Glob("/usr/lib/postgresql/*/bin/initdb")
	if len(found) == 0 || testing.Short() {
		t.Skip("not run: a server that is stopped in mid-lesson needs PostgreSQL's own programs, and no -short")
	}
	folder, err := os.MkdirTemp(os.Getenv(smallDisk), "cluster")
	must(t, err)
	t.Cleanup(func() { os.RemoveAll(folder) })
	c := &cluster{t: t, programs: filepath.Dir(found[len(found)-1]), folder: folder}
	if os.Getuid() == 0 {
		own, err := user.Lookup("postgres")
		must(t, err)
		uid, _ := strconv.Atoi(own.Uid)
		gid, _ := strconv.Atoi(own.Gid)
		c.as = &syscall.Credential{Uid: uint32(uid), Gid: uint32(gid)}
		must(t, os.Chown(folder, uid, gid))
	}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	must(t, err)
	c.port = l.Addr().(*net.TCPAddr).Port
	must(t, l.Close())
	c.run("initdb", "-D", c.data(), "-A", "trust", "-U", "owner", "--no-sync", "--wal-segsize", "1")
	c.start()
	t.Cleanup(func() {
		c.freeze(syscall.SIGCONT)
		c.stop("immediate")
	})
	c.run("createdb", "-h", folder, "-p", strconv.Itoa(c.port), "-U", "owner", "standstill")
	return c
}

func (c *cluster) data() string { return filepath.Join(c.folder, "data") }

func (c *cluster) run(program string, args ...string) {
	c.t.Helper()
	command := exec.Command(filepath.Join(c.programs, program), args...)
	command.Dir = c.folder
	command.SysProcAttr = &syscall.SysProcAttr{Credential: c.as}
	if out, err := command.CombinedOutput(); err != nil {
		c.t.Fatalf("%s: %v\n%s", program, err, out)
	}
}

func (c *cluster) start() {
	c.t.Helper()
	c.run("pg_ctl", "-D", c.data(), "-w", "-l", filepath.Join(c.folder, "log"), "-o",
		fmt.Sprintf("-c listen_addresses=127.0.0.1 -c port=%d -c unix_socket_directories=%s", c.port, c.folder), "start")
}

func (c *cluster) stop(mode string) {
	c.t.Helper()
	c.run("pg_ctl", "-D", c.data(), "-w", "-m", mode, "stop")
}

func (c *cluster) address() string {
	return fmt.Sprintf("postgres://owner@127.0.0.1:%d/standstill", c.port)
}

// freeze stops or continues the server's processes where they are, as on a machine that
// does not answer.
func (c *cluster) freeze(signal syscall.Signal) {
	c.t.Helper()
	text, err := os.ReadFile(filepath.Join(c.data(), "postmaster.pid"))
	must(c.t, err)
	head, _, _ := strings.Cut(string(text), "\n")
	server, err := strconv.Atoi(head)
	must(c.t, err)
	children, err := os.ReadFile(fmt.Sprintf("/proc/%d/task/%d/children", server, server))
	must(c.t, err)
	must(c.t, syscall.Kill(server, signal))
	for _, child := range strings.Fields(string(children)) {
		id, err := strconv.Atoi(child)
		must(c.t, err)
		syscall.Kill(id, signal) // it may have ended
	}
}

// The server is stopped, in order and as by a power cut, started again, and does not
// answer for a while, in the middle of lessons on screens and in lines: everybody is told
// that the line is not kept yet, nobody sees a verdict before it is, and afterwards every
// line is there once.
func TestServerStopsInMidLesson(t *testing.T) {
	c := startCluster(t)
	_, err := record.Migrate(c.address(), record.Options{})
	must(t, err)
	// As long as the test waits for a line: on a busy machine a server comes back slowly.
	r, err := record.Open(c.address(), record.Options{Book: "lab", Host: "one", Wait: patience})
	must(t, err)
	defer r.Close()
	m := openLabOn(t, r, 4, nil)
	type visit struct {
		*client
		id, end, late string
	}
	var visits []visit
	for i := range 4 {
		id := fmt.Sprintf("s%02d", i+1)
		if i%2 == 0 {
			k := m.come(id, 100, 30)
			k.sees("All problems")
			k.types("canal" + enter)
			k.sees("▸ Forces ◂")
			visits = append(visits, visit{k, id, enter, "line is not saved yet"})
			continue
		}
		k := m.come(id, 0, 0)
		k.types(atLantern)
		k.sees("Forces")
		visits = append(visits, visit{k, id, "\n", "not saved yet"})
	}
	faults := []struct {
		name         string
		begins, ends func()
	}{
		{"stopped", func() { c.stop("fast") }, c.start},
		{"power cut", func() { c.stop("immediate") }, c.start},
		{"does not answer", func() { c.freeze(syscall.SIGSTOP) }, func() { c.freeze(syscall.SIGCONT) }},
	}
	// A screen sends only what has changed, so a verdict is known by the line that it is on.
	refused := func(v visit, line string) string {
		if v.end == enter {
			return "✗ you " + line
		}
		return "rong"
	}
	wrong := []string{"T1 up right; T2 up right; w down", "T1 up left; T2 up left; w down", "T1 up; T2 up right; w down"}
	for n, f := range faults {
		f.begins()
		for _, v := range visits {
			v.forget()
			v.types(wrong[n] + v.end)
		}
		for _, v := range visits {
			v.sees(v.late)
			if said, _ := v.look(); strings.Contains(said, refused(v, wrong[n])) {
				t.Errorf("%s: %s sees a verdict that is not kept:\n%s", f.name, v.id, tail(said))
			}
		}
		f.ends()
		for _, v := range visits {
			v.sees(refused(v, wrong[n]))
			if v.end == enter {
				v.types("\x15")
			}
		}
	}
	for _, v := range visits {
		var kept []string
		for _, e := range m.entries(v.id, record.Answer) {
			kept = append(kept, e.Text)
		}
		if strings.Join(kept, "\n") != strings.Join(wrong, "\n") {
			t.Errorf("%s: kept are\n%s", v.id, strings.Join(kept, "\n"))
		}
	}
}

// Whoever comes while the server does not answer reads so, and is let in once it does.
func TestComingWhileTheServerDoesNotAnswer(t *testing.T) {
	c := startCluster(t)
	_, err := record.Migrate(c.address(), record.Options{})
	must(t, err)
	r, err := record.Open(c.address(), record.Options{Book: "lab", Host: "one"})
	must(t, err)
	defer r.Close()
	m := openLabOn(t, r, 0, func(o *Options) { o.Open = true })
	c.freeze(syscall.SIGSTOP)
	client, err := m.dial("ada")
	must(t, err)
	defer client.Close()
	k := m.open(client, 100, 30)
	k.sees("The record is not available yet.")
	c.freeze(syscall.SIGCONT)
	k.sees("All problems")
}

// One of two hosts is killed in the middle of lessons: everybody comes back through the
// other one, to the place where they were, and is not kept out by the visit that died.
// Coming again through a third ends the visit at the second.
func TestComingBackThroughTheOtherHost(t *testing.T) {
	c := startCluster(t)
	_, err := record.Migrate(c.address(), record.Options{})
	must(t, err)
	s := &school{folder: t.TempDir(), location: c.address(), book: "lab", students: 3}
	r := s.open(t)
	defer r.Close()
	slips, err := Slips(r, classOf(s.students).Students, nil)
	must(t, err)
	hosts := s.hosts(t, 3)
	come := func(host *childHost, slip Slip, stage string) *clientVisit {
		t.Helper()
		v, err := visitOf(host.address, slip, inLines)
		must(t, err)
		t.Cleanup(func() { v.Close() })
		if !v.waits("Question:", patience) || !v.waits(stage, 0) {
			t.Errorf("%s is not at %q but at %q", slip.ID, stage, v.last(500))
		}
		return v
	}
	for _, slip := range slips {
		v := come(hosts[0], slip, firstStage)
		io.WriteString(v.in, firstRight+"\n")
		if !v.waits(secondStage, patience) {
			t.Errorf("%s: no verdict comes", slip.ID)
		}
	}
	must(t, hosts[0].Process.Kill())
	for _, slip := range slips {
		second := come(hosts[1], slip, secondStage)
		come(hosts[2], slip, secondStage)
		if !second.waits(saidTaken, patience) {
			t.Errorf("%s: the visit that was taken over ends with %q", slip.ID, second.last(500))
		}
		n := 0
		for e, err := range r.Entries(record.Filter{Student: slip.ID, Kinds: []string{record.Answer}}) {
			must(t, err)
			if n++; e.Text != firstRight {
				t.Errorf("%s: kept is %q", slip.ID, e.Text)
			}
		}
		if n != 1 {
			t.Errorf("%s: %d lines are kept, want 1", slip.ID, n)
		}
	}
}

// smallDisk holds a folder on a disk that a test may fill, of some 120 MB:
//
//	mount -t tmpfs -o size=120m tmpfs /mnt/small
//	STANDSTILL_SMALL_DISK=/mnt/small go test ./tutor/host -run FullDisk -v
const smallDisk = "STANDSTILL_SMALL_DISK"

// The disk under the server is full, and the server breaks down of it: what was said to be
// kept is there once it has room again, what was refused is not, and nothing is there
// twice.
func TestFullDiskUnderTheServer(t *testing.T) {
	if os.Getenv(smallDisk) == "" {
		t.Skip("not run: a full disk needs a small one, named in " + smallDisk)
	}
	c := startCluster(t)
	_, err := record.Migrate(c.address(), record.Options{})
	must(t, err)
	r, err := record.Open(c.address(), record.Options{Book: "lab", Host: "one", Wait: 3 * time.Second})
	must(t, err)
	defer r.Close()
	ballast := filepath.Join(c.folder, "ballast")
	fillDisk(t, ballast)
	var mu sync.Mutex
	kept, refused := map[string]bool{}, map[string]error{}
	noise := make([]byte, 6000) // what a server cannot make smaller
	rand.NewChaCha8([32]byte{}).Read(noise)
	write := func(until int) {
		var writers sync.WaitGroup
		for i := range 8 {
			writers.Go(func() {
				for n := range 2000 {
					text := fmt.Sprintf("%d %d %d %x", until, i, n, noise[n:n+4000])
					_, err := r.Append(record.Entry{Student: fmt.Sprint("s", i), Kind: record.Answer, Text: text})
					mu.Lock()
					if err == nil {
						kept[text] = true
					} else {
						refused[text] = err
					}
					enough := len(kept)+len(refused) >= until || len(refused) >= 40
					mu.Unlock()
					if enough {
						return
					}
				}
			})
		}
		writers.Wait()
	}
	write(4000)
	if len(refused) == 0 {
		t.Fatalf("%d entries are kept, and none is refused: the disk is too large", len(kept))
	}
	words := map[string]int{}
	for _, err := range refused {
		words[record.Sentence(err)]++
	}
	t.Logf("kept %d, refused %d: %v", len(kept), len(refused), words)
	must(t, os.Remove(ballast))
	c.again()
	before := len(kept)
	write(len(kept) + len(refused) + 200)
	if len(kept) == before {
		t.Errorf("nothing is kept once there is room: %v", refused)
	}
	count := map[string]int{}
	for e, err := range r.Entries(record.Filter{}) {
		must(t, err)
		count[e.Text]++
	}
	for text := range kept {
		if count[text] != 1 {
			t.Errorf("%.20q is said to be kept and is there %d times", text, count[text])
		}
	}
	for text := range refused {
		if count[text] != 0 {
			t.Errorf("%.20q is refused and is there", text)
		}
	}
}

// again starts the server, however it has ended.
func (c *cluster) again() {
	c.t.Helper()
	command := exec.Command(filepath.Join(c.programs, "pg_ctl"), "-D", c.data(), "-m", "immediate", "stop")
	command.Dir, command.SysProcAttr = c.folder, &syscall.SysProcAttr{Credential: c.as}
	command.Run() // it may have ended by itself
	c.start()
}

func fillDisk(t *testing.T, name string) {
	t.Helper()
	file, err := os.Create(name)
	must(t, err)
	defer file.Close()
	for block := make([]byte, 1<<20); ; {
		n, err := file.Write(block)
		if err != nil || n < len(block) {
			size, _ := file.Seek(0, io.SeekCurrent)
			must(t, file.Truncate(size-4<<20)) // so that it fills up while entries come
			return
		}
	}
}
