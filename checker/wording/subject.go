package wording

import (
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker/derivation"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
)

// Subject is what a sentence speaks of: the stage with its body and axis, the
// force that the evidence names or the forces among which it leaves the choice,
// and in the stage Solve the letter whose value is stated.
type Subject struct {
	solved   *solved.System
	Stage    solved.Stage
	Body     *statics.Body // nil where the line is about all of them
	axis     statics.Axis
	Force    *statics.Force
	Among    []string
	Stranger string // a force that the problem does not have
	NoForce  bool   // the stranger is a letter of the problem, for something else than a force
	Instead  bool   // in a force diagram, a component is in the place of its force
	Unknown  string
	Open     []string // letters of the line that have no value yet
	Valued   bool
	Minus    bool      // the value is typed with a minus sign
	What     string    // what a wrong value is
	Typed    Measured  // what the terms of the line measure
	Letters  []Written // the letters of components in a line of a sum
	Signed   bool      // components have to be written with their signs
	used     bool      // the sum is one that the line uses, not the one that is asked for
}

// Written is a component's letter as earlier lines have it: as a size, or signed.
type Written struct {
	*solved.Component
	IsSigned bool
}

// Measured is what the terms of a line measure, as far as that is known.
type Measured struct {
	Dim   quantity.Dimension
	Known bool
	Mixed bool // not all the same
	Mass  bool // one of those that are not is a mass
}

// page is the paper on which the trees of its sentences are written.
func (s *Subject) page() derivation.Page { return derivation.On(s.solved) }

// About returns the subject of sentences about an item: its body, its axis, its force.
func About(r *solved.System, stage solved.Stage, item string) *Subject {
	s := &Subject{solved: r, Stage: stage}
	name, _, _ := strings.Cut(item, ".")
	if b, ok := r.Body(name); ok {
		s.Body = b
	} else if len(r.Bodies) == 1 {
		s.Body = &r.Bodies[0]
	}
	switch stage {
	case solved.Components:
		if c, ok := r.Component(item); ok {
			s.Body, s.axis, s.Force = &r.Bodies[c.Body], c.Axis, c.Force
		}
	case solved.YSum:
		s.axis = statics.Y
	case solved.Solve:
		s.Unknown = item
	}
	return s
}

// Using turns to another sum, which a line about this one uses and in which the mistake is.
func (s *Subject) Using(at solved.Place) {
	s.Body, s.axis, s.used = &s.solved.Bodies[at.Body], at.Axis, true
}

// Axis is the axis that the item is about, x where it is about none.
func (s *Subject) Axis() statics.Axis { return s.axis }

// Name takes in the force that the evidence names.
func (s *Subject) Name(name string) {
	if f := s.Find(name); f != nil {
		s.Force = f
	}
}

// Find finds a force by its name, first on the body.
func (s *Subject) Find(name string) *statics.Force {
	if s.Body != nil {
		if f, ok := s.Body.Force(name); ok {
			return f
		}
	}
	f, _ := s.solved.Force(name)
	return f
}

var isWords = pattern.Of(`^[a-z]{4,}( [a-z]+)*$`)

// strangerName is the letter of a force that the problem does not have, or its word with an article.
func (s *Subject) strangerName() string {
	if isWords().MatchString(s.Stranger) && !strings.HasPrefix(s.Stranger, "the ") {
		return "the " + s.Stranger
	}
	return expr.Set(s.Stranger)
}

func (s *Subject) nameOf(f *statics.Force) string {
	if f == nil {
		return ""
	}
	return expr.Set(f.Name)
}

func (s *Subject) part() string {
	if s.Force == nil {
		return "the " + s.axis.String() + " component"
	}
	return "the " + s.axis.String() + " component of " + s.nameOf(s.Force)
}

func (s *Subject) sum() string {
	switch {
	case s.used || s.Stage == solved.XSum || s.Stage == solved.YSum:
		return "the " + s.equationName()
	case s.Stage == solved.Components:
		return s.part()
	}
	return "a line that follows from the equations"
}

func (s *Subject) equationName() string { return "equation " + s.sumName() }

func (s *Subject) sumName() string { return "ΣF" + s.axis.String() + " = 0" + s.forBody() }

// forBody names the body where there are several.
func (s *Subject) forBody() string {
	if len(s.solved.Bodies) < 2 || s.Body == nil {
		return ""
	}
	return " for " + s.bodyName()
}

func (s *Subject) in() string {
	switch {
	case s.used:
		return "in " + s.sum() + ", which you used here"
	case s.Stage == solved.XSum || s.Stage == solved.YSum:
		return "in your " + s.equationName()
	case s.Stage == solved.Components:
		return "in " + s.part()
	}
	return "in this line"
}

func (s *Subject) line() string {
	switch {
	case s.used:
		return s.sum() + ", which you used here,"
	case s.Stage == solved.XSum || s.Stage == solved.YSum:
		return "your " + s.equationName()
	}
	return "this line"
}

// along says how an axis runs: on a slope, along it or at right angles to it.
func (s *Subject) along() string {
	switch {
	case !s.used && (s.Stage == solved.Solve || s.Stage == solved.Diagram):
		return ""
	case !s.tilted():
		return "along the " + s.axis.String() + " axis"
	case s.axis == statics.X:
		return "along the slope"
	}
	return "at right angles to the slope"
}

func (s *Subject) tilted() bool {
	return s.Body != nil && s.solved.IsTilted(s.Body)
}

// bodyName is the body's letter, or its word with an article.
func (s *Subject) bodyName() string {
	if s.Body == nil || len(s.solved.Bodies) < 2 {
		return "the body"
	}
	return statics.Called(s.Body.Name)
}

// angle is the letter of the force's angle, if that is a letter.
func (s *Subject) angle() string {
	if s.Force == nil || !s.Force.Slanted() {
		return ""
	}
	if a := s.Force.Factor(s.axis).Angle; a != nil && a.Op == expr.Name {
		return expr.Set(a.Name)
	}
	return ""
}

// counted is -1 where the problem counts x positive to the left.
func (s *Subject) counted() int {
	if s.axis == statics.X && s.Body != nil && s.Body.XLeft {
		return -1
	}
	return 1
}

// way names the side of an axis, as in "points to the left".
func (s *Subject) way(axis statics.Axis, sign int) string {
	if s.tilted() {
		// On a slope that falls to the right, positive x points down it.
		rises := math.Sin(s.solved.Tilt(s.Body))*math.Cos(s.solved.Tilt(s.Body)) > 0
		return [...][2]string{{"up the slope", "down the slope"}, {"away from the slope", "into the slope"}}[axis][index(sign < 0 != (axis == statics.X && !rises))]
	}
	if s.solved.Words.Above && axis == statics.Y {
		return [...]string{"away from you", "towards you"}[index(sign < 0)]
	}
	return [...][2]string{{"to the right", "to the left"}, {"up", "down"}}[axis][index(sign < 0)]
}

func index(second bool) int {
	if second {
		return 1
	}
	return 0
}

// points says to which sides the force points, on its body's axes; nothing where
// its direction is an unknown.
func (s *Subject) points() string {
	if s.Force == nil || s.Body == nil {
		return ""
	}
	if s.Force.Direction != nil && s.solved.Open(s.Force.Direction) {
		return ""
	}
	if room := s.upright(s.Force); room != "" {
		return room
	}
	x, y := s.solved.UnitVector(s.Force)
	var ways []string
	for _, axis := range []statics.Axis{statics.Y, statics.X} {
		if sign := solved.SignOf([...]float64{x, y}[axis]); sign != 0 {
			ways = append(ways, s.way(axis, sign))
		}
	}
	if s.tilted() {
		// In a room one says “up and to the left”; on a slope the
		// way along it comes first, and “the slope” only once.
		slices.Reverse(ways)
		for i := range ways[min(1, len(ways)):] {
			ways[i+1] = strings.Replace(ways[i+1], "the slope", "it", 1)
		}
	}
	return strings.Join(ways, " and ")
}

// upright says that a force points straight up or down in the room.
func (s *Subject) upright(f *statics.Force) string {
	x, y := s.solved.Room(s.Body, f)
	switch {
	case solved.SignOf(x) != 0:
		return ""
	case s.solved.Words.Above:
		return "straight " + s.way(statics.Y, solved.SignOf(y))
	case y > 0:
		return "straight up"
	}
	return "straight down"
}

// measured says from which line the force's angle is measured.
func (s *Subject) measured() string {
	switch {
	case s.Force == nil || !s.Force.Slanted():
		return ""
	case s.Force.Direction != nil:
		return "anticlockwise from the positive x axis"
	}
	return "from " + s.angleLine()
}

// angleLine names the line from which the angle of a force is measured that has no direction of
// its own.
func (s *Subject) angleLine() string {
	switch {
	// Seen from above, no line is horizontal or vertical in the drawing, so the axis is named.
	case s.solved.Words.Above:
		return "the " + s.Force.From.String() + " axis"
	case s.tilted() && s.Force.From == statics.X:
		return "the slope"
	case s.tilted():
		return "the y axis"
	case s.Force.From == statics.X:
		return "the horizontal"
	}
	return "the vertical"
}

// slant says at what angle the force lies.
func (s *Subject) slant() string {
	if s.Force == nil || !s.Force.Slanted() {
		return ""
	}
	angle := s.Force.Factor(s.axis).Angle
	if s.page().IsLengthAngle(angle) {
		angle = s.page().AngleNumber(angle)
	}
	an := "at an angle of "
	if angle.Op == expr.Name {
		an = "at an angle "
	}
	if s.Force.Direction != nil {
		return an + s.page().Write(angle) + " " + s.measured()
	}
	return an + s.page().Write(angle) + " to " + s.angleLine()
}
