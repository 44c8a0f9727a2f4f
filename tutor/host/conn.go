package host

import (
	"context"
	"errors"
	"net"
	"sync"
	"sync/atomic"
	"time"

	"github.com/charmbracelet/ssh"
	gossh "golang.org/x/crypto/ssh"
)

// conns are the connections to the host.
type conns struct {
	host *Host

	mu        sync.Mutex
	byAddress map[string]int
	waiting   []*conn // not yet logged in, the oldest first
}

// mostUnproved is how many connections may be open that have not logged in: as many as a
// slow machine lets in within the time that coming in may take, so that of a whole school
// nobody is dropped for waiting. When there is one more, the oldest goes.
const mostUnproved = 512

// conn is one connection.
type conn struct {
	net.Conn
	conns    *conns
	address  string
	late     *time.Timer
	ended    context.Context
	end      context.CancelFunc
	sessions atomic.Int32
	window   window
	once     sync.Once

	mu   sync.Mutex
	name string // the one that was tried first; it must not change
}

// connKey is where a connection lies in its context.
type connKey struct{}

// admit takes a new connection, or refuses it by nil.
func (c *conns) admit(ctx ssh.Context, raw net.Conn) net.Conn {
	address, _, _ := net.SplitHostPort(raw.RemoteAddr().String())
	n := &conn{Conn: raw, conns: c, address: address}
	n.ended, n.end = context.WithCancel(context.Background())
	c.mu.Lock()
	if c.byAddress == nil {
		c.byAddress = map[string]int{}
	}
	if c.byAddress[address] >= c.host.PerAddress {
		c.mu.Unlock()
		c.host.Log.Warn("too many connections from one address")
		return nil
	}
	c.byAddress[address]++
	// Before anybody else can find the connection and close it.
	n.late = time.AfterFunc(c.host.LogIn, func() { n.Close() })
	c.waiting = append(c.waiting, n)
	var oldest *conn
	// The oldest goes and not the newest, so that a flood of connections keeps no student out.
	if len(c.waiting) > mostUnproved {
		oldest, c.waiting = c.waiting[0], c.waiting[1:]
	}
	c.mu.Unlock()
	if oldest != nil {
		// Not under the lock, which Close takes as well.
		oldest.Close()
	}
	ctx.SetValue(connKey{}, n)
	return n
}

// proved lets a connection stay that has logged in.
func (n *conn) proved() {
	n.late.Stop()
	n.conns.drop(n)
}

func (c *conns) drop(n *conn) {
	c.mu.Lock()
	defer c.mu.Unlock()
	for i, w := range c.waiting {
		if w == n {
			c.waiting = append(c.waiting[:i], c.waiting[i+1:]...)
			return
		}
	}
}

// Close ends the connection and gives its place back.
func (n *conn) Close() error {
	n.once.Do(func() {
		if n.late != nil {
			n.late.Stop()
		}
		n.end()
		n.conns.drop(n)
		n.conns.mu.Lock()
		defer n.conns.mu.Unlock()
		if n.conns.byAddress[n.address]--; n.conns.byAddress[n.address] <= 0 {
			delete(n.conns.byAddress, n.address)
		}
	})
	return n.Conn.Close()
}

// sameName reports whether all tries of a connection are under one name.
func (n *conn) sameName(name string) bool {
	n.mu.Lock()
	defer n.mu.Unlock()
	if n.name == "" {
		n.name = name
	}
	return n.name == name
}

var errRefused = errors.New("refused")

// ownerKey is where the permissions of a connection say whose visit it is. It is set by
// the callback that accepts, from the name that it has checked, and read nowhere else: the
// names that the library reports are those of the first and of the last try.
const ownerKey = "owner"

func permissions(id string) *gossh.Permissions {
	return &gossh.Permissions{Extensions: map[string]string{ownerKey: id}}
}

// logIn says how one connection may log in. The library lets everybody in where it has no
// handlers of its own, by the method "none": so that method has a callback that refuses.
func (h *Host) logIn(ctx ssh.Context) *gossh.ServerConfig {
	n := ctx.Value(connKey{}).(*conn)
	algorithms := gossh.SupportedAlgorithms()
	config := &gossh.ServerConfig{
		// A client may offer all its keys before it asks for the phrase, and each of them is a try.
		MaxAuthTries: 12,
		NoClientAuthCallback: func(meta gossh.ConnMetadata) (*gossh.Permissions, error) {
			if h.Open {
				return h.anybody(n, meta.User())
			}
			return nil, errRefused
		},
		PasswordCallback: func(meta gossh.ConnMetadata, phrase []byte) (*gossh.Permissions, error) {
			return h.tryPhrase(n, meta.User(), string(phrase))
		},
		KeyboardInteractiveCallback: func(meta gossh.ConnMetadata, ask gossh.KeyboardInteractiveChallenge) (*gossh.Permissions, error) {
			return h.askPhrase(n, meta.User(), ask)
		},
		PublicKeyCallback: func(meta gossh.ConnMetadata, key gossh.PublicKey) (*gossh.Permissions, error) {
			return h.tryKey(n, meta.User(), key)
		},
	}
	config.KeyExchanges, config.Ciphers, config.MACs = algorithms.KeyExchanges, algorithms.Ciphers, algorithms.MACs
	config.PublicKeyAuthAlgorithms = algorithms.PublicKeyAuths
	return config
}

// guarded runs one try. A name that changes ends the connection, and so does a fault of
// ours.
func (h *Host) guarded(n *conn, name string, try func() (string, bool)) (p *gossh.Permissions, err error) {
	defer h.fenced("log-in", 0, func() { p, err = nil, errRefused; n.Close() })
	if !n.sameName(name) {
		h.Log.Warn("the user name changed between two attempts")
		n.Close()
		return nil, errRefused
	}
	h.Fault("log-in")
	id, ok := try()
	if !ok {
		return nil, errRefused
	}
	return permissions(id), nil
}

// tryPhrase checks a pass phrase. A refusal takes the same time for every name.
func (h *Host) tryPhrase(n *conn, name, phrase string) (*gossh.Permissions, error) {
	begun := time.Now()
	p, err := h.guarded(n, name, func() (string, bool) { return h.doors.byPhrase(n.ended, n.address, name, phrase) })
	if err != nil {
		h.Log.Info("refused", "by", "phrase")
		select {
		case <-time.After(h.Refusal - time.Since(begun)):
		case <-n.ended.Done():
		}
	}
	return p, err
}

func (h *Host) askPhrase(n *conn, name string, ask gossh.KeyboardInteractiveChallenge) (*gossh.Permissions, error) {
	answers, err := ask("", "", []string{saidPhrase}, []bool{false})
	if err != nil || len(answers) != 1 {
		return nil, errRefused
	}
	return h.tryPhrase(n, name, answers[0])
}

// tryKey looks at a public key. Clients offer one after the other, so a refusal is not
// delayed; a key tells nothing about who has a door.
func (h *Host) tryKey(n *conn, name string, key gossh.PublicKey) (*gossh.Permissions, error) {
	return h.guarded(n, name, func() (string, bool) { return h.doors.byKey(name, key) })
}
