package tutor

import (
	"fmt"
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/tutor/record"
)

// Help gets less as ideas get steady: a worked line of each kind in the first problem of
// all, Components passed over once they are steady, and the whole page in any order
// from the hardest level on.

// Ask says what is asked for now, with what this student may do besides.
func (l *Lesson) Ask() (a Ask, ok bool) {
	if a, ok = l.Page.Ask(); !ok {
		return a, ok
	}
	if l.isFirst() {
		a.Sample = l.workedLine(a.Stage)
	}
	// Said at the beginning of the stage only; later it would interrupt.
	if l.CanPassOver() && len(a.Open) == len(l.asked(checker.Components)) {
		a.Question += " " + saidMayPass
	}
	return a, true
}

// isFirst reports whether this is the student's first problem, and not done.
func (l *Lesson) isFirst() bool {
	return len(l.desk.history.Attempts) == 1 && !l.Over()
}

// workedLine is a line of the kind that a stage asks for, worked for another problem.
func (l *Lesson) workedLine(stage checker.Stage) string {
	f := l.stranger("")
	p := l.stranger(f)
	d := l.stranger(f + " " + p)
	fill := strings.NewReplacer("{F}", f, "{P}", p, "{D}", d)
	return fill.Replace(workedLines[stage])
}

// workedLines are about a ring that a rope F holds up to the right at 40° above the
// horizontal, with a rope P to the left and a load D of 10 N.
var workedLines = map[checker.Stage]string{
	checker.Diagram:    "{F} up right; {P} left; {D} down (a ring with ropes {F} and {P}, and a load {D})",
	checker.Components: "{F}x = {F} cos 40°; {F}y = {F} sin 40° ({F} acts at 40° above the horizontal)",
	checker.XSum:       "{F} cos 40° − {P} = 0 ({F} up right at 40°, {P} left, {D} down)",
	checker.YSum:       "{F} sin 40° − {D} = 0 ({F} up right at 40°, {P} left, {D} down)",
	checker.Solve:      "{F} = {D}/sin 40° = 15.6 N (from {F} sin 40° − {D} = 0, {D} = 10 N)",
}

// componentIdeas are those that are practised in the stage Components.
var componentIdeas = []Idea{FromHorizontal, FromVertical, AlongAxis, Signs}

// CanPassOver reports whether the stage Components is in hand and may be passed over:
// the ideas that it exercises in this problem are steady.
func (l *Lesson) CanPassOver() bool {
	if stage, _, ok := l.InHand(); !ok || stage != checker.Components {
		return false
	}
	// Found out once, because it looks through all that the student has done.
	if l.mayPass == nil {
		may := l.isSteadyInComponents()
		l.mayPass = &may
	}
	return *l.mayPass
}

func (l *Lesson) isSteadyInComponents() bool {
	exercised := ExercisedBy(l.Problem.System)
	for _, held := range l.desk.Past().Ideas() {
		if slices.Contains(componentIdeas, held.Idea) && slices.Contains(exercised, held.Idea) && held.State != Steady {
			return false
		}
	}
	return true
}

// PassOver passes Components over. The sentence says why not, "" where it was done; the
// error is that of the record.
func (l *Lesson) PassOver() (why string, err error) {
	if stage, _, ok := l.InHand(); !ok || stage != checker.Components {
		return saidNoComponents, nil
	}
	if !l.CanPassOver() {
		return saidNotSteady, nil
	}
	_, err = l.note(record.Entry{Kind: record.PassedOn, Stage: string(checker.Components)})
	return "", err
}

// anyOrder is the level from which a student may write the page in any order.
const anyOrder = 3

// placeFor finds the stage and item that a text is for. From the hardest level on it is
// the one that it is about: what is in hand if it is right there, else where it is right,
// else the component that it names.
func (l *Lesson) placeFor(text string, stage checker.Stage, item string) (checker.Stage, string) {
	if l.Problem.Level < anyOrder || l.judged(text, stage, item).Verdict == checker.Right {
		return stage, item
	}
	left, _, found := strings.Cut(text, "=")
	stages := checker.Stages
	if _, states := l.Named(checker.Solve, left); states && found {
		stages = append([]checker.Stage{checker.Solve}, stages...) // T = 20 N may hold in a sum, too
	}
	for _, other := range stages {
		open := l.open(other)
		if other == stage || len(open) == 0 || other == checker.Components && !strings.Contains(text, "=") {
			continue
		}
		if line := l.judged(text, other, open[0]); line.Verdict == checker.Right && len(line.Done) > 0 {
			return other, open[0]
		}
	}
	if stage == checker.Components {
		return stage, item // a component that is named is found there
	}
	if name, ok := l.Named(checker.Components, left); found && ok && slices.Contains(l.open(checker.Components), name) {
		return checker.Components, name
	}
	return stage, item
}

// judged is what a text would come to; nothing is kept of it.
func (l *Lesson) judged(text string, stage checker.Stage, item string) Line {
	return l.judge(record.Entry{Kind: record.Answer, Stage: string(stage), Item: item, Text: text})
}

// named is a letter that is asked for with what it is: "T₁ (left rope)".
func (g *Page) named(name, set string) string {
	what := g.Meaning(name)
	if g.Problem.System.Words.Meaning[name] != "" {
		return fmt.Sprintf("%s (%s)", set, what)
	}
	for i := range g.Ref.Bodies {
		b := &g.Ref.Bodies[i]
		if f, ok := b.Force(name); ok && f.Size == nil {
			what = g.which(b, f)
			break
		}
	}
	if what == "" || strings.EqualFold(what, name) {
		return set
	}
	return fmt.Sprintf("%s (%s)", set, what)
}
