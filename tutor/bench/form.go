package bench

import (
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"

	"example.org/standstill/tutor/bench/measure"
)

// Kind is what a field of the form is for.
type Kind uint8

// The kinds of fields: a given that is measured; the own mass of a hanger, or of a
// ring, that comes on top of a given mass; the reading of a scale or protractor for
// what the equations predict; what all readings of forces have in common.
const (
	Measure Kind = iota
	Hanger
	Ring
	Reading
	Scale // the zero or the calibration that all force readings share
)

// Field is one thing that can be measured. Typed is what stands in it, good or
// bad: Why is the sentence about what is wrong, Taken what was made of it. Both
// are "" for an empty field.
type Field struct {
	Kind   Kind
	Letter string // the problem's letter; for a ring the mass that it adds to
	Body   string // of a ring, where there are several bodies
	Want   measure.Want
	Typed  string
	Value  measure.Value
	Taken  string
	Why    string
}

// Form is the sheet of one run: a problem as model and what was typed in. Its
// fields are the givens in the order of the file, then hangers and rings, then
// readings, what the problem asks for first. It serves one goroutine.
type Form struct {
	*apparatus
	Fields     []Field
	Notes      []string // what the group noted
	Conclusion string
	draws      int
}

// NewForm makes an empty form. The error is the solver's, for a problem that has no
// single solution.
func NewForm(p *problems.Problem) (*Form, error) {
	a, err := newApparatus(p)
	if err != nil {
		return nil, err
	}
	f := &Form{apparatus: a, draws: measure.TrialCount}
	for _, g := range p.System.Givens {
		f.add(Field{Kind: Measure, Letter: g.Name, Want: a.want(g.Name)})
	}
	for _, g := range p.System.Givens {
		if g.Unit.Dim == quantity.Mass {
			f.add(Field{Kind: Hanger, Letter: g.Name, Want: a.ownMass("the hanger for " + expr.Set(g.Name))})
		}
	}
	// The order is that of the work at the table: givens, then what hangs with them, then the scale.
	f.addRings()
	f.addScale()
	f.addReadings()
	return f, nil
}

// Problem is the problem that serves as model.
func (f *Form) Problem() *problems.Problem { return f.problem }

func (f *Form) add(field Field) { f.Fields = append(f.Fields, field) }

func (a *apparatus) ownMass(of string) measure.Want {
	g, _ := quantity.Find("g")
	return measure.Want{Name: "the mass of " + of, Dim: quantity.Mass, Unit: g}
}

func (f *Form) addRings() {
	bodies := f.problem.System.Bodies
	for i := range bodies {
		mass, ok := f.carrier(&bodies[i])
		if !ok {
			continue
		}
		name := "the ring"
		if len(bodies) > 1 {
			name = "ring " + bodies[i].Name
		}
		f.add(Field{Kind: Ring, Letter: mass, Body: bodies[i].Name, Want: f.ownMass(name)})
	}
}

// addScale adds what a scale's readings of forces share, where a force can be read.
func (f *Form) addScale() {
	for _, name := range f.readable() {
		if w := f.want(name); w.Dim == quantity.Force {
			none, _ := quantity.Find("none")
			f.add(Field{Kind: Scale, Letter: scaleZero, Want: measure.Want{Name: "the zero of the scale", Dim: quantity.Force, Unit: w.Unit}})
			f.add(Field{Kind: Scale, Letter: scaleCalibration, Want: measure.Want{Name: "the calibration", Dim: quantity.None, Unit: none}})
			return
		}
	}
}

// What readings may share: what the scale shows with nothing on, and the factor by which
// its readings are multiplied.
const (
	scaleZero        = "zero"
	scaleCalibration = "calibration"
)

// readable are the letters that can be read, what the problem asks for first.
func (f *Form) readable() []string {
	names := slices.Clone(f.problem.System.Find)
	for _, v := range f.model.Variables {
		if v.Role != statics.IsGiven && !slices.Contains(names, v.Name) {
			names = append(names, v.Name)
		}
	}
	return names
}

func (f *Form) addReadings() {
	for _, name := range f.readable() {
		if f.model.Has(name) {
			f.add(Field{Kind: Reading, Letter: name, Want: f.want(name)})
		}
	}
}

// Name is how a field is called: "m", "hanger m", "ring", "ring A".
func (f *Field) Name() string {
	switch f.Kind {
	case Hanger:
		return "hanger " + expr.Set(f.Letter)
	case Ring:
		return strings.TrimSpace("ring " + f.Body)
	case Scale:
		return f.Letter
	}
	return expr.Set(f.Letter)
}

// Good reports whether something stands in the field that can be used.
func (f *Field) Good() bool { return f.Typed != "" && f.Why == "" }

// ratingAlone is the text of a rating that stands beside a reading, "" for none.
func (f *Field) ratingAlone() string {
	if !f.Value.Rated {
		return ""
	}
	return measure.WithUnit(measure.Plain(f.Value.Rating/f.Value.Unit.Factor), f.Value.Unit) + " max"
}

// Type puts a text into a field, in place of what stood there; an empty text
// empties it. A text that cannot be read stays to be mended: Why says what is wrong,
// and the return value is false.
func (f *Form) Type(field int, text string) bool { return f.take(&f.Fields[field], text) }

// take reads a text for a field.
func (f *Form) take(e *Field, text string) bool {
	e.Typed, e.Value, e.Taken, e.Why = strings.TrimSpace(expr.Clean(text)), measure.Value{}, "", ""
	if e.Typed == "" {
		return true
	}
	if e.Value, e.Why = measure.Read(e.Typed, e.Want); e.Why == "" {
		e.Why = f.sense(e)
	}
	if e.Why != "" {
		// A bad value must not count, but its text stays, so that it can be corrected.
		e.Value = measure.Value{}
		return false
	}
	e.Taken = e.Value.Taken()
	return true
}

// sense says what about a value that could be read cannot be.
func (f *Form) sense(e *Field) string {
	switch {
	case !e.Value.Measured && e.Kind != Measure && e.Kind != Reading:
		return measure.SaidNothingMeasured(e.Want)
	case !e.Value.Measured:
		return ""
	case e.Kind == Scale:
		if e.Letter == scaleCalibration && e.Value.Estimate <= 0 {
			return saidNoCalibration
		}
		return ""
	case e.Kind == Hanger || e.Kind == Ring:
		if e.Value.Estimate < 0 {
			return saidBelowZero(e.Want)
		}
		return ""
	}
	return f.physical(e.Letter, e.Value)
}

// Find looks a field up by what a student calls it: a letter, "hanger m", "ring".
// why is a sentence where there is no such field. A letter of the wrong kind is
// said to be so.
func (f *Form) Find(kind Kind, name string) (field int, why string) {
	// A ring goes by its body and not by a letter.
	if kind == Ring {
		return f.findRing(strings.TrimSpace(name))
	}
	if kind == Scale {
		for i, e := range f.Fields {
			if e.Kind == Scale && strings.EqualFold(e.Letter, strings.TrimSpace(name)) {
				return i, ""
			}
		}
		return 0, saidScale
	}
	letter, ok := f.letter(name)
	if !ok {
		return 0, f.saidNoLetter(name)
	}
	for i, e := range f.Fields {
		if e.Kind == kind && e.Letter == letter {
			return i, ""
		}
	}
	return 0, f.saidOtherKind(kind, letter)
}

func (f *Form) findRing(body string) (field int, why string) {
	found := 0
	for i, e := range f.Fields {
		if e.Kind == Ring && (e.Body == body || body == "") {
			field = i
			found++
		}
	}
	switch {
	case found == 0 && body != "":
		return 0, saidNoRingOn(body)
	case found == 0:
		return 0, saidNoRing
	case found > 1:
		return 0, saidWhichRing
	}
	return field, ""
}

// Assign puts in a line "m = 0.500 kg ± 1 %" of one kind; for a ring alone the name may
// be left out. It returns a sentence about what is wrong, "" if nothing is.
func (f *Form) Assign(kind Kind, line string) (why string) {
	name, value, found := strings.Cut(line, "=")
	if !found && kind == Ring {
		name, value, found = "", line, true
	}
	if !found {
		return saidNoEquals(line)
	}
	field, why := f.Find(kind, name)
	if why != "" {
		return why
	}
	f.Type(field, value)
	if e := &f.Fields[field]; e.Why != "" {
		return saidAbout(e, e.Why)
	}
	return ""
}

// Bad lists a sentence for every field that has to be mended.
func (f *Form) Bad() []string {
	var bad []string
	for i := range f.Fields {
		if e := &f.Fields[i]; e.Why != "" {
			bad = append(bad, saidAbout(e, e.Why))
		}
	}
	return bad
}

// File is what the problem file says of a given, which counts while nothing is
// measured: "3.2 kg"; "" where it says nothing.
func (f *Form) File(e *Field) string {
	g, ok := f.problem.System.Given(e.Letter)
	if e.Kind != Measure || !ok || g.Any {
		return ""
	}
	text := g.Number.Text
	if g.Minus {
		text = "−" + text
	}
	return measure.WithUnit(text, g.Unit)
}

// division is the one that was assumed, as it is typed.
func (f *Field) division() string {
	return measure.WithUnit(measure.Plain(f.Value.AssumedSize()/f.Value.Unit.Factor), f.Value.Unit)
}

// Sample is a value of the kind that a field takes, as it may be typed.
func (f *Form) Sample(field int) string {
	switch e := &f.Fields[field]; e.Kind {
	case Hanger:
		return sampleHanger
	case Ring:
		return sampleRing
	case Scale:
		return map[string]string{scaleZero: "0.1 N div 0.1 N", scaleCalibration: "1.02 ± 0.01"}[e.Letter]
	default:
		return e.Want.Sample()
	}
}
