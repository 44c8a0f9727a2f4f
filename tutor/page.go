package tutor

import (
	"fmt"
	"slices"
	"strconv"
	"sync"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// LineKind is what a line of the page is.
type LineKind uint8

// A line was typed by the student, is a hint that was asked for, says that the worked
// solution was asked for, is a prediction, or answers the question after Solve.
const (
	Typed LineKind = iota
	Hinted
	Revealed
	Guessed
	Limited
)

// Line is one line of the page. Report holds the verdict, what was read and what
// is said; of a hint only the Message is set. TypedIn is the stage in which it was typed; a
// text with several lines may be for more than one. Done lists what is done by what is
// right in it. Disputed says that the student disputed the verdict and went on with the line, Accepted
// that a teacher then took it as right. Fault is not nil where a fault of ours left the
// line without a judgement.
type Line struct {
	checker.Report
	ID       string // of the entry in the record
	Kind     LineKind
	TypedIn  checker.Stage
	AsTyped  string // as typed
	Level    int    // of a hint, 1 to 3
	Done     []Place
	Disputed bool
	Accepted bool
	Fault    error
	Time     time.Time

	// What the lesson says beside the judgement: Doubt comes first, a question about a
	// value that cannot be; Notes come after; OffersHint says that a hint is one key away.
	Doubt      string
	Notes      []string
	OffersHint bool

	credited   []Place          // what is done in later stages
	would      []Place          // what is done besides if the line is disputed
	said       []checker.Answer // what counts as said from here on
	about      topic            // of a hint
	disputedBy string           // the entry that disputes it
	tries      []try            // what it says about each item
}

// covers reports whether an item is done by the line.
func (l *Line) covers(at Place) bool {
	return slices.Contains(l.Done, at) || (l.Disputed || l.Accepted) && slices.Contains(l.would, at)
}

// Statements are the reports of a typed line, one for each line of its text, in order;
// each says for which stage and item its line was taken.
func (l *Line) Statements() []checker.Report {
	if l.Each != nil {
		return l.Each
	}
	return []checker.Report{l.Report}
}

// onlyDisputed reports whether the line stands on the student's word alone.
func (l *Line) onlyDisputed() bool { return l.Verdict != checker.Right && l.Disputed && !l.Accepted }

// ShowsStep reports whether the line is the last of the hints, which shows the step itself.
func (l *Line) ShowsStep() bool { return l.Kind == Hinted && l.Level == lastLevel }

// Counts reports whether the line is taken as right, by us or by a teacher.
func (l *Line) Counts() bool { return l.Verdict == checker.Right || l.Accepted }

// Page is a student's work on one copy of a problem: what its entries come to. A
// page made by NewPage and filled by Add needs no record; the teacher's side
// reads hand-ins in this way.
type Page struct {
	Problem *problems.Problem
	Ref     *checker.Reference

	lines     []Line
	judgeWith Judge

	prediction func() (Prediction, bool) // made when it is first asked for
	limit      func() (Limit, bool)

	chosen    Place
	draft     string
	revealed  bool
	shownAt   time.Time         // when the solution was asked for
	passed    bool              // Components were passed over
	class     Settings          // of the class
	predicted *int              // the choice of the prediction
	limited   bool              // the question after Solve was answered
	sizeTaken bool              // a component was taken as a size, and that was said
	accepts   map[string]string // acceptance → line
}

// NewPage makes an empty page. The error is the solver's, for a problem that has
// no single solution.
func NewPage(p *problems.Problem) (*Page, error) {
	ref, err := p.Reference()
	if err != nil {
		return nil, err
	}
	g := &Page{Problem: p, Ref: ref, accepts: map[string]string{}}
	// When they are first asked for: both solve the problem many times.
	g.prediction = sync.OnceValues(g.makePrediction)
	g.limit = sync.OnceValues(g.makeLimit)
	return g, nil
}

// Add writes on the page what an entry tells; entries come in the order in which
// they happened. It returns the line that was added or changed, nil for none.
func (g *Page) Add(e record.Entry) *Line {
	switch e.Kind {
	case record.Answer:
		g.draft = ""
		line := g.judge(e)
		line.tries = g.triesOf(&line)
		g.remark(&line)
		return g.push(line)
	case record.Hint:
		return g.push(g.hintLine(e))
	case record.Solution:
		if !g.revealed {
			g.revealed, g.shownAt = true, e.Time
		}
		return g.push(Line{ID: e.ID, Kind: Revealed, TypedIn: checker.Stage(e.Stage), Time: e.Time})
	case record.Disputed:
		// A later version of the checker may find the line right; then there is nothing to dispute.
		return g.change(e.Ref, func(l *Line) { l.Disputed, l.disputedBy = l.Verdict != checker.Right, e.ID })
	case record.Accepted:
		line := g.change(e.Ref, func(l *Line) { l.Accepted = true })
		if line != nil {
			g.accepts[e.ID] = line.ID
		}
		return line
	case record.Withdrawn:
		return g.change(g.accepts[e.Ref], func(l *Line) { l.Accepted = false })
	case record.Unsent:
		g.draft = e.Text
	case record.PassedOn:
		g.passed = true
	case record.Predicted:
		return g.addPrediction(e)
	case record.Limited:
		g.limited = true
		line := g.limitLine(e.Text)
		line.ID, line.Time = e.ID, e.Time
		return g.push(line)
	}
	return nil
}

// addPrediction writes a prediction on the page, unless it is about another question
// than this copy has.
func (g *Page) addPrediction(e record.Entry) *Line {
	p, ok := g.prediction()
	chosen := slices.IndexFunc(p.Choices, func(c Choice) bool { return c.Word == e.Detail })
	if !ok || p.ID != e.Item || chosen < 0 {
		return nil
	}
	g.predicted = &chosen
	return g.push(Line{ID: e.ID, Kind: Guessed, TypedIn: checker.XSum, AsTyped: e.Text, Time: e.Time,
		Report: checker.Report{Message: saidYouPredict(p.Choices[chosen].Said)}})
}

func (g *Page) push(l Line) *Line {
	g.lines = append(g.lines, l)
	return &g.lines[len(g.lines)-1]
}

// change finds the line of an entry, or that the entry disputes.
func (g *Page) change(id string, change func(*Line)) *Line {
	for i := range g.lines {
		if l := &g.lines[i]; id != "" && l.Kind == Typed && (l.ID == id || l.disputedBy == id) {
			change(l)
			return l
		}
	}
	return nil
}

// Lines returns what stands on the page, from the top. The caller must not change
// it.
func (g *Page) Lines() []Line { return g.lines }

// Of returns the lines of one stage.
func (g *Page) Of(stage checker.Stage) []Line {
	return slices.DeleteFunc(slices.Clone(g.lines), func(l Line) bool { return l.TypedIn != stage })
}

// Draft returns the half-typed line that was left behind, "" for none.
func (g *Page) Draft() string { return g.draft }

// Revealed reports whether the worked solution was shown.
func (g *Page) Revealed() bool { return g.revealed }

// Solved reports whether every stage is done, disputed lines included.
func (g *Page) Solved() bool {
	_, _, open := g.InHand()
	return !open
}

// Over reports whether nothing is left to do: the page is solved, or the solution
// was shown.
func (g *Page) Over() bool { return g.revealed || g.Solved() }

// SaidLeft tells whoever goes on to another problem in the middle of this one that what was
// written is saved; "" where nothing was written or nothing is left to do.
func (g *Page) SaidLeft() string {
	if g.Over() || len(g.lines) == 0 {
		return ""
	}
	return fmt.Sprintf(saidLeft, g.Problem.Title)
}

// Hints counts the hints that were asked for, and how many of them showed a step.
func (g *Page) Hints() (asked, shown int) {
	for _, l := range g.lines {
		if l.Kind == Hinted {
			asked++
			if l.ShowsStep() {
				shown++
			}
		}
	}
	return asked, shown
}

// before lists what the student has said so far that stands.
func (g *Page) before() []checker.Answer {
	var said []checker.Answer
	for _, l := range g.lines {
		said = append(said, l.said...)
	}
	return said
}

func readLevel(detail string) int {
	level, _ := strconv.Atoi(detail)
	return min(max(level, 1), lastLevel)
}
