//go:build unix

package main

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"io"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/creack/pty"
)

// patience is how long a test waits for a program that has gone wrong.
const patience = time.Minute

// program is the real program, run by this test.
func program(t *testing.T, args ...string) *exec.Cmd {
	t.Helper()
	ctx, stop := context.WithTimeout(context.Background(), patience)
	t.Cleanup(stop)
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.CommandContext(ctx, self, args...)
	c.Args[0] = "standstill"
	return c
}

// TestVersionAsksTheTerminalNothing runs the program on a terminal that answers no
// question: it must neither ask one nor wait for an answer.
func TestVersionAsksTheTerminalNothing(t *testing.T) {
	c := program(t, "version")
	// A build service is never asked, so this must not look like one.
	c.Env = append(without(os.Environ(), "CI", "NO_COLOR"), "TERM=xterm-256color")
	terminal, err := pty.Start(c)
	if err != nil {
		t.Fatal(err)
	}
	defer terminal.Close()
	out, _ := io.ReadAll(terminal) // ends with an error once the program has
	if err := c.Wait(); err != nil {
		t.Fatalf("%v: %q", err, out)
	}
	if !bytes.HasPrefix(out, []byte("standstill ")) || bytes.ContainsRune(out, '\x1b') {
		t.Fatalf("printed %q", out)
	}
}

func without(env []string, names ...string) []string {
	var kept []string
	for _, e := range env {
		name, _, _ := strings.Cut(e, "=")
		drop := false
		for _, n := range names {
			drop = drop || n == name
		}
		if !drop {
			kept = append(kept, e)
		}
	}
	return kept
}

// talk is a program whose prompts are answered one by one.
type talk struct {
	*exec.Cmd
	in  io.WriteCloser
	out *bufio.Reader
}

func begin(t *testing.T, data string) *talk {
	t.Helper()
	c := program(t, "--plain")
	c.Env = append(os.Environ(), "STANDSTILL_DATA="+data)
	return converse(t, c)
}

// converse starts a program whose prompts are to be answered.
func converse(t *testing.T, c *exec.Cmd) *talk {
	t.Helper()
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
	return &talk{c, in, bufio.NewReader(out)}
}

// until reads up to the next prompt, or to the end.
func (k *talk) until(prompt string) string {
	var b strings.Builder
	for !strings.HasSuffix(b.String(), prompt) {
		r, _, err := k.out.ReadRune()
		if err != nil {
			break
		}
		b.WriteRune(r)
	}
	return b.String()
}

func (k *talk) type_(line string) { fmt.Fprintln(k.in, line) }

func TestInterruptKeepsEverythingAndSaysSo(t *testing.T) {
	for _, signal := range []os.Signal{os.Interrupt, syscall.SIGTERM} {
		k := begin(t, t.TempDir())
		k.until("\n> ")
		if err := k.Process.Signal(signal); err != nil {
			t.Fatal(err)
		}
		rest := k.until("never")
		if err := k.Wait(); err != nil || !strings.Contains(rest, "End: every line that you checked is saved.") {
			t.Fatalf("%v: %v: %q", signal, err, rest)
		}
	}
}

// TestKilledAfterEachLine kills the program as soon as it has said what it made of
// a line. The next one must begin where the last was.
func TestKilledAfterEachLine(t *testing.T) {
	data := filepath.Join(t.TempDir(), "data")
	k := begin(t, data)
	k.until("\n> ")
	k.type_("Nele")
	k.until("\n> ")
	k.type_("problems")
	k.until("\n> ")
	k.type_("canal-lantern")
	k.until("\n> ")
	for i, line := range []string{
		"T1 up left; T2 up right; w down", "T1 cos α; T1 sin α", "hint", "T2 cos α", "keep",
		"T2y = T2 sin β; wx = 0; wy = mg", "T1 cos α = T2 cos β", "T1 sin α + T2 sin β = mg", "T1 = 20.2 N",
	} {
		k.type_(line)
		said := k.until("\n> ")
		if err := k.Process.Kill(); err != nil {
			t.Fatal(err)
		}
		k.Wait()
		k = begin(t, data)
		again := k.until("\n> ")
		question := func(text string) string {
			at := strings.LastIndex(text, "Question: ")
			if at < 0 {
				return ""
			}
			return strings.SplitN(text[at:], "\n", 2)[0]
		}
		if want := question(said); want != "" && question(again) != want || !strings.Contains(again, "You are continuing from where you stopped last time") {
			t.Fatalf("after line %d, %q, it said\n%s\nand then began with\n%s", i+1, line, said, again)
		}
	}
	k.in.Close()
	k.until("never")
	k.Wait()
}

// TestHostShowsTheLab runs a host on a terminal: it serves before anybody presses a key,
// log lines do not come into the view but after it, and q ends it in order.
func TestHostShowsTheLab(t *testing.T) {
	c := program(t, "host", "--open", "--listen", "127.0.0.1:0", "--per-address", "1")
	c.Env = append(os.Environ(), "STANDSTILL_DATA="+t.TempDir(), "TERM=xterm-256color")
	terminal, err := pty.Start(c)
	if err != nil {
		t.Fatal(err)
	}
	defer terminal.Close()
	k := &talk{c, terminal, bufio.NewReader(terminal)}
	ready := k.until(saidHostLive)
	found := regexp.MustCompile(`on port (\d+)`).FindStringSubmatch(ready)
	if found == nil || !strings.Contains(ready, "SHA256:") || !strings.Contains(ready, saidOpenHost) {
		t.Fatalf("it begins with\n%s", ready)
	}
	for range 2 { // one more than may be
		conn, err := net.Dial("tcp", "127.0.0.1:"+found[1])
		if err != nil {
			t.Fatal(err)
		}
		defer conn.Close()
	}
	k.type_("")
	seen := k.until("q quit")
	if !strings.Contains(seen, "0 connected") {
		t.Errorf("the view is\n%s", seen)
	}
	seen += k.until("0 connected")
	fmt.Fprint(terminal, "q")
	rest := k.until("never")
	if err := c.Wait(); err != nil {
		t.Errorf("it ends with %v", err)
	}
	const warning = "too many connections"
	if strings.Contains(ready+seen, warning) || !strings.Contains(rest, warning) || !strings.Contains(rest, "stopped") {
		t.Errorf("the view is\n%s\nand after it came\n%s", seen, rest)
	}
}

// A teacher who stops a dialogue with a key finds the answers there the next time.
func TestInterruptKeepsTheAnswersOfADialogue(t *testing.T) {
	for _, signal := range []os.Signal{os.Interrupt, syscall.SIGTERM} {
		c := program(t, "bank", "new", "quay.yaml")
		c.Dir = t.TempDir()
		var said bytes.Buffer
		c.Stderr = &said
		k := converse(t, c)
		k.until("\n> ")
		k.type_("A hook over the quay")
		k.until("\n> ")
		if err := k.Process.Signal(signal); err != nil {
			t.Fatal(err)
		}
		k.until("never")
		if err := k.Wait(); err == nil || !strings.Contains(said.String(), "Your answers are saved in quay.yaml.draft") {
			t.Fatalf("%v: %v: %q", signal, err, said.String())
		}
		if draft, err := os.ReadFile(filepath.Join(c.Dir, "quay.yaml.draft")); err != nil || !strings.Contains(string(draft), "A hook over the quay") {
			t.Fatalf("%v: %q", err, draft)
		}
	}
}
