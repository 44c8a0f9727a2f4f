//go:build unix

package screen_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
)

// terminal runs the real program on a pseudo-terminal and reads the screen as a
// terminal shows it. The emulator is not safe for several goroutines, so it has a
// lock of our own.
type terminal struct {
	t       *testing.T
	tty     *os.File
	program *exec.Cmd
	ended   chan error

	mu      sync.Mutex
	screen  *vt.Emulator
	raw     strings.Builder
	changed chan struct{} // closed and replaced at each change
}

// patience is how long a text is waited for; a test machine may be busy.
const patience = 60 * time.Second

func build(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "standstill")
	out, err := exec.Command("go", "build", "-o", path, "example.org/standstill/cmd/standstill").CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return path
}

func start(t *testing.T, program string, cols, rows int, env []string, args ...string) *terminal {
	t.Helper()
	c := exec.Command(program, args...)
	c.Env = append(append(os.Environ(), "TERM=xterm-256color", "NO_COLOR=", "CI="), env...)
	tty, err := pty.StartWithSize(c, &pty.Winsize{Cols: uint16(cols), Rows: uint16(rows)})
	if err != nil {
		t.Fatal(err)
	}
	m := &terminal{t: t, tty: tty, program: c, ended: make(chan error, 1),
		screen: vt.NewEmulator(cols, rows), changed: make(chan struct{})}
	go m.read()
	t.Cleanup(func() {
		c.Process.Kill()
		tty.Close()
	})
	return m
}

// read feeds the emulator. What the terminal would answer is dropped: the program
// must not depend on it.
func (m *terminal) read() {
	buffer := make([]byte, 1<<16)
	for {
		n, err := m.tty.Read(buffer)
		m.mu.Lock()
		m.screen.Write(buffer[:n])
		m.raw.Write(buffer[:n])
		close(m.changed)
		m.changed = make(chan struct{})
		m.mu.Unlock()
		if err != nil {
			m.ended <- m.program.Wait()
			return
		}
	}
}

func (m *terminal) flat() (text string, changed chan struct{}) {
	m.mu.Lock()
	defer m.mu.Unlock()
	return strings.Join(strings.Fields(m.screen.String()), " "), m.changed
}

// sees waits until all texts are on the screen, line breaks apart.
func (m *terminal) sees(texts ...string) {
	m.t.Helper()
	deadline := time.After(patience)
	for {
		flat, changed := m.flat()
		missing := ""
		for _, text := range texts {
			if !strings.Contains(flat, text) {
				missing = text
			}
		}
		if missing == "" {
			return
		}
		select {
		case <-changed:
		case <-deadline:
			m.mu.Lock()
			defer m.mu.Unlock()
			m.t.Fatalf("%q does not come; the screen is\n%s", missing, m.screen.String())
		}
	}
}

func (m *terminal) send(keys string) {
	m.t.Helper()
	if _, err := m.tty.WriteString(keys); err != nil {
		m.t.Fatal(err)
	}
}

// What keys send.
const (
	enter    = "\r"
	tab      = "\t"
	escape   = "\x1b"
	arrowUp  = "\x1b[A"
	down     = "\x1b[B"
	leftward = "\x1b[D"
	ctrlC    = "\x03"
	ctrlG    = "\x07"
	ctrlU    = "\x15"
)

// ends waits for the program and wants it to end well.
func (m *terminal) ends() string {
	m.t.Helper()
	select {
	case err := <-m.ended:
		if err != nil {
			m.t.Fatal(err)
		}
	case <-time.After(patience):
		m.t.Fatal("the program does not end")
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.raw.String()
}

// TestWholeProblemOnATerminal plays a problem through on the real program, with
// mistakes, hints, leaving and coming back.
func TestWholeProblemOnATerminal(t *testing.T) {
	program := build(t)
	record := filepath.Join(t.TempDir(), "record.db")
	m := start(t, program, 80, 24, nil, "--record", record)
	m.sees("Who is practising?", "enter go on")
	m.send("Nele" + enter)
	m.sees("All problems", "record.db", "nothing is lost")
	m.send("canal" + enter)
	m.sees("A lantern over the canal", "▸ Forces ◂", "Which forces act?")

	m.send(down + tab + arrowUp) // the weight down, and a push of a surface that is not there
	m.sees("you w down; N up")
	m.send("; T1 up left; T2 up right" + enter)
	m.sees("✗ wrong", "force")
	m.send(ctrlG)
	m.sees("→ hint 1")
	m.send(ctrlU + "T1 up left; T2 up right; w down" + enter)
	m.sees("▸ Components ◂", "positive x: right")

	m.send("T1x = T1 sin alpha" + enter)
	m.sees("✗ wrong", "T₁x = T₁ sin α")
	m.send(ctrlU + "T1 cos (alpha" + enter)
	m.sees("? unclear")
	m.send(ctrlU + "T1 cos alpha; T1 sin alpha; T2 cos beta; T2 sin beta" + enter)
	m.sees("What is wx")
	m.send("wx = 0; wy")
	m.sees("you wx = 0; wy▏")
	m.send(ctrlC)
	if said := m.ends(); !strings.Contains(said, "is saved") || strings.Contains(said, "\x1b]11") {
		t.Fatalf("leaving says %q", said[max(0, len(said)-400):])
	}

	m = start(t, program, 110, 32, nil, "--record", record, "--light")
	m.sees("You are continuing from where you stopped last time", "you wx = 0; wy▏", "T₂ sin β")
	if err := pty.Setsize(m.tty, &pty.Winsize{Cols: 80, Rows: 24}); err != nil {
		t.Fatal(err)
	}
	m.mu.Lock()
	m.screen.Resize(80, 24)
	m.mu.Unlock()
	m.send(" = -w" + enter)
	m.sees("▸ Sum along x ◂")
	m.send("T1x + T2x = 0" + enter)
	m.sees("✗ wrong")
	m.send(ctrlU + "T2 cos beta - T1 cos alpha = 0" + enter)
	m.sees("▸ Sum along y ◂")
	m.send("T1 sin 35 + T2 sin 50 = 3.2*9.8" + enter)
	m.sees("▸ Solve ◂")
	m.send("T1 = w/(sin alpha + cos alpha tan beta)")
	m.sees("sin α + cos α tan β")
	m.send(enter)
	m.sees("✓ right")
	m.send("T1 = 20.2 N; T2 = 25.8 N" + enter)
	m.sees("Solved (worked out). You got 8 of 11 answers right first time.")
	m.send(enter)
	m.sees("Worked solution", "Next: ")
	m.send(tab)
	m.sees("▸ α = 35°", "T₁ = 20.2 N")
	m.send(leftward + leftward)
	m.sees("▸ α = 33°")
	m.send(escape)
	m.sees("Your page")
	m.send("leave" + enter)
	m.ends()
}

// stops sends a signal and waits until the program is stopped.
func (m *terminal) stops(with syscall.Signal) {
	m.t.Helper()
	if err := m.program.Process.Signal(with); err != nil {
		m.t.Fatal(err)
	}
	var status syscall.WaitStatus
	if _, err := syscall.Wait4(m.program.Process.Pid, &status, syscall.WUNTRACED, nil); err != nil || !status.Stopped() {
		m.t.Fatalf("not stopped: %v %v", status, err)
	}
}

// TestStoppedAndTakenUpAgain stops the program from outside: meanwhile the terminal echoes
// what is typed, as a shell expects, and afterwards the lesson is there again.
func TestStoppedAndTakenUpAgain(t *testing.T) {
	m, _ := atLantern(t, build(t))
	for _, typed := range []string{"w down", "; T1 up left"} {
		m.stops(syscall.SIGTSTP)
		m.mu.Lock()
		before := m.raw.Len()
		m.mu.Unlock()
		m.send(typed)
		m.shows(before, typed)
		if err := m.program.Process.Signal(syscall.SIGCONT); err != nil {
			t.Fatal(err)
		}
		m.sees("you", typed+"▏")
	}
	m.send(ctrlC)
	m.ends()
}

// shows waits until the terminal has been sent a text after a place.
func (m *terminal) shows(from int, text string) {
	m.t.Helper()
	deadline := time.After(patience)
	for {
		m.mu.Lock()
		raw, changed := m.raw.String()[from:], m.changed
		m.mu.Unlock()
		if strings.Contains(raw, text) {
			return
		}
		select {
		case <-changed:
		case <-deadline:
			m.t.Fatalf("the terminal does not show %q after %q", text, raw)
		}
	}
}

// TestQuitBySignal wants the half-typed line kept and the terminal given back.
func TestQuitBySignal(t *testing.T) {
	program := build(t)
	m, record := atLantern(t, program)
	m.send("w do")
	m.sees("w do▏")
	if err := m.program.Process.Signal(syscall.SIGQUIT); err != nil {
		t.Fatal(err)
	}
	if said := m.ends(); !strings.Contains(said, "\x1b[?1049l") || strings.Contains(said, "goroutine") {
		t.Fatalf("quitting says %q", said[max(0, len(said)-400):])
	}
	m = start(t, program, 100, 30, nil, "--record", record)
	m.sees("w do▏")
	m.send(ctrlC)
	m.ends()
}

// TestPasteWithoutAnEnd: a terminal that breaks off in a paste must not take the keyboard
// away.
func TestPasteWithoutAnEnd(t *testing.T) {
	m, _ := atLantern(t, build(t))
	m.send("\x1b[200~w down")
	m.send(ctrlC)
	m.ends()
}

// TestSmallTerminalGoesOnInLines wants the program to say that there is no room
// for the lesson, and to go on in lines of text if the student agrees.
func TestSmallTerminalGoesOnInLines(t *testing.T) {
	m := start(t, build(t), 50, 12, []string{"NO_COLOR=1"}, "--record", filepath.Join(t.TempDir(), "record.db"))
	m.sees("This window has 50 × 12 characters")
	m.send(enter)
	m.sees("Name: who is practising?")
	m.send("Ove" + enter + "leave" + enter)
	said := m.ends()
	if strings.Contains(said, "\x1b[1m") || strings.Contains(said, "\x1b[3") {
		t.Fatal("paint is sent in spite of NO_COLOR")
	}
}

// TestBenchOnATerminal measures a lantern on the real program, leaves, and comes back.
func TestBenchOnATerminal(t *testing.T) {
	program := build(t)
	record := filepath.Join(t.TempDir(), "record.db")
	m := start(t, program, 80, 24, nil, "bench", "canal-lantern", "--record", record, "--student", "Ana")
	m.sees("▸ Caution ◂", "Masses can fall", "enter go on")
	m.send(enter)
	m.sees("you Ana▏")
	m.send(", Ben" + enter)
	m.sees("Bench – Ana, Ben", "record.db", "What value did you measure for m")
	m.send("0.5")
	m.sees("not yet m needs a unit after the number, as in 0.5 kg.")
	m.send("00 kg +- 1 %" + enter + "30 deg" + enter)
	m.sees("What is the smallest division of the scale?")
	m.send("div 1 deg" + enter + "45 deg div 1 deg" + enter + enter + enter + enter + enter + enter)
	m.sees("▸ By hand ◂", "▸ Ana")
	m.send(enter)
	m.sees("It is Ana's turn to calculate the prediction by hand", "▸ Forces ◂")
	m.send("T1 up left; T2 up right; w down" + enter)
	m.sees("▸ Components ◂")
	m.send("bench" + enter)
	m.sees("Ana, by hand: in progress", "▸ Ben")
	m.send(down + enter)
	m.sees("What does the spring scale show for T₁?")
	m.send("3.6 N div 0.1 N" + enter + "result" + enter)
	m.sees("T₁ (3.587 ±", "agree within")
	m.send(ctrlC)
	if said := m.ends(); !strings.Contains(said, "Run 1 is saved") {
		t.Fatalf("leaving says %q", said[max(0, len(said)-400):])
	}

	m = start(t, program, 110, 32, []string{"NO_COLOR=1"}, "bench", "--record", record)
	m.sees("Which problem matches your apparatus?")
	m.send("canal" + enter + enter + "Ana" + enter)
	m.sees("1. canal-lantern", "read T1 = 3.6 N div 0.1 N")
	m.send(down + enter)
	m.sees("0.5000 kg, u = 0.0029 kg")
	m.send(ctrlC)
	m.ends()
}
