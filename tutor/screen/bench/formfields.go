package bench

import (
	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/screen/views"
)

// question says what the line is for.
func (f *form) question(b *Bench) string {
	if f.asking != nil {
		return f.asking.Text
	}
	return b.Table.Form.Question(f.at)
}

func (f *form) view(b *Bench) views.Sheet {
	form := b.Table.Form
	v := formView{at: f.at, top: f.Seen.Top, bad: len(form.Bad()), warnings: b.warnings, under: f.under(b)}
	for i := range form.Fields {
		e := &form.Fields[i]
		v.fields = append(v.fields, fieldView{e, form.File(e)})
	}
	return v
}

// under is how the line is taken, or why it cannot be yet; a sample where it is empty.
func (f *form) under(b *Bench) []views.Label {
	text := f.meant(b, b.line.Text())
	switch {
	case f.asking != nil:
		return f.underAsked()
	case b.line.IsEmpty(), text == f.field(b).Typed && f.field(b).Why != "":
		// What is the matter with a bad value stands beside it.
		return []views.Label{{Word: views.WordSample, Text: b.Table.Form.Sample(f.at)}}
	case bench.Assigns(text):
		return underAssigned(b.Table.Form, text)
	}
	return underTaken(b.Table.Form, f.at, text)
}

// underAsked are the choices of what is asked about a field, or a sample.
func (f *form) underAsked() []views.Label {
	var all []views.Label
	for _, c := range f.asking.Choices {
		all = append(all, views.Label{Text: c.Label})
	}
	if all == nil && f.asking.Sample != "" {
		all = []views.Label{{Word: views.WordSample, Text: f.asking.Sample}}
	}
	return all
}

// underAssigned is how a line that names its field is taken.
func underAssigned(f *bench.Form, text string) []views.Label {
	field, value, why := f.Aim(text)
	if why != "" {
		return []views.Label{{Word: wordNotYet, Text: beginning(why)}}
	}
	return underTaken(f, field, value)
}

// underTaken is how a value is taken for a field.
func underTaken(f *bench.Form, field int, text string) []views.Label {
	taken, why := f.Echo(field, text)
	if why != "" {
		return []views.Label{{Word: wordNotYet, Text: beginning(why)}}
	}
	name := f.Fields[field].Name()
	return []views.Label{{Word: wordTaken, Text: name + " = " + taken, IsProse: true}}
}
