package bench

import (
	"strings"

	"example.org/standstill/checker"

	"example.org/standstill/tutor/bench/measure"
)

// Aim finds the field that a line names, and the value behind its equals sign:
// "m = 0.5 kg ± 1 %", "hanger m = 50 g", "ring = 12 g", "T1 = 3.6 N div 0.1 N".
func (f *Form) Aim(line string) (field int, value, why string) {
	kind, rest := f.kindOf(line)
	name, value, found := strings.Cut(rest, "=")
	if !found {
		return 0, "", saidNoEquals(line)
	}
	field, why = f.Find(kind, name)
	return field, strings.TrimSpace(value), why
}

// kindOf finds what a line with an equals sign is about.
func (f *Form) kindOf(line string) (Kind, string) {
	word, rest, _ := strings.Cut(strings.TrimSpace(line), " ")
	for _, kind := range []Kind{Hanger, Ring, Scale} {
		switch {
		case strings.EqualFold(word, kindWords[kind]):
			return kind, rest
		// A ring often has no name of its own, and then nothing comes between it and the sign.
		case kind == Ring && strings.HasPrefix(strings.ToLower(line), "ring="):
			return Ring, line[len("ring"):]
		}
	}
	name, _, _ := strings.Cut(line, "=")
	// “zero = 0.1 N” needs no word in front, because no letter is called so.
	if _, why := f.Find(Scale, name); why == "" {
		return Scale, line
	}
	if _, why := f.Find(Reading, name); why == "" {
		return Reading, line
	}
	return Measure, line
}

// Echo says how a text would be taken in a field, or why it would not; the form stays
// as it is.
func (f *Form) Echo(field int, text string) (taken, why string) {
	e := f.Fields[field]
	f.take(&e, text)
	return e.Taken, e.Why
}

// surer is the text of a field, whose division was asked for, with the answer behind it;
// an answer may name another quality.
func (f *Field) surer(answer string) string {
	// The question was about the division, so a value alone is one.
	if !measure.StartsWithQuality(answer) {
		answer = "div " + answer
	}
	return f.Typed + " " + answer
}

// Warnings says what about the values that stand in the form calls for care, before
// there is a result; nil where nothing does, or where they fit no position of rest. How
// large a force is predicted is not said: whoever predicts by hand may not have yet.
func (f *Form) Warnings() []string {
	// early keeps back what would give the prediction away.
	r := &Result{early: true, form: f, Inputs: f.inputs()}
	if f.Empty() || r.solve() != "" {
		return nil
	}
	r.warn()
	return r.Warnings
}

// Ref is the model with the measured numbers, to be drawn, and the file's where these
// make no problem.
func (f *Form) Ref() *checker.Reference {
	if p, why := f.Copy(); why == "" {
		if ref, err := p.Reference(); err == nil {
			return ref
		}
	}
	return f.ref
}
