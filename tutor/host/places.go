package host

import (
	"cmp"
	"context"
	"errors"
	"slices"
	"sync"
	"sync/atomic"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// places are the visits that go on: one for a student, or several of a teacher, who takes
// no place.
type places struct {
	host *Host

	mu     sync.Mutex
	taken  map[string]*visit
	others map[*visit]bool
	last   int64
	closed bool
}

// visit is one student at the host.
type visit struct {
	number  int64
	student record.Student
	drop    func() error // closes the connection

	ctx    context.Context
	cancel context.CancelCauseFunc
	done   chan struct{}

	typed   atomic.Int64 // when a key was pressed last, in nanoseconds since 1970
	warned  atomic.Bool
	notices chan string

	mu    sync.Mutex
	lease record.Lease // written once the visit is among the others already
	seen  seen
}

// held is the lease that the visit was given, if it has one by now.
func (v *visit) held() record.Lease {
	v.mu.Lock()
	defer v.mu.Unlock()
	return v.lease
}

func (v *visit) hold(l record.Lease) {
	v.mu.Lock()
	defer v.mu.Unlock()
	v.lease = l
}

// seen is what the teacher sees of a visit.
type seen struct {
	problem, title string
	stage, verdict string
	lines, refused int
	hints          int
}

// reason is why a visit has to end, in a sentence for the student.
type reason string

func (r reason) Error() string { return string(r) }

var errClosed = errors.New("the host is being stopped")

func newVisit(s record.Student, drop func() error, now time.Time) *visit {
	v := &visit{student: s, drop: drop, done: make(chan struct{}), notices: make(chan string, 4)}
	v.ctx, v.cancel = context.WithCancelCause(context.Background())
	v.press(now)
	return v
}

// handover is how long an earlier visit may take to keep what was half typed.
const handover = 3 * time.Second

// take gives a visit its student's place. The visit that had it is told and ended first,
// so that the new one finds what was half typed there.
func (p *places) take(v *visit) error {
	p.mu.Lock()
	if p.closed {
		p.mu.Unlock()
		return errClosed
	}
	if p.taken == nil {
		p.taken, p.others = map[string]*visit{}, map[*visit]bool{}
	}
	p.last++
	v.number = p.last
	earlier := p.taken[v.student.ID]
	// Before the earlier visit is over, so that a third one would end this one.
	p.taken[v.student.ID] = v
	p.mu.Unlock()
	if earlier != nil {
		p.host.Log.Info("taken over", "visit", earlier.number, "by", v.number)
		earlier.end(saidTaken)
		select {
		case <-earlier.done:
		case <-time.After(handover):
			// Its client takes nothing any more.
			earlier.drop()
		}
	}
	lease, err := p.host.Tutor.Record.Within(func() context.Context { return v.ctx }).TakeLease(v.student.ID, p.host.Name)
	v.hold(lease)
	return err
}

// leave gives the place back.
func (p *places) leave(v *visit) {
	p.mu.Lock()
	delete(p.others, v)
	// Another visit may have taken the place over.
	if p.taken[v.student.ID] == v {
		delete(p.taken, v.student.ID)
	}
	p.mu.Unlock()
	v.cancel(nil)
	if held := v.held(); held.Token != "" {
		// Not the context of the visit, which is done.
		ctx, cancel := context.WithTimeout(context.Background(), time.Second)
		defer cancel()
		r := p.host.Tutor.Record.Within(func() context.Context { return ctx })
		if err := r.EndLease(held); err != nil {
			p.host.Log.Warn("the lease of a student could not be ended", "visit", v.number)
		}
	}
	close(v.done)
}

// lookOn lets the teacher in, who takes nobody's place.
func (p *places) lookOn(v *visit) error {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.closed {
		return errClosed
	}
	if p.others == nil {
		p.taken, p.others = map[string]*visit{}, map[*visit]bool{}
	}
	p.last++
	v.number = p.last
	p.others[v] = true
	return nil
}

// end tells a student why the visit ends, and ends it. A client that takes nothing any
// more is cut off.
func (v *visit) end(why string) {
	v.cancel(reason(why))
	time.AfterFunc(2*time.Second, func() {
		select {
		case <-v.done:
		default:
			v.drop()
		}
	})
}

func (v *visit) press(now time.Time) {
	v.typed.Store(now.UnixNano())
	v.warned.Store(false)
}

// note keeps in mind what the teacher sees.
func (v *visit) note(p *problems.Problem, l *tutor.Line) {
	v.mu.Lock()
	defer v.mu.Unlock()
	s := &v.seen
	if s.problem != p.ID {
		*s = seen{problem: p.ID}
	}
	s.title, s.stage = p.Title, tutor.Title(l.TypedIn)
	switch l.Kind {
	case tutor.Typed:
		s.lines++
		if s.verdict = string(l.Verdict); l.Verdict == checker.Unread {
			s.verdict = saidUnclear
		}
		if !l.Counts() {
			s.refused++
		}
	case tutor.Hinted:
		s.hints++
		s.verdict = "hint"
	case tutor.Revealed:
		s.verdict = "solution"
	}
}

func (v *visit) look() seen {
	v.mu.Lock()
	defer v.mu.Unlock()
	return v.seen
}

// all lists the visits of students by their ids, so that rows keep their order.
func (p *places) all() []*visit {
	p.mu.Lock()
	defer p.mu.Unlock()
	var all []*visit
	for _, v := range p.taken {
		all = append(all, v)
	}
	slices.SortFunc(all, func(a, b *visit) int { return cmp.Compare(a.student.ID, b.student.ID) })
	return all
}

func (p *places) count() int { return len(p.all()) }

// lookEvery is how often the host looks who has taken over elsewhere and who has not
// pressed a key for long.
const (
	lookEvery = time.Second
	warnedAt  = time.Minute
)

// look ends visits that were taken over at another host, or in which nobody types any
// more.
func (p *places) look(ctx context.Context) {
	tick := time.NewTicker(lookEvery)
	defer tick.Stop()
	for {
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
		all := p.all()
		p.lookForIdle(all)
		lookForTaken(all, func() (map[string]record.Lease, error) { return p.leases(ctx) })
	}
}

func (p *places) lookForIdle(all []*visit) {
	for _, v := range all {
		still := p.host.Now().Sub(time.Unix(0, v.typed.Load()))
		switch left := p.host.Idle - still; {
		case left <= 0:
			v.end(saidIdleEnd)
		// With a shorter limit the warning would come at the first look.
		case left <= warnedAt && p.host.Idle > warnedAt && v.warned.CompareAndSwap(false, true):
			v.tell(saidIdle(left))
		}
	}
}

// tell shows a sentence in the visit.
func (v *visit) tell(text string) {
	select {
	// Dropped if there is no room: a client that takes nothing must not hold up the host.
	case v.notices <- text:
	default:
	}
}

func (p *places) leases(ctx context.Context) (map[string]record.Lease, error) {
	ctx, cancel := context.WithTimeout(ctx, lookEvery)
	defer cancel()
	return p.host.Tutor.Record.Within(func() context.Context { return ctx }).Leases()
}

// lookForTaken ends the visits whose leases do not stand any more.
func lookForTaken(all []*visit, leases func() (map[string]record.Lease, error)) {
	// Before the record is asked: a lease that a visit gets meanwhile is not in what the record says.
	held := map[*visit]record.Lease{}
	for _, v := range all {
		if l := v.held(); l.Token != "" {
			held[v] = l
		}
	}
	if len(held) == 0 {
		return
	}
	stand, err := leases()
	if err != nil {
		return // whoever wants to write will be told
	}
	for v, l := range held {
		if l.Token != stand[v.student.ID].Token {
			v.end(saidTaken)
		}
	}
}

// endAll ends every visit and waits until all are over.
func (p *places) endAll(why string, patience time.Duration) {
	p.mu.Lock()
	p.closed = true
	var all []*visit
	for _, v := range p.taken {
		all = append(all, v)
	}
	for v := range p.others {
		all = append(all, v)
	}
	p.mu.Unlock()
	for _, v := range all {
		v.end(why)
	}
	late := time.After(patience)
	for _, v := range all {
		select {
		case <-v.done:
		case <-late:
			return
		}
	}
}
