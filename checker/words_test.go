// Inside the package: it words mistakes that no line was searched for.

package checker

import (
	"strings"
	"testing"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
	"example.org/standstill/checker/wording"
)

// Two systems that between them have every kind of word: a lamp on two strings,
// and a block on a slope tied to a hanging pail.

func lampOnTwoStrings(t *testing.T) *Reference {
	t.Helper()
	return mustRefer(t, &statics.System{
		Givens: []statics.Given{given1("m", "2", "kg"), given1("alpha", "35", "deg"), given1("g", "9.8", "m/s^2")},
		Bodies: []statics.Body{{Forces: []statics.Force{
			{Name: "T1", Kind: statics.Tension, Points: statics.Side{-1, 1}, Angle: expr.Letter("alpha")},
			{Name: "T2", Kind: statics.Tension, Points: statics.Side{1, 0}},
			{Name: "w", Kind: statics.Weight, Points: statics.Side{0, -1}, Size: timesG("m")},
		}}},
		Find: []string{"T1", "T2"},
	})
}

func blockAndPail(t *testing.T) *Reference {
	t.Helper()
	return mustRefer(t, &statics.System{
		Givens: []statics.Given{given1("m", "5", "kg"), given1("alpha", "25", "deg"), given1("mu", "0.2", "none"), given1("g", "9.8", "m/s^2")},
		Bodies: []statics.Body{
			{Name: "block", Tilt: expr.Letter("alpha"), Forces: []statics.Force{
				{Name: "T", Kind: statics.Tension, Points: statics.Side{1, 0}},
				{Name: "f", Kind: statics.Friction, Points: statics.Side{-1, 0}, Size: expr.Join(expr.Mul, expr.Letter("mu"), expr.Letter("N"))},
				{Name: "N", Kind: statics.Normal, Points: statics.Side{0, 1}},
				{Name: "w", Kind: statics.Weight, Points: statics.Side{-1, -1}, Angle: expr.Letter("alpha"), From: statics.Y, Size: timesG("m")},
			}},
			{Name: "pail", Forces: []statics.Force{
				{Name: "T", Kind: statics.Tension, Points: statics.Side{0, 1}},
				{Name: "W", Kind: statics.Weight, Points: statics.Side{0, -1}, Size: timesG("M")},
			}},
		},
		Find: []string{"T", "M"},
	})
}

func given1(name, text, unit string) statics.Given {
	n, _ := quantity.ParseNumber(text)
	u, _ := quantity.Find(unit)
	return statics.Given{Name: name, Number: n, Unit: u}
}

func timesG(mass string) *expr.Node {
	return expr.Join(expr.Mul, expr.Letter(mass), expr.Letter("g"))
}

func mustRefer(t *testing.T, s *statics.System) *Reference {
	t.Helper()
	r, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

var wrongCodes = []Code{Sign, SineCosine, Tangent, NotResolved, MissingForce, ExtraForce, WrongAxis, OtherAngle, NormalEqualsWeight,
	MassForWeight, EqualTensions, SharedWeight, WholeFactor, Inverted, Radians, OtherG, WrongSide, OtherBody, OtherUnknown, Pythagoras,
	TwiceCounted, Slip, PowerOfTen, DoesNotFollow, Unexplained, "a code that nobody has written a sentence for"}

var formCodes = []Code{NoUnit, WrongUnit, Coarse, NoEquation, HoldsAlways, StillUnknown, TrueNotAsked}

// sayAll words every code at every stage and item, about one force, several, none
// and a stranger, for a line and for a value.
func sayAll(r *Reference, f func(what, text string)) {
	for _, stage := range Stages {
		for _, item := range r.Items(stage) {
			for _, text := range []string{"1 = 2", "T1 = 3", "T = 3", "3"} {
				reading, err := r.solved.LettersFor(item).Read(text)
				if err != nil {
					continue
				}
				m := r.marking(stage, item, reading.Lines[0])
				for _, code := range wrongCodes {
					for _, all := range [][]string{nil, {"T1"}, {"T"}, {"w"}, {"T1", "w"}, {"T", "w"}, {"x{lie}y"}} {
						found := mistake.Finding{Code: code, All: all}
						if len(all) == 1 {
							found.About = all[0]
						}
						said, _ := m.sentence().saidWrong(found)
						f(string(stage)+" "+item+" "+string(code)+" "+text, said)
					}
				}
				for _, code := range formCodes {
					f(string(stage)+" "+item+" "+string(code)+" "+text, m.sentence().saidAlmost(code, ""))
				}
			}
		}
	}
}

func TestEveryCodeHasASentence(t *testing.T) {
	for _, r := range []*Reference{lampOnTwoStrings(t), blockAndPail(t)} {
		sayAll(r, func(what, text string) {
			first := []rune(text + " ")[0]
			switch {
			case len(text) < 20 || !strings.HasSuffix(text, ".") && !strings.HasSuffix(text, "?") || strings.Count(text, ".")+strings.Count(text, "?") > 3:
				t.Errorf("%s: not a few sentences: %q", what, text)
			case strings.ContainsAny(text, "{}%!") || strings.Contains(text, "  ") || strings.Contains(text, " ,"):
				t.Errorf("%s: a gap or a wrong sign: %q", what, text)
			case len([]rune(text)) > 220:
				t.Errorf("%s: too long: %q", what, text)
			case strings.ToUpper(string(first)) != string(first):
				t.Errorf("%s: begins small: %q", what, text)
			}
		})
	}
}

// The first message says where and never what to write instead.
func TestFirstMessagesNameNoCure(t *testing.T) {
	for _, r := range []*Reference{lampOnTwoStrings(t), blockAndPail(t)} {
		sayAll(r, func(what, text string) {
			for _, cure := range []string{"cosine", "sine ", "cos ", "sin ", "minus sign;", "instead", " should be", "must be", "multiply", "next to", "opposite the", "degrees"} {
				if strings.Contains(text, cure) {
					t.Errorf("%s: %q names a cure: %q", what, text, cure)
				}
			}
		})
	}
}

// Every hint of a row has a question and a rule, and each code has something to say.
func TestEveryRowSpeaks(t *testing.T) {
	said := map[Code]bool{}
	for _, row := range mistake.Table() {
		said[row.Code] = said[row.Code] || row.Said != (mistake.Said{}) || len(row.Hints) > 0
		spots := map[[2]bool]mistake.Spot{}
		for _, hint := range row.Hints {
			if hint.Ask == "" || hint.Rule == "" {
				t.Errorf("no question or rule for %q", row.Code)
			}
			of := [2]bool{hint.Slanted, hint.OfUnit}
			if row.Code != MassForWeight && spots[of]&hint.At != 0 {
				t.Errorf("two hints for %q at one spot", row.Code)
			}
			spots[of] |= hint.At
		}
	}
	for code, ok := range said {
		if !ok && code != mistake.Own {
			t.Errorf("nothing is said of %q", code)
		}
	}
}

func TestNearLetters(t *testing.T) {
	r := blockAndPail(t)
	for typed, want := range map[string]string{"alhpa": "alpha", "aplha": "alpha", "a": "alpha", "m1": "m", "q": "", "T2": "T", "xyz": "", "u": "mu"} {
		if got := wording.NearLetter(r.solved, typed); got != want {
			t.Errorf("near %q: %q, want %q", typed, got, want)
		}
	}
}

func TestReadings(t *testing.T) {
	r := blockAndPail(t)
	for _, c := range []struct{ text, want string }{
		{"T = w/2 sin α", wording.SaidBelowBar},
		{"T = 1,200 N", "The comma in 1,200 was read as a decimal comma."},
		{"T = 12", ""},
		{"T = 12 N", ""},
		{"f = 0.2 N + T", wording.SaidNewton},
	} {
		reading, err := r.solved.LettersFor("").Read(c.text)
		if err != nil {
			t.Fatal(err)
		}
		if got := wording.SaidReading(reading, 0, false); got != c.want {
			t.Errorf("%q in %d readings: %q, want %q", c.text, len(reading.Lines), got, c.want)
		}
	}
}
