package checker

import (
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
)

// Three hints for each mistake, each asked for after the one before: a question
// that makes the student look at the right place; the rule, with the force and
// the side concerned; the step itself. The first two hold no expression, so that
// there is nothing to copy.

// spot is what a hint is about: a component, a sum, a line of working, the value
// of an unknown, a force diagram.
type spot uint8

const (
	onPart spot = 1 << iota
	onSum
	onLine
	onValue
	onList
	anywhere = onPart | onSum | onLine | onValue | onList
)

// hint is one row: the question and the rule where the evidence names a force, and
// askAny and ruleAny where it names none (the same, if they are empty). An empty
// step is the usual one of the spot.
type hint struct {
	code            Code
	at              spot
	ask, rule       string
	askAny, ruleAny string
	step            string
}

// noAttempt is the code of the hints for a stage in which nothing was typed yet.
const noAttempt Code = ""

var hints = []hint{
	{code: noAttempt, at: onPart,
		ask:  "How does {force} lie to {axis}: along it, at right angles to it, or at a slant?",
		rule: "{lie}"},
	{code: noAttempt, at: onSum,
		ask:  "Which of {names} have a part {along}, and to which side does each of them point?",
		rule: "At rest the parts that point {positive} and those that point {negative} balance: taken with their signs, they come to nothing."},
	{code: noAttempt, at: onLine | onValue,
		ask:  "How many unknowns stand in each of your sums?",
		rule: "{start}"},
	{code: noAttempt, at: onList,
		ask:  "What touches {body}, and what pulls on it without touching it?",
		rule: "{kinds}"},

	{code: Unexplained, at: onPart,
		ask:  "{look}",
		rule: "{lie}"},
	{code: Unexplained, at: onSum,
		ask:  "Which of {names} have a part {along}, and does your line hold each of these once?",
		rule: "At rest the parts that point {positive} and those that point {negative} balance: taken with their signs, they come to nothing."},
	{code: Unexplained, at: onLine,
		ask:  "From which sum, or from which earlier line, does this line come?",
		rule: "An equation stays true if the same is done on both sides: the same added, or both multiplied by the same, one step at a time."},
	{code: Unexplained, at: onValue,
		ask:  "If you put this value into the sums, do they come to nothing?",
		rule: "{start}"},
	{code: Unexplained, at: onList,
		ask:  "What touches {body}, and what pulls on it without touching it?",
		rule: "{kinds}"},

	{code: Sign, at: onPart | onSum,
		ask:     "Which way does {force} point in your drawing, and which way does {axis} point?",
		rule:    "A part that points {positive} counts as positive, one that points {negative} as negative; {force} points {points|as its angle says}.",
		askAny:  "Which way does each of {names} point in your drawing, and which way does {axis} point?",
		ruleAny: "On one side of the equation, parts that point {positive} and parts that point {negative} have opposite signs."},
	{code: Sign, at: onLine,
		ask:  "What becomes of the sign of a term that you move to the other side?",
		rule: "A term that changes sides changes its sign, and a term that stays keeps it."},
	{code: Sign, at: onValue,
		ask:  "Which way does each force point in your drawing, and do the signs in your sums say the same?",
		rule: "On one side of an equation, forces that point opposite ways have opposite signs; a term that changes sides changes its sign."},

	{code: SineCosine, at: onPart | onSum,
		ask:     "Let {angle|its angle} shrink to nothing: what should {part} become, and what does your line make of it?",
		rule:    "In the triangle of {force}, {part} is the side {beside} {angle|its angle}; the side next to an angle goes with its cosine, the side opposite with its sine.",
		askAny:  "Let one angle after the other shrink to nothing: what should each part become, and what does your line make of it?",
		ruleAny: "The side next to an angle goes with its cosine, the side opposite with its sine; see for each force which of the two lies {along}."},
	{code: SineCosine, at: onLine | onValue,
		ask:  "Let an angle shrink to nothing: does each part become what it should?",
		rule: "The side next to an angle goes with its cosine, the side opposite with its sine; look from which line the angle is measured."},

	{code: Tangent, at: onPart | onSum,
		ask:     "As {angle|its angle} grows towards 90°, can {part} become larger than {force} itself?",
		rule:    "{The force} is the longest side of its triangle: sine and cosine compare a side with the longest one, the tangent compares the two short ones.",
		askAny:  "As an angle grows towards 90°, can a part become larger than the force itself?",
		ruleAny: "The force is the longest side of its triangle: sine and cosine compare a side with the longest one, the tangent compares the two short ones."},
	{code: Tangent, at: onLine | onValue,
		ask:  "As an angle grows towards 90°, can a part become larger than the force itself?",
		rule: "The force is the longest side of its triangle: sine and cosine compare a side with the longest one, the tangent compares the two short ones."},

	{code: NotResolved, at: onPart | onSum,
		ask:     "Does {force} act only {along}, or also along the other axis?",
		rule:    "{The force} lies at a slant: what acts {along} is only the side {beside} {angle|its angle} in its triangle.",
		askAny:  "Which of {names} lie at a slant to {axis}?",
		ruleAny: "Of a force at a slant only one side of its triangle acts {along}: the side that lies that way."},
	{code: NotResolved, at: onLine | onValue,
		ask:  "Which of the forces lie at a slant?",
		rule: "Of a force at a slant only a part acts along each axis; the whole force stands in neither sum."},

	{code: MissingForce, at: onPart,
		ask:  "Does {force} reach {along} at all, even a little?",
		rule: "{lie}"},
	{code: MissingForce, at: onSum,
		ask:     "Which of {names} have a part {along}? Count them, and then count the terms of your line.",
		rule:    "{The force} has a part {along} too, and every part belongs in the sum.",
		ruleAny: "Every force that is not at right angles to {axis} has a part {along}, and every part belongs in the sum."},
	{code: MissingForce, at: onLine | onValue,
		ask:  "Does every force stand in each sum along which it has a part?",
		rule: "Every force that is not at right angles to an axis belongs in the sum along it, and two equal forces are still two."},
	{code: MissingForce, at: onList,
		ask:  "If you go once round {body}, what touches it, and what pulls on it without touching it?",
		rule: "{kinds}"},

	{code: ExtraForce, at: onPart,
		ask:  "If you walk along {force}, how far does that take you {along}?",
		rule: "{lie}"},
	{code: ExtraForce, at: onSum,
		ask:  "Which of {names} have a part {along}, and does each of these stand in your line just once?",
		rule: "A force at right angles to {axis} has no part {along}; every other force on {body} stands in the sum once, and nothing else does."},
	{code: ExtraForce, at: onLine | onValue,
		ask:  "Does every force stand only in the sums along which it has a part, and there just once?",
		rule: "A force at right angles to an axis has no part along it, and no force stands in one sum twice."},
	{code: ExtraForce, at: onList,
		ask:  "What makes each force of your list: which string, which surface, which other thing?",
		rule: "Each thing that touches {body} makes one force on it, and gravity makes the weight; a force that nothing makes has no place in the list."},

	{code: WrongAxis, at: onPart,
		ask:  "Which side of the triangle of {force} lies {along}?",
		rule: "{lie}"},
	{code: WrongAxis, at: onSum,
		ask:  "Which way does {axis} point, and which parts lie that way?",
		rule: "The sum asked for holds only the parts {along}; those along the other axis have a sum of their own."},
	{code: WrongAxis, at: onLine | onValue,
		ask:  "Does each of your sums hold only parts along one axis?",
		rule: "The sum along an axis holds only parts along that axis."},

	{code: OtherAngle, at: onPart | onSum,
		ask:     "Which angle is drawn at {force}, and from which line is it measured?",
		rule:    "The parts of {force} come from the angle that {force} itself makes; it is measured from {measured|the line drawn there}.",
		askAny:  "Which angle is drawn at each of {names}?",
		ruleAny: "The parts of a force come from the angle that this force itself makes; the angle of another force says nothing about it."},
	{code: OtherAngle, at: onLine | onValue,
		ask:  "Which angle is drawn at each of the forces?",
		rule: "The parts of a force come from the angle that this force itself makes; the angle of another force says nothing about it."},

	{code: NormalEqualsWeight, at: onPart | onSum | onLine | onValue,
		ask:  "List every push and pull {square}: what balances what?",
		rule: "The push of a surface is as large as that sum needs it; it is the whole weight only where nothing but the weight acts along that line."},

	{code: MassForWeight, at: onPart | onSum | onLine | onValue,
		ask:  "What unit has the right side of your line, and what unit has the left?",
		rule: "A mass is measured in kilograms and a force in newtons; the weight is the mass times the strength of gravity."},

	{code: EqualTensions, at: onPart | onSum | onLine | onValue,
		ask:  "Which string is steeper, and which carries more?",
		rule: "Each string has a pull of its own; two of them are equal only for a reason, such as one rope or the same slope on both sides."},

	{code: SharedWeight, at: onPart | onSum | onLine | onValue,
		ask:  "If the strings ran nearly level, could they hold the weight with the same pull?",
		rule: "Only the upright part of a pull carries weight, so a string at a slant pulls harder than its share."},

	{code: WholeFactor, at: onPart | onSum | onLine | onValue,
		ask:     "How often does {force} act on {body}, and how often does it stand in your line?",
		rule:    "{The force} stands in a sum as often as it acts; a number in front of it must come from the problem.",
		askAny:  "How often does each force act, and how often does it stand in your lines?",
		ruleAny: "Each force stands in a sum as often as it acts: two equal forces are two, and one force is one."},

	{code: Inverted, at: onPart | onSum,
		ask:     "Can {part} be larger than {force} itself?",
		rule:    "No side of the triangle is longer than {force} itself, so {force} is multiplied by something that is never above one.",
		askAny:  "Can a part be larger than the force itself?",
		ruleAny: "No side of the triangle is longer than the force itself, so the force is multiplied by something that is never above one."},
	{code: Inverted, at: onLine | onValue,
		ask:  "By what do you divide both sides so that the letter stands alone?",
		rule: "What multiplies a letter on one side ends up below the bar on the other side, and what divides it ends up above."},

	{code: OtherBody, at: onPart | onSum | onLine | onValue,
		ask:  "Which forces act on {body} itself?",
		rule: "The sum for one body holds only the forces on that body; what acts on another body stands in the sums of the other."},

	{code: OtherUnknown, at: onPart | onSum | onLine | onValue,
		ask:  "Which letter did you work out last?",
		rule: "Each value belongs to the letter that stood alone in front of it; follow the letters back to the sum they come from."},

	{code: Pythagoras, at: onPart | onSum | onLine | onValue,
		ask:  "Do these forces lie in one line, or at a right angle?",
		rule: "Sizes may be added only along one line, and their squares only at a right angle; in every other case the parts along each axis are added."},

	{code: TwiceCounted, at: onPart | onSum | onLine | onValue,
		ask:     "Are the parts of {force} further forces, or is that {force} once more?",
		rule:    "The parts of {force} stand in its place: where a part is counted, {force} itself is not.",
		askAny:  "Are the parts of a force further forces, or the same force once more?",
		ruleAny: "The parts of a force stand in its place: where a part is counted, the force itself is not."},

	{code: Radians, at: onPart | onSum | onLine | onValue,
		ask:  "In which unit does your calculator take angles: what does it give for the sine of 30?",
		rule: "The angles of this problem are in degrees, and the sine of 30 degrees is one half."},

	{code: OtherG, at: onPart | onSum | onLine | onValue,
		ask:  "Which strength of gravity does this problem give?",
		rule: "Here every kilogram weighs {gravity} newtons."},

	{code: Slip, at: onPart | onSum | onLine | onValue,
		ask:  "Where on the way did you round, and to how many figures?",
		rule: "Keep four figures on the way and round once, at the end; then type the numbers into the calculator once more."},

	{code: PowerOfTen, at: onPart | onSum | onLine | onValue,
		ask:  "Which units stand in the problem, and in which unit is the answer asked?",
		rule: "A thousand grams make a kilogram, a hundred centimetres a metre, a thousand newtons a kilonewton; change units first and count the places after."},

	{code: WrongSide, at: onList,
		ask:     "If you start at {body} and go along {force}, do you go left or right, up or down?",
		rule:    "{kind}",
		askAny:  "If you start at {body} and go along one force after the other, do you go left or right, up or down?",
		ruleAny: "{kinds}"},

	{code: NoUnit, at: onPart | onSum | onLine | onValue,
		ask:  "What does {unknown|this number} measure?",
		rule: "A value is a number and a unit; {unknown|it} is asked in {unit}.",
		step: "Write {symbol} behind the number."},
	{code: WrongUnit, at: onPart | onSum | onLine | onValue,
		ask:  "What does the unit in your line measure, and what is asked?",
		rule: "A unit must measure what is asked: here {unit}.",
		step: "Write {symbol} behind the number."},
	{code: Coarse, at: onPart | onSum | onLine | onValue,
		ask:  "How many figures do the values in the problem have?",
		rule: "A result has about as many figures as the values that it comes from: two or three here.",
		step: "Keep four figures on the way, round once at the end, and give three."},
	{code: NoEquation, at: onPart | onSum,
		ask:  "What do all the parts {along} come to while {body} is at rest?",
		rule: "A body at rest has nothing left over along any line."},
	{code: NoEquation, at: onLine | onValue,
		ask:  "Which letter is this the value of?",
		rule: "A line of working says that two things are equal: a letter stands on one side, what it comes to on the other."},
	{code: HoldsAlways, at: onPart | onSum | onLine | onValue,
		ask:  "Could your line ever be false, whatever the forces are?",
		rule: "A line that is true of any force says nothing about these; bring in what the problem knows about them."},
	{code: StillUnknown, at: onPart | onSum | onLine | onValue,
		ask:  "Which letter on the right side has no value yet?",
		rule: "Find {open|that letter} first, from another sum, and then put it in."},
	{code: UnknownName, at: anywhere,
		ask:  "Which letter of your line does the problem not have?",
		rule: "The letters here are {letters}."},
	{code: Unreadable, at: onPart | onSum | onLine | onValue,
		ask:  "If you read your line aloud, sign by sign, where does it stop making sense?",
		rule: "Every bracket needs its partner, every sign something on both sides of it, and every function its angle."},
	{code: Unreadable, at: onList,
		ask:  "Does every piece of your list name one force and the side to which it points?",
		rule: "Write the letter of a force and then its side in words, such as up, down, left or right; a semicolon goes between two forces."},
}

// aboutSlant tells which hints speak of the triangle of a force. A force that lies
// along an axis has none.
var aboutSlant = map[Code]bool{SineCosine: true, Tangent: true, NotResolved: true, OtherAngle: true, Inverted: true, WrongAxis: true}

// usualSteps are the third hints.
var usualSteps = map[spot]string{
	onPart:  "{component}",
	onSum:   "{Along}{for}: {equation}.",
	onLine:  "With the numbers: {numbers}.",
	onValue: "With the numbers: {numbers}.",
	onList:  "On {body}: {diagram}.",
}

// Hint words a hint about what was typed last; an empty text is no attempt yet.
// level is 1 for a question, 2 for the rule, 3 for the step itself, after which
// the step counts as shown.
func (r *Reference) Hint(a Answer, report Report, level int) string {
	s, at := r.hintSetting(a, report)
	code := report.Code
	if strings.TrimSpace(expr.Clean(a.Text)) == "" {
		code = noAttempt
	}
	row := rowFor(code, at)
	named := s.force != nil && !(code == MissingForce && at == onSum && s.force.Factor(s.axis).Sign == 0)
	if named && aboutSlant[code] && !s.force.Slanted() {
		named = false
		if at == onPart {
			row = rowFor(Unexplained, at)
		}
	}
	if level >= 3 {
		if row.step != "" {
			return s.fill(row.step)
		}
		return s.fill(usualSteps[at])
	}
	text := row.ask
	switch {
	case level == 2 && !named && row.ruleAny != "":
		text = row.ruleAny
	case level == 2:
		text = row.rule
	case !named && row.askAny != "":
		text = row.askAny
	}
	return s.fill(text)
}

// rowFor finds the row of a code at a spot; the row of Unexplained where there is
// none.
func rowFor(code Code, at spot) hint {
	for _, c := range []Code{code, Unexplained} {
		for _, row := range hints {
			if row.code == c && row.at&at != 0 {
				return row
			}
		}
	}
	return hint{}
}

// hintSetting finds what a hint is about. In the value of an unknown, the
// evidence does not name the force that went wrong.
func (r *Reference) hintSetting(a Answer, report Report) (*setting, spot) {
	item := a.Item
	if report.Item != "" {
		item = report.Item
	}
	s := r.setting(a.Stage, item)
	at := map[Stage]spot{Diagram: onList, Components: onPart, XSum: onSum, YSum: onSum, Solve: onLine}[a.Stage]
	switch a.Stage {
	case Diagram, XSum, YSum:
		if s.body == nil || hasForce(s.body, report.About) {
			s.about(report.About)
		}
		return s, at
	case Components:
		return s, at
	}
	if report.About != "" && r.Has(report.About) {
		s.unknown = report.About
	}
	reading, err := r.LettersFor(item).Read(a.Text)
	if err != nil {
		return s, at
	}
	m := &marking{Reference: r, stage: Solve, item: item, line: reading.Lines[0]}
	typed := m.setting(finding{about: report.About, code: report.Code})
	s.open = typed.open
	if typed.valued {
		s.unknown = typed.unknown
		return s, onValue
	}
	s.about(report.About)
	return s, at
}

func hasForce(b *statics.Body, name string) bool { _, ok := b.Force(name); return ok }
