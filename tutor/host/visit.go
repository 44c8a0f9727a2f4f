package host

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"
	"time"

	"github.com/charmbracelet/ssh"
	"github.com/muesli/termenv"
	gossh "golang.org/x/crypto/ssh"

	"example.org/standstill/checker/expr"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/plain"
	"example.org/standstill/tutor/record"
	"example.org/standstill/tutor/screen"
)

// openMark begins the ids of those who have not proved who they are. No id of a class
// list can have it.
const openMark = "open:"

// anybody lets in whoever has a name that is not in use, on a host without a class.
func (h *Host) anybody(n *conn, name string) (*gossh.Permissions, error) {
	return h.guarded(n, name, func() (string, bool) {
		name := openName(name)
		return openMark + name, name != ""
	})
}

// openName is what is shown of a name that somebody typed.
func openName(name string) string {
	name = strings.Join(strings.Fields(expr.Clean(strings.ToValidUTF8(name, ""))), " ")
	if runes := []rune(name); len(runes) > 60 {
		name = string(runes[:60])
	}
	return problems.Fold(name)
}

// who finds whose visit a session is.
func (h *Host) who(s ssh.Session) (student record.Student, teacher, ok bool) {
	server, _ := s.Context().Value(ssh.ContextKeyConn).(*gossh.ServerConn)
	if server == nil || server.Permissions == nil {
		return student, false, false
	}
	id := server.Permissions.Extensions[ownerKey]
	if name, open := strings.CutPrefix(id, openMark); open && h.Open {
		return record.Student{ID: id, Name: name + wordOpen}, false, true
	}
	if h.doors.isTeacher(id) {
		return student, true, true
	}
	student, ok = h.doors.student(id)
	return student, false, ok && id != ""
}

// visit leads one session from its beginning to its end.
func (h *Host) visit(s ssh.Session) {
	n, _ := s.Context().Value(connKey{}).(*conn)
	student, teacher, ok := h.who(s)
	if n == nil || !ok {
		return
	}
	if len(s.RawCommand()) > 0 {
		h.refuseCommand(s)
		return
	}
	v := newVisit(student, n.Close, h.Now())
	if teacher {
		h.lookOn(s, v, &n.window)
		return
	}
	h.practise(s, v, &n.window)
}

// practise leads a student's visit.
func (h *Host) practise(s ssh.Session, v *visit, w *window) {
	if h.Open && h.inUse(v.student.ID) {
		fmt.Fprintln(s, saidUsed)
		s.Exit(1)
		return
	}
	stop := context.AfterFunc(s.Context(), func() { v.cancel(nil) })
	defer stop()
	late := time.AfterFunc(moment, func() { fmt.Fprintln(s, saidLate) })
	err := h.places.take(v)
	late.Stop()
	// Also after an error, because take has put the visit into its place by then.
	defer h.places.leave(v)
	if err != nil {
		fmt.Fprintln(s, fmt.Sprintf(saidNotNow, sentenceOf(err)))
		s.Exit(1)
		return
	}
	h.logVisit("begins", v)
	defer h.logVisit("ends", v)
	said := h.lead(s, v, w)
	if why := (reason)(""); errors.As(context.Cause(v.ctx), &why) {
		said = string(why)
	}
	if said != "" {
		fmt.Fprintln(s, said)
	}
}

// moment is how long nothing is said while a visit waits for the record.
const moment = time.Second

func sentenceOf(err error) string {
	if errors.Is(err, errClosed) {
		return saidStopping
	}
	return record.Sentence(err)
}

func (h *Host) inUse(id string) bool {
	return slices.ContainsFunc(h.places.all(), func(v *visit) bool { return v.student.ID == id })
}

// logVisit says that a visit begins or ends. Names are logged only where that is wanted.
func (h *Host) logVisit(what string, v *visit) {
	if h.LogNames {
		h.Log.Info("visit "+what, "visit", v.number, "student", v.student.ID)
		return
	}
	h.Log.Info("visit "+what, "visit", v.number)
}

// lead leads the lesson and the bench until the student leaves. What it returns is to be
// said at the end.
func (h *Host) lead(s ssh.Session, v *visit, w *window) (said string) {
	defer h.fenced("visit", v.number, func() { said = saidFault })
	o := h.Tutor
	o.Record = o.Record.Holding(v.held())
	o.Visitor = &v.student
	o.Told = func(p *problems.Problem, l *tutor.Line) {
		h.Fault("line")
		v.note(p, l)
	}
	t := tutor.New(o)
	pressed := func() { v.press(h.Now()) }
	pty, _, ok := s.Pty()
	if !ok || pty.Term == "dumb" {
		return h.leadLines(s, v, t, newInput(v.ctx, s, burstOfLines, pressed))
	}
	in := newInput(v.ctx, s, burstOfKeys, pressed)
	w.begin(pty.Window)
	return h.leadScreens(s, v, t, in, w, lookOf(pty.Term, s.Environ()))
}

// leadScreens goes between lesson and bench for as long as the student wants.
func (h *Host) leadScreens(s ssh.Session, v *visit, t *tutor.Tutor, in *input, w *window, look look) string {
	for place := screen.ToLesson; ; {
		bye, err := h.oneScreen(s, v, t, in, w, look, place)
		switch {
		case err != nil:
			h.Log.Error("fault", "place", "screen", "visit", v.number)
			return saidFault
		case v.ctx.Err() != nil:
			return ""
		case bye.Plain:
			return h.leadLines(s, v, t, in)
		case bye.To == "":
			return bye.Said
		}
		place = bye.To
	}
}

// oneScreen opens the lesson or the bench.
func (h *Host) oneScreen(s ssh.Session, v *visit, t *tutor.Tutor, in *input, w *window, look look, place screen.Place) (screen.Goodbye, error) {
	done := make(chan struct{})
	defer close(done)
	o := screen.Options{In: in.until(done), Out: s, Context: v.ctx, Sizes: w.sizes(), Notices: v.notices, FPS: framesPerSecond,
		Colours: &look.colours, ASCII: look.ascii}
	h.Fault("screen")
	if place == screen.ToBench {
		// It has nothing to save files with: none of this machine is written.
		return screen.RunBench(t, screen.Bench{Names: []string{v.student.Name}}, o)
	}
	return screen.Run(t, o)
}

// framesPerSecond is how often a screen is painted at most: often enough that typing looks
// immediate.
const framesPerSecond = 60

// leadLines leads the lesson as lines of text, for a client without a terminal.
func (h *Host) leadLines(s ssh.Session, v *visit, t *tutor.Tutor, in *input) string {
	out := &lines{w: s}
	stop := make(chan struct{})
	defer close(stop)
	go out.notices(v, stop)
	h.Fault("plain")
	_, _, terminal := s.Pty()
	err := plain.Run(v.ctx, plain.Options{Tutor: t, In: in.until(nil), Out: out, SavedIn: t.SavedIn(), Echo: terminal})
	if err != nil && v.ctx.Err() == nil {
		h.Log.Warn("a lesson in lines of text ended with an error", "visit", v.number)
	}
	return ""
}

// lines is an output that a lesson and the host write to.
type lines struct {
	mu sync.Mutex
	w  io.Writer
}

func (l *lines) Write(b []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.w.Write(b)
}

func (l *lines) notices(v *visit, stop <-chan struct{}) {
	for {
		select {
		case text := <-v.notices:
			fmt.Fprintln(l, text)
		case <-stop:
			return
		}
	}
}

// window keeps the size of a client's window. Sizes are taken as fast as they come, so
// that the connection never waits for a screen, and the last one is told a moment later.
type window struct {
	mu      sync.Mutex
	last    screen.Size
	known   bool // last is a change
	late    bool // a change is told when its time has come
	changed chan screen.Size
}

// betweenSizes is how long sizes are gathered before a screen is told of the last.
const betweenSizes = 50 * time.Millisecond

// begin is told the size with which a terminal was asked for; a change may have come since.
func (w *window) begin(first ssh.Window) {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.changed = make(chan screen.Size, 1)
	if !w.known {
		w.last = screen.Size{Cols: first.Width, Rows: first.Height}
	}
}

// change takes the payload of a change as RFC 4254 (6.7) has it; false where it is none.
func (w *window) change(payload []byte) bool {
	var size struct{ Cols, Rows, Width, Height uint32 }
	if gossh.Unmarshal(payload, &size) != nil {
		return false
	}
	w.mu.Lock()
	defer w.mu.Unlock()
	w.last, w.known = screen.Size{Cols: int(size.Cols), Rows: int(size.Rows)}, true
	if w.changed != nil && !w.late {
		w.late = true
		time.AfterFunc(betweenSizes, w.tell)
	}
	return true
}

// tell tells the screen of the size as it is now.
func (w *window) tell() {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.late = false
	w.put()
}

// put leaves the size for whoever asks next, in place of an older one.
func (w *window) put() {
	select {
	case <-w.changed:
	default:
	}
	w.changed <- w.last
}

// sizes gives the channel of changes, with the size as it is now in it.
func (w *window) sizes() <-chan screen.Size {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.put()
	return w.changed
}

// size is the size as it is now.
func (w *window) size() (cols, lines int) {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.last.Cols, w.last.Rows
}

// look is how a client's terminal is painted.
type look struct {
	colours termenv.Profile
	ascii   bool
}

// lookOf goes by what the client says of itself, and asks nothing: some never answer.
func lookOf(term string, environ []string) look {
	l := look{colours: termenv.ANSI}
	switch {
	case term == "", term == "dumb", strings.HasPrefix(term, "vt"):
		l.colours = termenv.Ascii
	case strings.Contains(term, "256color"):
		l.colours = termenv.ANSI256
	}
	for _, v := range environ {
		name, value, _ := strings.Cut(v, "=")
		switch {
		case name == "NO_COLOR" && value != "":
			l.colours = termenv.Ascii
		// Only if the client says so: most send no LANG, which means nothing.
		case name == "LANG":
			l.ascii = value == "C" || value == "POSIX"
		}
	}
	return l
}
