package bench

import (
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/tutor/bench/measure"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/record"
)

// Question is something that a table is asked. Text ends with what an empty line does.
// Sample is a line that can be typed, "" for none. Where there are choices, a line may be
// one of them; Many says that several can be marked and are answered together.
type Question struct {
	Text    string
	Sample  string
	Typed   string // what the line begins with
	Choices []Choice
	Many    bool
	Free    bool                     // a command does instead of an answer
	onward  bool                     // what is typed is left for the next question
	Take    func(line string) Answer // what comes of a line
}

// Leaves reports whether the question has no use for a text, which then was most likely
// typed for the next one.
func (q *Question) Leaves(text string) bool { return q.onward && strings.TrimSpace(text) != "" }

// Choice is a line that can be picked: Line is what it hands in.
type Choice struct{ Label, Detail, Line string }

// Accept takes a line.
func (q *Question) Accept(line string) Answer { return q.Take(strings.TrimSpace(line)) }

// Answer is what comes of a line or of a command.
type Answer struct {
	Said     []string        // sentences
	Stay     bool            // the question is not answered yet
	Then     *Question       // what is asked before anything else
	Title    string          // of what is shown
	Blocks   []Block         // to be shown
	Scene    *picture.Scene  // to be drawn
	Page     Page            // which page of the result that is
	Predicts *record.Student // who is led through the lesson on the measured numbers
	Opened   bool            // another form is in hand
}

// Page is a page of the result.
type Page string

// The pages.
const (
	PageResult Page = "result"
	PageBudget Page = "budget"
	PagePlot   Page = "plot"
	PageValues Page = "values"
)

func says(lines ...string) Answer    { return Answer{Said: lines} }
func refuses(lines ...string) Answer { return Answer{Said: lines, Stay: true} }

// Assigns reports whether a line names its field: something that is no value stands
// before an equals sign.
func Assigns(line string) bool {
	name, _, found := strings.Cut(line, "=")
	name = strings.TrimSpace(name)
	return found && (name == "" || !strings.ContainsAny(name[:1], "0123456789(.,+-") && !measure.StartsWithQuality(name))
}

// Field asks for a field. An empty line leaves it as it is.
func (t *Table) Field(i int) *Question {
	return &Question{Text: t.Form.Question(i), Sample: t.Form.Sample(i), Take: func(line string) Answer {
		switch {
		case line == "":
			return says(t.Form.saidLeft(&t.Form.Fields[i]))
		case Assigns(line):
			// Somebody asked for m may correct the angle first.
			a := t.Assign(line)
			a.Stay = a.Then == nil // the field itself has yet to be typed
			return a
		}
		return t.Put(i, line)
	}}
}

// Assign obeys a line that names its field: "m = 0.5 kg ± 1 %", "hanger m = 50 g", "T1 =
// 3.6 N div 0.1 N". A value that cannot be taken changes nothing; with nothing behind the
// sign the field is emptied.
func (t *Table) Assign(line string) Answer {
	i, value, why := t.Form.Aim(line)
	if why != "" {
		return refuses(why)
	}
	e := t.Form.Fields[i]
	if t.Form.take(&e, value); e.Why != "" {
		return refuses(saidRefused(saidAbout(&e, e.Why)))
	}
	return t.Put(i, value)
}

// Put types a text into a field. What cannot be read stays there to be corrected; what
// can may lead to a question: whether it was meant, whether it is another setting, how
// fine the scale is.
func (t *Table) Put(i int, text string) Answer {
	e := &t.Form.Fields[i]
	tried := *e
	if !t.Form.take(&tried, text) {
		t.Form.Type(i, text)
		return refuses(saidRefused(saidAbout(e, e.Why)))
	}
	return t.meant(i, tried, func() Answer { return t.change(i, tried) })
}

// meant asks about an unlikely value whether it was meant, and goes on where it was.
func (t *Table) meant(i int, tried Field, goOn func() Answer) Answer {
	doubt := t.doubt(&tried)
	if doubt == "" {
		return goOn()
	}
	return Answer{Stay: true, Then: &Question{Text: doubt, Sample: tried.Typed, Take: func(line string) Answer {
		switch {
		// Typing the same again means it.
		case line == "", strings.EqualFold(line, "yes"), line == tried.Typed:
			return goOn()
		case Assigns(line):
			return t.Assign(line)
		}
		return t.Put(i, line)
	}}}
}

// change types a value that was meant. Where readings were made with another, it asks
// once what that means.
func (t *Table) change(i int, tried Field) Answer {
	e := &t.Form.Fields[i]
	if e.Kind == Reading || e.Typed == tried.Typed || !t.hasRead() {
		return t.set(i, tried.Typed)
	}
	return Answer{Stay: true, Then: &Question{
		Text:    saidCorrection(e.Name()),
		Choices: []Choice{{Label: choiceSetting, Line: "new"}, {Label: choiceCorrection, Line: "correction"}},
		Take: func(line string) Answer {
			switch word := strings.ToLower(line); {
			case line == "" || strings.HasPrefix(word, "new") || line == "1":
				// A new setting with the old readings would compare them with another prediction.
				if a := t.again(); a.Stay {
					return a
				}
				a := t.set(i, tried.Typed)
				a.Said = append([]string{saidAgain}, a.Said...)
				return a
			case strings.HasPrefix(word, "corr") || line == "2":
				return t.set(i, tried.Typed)
			}
			return refuses(saidCorrection(e.Name()))
		},
	}}
}

func (t *Table) hasRead() bool {
	return slices.ContainsFunc(t.Form.Fields, func(e Field) bool { return e.Kind == Reading && e.Good() && e.Value.Measured })
}

// set types a value, and asks for the division where its text has none.
func (t *Table) set(i int, text string) Answer {
	e := &t.Form.Fields[i]
	t.Form.Type(i, text)
	if e.Typed == "" {
		return says(t.Form.saidLeft(e))
	}
	a := says(saidTaken(e))
	// Whoever passed the question over once has decided.
	if !e.Value.AssumedDivision || !t.once(e.Name()+" "+e.Typed) {
		return a
	}
	a.Then = &Question{Text: saidAskDivision(e), Sample: "div " + e.division(), Free: true, Take: func(line string) Answer {
		switch {
		case line == "":
			return says()
		case Assigns(line):
			return t.Assign(line)
		}
		tried := *e
		if !t.Form.take(&tried, e.surer(line)) {
			return refuses(saidRefused(saidAbout(&tried, tried.Why)))
		}
		return t.meant(i, tried, func() Answer { return t.set(i, tried.Typed) })
	}}
	return a
}

// once reports whether something is asked for the first time.
func (t *Table) once(what string) bool {
	asked := t.asked[what]
	t.asked[what] = true
	return !asked
}

// doubt asks whether a value was meant, once for each; "" for none.
func (t *Table) doubt(e *Field) string {
	doubt := t.Form.doubt(e)
	if doubt == "" || !t.once(e.Name()+" "+e.Typed+" doubt") {
		return ""
	}
	return doubt + " " + saidIfMeant
}

// How far a value may be from the file's, or a reading from the prediction, before it is
// asked about, as a factor; and how far beyond the values of the file's number sets, as a part
// of their range.
const (
	farFactor = 10
	farRange  = 5
	farRead   = 5
)

// doubt says that a value is unlikely, "" where it is not.
func (f *Form) doubt(e *Field) string {
	x := e.Value.Estimate
	if !e.Value.Measured || e.Want.Dim == quantity.Angle {
		return f.unsure(e)
	}
	switch {
	// A slip of a unit, g for kg, is by a factor of a thousand; a class may well double a mass.
	case e.Kind == Measure && f.File(e) != "":
		given, _ := f.problem.System.Given(e.Letter)
		if file := given.Value(); far(x, file, farFactor) || f.beyondRange(e) {
			return saidFarFromFile(e.Name(), e.Value, f.File(e))
		}
	case e.Kind == Reading:
		r := &Result{form: f, Inputs: f.inputs()}
		if f.Empty() || r.solve() != "" {
			break
		}
		slot, _ := f.model.Slot(e.Letter)
		if far(x, r.solved[slot], farRead) {
			return saidFarFromPredicted(e.Name(), e.Value)
		}
	}
	return f.unsure(e)
}

// unsure says that an uncertainty is more likely a slip, "" where it is not.
func (f *Form) unsure(e *Field) string {
	const slip = 0.2
	if e.Value.Measured && !e.Value.AssumedDivision && e.Value.U() > slip*math.Abs(e.Value.Estimate) && e.Kind == Measure {
		return saidVeryUnsure(e.Name(), e.Value)
	}
	return ""
}

func far(x, usual, factor float64) bool {
	x, usual = math.Abs(x), math.Abs(usual)
	return usual > 0 && x > 0 && (x > factor*usual || x < usual/factor)
}

// beyondRange reports whether a value is far outside of the file's number sets.
func (f *Form) beyondRange(e *Field) bool {
	for _, v := range f.problem.Vary {
		if v.Name != e.Letter {
			continue
		}
		given, _ := f.problem.System.Given(e.Letter)
		place := math.Pow(10, -float64(v.Places)) * given.Unit.Factor
		first, last := float64(v.Low)*place, float64(v.High)*place
		off := max(first-e.Value.Estimate, e.Value.Estimate-last)
		return off > farRange*(last-first)
	}
	return false
}
