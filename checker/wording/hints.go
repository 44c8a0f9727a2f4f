package wording

// Three hints for each mistake, each asked for after the one before: a question
// that makes the student look at the right place; the rule, with the force and
// the side concerned; the step itself. The first two hold no expression, so that
// there is nothing to copy.

// Spot is what a hint is about.
type Spot uint8

// The spots: a component, a sum, a line of working, the value of an unknown, a force diagram.
const (
	OnComponent Spot = 1 << iota
	OnSum
	OnLine
	OnValue
	OnList
	Anywhere = OnComponent | OnSum | OnLine | OnValue | OnList
)

// Hint holds what is asked first and the rule that comes after it, where the evidence names a
// force; AskAny and RuleAny where it names none (the same, if they are empty). An empty Step
// is the usual one of the spot. Slanted marks hints that speak of the triangle of a force; one
// that lies along an axis has none. OfUnit marks hints for lines whose unit is not that of a force.
type Hint struct {
	At              Spot
	Ask, Rule       string
	AskAny, RuleAny string
	Step            string
	Slanted         bool
	OfUnit          bool
}

// Pick picks the hint at a spot. One about the triangle of a force serves a force that lies along
// an axis only if there is no other.
func (s *Subject) Pick(hints []Hint, at Spot) (hint Hint, ok bool) {
	for _, h := range hints {
		switch {
		case h.At&at == 0 || h.OfUnit && !isOfOtherUnit(s):
		case !h.Slanted || s.Force == nil || s.Force.Slanted():
			return h, true
		// Kept for a force along an axis, in case no hint fits it better.
		case !ok:
			hint, ok = h, true
		}
	}
	return hint, ok
}

// usualSteps are the third hints.
var usualSteps = map[Spot]string{
	OnComponent: "{step}",
	OnSum:       "{Along}{for}: {equation}.",
	OnLine:      "With numbers: {numbers}.",
	OnValue:     "With numbers: {numbers}.",
	OnList:      "Forces on {body}: {diagram}.",
}

// Hint words a hint about the spot; named says that the evidence names the force. level is 1 for
// a question, 2 for the rule, 3 for the step itself.
func (s *Subject) Hint(hint Hint, at Spot, level int, named bool) string {
	if level >= 3 {
		switch {
		case hint.Step != "":
			return s.Fill(hint.Step)
		case s.Body == nil && at&(OnSum|OnList) != 0:
			return "First type the name of the body that you mean."
		}
		return s.Fill(usualSteps[at])
	}
	text := hint.Ask
	switch {
	case level == 2 && !named && hint.RuleAny != "":
		text = hint.RuleAny
	case level == 2:
		text = hint.Rule
	case !named && hint.AskAny != "":
		text = hint.AskAny
	}
	return s.Fill(text)
}
