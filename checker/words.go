package checker

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
)

// The first message about a line says where to look: at which force, which part
// of it, which sum. It never says what to write instead, because a student who
// is told "sine for cosine" turns it over without a thought.
//
// Words in braces are filled in from the problem (see phrases in this file);
// {force|each force} has, behind the bar, what is said where the evidence names
// none.

// said holds the sentences for one kind of mistake, by what was typed: a
// component; a term of a sum or of a line of working (about one force, or about
// several or none); the value of an unknown; a force diagram. An empty one is
// taken from the row of Unexplained.
type said struct {
	code                                Code
	component, line, lines, value, list string
}

var saidOf = []said{
	{code: Unexplained,
		component: "This is not {part}; compare it with {force} in the drawing.",
		line:      "This is not {sum}; compare it with the drawing, term by term.",
		lines:     "This is not {sum}; compare it with the drawing, term by term.",
		value:     "This value of {unknown} does not come out of the sums.",
		list:      "This list does not fit the forces on {body}."},
	{code: DoesNotFollow,
		lines: "This line does not follow from the sums and the given values.",
		value: "This value of {unknown} does not follow from the sums."},
	{code: Sign,
		component: "{Part} has the right size; see in the drawing to which side it points.",
		line:      "{In}, the term with {force} does not fit the way {force} points in the drawing.",
		lines:     "{In}, the signs do not all fit the way the forces point; look at {forces|each term}.",
		value:     "This value of {unknown} comes out if a force is counted to a side to which it does not point."},
	{code: SineCosine,
		component: "{Part} is one side of the triangle of {force}; look which side it is, seen from {angle|its angle}.",
		line:      "{In}, look in the triangle of {force} which side the term with {force} stands for.",
		lines:     "{In}, look in the triangles which sides the terms with {forces|slanted forces} stand for.",
		value:     "This value of {unknown} comes out if two sides of a triangle change places on the way."},
	{code: Tangent,
		component: "Look at the function in {part}, and at which two sides of the triangle it compares.",
		line:      "{In}, look at the function beside {force}, and at which two sides of the triangle it compares.",
		lines:     "{In}, look at the functions, and at which two sides of a triangle each of them compares.",
		value:     "This value of {unknown} comes out if a function compares the wrong two sides of a triangle."},
	{code: NotResolved,
		component: "Here all of {force} is counted, and {force} lies at a slant to {axis}.",
		line:      "{In}, all of {force} is counted, and {force} lies at a slant.",
		lines:     "{In}, all of a force that lies at a slant is counted; look at {forces|each term}.",
		value:     "This value of {unknown} comes out if a force that lies at a slant is counted whole."},
	{code: MissingForce,
		component: "You have nothing for {part}; look how {force} lies to {axis}.",
		line:      "{Line} does not hold every force that acts {along|here}; count them in the drawing.",
		lines:     "{Line} does not hold every force that acts {along|here}; count them in the drawing.",
		value:     "This value of {unknown} comes out if one of the forces is left out on the way.",
		list:      "Not every force on {body} is in your list yet."},
	{code: ExtraForce,
		component: "{Part} needs another look: see in the drawing how {force} lies to {axis}.",
		line:      "{In}, {force} stands where it has no part, or more often than it acts.",
		lines:     "{In}, a force stands where it has no part, or more often than it acts.",
		value:     "This value of {unknown} comes out if a force is counted where it has no part, or twice.",
		list:      "{The force} stands in your list more than once."},
	{code: WrongAxis,
		component: "This is how {force} acts along the other axis; here {part} is asked.",
		line:      "{In}, the term with {force} belongs to the other axis.",
		lines:     "What stands here belongs to the other axis; {sum} is asked.",
		value:     "This value of {unknown} comes out if a part along the other axis gets into a sum."},
	{code: OtherAngle,
		component: "The angle in {part} is not the one that is drawn at {force}.",
		line:      "{In}, the angle beside {force} is not the one that is drawn at {force}.",
		lines:     "{In}, an angle stands beside a force to which it does not belong; look at {forces|each term}.",
		value:     "This value of {unknown} comes out if the angle of another force is used on the way."},
	{code: NormalEqualsWeight,
		component: "Here the push of the surface is taken to be the whole weight.",
		line:      "{In}, the push of the surface is taken to be the whole weight.",
		lines:     "{In}, the push of the surface is taken to be the whole weight.",
		value:     "This value of {unknown} comes out if the push of the surface is taken to be the whole weight."},
	{code: MassForWeight,
		component: "Look at the unit of what stands here for {part}.",
		line:      "{In}, look at the unit of what stands there for {force}.",
		lines:     "{In}, the terms do not all have the same unit.",
		value:     "This value of {unknown} comes out if a mass and a weight are taken for the same thing.",
		list:      "A mass stands in your list, and a mass is not a force; which force acts on {body} because of it?"},
	{code: EqualTensions,
		component: "Here {part} is written with the pull of another string.",
		line:      "{In}, the pull of one string stands in the place of another; look at {force}.",
		lines:     "Here {forces|the strings} are taken to pull equally hard, and nothing says that they do.",
		value:     "This value of {unknown} comes out if the strings all pull equally hard, and nothing says that they do."},
	{code: SharedWeight,
		line:  "{In}, the weight is dealt out to the strings before their angles have been asked.",
		lines: "{In}, the weight is dealt out to the strings before their angles have been asked.",
		value: "This value of {unknown} comes out if the weight is dealt out to the strings without asking their angles."},
	{code: WholeFactor,
		component: "Something in {part} is doubled or halved; look at the number that stands there.",
		line:      "{In}, {force} is not counted as often as it acts.",
		lines:     "{In}, something is not counted as often as it acts; look at {forces|each term}.",
		value:     "This value of {unknown} comes out if something on the way is doubled or halved."},
	{code: Inverted,
		component: "Look at what is multiplied and what is divided in {part}.",
		line:      "{In}, look at what is multiplied and what is divided beside {force}.",
		lines:     "{In}, look at what is multiplied and what is divided.",
		value:     "This value of {unknown} comes out if a fraction on the way is upside down."},
	{code: OtherBody,
		component: "What stands here for {part} belongs to another body.",
		line:      "{In}, what stands in the place of {force} belongs to another body.",
		lines:     "{In}, something belongs to another body.",
		value:     "This value of {unknown} comes out if something that belongs to another body is used."},
	{code: OtherUnknown,
		value: "This value belongs to another unknown of the problem, not to {unknown}."},
	{code: Pythagoras,
		value: "This value of {unknown} comes out if sizes are put together as if the forces lay in one line or at a right angle."},
	{code: TwiceCounted,
		component: "Here {force} is counted twice, whole and in part.",
		line:      "{In}, {force} is counted twice: whole, and as one of its own parts.",
		lines:     "{In}, a force is counted twice: whole, and as one of its own parts.",
		list:      "In your list stands a part of {force|a force}; ask whether that is one more force.",
		value:     "This value of {unknown} comes out if a force and one of its own parts are both counted."},
	{code: Radians,
		component: "The number in {part} comes out if the calculator takes angles in another unit.",
		line:      "{In}, the number beside {force} comes out if the calculator takes angles in another unit.",
		lines:     "{In}, a number comes out if the calculator takes angles in another unit.",
		value:     "This value of {unknown} comes out if the calculator takes angles in another unit."},
	{code: OtherG,
		component: "The number in {part} fits another strength of gravity than this problem's.",
		line:      "{In}, the number for {force} fits another strength of gravity than this problem's.",
		lines:     "{In}, a number fits another strength of gravity than this problem's.",
		value:     "This value of {unknown} fits another strength of gravity than this problem's."},
	{code: Slip,
		component: "A number in {part} is close, but further off than rounding explains.",
		line:      "{In}, the number beside {force} is close, but further off than rounding explains.",
		lines:     "{In}, a number is close, but further off than rounding explains.",
		value:     "This value of {unknown} is close, but further off than rounding explains."},
	{code: PowerOfTen,
		component: "The digits in {part} are right, but the number is too large or too small.",
		line:      "{In}, the digits beside {force} are right, but the number is too large or too small.",
		lines:     "{In}, the digits are right, but a number is too large or too small.",
		value:     "The digits of this value of {unknown} are right, but it is too large or too small."},
	{code: WrongSide,
		list: "Look again at the side to which {force|each force} points."},
}

// saidForm holds the sentences for lines that are right but for their form. The
// last field is said where a number's letter is not known.
var saidForm = []said{
	{code: NoUnit, value: "This is the right number for {unknown}, without a unit."},
	{code: WrongUnit,
		component: "The number for {part} is right, but its unit measures something other than a force.",
		line:      "The numbers fit, but the unit behind one of them measures something other than a force.",
		value:     "This is the right number for {unknown}; look at its unit."},
	{code: Coarse,
		component: "This value of {part} is right, but only to one figure; two or three are needed.",
		value:     "This value of {unknown} is right, but only to one figure; two or three are needed."},
	{code: NoEquation,
		line:  "These are the right terms, but the line does not say yet what they add up to.",
		value: "This line does not say yet which letter it is the value of."},
	{code: HoldsAlways,
		component: "This is true of any force, so it says nothing about {force}.",
		line:      "This is true whatever the forces are, so it says nothing about them.",
		list:      "This list is right, but not in a form that counts.",
		value:     "This is true whatever the forces are, so it says nothing about them."},
	{code: StillUnknown,
		component: "This is true, but {open|a letter in it} is not known yet.",
		line:      "This is true, but {open|a letter in it} is not known yet.",
		value:     "This is true, but {open|a letter in it} is not known yet."},
	{code: TrueNotAsked,
		component: "This is true, but it is not {part}; it is kept for the solving.",
		line:      "This is true, but it is not {sum}; it is kept for the solving.",
		value:     "This is true, but it is not what is asked here."},
}

// What is said in cases that no table holds.
const (
	saidUnequal        = "Only lines with = between the sides can be checked."
	saidNoStage        = "There is no such stage."
	saidManyLines      = "This is more than 40 lines at once; check them a few at a time."
	saidTwoAnswers     = "This text gives two different answers to the same question, so neither of them counts yet."
	saidWhichComponent = "Say which component this is, as in T1x = …"
	saidDiagramEmpty   = "Write each force's letter and the side to which it points: up, down, left, right, or two of these; put ; between forces."
	saidStranger       = "Ask what would have to touch or pull {body} to exert {stranger} on it."
	saidSignTwice      = "You wrote {part} with its own minus sign, so its letter already says to which side it points; {in} the side is counted twice."
	saidSignNever      = "You wrote {part} as a size without a sign, so its letter does not say to which side it points; {in} nothing else says it either."
	saidNegative       = "The digits are right, but the size of {unknown} says only how much, not to which side."
	saidBelowBar       = "All that touches the slash from behind is read here as standing below the bar; next time, put brackets round it."
	saidBesideBar      = "Only the first thing behind the slash is read here as standing below the bar; next time, put brackets to show it."
	saidNewton         = "The N behind the number is read as the newton, not as the normal force."
	saidNormal         = "The N behind the number is read as the normal force, not as the newton."
	saidThousands      = "The comma in %s is read as marking thousands."
	saidDecimal        = "The comma in %s is read as a decimal comma."
	saidNoLetter       = "This problem has no letter %s."
	saidLetters        = "The letters here are %s."
	saidNearLetter     = "Perhaps %s is meant."
	saidColumn         = "Column %d: %s"
	saidNoSide         = "“%s” does not say which force points to which side."
)

func saidUnreadable(e *expr.ReadError) string {
	return fmt.Sprintf(saidColumn, e.Pos+1, e.Message)
}

func saidDiagramForm(part string) string {
	return fmt.Sprintf(saidNoSide, shorten(part))
}

// shorten keeps a quoted piece of a student's text to the length of a line.
func shorten(text string) string {
	runes := []rune(strings.TrimSpace(text))
	if len(runes) > 40 {
		return string(runes[:39]) + "…"
	}
	return string(runes)
}

func joinSentences(a, b string) string { return strings.TrimSpace(a + " " + b) }

// saidWrong words the finding: the sentence for its code and for what was typed.
func (m *marking) saidWrong(f finding) string {
	s := m.setting(f)
	switch {
	case f.code == Sign && s.valued && m.minus():
		return s.fill(saidNegative)
	case f.code == Sign:
		if text := m.saidConvention(s); text != "" {
			return text
		}
	case f.code == ExtraForce && s.force == nil && s.stranger != "":
		return s.fill(saidStranger)
	}
	return s.pick(saidOf, f.code, Unexplained)
}

// minus reports whether the value in the line has a minus sign.
func (m *marking) minus() bool {
	return slices.ContainsFunc(m.line.Sides, func(n *expr.Node) bool { return n.Op == expr.Neg && isQuantity(n) })
}

// saidAlmost words what must be mended before a right line counts.
func (m *marking) saidAlmost(code Code, about string) string {
	s := m.setting(finding{code: code, about: about})
	return s.pick(saidForm, code, HoldsAlways)
}

// saidConvention says that a sign is counted twice, or never, because of what the
// student's own component stands for. It is empty where the line has no letter of
// that component or nothing settles it.
func (m *marking) saidConvention(s *setting) string {
	if m.stage != XSum && m.stage != YSum {
		return ""
	}
	named := s.force
	for i := range m.Components {
		c := &m.Components[i]
		concerned := c.Force == named || named == nil && slices.Contains(s.among, c.Force.Name)
		if !concerned || &m.Bodies[c.Body] != s.body || c.Axis != s.axis || !m.types(c.Name) {
			continue
		}
		s.force = c.Force
		switch bound, isSigned := m.convention(c); {
		case bound && isSigned:
			return s.fill(saidSignTwice)
		case bound:
			return s.fill(saidSignNever)
		}
	}
	s.force = named
	return ""
}

// types reports whether a letter stands in the line.
func (m *marking) types(name string) bool {
	return slices.ContainsFunc(m.line.Sides, func(n *expr.Node) bool { return n.Has(name) })
}

// pick takes a code's sentence for what was typed, else that of the fallback.
func (s *setting) pick(table []said, code, fallback Code) string {
	for _, c := range []Code{code, fallback} {
		for _, row := range table {
			if row.code != c {
				continue
			}
			for _, text := range row.sentences(s) {
				if text != "" {
					return s.fill(text)
				}
			}
		}
	}
	return ""
}

// sentences lists a row's sentences that may serve, the best first.
func (row said) sentences(s *setting) []string {
	switch {
	case s.stage == Diagram:
		return []string{row.list}
	case s.valued:
		return []string{row.value}
	case s.force == nil || s.stage == Components && len(s.among) > 1:
		return []string{row.lines, row.line}
	case s.stage == Components:
		return []string{row.component, row.line}
	}
	return []string{row.line, row.lines}
}

// saidReading says how a text with two readings was taken.
func saidReading(reading expr.Reading, i int, report Report) string {
	line := reading.Lines[i]
	switch {
	case len(reading.Lines) < 2:
		return ""
	case line.Slash && line.Paper:
		return saidBelowBar
	case line.Slash:
		return saidBesideBar
	}
	if group := oneComma.FindString(reading.Text); group != "" {
		if hasNumber(line, strings.Replace(group, ",", "", 1)) {
			return fmt.Sprintf(saidThousands, group)
		}
		return fmt.Sprintf(saidDecimal, group)
	}
	if newtonOrNormal.MatchString(reading.Text) {
		return saidOfN(line, report)
	}
	return ""
}

// newtonOrNormal finds an N behind a number.
var newtonOrNormal = regexp.MustCompile(`\d\s*N\b`)

// oneComma finds a number such as 1,200, of which the comma has two readings.
var oneComma = regexp.MustCompile(`\b\d{1,3},\d{3}\b`)

func hasNumber(line expr.Line, text string) bool {
	found := false
	for _, side := range line.Sides {
		side.Walk(func(n *expr.Node) { found = found || n.Op == expr.Number && n.Num.Text == text })
	}
	return found
}

// saidOfN says which N was taken, where the line is not right as it was read. In
// "N = 137 N" nobody means anything but the newton.
func saidOfN(line expr.Line, report Report) string {
	newton, alone := false, false
	for _, side := range line.Sides {
		alone = alone || isQuantity(side)
		side.Walk(func(n *expr.Node) { newton = newton || n.Unit == "N" && !n.Assumed })
	}
	switch {
	case report.Verdict == Right || newton && alone:
		return ""
	case newton:
		return saidNewton
	}
	return saidNormal
}

// saidUnknownName says which letter the problem does not have, offers a near one
// and lists those that there are.
func (m *marking) saidUnknownName(name string) string {
	letter := expr.Set(shorten(name))
	if len([]rune(letter)) > 3 {
		letter = "“" + letter + "”"
	}
	text := fmt.Sprintf(saidNoLetter, letter)
	if near := m.nearLetter(name); near != "" {
		text = joinSentences(text, fmt.Sprintf(saidNearLetter, expr.Set(near)))
	}
	return joinSentences(text, fmt.Sprintf(saidLetters, m.letterList()))
}

// letterList names the givens, then the forces, then what else is unknown.
func (r *Reference) letterList() string {
	var names []string
	add := func(name string) {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, g := range r.Givens {
		add(g.Name)
	}
	for _, b := range r.Bodies {
		for _, f := range b.Forces {
			add(f.Name)
		}
	}
	for _, name := range r.Unknowns() {
		add(name)
	}
	for _, e := range r.Equals {
		add(e.Name)
	}
	return listed(names)
}

// listed joins letters as they stand on paper: "T₁, T₂ and w".
func listed(names []string) string {
	set := make([]string, len(names))
	for i, name := range names {
		set[i] = expr.Set(name)
	}
	if len(set) < 2 {
		return strings.Join(set, "")
	}
	return strings.Join(set[:len(set)-1], ", ") + " and " + set[len(set)-1]
}
