package host

import (
	"io"
	"slices"

	"github.com/charmbracelet/ssh"
	gossh "golang.org/x/crypto/ssh"
)

// session opens the one session of a connection.
func (h *Host) session(server *ssh.Server, s *gossh.ServerConn, channel gossh.NewChannel, ctx ssh.Context) {
	n := ctx.Value(connKey{}).(*conn)
	defer h.fenced("session", 0, func() { n.Close() })
	// A second session would be a second visit of one student on one connection.
	if n.sessions.Add(1) > 1 {
		channel.Reject(gossh.ResourceShortage, saidOneSession)
		return
	}
	n.proved()
	ssh.DefaultSessionHandler(server, s, gate{channel, &n.window}, ctx)
}

// gate lets through what a visit may ask for, and refuses the rest: programs of the
// client's own for the environment, an agent, a display. Sizes of the window go straight
// to the visit.
type gate struct {
	gossh.NewChannel
	window *window
}

// environment are the variables that a visit looks at; mostVariables is how many a client
// may send.
var environment = []string{"LANG", "NO_COLOR"}

const mostVariables = 16

func (g gate) Accept() (gossh.Channel, <-chan *gossh.Request, error) {
	channel, requests, err := g.NewChannel.Accept()
	if err != nil {
		return channel, requests, err
	}
	through := make(chan *gossh.Request)
	go func() {
		defer close(through)
		sent := 0
		for r := range requests {
			if r.Type == "env" {
				sent++
			}
			switch {
			case r.Type == "window-change":
				r.Reply(g.window.change(r.Payload), nil)
			case r.Type == "env" && sent > mostVariables || !allowed(r):
				// Answered, or the client would wait.
				r.Reply(false, nil)
			default:
				through <- r
			}
		}
	}()
	return channel, through, nil
}

func allowed(r *gossh.Request) bool {
	switch r.Type {
	// Commands and subsystems come through so that they are refused in words, by refuseCommand.
	case "pty-req", "shell", "exec", "subsystem":
		return true
	case "env":
		var v struct{ Name, Value string }
		return gossh.Unmarshal(r.Payload, &v) == nil && slices.Contains(environment, v.Name) && len(v.Value) <= 100
	}
	return false
}

// refuseCommand answers whoever wants to run a command or to copy files.
func (h *Host) refuseCommand(s ssh.Session) {
	io.WriteString(s.Stderr(), saidNoCommand+"\n")
	s.Exit(1)
}
