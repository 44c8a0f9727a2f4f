package tutor

import (
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
