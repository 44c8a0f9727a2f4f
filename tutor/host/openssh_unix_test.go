//go:build unix

// Inside the package: it uses the host of host_test.go.

package host

import (
	"bytes"
	"io"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/creack/pty"

	"example.org/standstill/tutor/record"
)

// openssh is OpenSSH's own client, set up to know the host and nothing else.
type openssh struct {
	*lab
	folder string
}

func withOpenSSH(t *testing.T) *openssh {
	t.Helper()
	if _, err := exec.LookPath("ssh"); err != nil {
		t.Skip("not run: the tests with OpenSSH's client need the program ssh")
	}
	o := &openssh{lab: openLab(t, 2, nil), folder: t.TempDir()}
	_, port, _ := net.SplitHostPort(o.address)
	config := "Host lab\n HostName 127.0.0.1\n Port " + port + "\n UserKnownHostsFile " + o.folder + "/known\n" +
		" StrictHostKeyChecking accept-new\n LogLevel ERROR\n IdentitiesOnly yes\n IdentityFile " + o.folder + "/key\n"
	must(t, os.WriteFile(filepath.Join(o.folder, "config"), []byte(config), 0o600))
	return o
}

// key makes a key with OpenSSH's own program and lets it open a door.
func (o *openssh) key(id string) {
	o.t.Helper()
	o.phrase(id)
	out, err := exec.Command("ssh-keygen", "-q", "-t", "ed25519", "-N", "", "-f", o.folder+"/key").CombinedOutput()
	if err != nil {
		o.t.Fatalf("%v: %s", err, out)
	}
	line, err := os.ReadFile(o.folder + "/key.pub")
	must(o.t, err)
	_, err = AddKey(o.record, id, string(line))
	must(o.t, err)
}

func (o *openssh) command(program string, args ...string) *exec.Cmd {
	c := exec.Command(program, append([]string{"-F", o.folder + "/config"}, args...)...)
	c.Env = append(os.Environ(), "TERM=xterm-256color", "SSH_AUTH_SOCK=")
	return c
}

// run gives what a client writes to both outputs, and how it ends.
func (o *openssh) run(typed, program string, args ...string) (string, error) {
	c := o.command(program, args...)
	c.Stdin = strings.NewReader(typed)
	out, err := c.CombinedOutput()
	return string(out), err
}

// TestPassPhraseOnATerminal types the phrase into the client's own prompt.
func TestPassPhraseOnATerminal(t *testing.T) {
	o := withOpenSSH(t)
	phrase := o.phrase("s01")
	c := o.command("ssh", "s01@lab")
	tty, err := pty.StartWithSize(c, &pty.Winsize{Cols: 100, Rows: 30})
	must(t, err)
	defer tty.Close()
	k := &client{t: t, in: tty, ended: make(chan error, 1), changed: make(chan struct{})}
	go func() {
		io.Copy(k, tty)
		k.ended <- c.Wait()
	}()
	k.sees("Pass phrase:")
	k.types("wrong words of mine\n")
	k.sees("Pass phrase: (s01@127.0.0.1) Pass phrase:")
	k.types(strings.ToUpper(phrase) + "\n")
	k.sees("All problems")
	k.types("canal" + enter)
	k.sees("▸ Forces ◂")
	must(t, pty.Setsize(tty, &pty.Winsize{Cols: 80, Rows: 24}))
	k.types(forces + enter)
	k.sees("▸ Components ◂")
	k.types(ctrlC)
	if said := k.ends(); !strings.Contains(said, "is saved") {
		t.Errorf("it ends with %q", tail(said))
	}
	if got := o.entries("s01", record.Answer); len(got) != 1 {
		t.Errorf("recorded: %v", got)
	}
}

func TestOpenSSHWithAKey(t *testing.T) {
	o := withOpenSSH(t)
	o.key("s01")
	free, err := net.Listen("tcp", "127.0.0.1:0")
	must(t, err)
	_, port, _ := net.SplitHostPort(free.Addr().String())
	free.Close()
	lesson := atLantern + forces + "\nleave\n"
	for name, args := range map[string][]string{
		"lines of text":      {"-T"},
		"an agent":           {"-T", "-A"},
		"a display":          {"-T", "-X"},
		"a port of the host": {"-T", "-R", "0:127.0.0.1:1"},
		"a port of ours":     {"-T", "-L", port + ":" + o.address},
	} {
		t.Run(name, func(t *testing.T) {
			said, err := o.run(lesson, "ssh", append(args, "s01@lab")...)
			if err != nil || !strings.Contains(said, "End:") {
				t.Errorf("%v: %s", err, tail(said))
			}
		})
	}
	for name, run := range map[string]func() (string, error){
		"a command":               func() (string, error) { return o.run("", "ssh", "s01@lab", "cat", "/etc/passwd") },
		"a command on a terminal": func() (string, error) { return o.run("", "ssh", "-tt", "s01@lab", "sh") },
		"sftp":                    func() (string, error) { return o.run("get /etc/passwd\n", "sftp", "-b", "-", "s01@lab") },
		"scp":                     func() (string, error) { return o.run("", "scp", "s01@lab:/etc/passwd", o.folder+"/stolen") },
		"the old scp":             func() (string, error) { return o.run("", "scp", "-O", o.folder+"/config", "s01@lab:x") },
		"a subsystem":             func() (string, error) { return o.run("", "ssh", "-s", "s01@lab", "netconf") },
	} {
		t.Run(name, func(t *testing.T) {
			said, err := run()
			if err == nil || !strings.Contains(said, "does not run commands or copy files") || strings.Contains(said, "root:") {
				t.Errorf("%v: %s", err, tail(said))
			}
		})
	}
	if _, err := os.Stat(o.folder + "/stolen"); err == nil {
		t.Error("a file was copied")
	}
}

// A port that -L opens on the student's machine leads nowhere.
func TestForwardedPortLeadsNowhere(t *testing.T) {
	o := withOpenSSH(t)
	o.key("s01")
	secret, err := net.Listen("tcp", "127.0.0.1:0")
	must(t, err)
	defer secret.Close()
	go func() {
		if c, err := secret.Accept(); err == nil {
			c.Write([]byte("secret"))
			c.Close()
		}
	}()
	c := o.command("ssh", "-T", "-W", secret.Addr().String(), "s01@lab")
	out, err := c.CombinedOutput()
	if err == nil || bytes.Contains(out, []byte("secret")) {
		t.Errorf("%v: %s", err, out)
	}
}
