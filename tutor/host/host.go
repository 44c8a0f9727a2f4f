// Package host knows how many students practise on one machine: they come over SSH, each
// to a visit of their own.
//
// Start with New and Host.Serve. A connection comes in at conn.go, where limits are kept;
// doors.go with phrase.go and queue.go decides who it is; channel.go lets through what a
// visit may ask for, input.go what it types; visit.go leads the lesson on a screen or in
// lines of text; places.go sees that each student has one visit; live.go shows the lab to
// the teacher; sentences.go holds what is said.
//
// No visit can harm another: whatever goes wrong in one ends that one.
package host

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"os"
	"path/filepath"
	"time"

	"github.com/charmbracelet/keygen"
	"github.com/charmbracelet/ssh"
	"github.com/charmbracelet/wish"
	gossh "golang.org/x/crypto/ssh"

	"example.org/standstill/tutor"
)

// Options are what a host works with. Tutor and HostKey are needed.
type Options struct {
	// Tutor is what every visit shares: bank, record and class.
	Tutor tutor.Options
	// Teacher is the name under which the teacher looks on, with a key; "" for nobody.
	Teacher string
	// Open lets in anybody under a name that is not in use. What is done then is marked:
	// nobody has proved who it was.
	Open bool
	// HostKey is the file of the host's own key; one is made where there is none.
	HostKey string
	// Name is what this host is called in the record.
	Name string
	// Idle ends a visit in which no key was pressed for so long; 60 minutes if zero.
	Idle time.Duration
	// PerAddress is how many connections one address may have; 64 if zero.
	PerAddress int
	// Refusal is how long it takes to be refused, the same for everybody; 2 s if zero.
	Refusal time.Duration
	// LogIn is how long coming in may take; 30 s if zero.
	LogIn time.Duration
	// Report writes the class's report for the teacher; nil for none.
	Report func(context.Context, io.Writer) error
	// Log takes what happens; nil for nothing. Names of students are in it only where
	// LogNames is set; what was typed never is.
	Log      *slog.Logger
	LogNames bool
	// Now is the clock; time.Now if nil.
	Now func() time.Time
	// Fault is called in places where a fault of ours may be, so that tests can make one.
	Fault func(place string)
}

func (o Options) withDefaults() Options {
	set := func(d *time.Duration, usual time.Duration) {
		if *d == 0 {
			*d = usual
		}
	}
	set(&o.Idle, time.Hour)
	set(&o.Refusal, 2*time.Second)
	set(&o.LogIn, 30*time.Second)
	if o.PerAddress == 0 {
		o.PerAddress = 64
	}
	if o.Now == nil {
		o.Now = time.Now
	}
	if o.Log == nil {
		o.Log = slog.New(slog.DiscardHandler)
	}
	if o.Fault == nil {
		o.Fault = func(string) {}
	}
	if o.Name == "" {
		o.Name, _ = os.Hostname()
	}
	return o
}

// Host serves many students at once.
type Host struct {
	Options
	doors  *doors
	conns  conns
	places places
	server *ssh.Server
	key    gossh.PublicKey
}

// New prepares a host. Its key is read, or made for its owner alone.
func New(o Options) (*Host, error) {
	o = o.withDefaults()
	pair, err := hostKey(o.HostKey)
	if err != nil {
		return nil, err
	}
	h := &Host{Options: o, doors: newDoors(&o), key: pair.PublicKey()}
	h.conns.host, h.places.host = h, h
	h.server, err = wish.NewServer(
		wish.WithHostKeyPEM(pair.RawPrivateKey()),
		wish.WithVersion("standstill"),
		ssh.WrapConn(h.conns.admit),
		wish.WithMiddleware(h.visits),
	)
	if err != nil {
		return nil, fmt.Errorf("prepare the host: %w", err)
	}
	h.server.ServerConfigCallback = h.logIn
	h.server.ChannelHandlers = map[string]ssh.ChannelHandler{"session": h.session}
	// Instead of the library's own: no file transfer, no forwarding, nothing but a lesson.
	h.server.SubsystemHandlers = map[string]ssh.SubsystemHandler{"default": h.refuseCommand}
	return h, nil
}

// hostKey reads the host's key, or makes it.
func hostKey(path string) (*keygen.SSHKeyPair, error) {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return nil, err
	}
	pair, err := keygen.New(path, keygen.WithKeyType(keygen.Ed25519), keygen.WithWrite())
	if err != nil {
		return nil, fmt.Errorf("the host's key %s cannot be used: %w", path, err)
	}
	return pair, nil
}

// Fingerprint is that of the host's key, as clients show it: "SHA256:…".
func (h *Host) Fingerprint() string { return gossh.FingerprintSHA256(h.key) }

// FingerprintOf is the fingerprint of the key in a file, which is made where there is none.
func FingerprintOf(path string) (string, error) {
	pair, err := hostKey(path)
	if err != nil {
		return "", err
	}
	return gossh.FingerprintSHA256(pair.PublicKey()), nil
}

// GarbageShare is how far the memory of a host may grow before it is cleaned, in percent
// of what is in use. Most of it are the screens of those who are there, and stays: the
// usual 100 would keep as much again in reserve.
const GarbageShare = 85

// goodbye is how long visits have to end in order, and a client to take the last lines.
const goodbye = 8 * time.Second

// Serve takes in students until the context is done. Then nobody new comes in, everybody
// is told, what was half typed is kept, and Serve returns within ten seconds.
func (h *Host) Serve(ctx context.Context, l net.Listener) error {
	served := make(chan error, 1)
	go func() { served <- h.server.Serve(l) }()
	// It goes on while the visits end, which can take some seconds.
	looking, stop := context.WithCancel(context.WithoutCancel(ctx))
	defer stop()
	go h.places.look(looking)
	select {
	case err := <-served:
		return fmt.Errorf("listen: %w", err)
	case <-ctx.Done():
	}
	// First no newcomers, then goodbye to those who are there.
	l.Close()
	h.Log.Info("stopping", "visits", h.places.count())
	h.places.endAll(saidStopping, goodbye)
	err := h.server.Close()
	if errors.Is(err, net.ErrClosed) {
		err = nil
	}
	h.Log.Info("stopped")
	return err
}

// visits is the handler of all sessions that ask for a lesson.
func (h *Host) visits(ssh.Handler) ssh.Handler { return h.visit }

// fenced keeps a fault of ours in one visit: it is logged without what it was about, which
// may be something that a student typed.
func (h *Host) fenced(place string, visit int64, then func()) {
	if r := recover(); r != nil {
		h.Log.Error("fault", "place", place, "visit", visit)
		then()
	}
}
