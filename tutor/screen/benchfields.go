package screen

import (
	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/screen/views"
)

// question says what the line is for.
func (f *form) question(m *model) string {
	if f.asking != nil {
		return f.asking.Text
	}
	return m.bench.table.Form.Question(f.at)
}

func (f *form) view(m *model) views.Sheet {
	form := m.bench.table.Form
	v := formView{at: f.at, top: f.seen.Top, bad: len(form.Bad()), warnings: m.bench.warnings, under: f.under(m)}
	for i := range form.Fields {
		e := &form.Fields[i]
		v.fields = append(v.fields, fieldView{e, form.File(e)})
	}
	return v
}

// under is how the line is taken, or why it cannot be yet; a sample where it is empty.
func (f *form) under(m *model) []views.Label {
	text := f.meant(m, m.line.Text())
	switch {
	case f.asking != nil:
		return f.underAsked()
	case m.line.IsEmpty(), text == f.field(m).Typed && f.field(m).Why != "":
		// What is the matter with a bad value stands beside it.
		return []views.Label{{Word: views.WordSample, Text: m.bench.table.Form.Sample(f.at)}}
	case bench.Assigns(text):
		return m.assigned(text)
	}
	return m.taken(f.at, text)
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

// assigned is how a line that names its field is taken.
func (m *model) assigned(text string) []views.Label {
	field, value, why := m.bench.table.Form.Aim(text)
	if why != "" {
		return []views.Label{{Word: wordNotYet, Text: beginning(why)}}
	}
	return m.taken(field, value)
}

func (m *model) taken(field int, text string) []views.Label {
	taken, why := m.bench.table.Form.Echo(field, text)
	if why != "" {
		return []views.Label{{Word: wordNotYet, Text: beginning(why)}}
	}
	name := m.bench.table.Form.Fields[field].Name()
	return []views.Label{{Word: wordTaken, Text: name + " = " + taken, IsProse: true}}
}
