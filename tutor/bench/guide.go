package bench

import (
	"errors"
	"strings"
	"time"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// Guide leads students through a run, one question after another. Tutor, Say and Ask
// are needed. Ask waits for a line; its error ends the run, with everything typed so
// far kept.
//
// Practise leads a student through the stages of a problem with the numbers of a run;
// where it is nil, nobody is asked to predict by hand.
// Save writes the files; nil where none can be written.
type Guide struct {
	Tutor    *tutor.Tutor
	Say      func(line string)
	Ask      func() (string, error)
	Practise func(s record.Student, p *problems.Problem, run string) error
	Save     Saver
	Style    Style
	Begun    *Form          // what was measured already of the problem that Run is given; may be nil
	Zone     *time.Location // of the times that are shown; local if nil

	table Table
}

func (g *Guide) zone() *time.Location {
	if g.Zone == nil {
		return time.Local
	}
	return g.Zone
}

// errLeave ends a run: the students leave.
var errLeave = errors.New("leave")

// Run leads through one run, or as many as the students like. p is the model, nil to have
// them choose one. The error is that of the record or of Ask, nil when the students
// leave.
func (g *Guide) Run(p *problems.Problem) error {
	g.table.Tutor = g.Tutor
	err := g.lead(p)
	kept := g.keep()
	if errors.Is(err, errLeave) {
		return kept
	}
	return err
}

func (g *Guide) lead(p *problems.Problem) (err error) {
	if p == nil {
		if p, err = g.choose(); err != nil {
			return err
		}
	}
	if err = g.table.Begin(p); err != nil {
		return err
	}
	if g.Begun != nil {
		g.table.Form = g.Begun
	}
	g.opening()
	for _, part := range []func() error{g.warnFirst, g.seat, g.reopen, g.measure, g.extras, g.byHand, g.read} {
		if err := part(); err != nil {
			return err
		}
	}
	return g.talk()
}

// say sets lines to the width.
func (g *Guide) say(lines ...string) {
	for _, line := range lines {
		if g.Style.Plain {
			g.Say(line)
			continue
		}
		for _, wrapped := range wrap(line, g.Style.width(), "") {
			g.Say(wrapped)
		}
	}
}

func (g *Guide) blocks(blocks []Block) {
	for _, line := range g.Style.Set(blocks) {
		g.Say(line)
	}
}

// ask waits for a line and leaves where that is what it says.
func (g *Guide) ask() (string, error) {
	line, err := g.Ask()
	if err != nil {
		return "", err
	}
	line = strings.TrimSpace(line)
	if is(line, wordLeave) {
		return "", errLeave
	}
	return line, nil
}

func (g *Guide) opening() {
	var measured, predicted []string
	for i := range g.table.Form.Fields {
		switch e := &g.table.Form.Fields[i]; {
		case e.Kind == Measure:
			measured = append(measured, e.Name())
		case e.Kind == Reading && g.table.Form.asked(e.Letter):
			predicted = append(predicted, e.Name())
		}
	}
	g.say(saidApparatus(g.table.Form.Heading()), g.table.Form.Statement(), saidLetters(measured, predicted))
}

// warnFirst shows the cautions before anything is measured.
func (g *Guide) warnFirst() error {
	g.blocks([]Block{{Title: "Caution", Lines: Cautions()}})
	g.say(saidReadCautions)
	_, err := g.ask()
	return err
}

// seat asks who is at the table.
func (g *Guide) seat() error {
	g.say(saidWho)
	for {
		line, err := g.ask()
		if err != nil {
			return err
		}
		g.table.Students = nil
		if why := g.table.Enrol(line); why != "" {
			g.say(why)
			continue
		}
		g.say(g.table.Seated())
		return nil
	}
}

func names(students []record.Student) []string {
	var names []string
	for _, s := range students {
		names = append(names, s.Name)
	}
	return names
}

// reopen offers earlier runs of the same apparatus.
func (g *Guide) reopen() error {
	runs, who, err := g.runs(g.table.Form.problem.ID)
	if err != nil || len(runs) == 0 {
		return err
	}
	g.say(saidEarlier)
	for _, run := range runs {
		g.say(run.Said(who, g.zone()))
	}
	g.say(saidReopen)
	for {
		line, err := g.ask()
		if err != nil || line == "" {
			return err
		}
		if g.open(line) {
			return nil
		}
	}
}

func (g *Guide) runs(problem string) ([]Run, map[string]string, error) {
	runs, err := Runs(g.Tutor.Record, problem)
	if err != nil {
		return nil, nil, err
	}
	who, err := Names(g.Tutor.Record)
	return runs, who, err
}

// open puts a run of that number in hand; false where it cannot be.
func (g *Guide) open(number string) bool {
	run, ok := g.numbered(number)
	if !ok {
		return false
	}
	said, ok := g.table.Open(run)
	g.say(said)
	return ok
}

// numbered finds the run of a number.
func (g *Guide) numbered(number string) (Run, bool) {
	run, why := g.table.Numbered(number)
	if why != "" {
		g.say(why)
	}
	return run, why == ""
}

func (g *Guide) keep() error { return g.table.Keep() }
