package checker

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/standstill/checker/derivation"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
)

// setting is what a sentence speaks of: the stage with its body and axis, the
// force that the evidence names or the forces among which it leaves the choice,
// and in the stage Solve the letter whose value is stated.
type setting struct {
	ref      *Reference
	solved   *solved.System
	stage    Stage
	body     *statics.Body // nil where the line is about all of them
	axis     statics.Axis
	force    *statics.Force
	among    []string
	stranger string // a force that the problem does not have
	unknown  string
	open     []string // letters of the line that have no value yet
	valued   bool
	what     string // what a wrong value is
	typed    measured
}

// page is the paper on which the trees of its sentences are written.
func (s *setting) page() derivation.Page { return derivation.On(s.solved) }

// place finds the body and axis that an answer is about.
func (r *Reference) setting(stage Stage, item string) *setting {
	s := &setting{ref: r, solved: r.solved, stage: stage}
	name, _, _ := strings.Cut(item, ".")
	if b, ok := r.solved.Body(name); ok {
		s.body = b
	} else if len(r.solved.Bodies) == 1 {
		s.body = &r.solved.Bodies[0]
	}
	switch stage {
	case Components:
		if c, ok := r.solved.Component(item); ok {
			s.body, s.axis, s.force = &r.solved.Bodies[c.Body], c.Axis, c.Force
		}
	case YSum:
		s.axis = statics.Y
	case Solve:
		s.unknown = item
	}
	return s
}

// about takes in the force that the evidence names.
func (s *setting) about(name string) {
	if f := s.find(name); f != nil {
		s.force = f
	}
}

func (s *setting) find(name string) *statics.Force {
	if s.body != nil {
		if f, ok := s.body.Force(name); ok {
			return f
		}
	}
	f, _ := s.solved.Force(name)
	return f
}

func (m *marking) setting(f mistake.Finding) *setting {
	s := m.ref.setting(m.stage, m.item)
	foreign := m.stage == Diagram && s.body != nil && f.About != "" && !hasForce(s.body, f.About)
	if !foreign {
		s.about(f.About)
	}
	for _, name := range f.All {
		if s.find(name) == nil || foreign {
			s.stranger = strings.Map(dropBraces, shorten(name))
			continue
		}
		s.among = append(s.among, name)
	}
	s.what = f.What
	s.typed = m.measures()
	if m.stage == Solve {
		s.unknown, s.valued = m.valued(f)
	}
	for _, side := range m.line.Sides {
		for _, name := range side.Names() {
			if name != m.item && m.solved.Has(name) && m.solved.Open(expr.Letter(name)) && !slices.Contains(s.open, name) {
				s.open = append(s.open, name)
			}
		}
	}
	return s
}

// valued returns the letter whose value the line states, if it does.
func (m *marking) valued(f mistake.Finding) (letter string, ok bool) {
	if len(m.line.Sides) == 1 {
		return m.item, expr.IsQuantity(m.line.Sides[0]) || f.Code == NoEquation || f.Code == StillUnknown
	}
	for i := 1; i < len(m.line.Sides); i++ {
		if name, _ := m.statement(m.line.Sides[i-1], m.line.Sides[i]); name != "" && (f.About == "" || f.About == name) {
			return name, true
		}
	}
	return m.item, false
}

// dropBraces keeps typed braces out of sentences, where they mean something.
func dropBraces(r rune) rune {
	if r == '{' || r == '}' {
		return -1
	}
	return r
}

// fill puts the problem's words into a sentence. A phrase may hold braces itself.
func (s *setting) fill(text string) string {
	return strings.TrimSpace(braces.ReplaceAllStringFunc(text, func(marked string) string {
		name, otherwise, _ := strings.Cut(marked[1:len(marked)-1], "|")
		first := []rune(name)
		capital := unicode.IsUpper(first[0])
		first[0] = unicode.ToLower(first[0])
		phrase := phrases[string(first)]
		if phrase == nil {
			return marked
		}
		words := phrase(s)
		if braces.MatchString(words) {
			words = s.fill(words)
		}
		if words == "" {
			words = otherwise
		}
		// A letter keeps its case: w and W may be two forces.
		if capital && words != "" && words[0] < utf8.RuneSelf && len([]rune(words)) > 3 {
			runes := []rune(words)
			runes[0] = unicode.ToUpper(runes[0])
			words = string(runes)
		}
		return words
	}))
}

var braces = regexp.MustCompile(`\{[^{}]*\}`)

// phrases gives the words for what stands in braces; an empty one means that the
// problem or the evidence has no such thing.
var phrases = map[string]func(s *setting) string{
	"force":     func(s *setting) string { return s.nameOf(s.force) },
	"the force": func(s *setting) string { return wordBefore("the force", s.nameOf(s.force)) },
	"forces":    func(s *setting) string { return listed(s.among) },
	"stranger":  func(s *setting) string { return expr.Set(s.stranger) },
	"open":      func(s *setting) string { return listed(s.open) },
	"unknown":   func(s *setting) string { return expr.Set(s.unknown) },
	"component": (*setting).part,
	"what":      func(s *setting) string { return s.what },
	"whichway":  (*setting).whichWay,
	"unitcheck": (*setting).unitCheck,
	"sum":       (*setting).sum,
	"in":        (*setting).in,
	"line":      (*setting).line,
	"along":     (*setting).along,
	"axis":      func(s *setting) string { return "the " + s.axis.String() + " axis" },
	"body":      (*setting).bodyName,
	"angle":     (*setting).angle,
	"points":    (*setting).points,
	"measured":  (*setting).measured,
	"beside":    (*setting).beside,
	"function":  (*setting).function,
	"lie":       (*setting).lie,
	"look":      (*setting).look,
	"names":     (*setting).names,
	"kind":      (*setting).kind,
	"kinds":     (*setting).kinds,
	"square":    (*setting).square,
	"start":     (*setting).start,
	"unit":      (*setting).askedIn,
	"symbol":    (*setting).symbol,
	"gravity":   (*setting).gravity,
	"letters":   func(s *setting) string { return s.ref.letterList() },
	"for":       (*setting).forBody,
	"step":      (*setting).component,
	"equation":  (*setting).equation,
	"numbers":   (*setting).numbers,
	"diagram":   (*setting).diagram,
	"positive":  func(s *setting) string { return s.way(s.axis, s.counted()) },
	"negative":  func(s *setting) string { return s.way(s.axis, -s.counted()) },
}

func wordBefore(word, name string) string {
	if name == "" {
		return ""
	}
	return word + " " + name
}

func (s *setting) nameOf(f *statics.Force) string {
	if f == nil {
		return ""
	}
	return expr.Set(f.Name)
}

func (s *setting) part() string {
	if s.force == nil {
		return "the " + s.axis.String() + " component"
	}
	return "the " + s.axis.String() + " component of " + s.nameOf(s.force)
}

func (s *setting) sum() string {
	switch s.stage {
	case XSum, YSum:
		return "the equation ΣF" + s.axis.String() + " = 0" + s.forBody()
	case Components:
		return s.part()
	}
	return "a line that follows from the equations"
}

// forBody names the body where there are several.
func (s *setting) forBody() string {
	if len(s.solved.Bodies) < 2 || s.body == nil {
		return ""
	}
	return " for " + s.bodyName()
}

func (s *setting) in() string {
	switch s.stage {
	case XSum, YSum, Components:
		return "in " + s.sum()
	}
	return "in this line"
}

func (s *setting) line() string {
	if s.stage == XSum || s.stage == YSum {
		return s.sum()
	}
	return "this line"
}

// along says how an axis runs: on a slope, along it or at right angles to it.
func (s *setting) along() string {
	switch {
	case s.stage == Solve || s.stage == Diagram:
		return ""
	case !s.tilted():
		return "along " + s.axis.String()
	case s.axis == statics.X:
		return "along the slope"
	}
	return "at right angles to the slope"
}

func (s *setting) tilted() bool {
	return s.body != nil && s.solved.IsTilted(s.body)
}

// bodyName is the body's letter, or its word with an article.
func (s *setting) bodyName() string {
	switch {
	case s.body == nil || len(s.solved.Bodies) < 2:
		return "the body"
	case len(s.body.Name) > 1 && s.body.Name == strings.ToLower(s.body.Name):
		return "the " + s.body.Name
	}
	return s.body.Name
}

// angle is the letter of the force's angle, if that is a letter.
func (s *setting) angle() string {
	if s.force == nil || !s.force.Slanted() {
		return ""
	}
	if a := s.force.Factor(s.axis).Angle; a != nil && a.Op == expr.Name {
		return expr.Set(a.Name)
	}
	return ""
}

// counted is -1 where the problem counts x positive to the left.
func (s *setting) counted() int {
	if s.axis == statics.X && s.body != nil && s.body.XLeft {
		return -1
	}
	return 1
}

// way names the side of an axis, as in "points to the left".
func (s *setting) way(axis statics.Axis, sign int) string {
	if s.tilted() {
		rises := math.Sin(s.solved.Tilt(s.body))*math.Cos(s.solved.Tilt(s.body)) > 0
		return [...][2]string{{"up the slope", "down the slope"}, {"out of the slope", "into the slope"}}[axis][index(sign < 0 != (axis == statics.X && !rises))]
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
func (s *setting) points() string {
	if s.force == nil || s.body == nil {
		return ""
	}
	if s.force.Direction != nil && s.solved.Open(s.force.Direction) {
		return ""
	}
	if room := s.upright(s.force); room != "" {
		return room
	}
	x, y := s.solved.UnitVector(s.force)
	var ways []string
	for _, axis := range []statics.Axis{statics.Y, statics.X} {
		if sign := solved.SignOf([...]float64{x, y}[axis]); sign != 0 {
			ways = append(ways, s.way(axis, sign))
		}
	}
	if s.tilted() {
		slices.Reverse(ways)
	}
	return strings.Join(ways, " and ")
}

// upright says that a force points straight up or down in the room.
func (s *setting) upright(f *statics.Force) string {
	x, y := s.solved.Room(s.body, f)
	switch {
	case solved.SignOf(x) != 0:
		return ""
	case y > 0:
		return "straight up"
	}
	return "straight down"
}

// measured names the line from which the force's angle is measured.
func (s *setting) measured() string {
	switch {
	case s.force == nil || !s.force.Slanted():
		return ""
	case s.force.Direction != nil:
		return "the positive x axis, counter-clockwise"
	case s.tilted() && s.force.From == statics.X:
		return "the slope"
	case s.tilted():
		return "the line at right angles to the slope"
	case s.force.From == statics.X:
		return "the horizontal"
	}
	return "the vertical"
}

// slant says at what angle the force lies.
func (s *setting) slant() string {
	if s.force == nil || !s.force.Slanted() {
		return ""
	}
	angle := s.force.Factor(s.axis).Angle
	if s.page().IsLengthAngle(angle) {
		angle = s.page().AngleNumber(angle)
	}
	return "at " + s.page().Write(angle) + " from " + s.measured()
}

// measured is what the terms of a line measure, as far as that is known.
type measured struct {
	dim   quantity.Dimension
	known bool
	mixed bool // not all the same
	mass  bool // one of those that are not is a mass
}

// measures finds what the terms of the line measure. Plain numbers do not count: they are in the
// unit that is asked.
func (m *marking) measures() measured {
	var all measured
	for _, side := range m.line.Sides {
		if c, ok := m.solved.Component(side.Name); ok && m.stage == Components && c.Name == m.item {
			continue
		}
		for _, t := range expr.Addends(side, 1, nil) {
			d, _, known := m.dimensionOf(t.Node)
			if !known || expr.IsZero(t.Node) || len(t.Node.Names()) == 0 {
				continue
			}
			all.mixed = all.mixed || all.known && d != all.dim
			all.mass = all.mass || d == quantity.Mass
			all.dim, all.known = d, true
		}
	}
	return all
}
