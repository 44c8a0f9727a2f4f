package bench

import (
	"fmt"
	"slices"
	"strings"

	"example.org/standstill/tutor/record"
)

// Step is one part of a run, in the order in which a table goes through it. It shows
// blocks, asks one question again and again until that is answered, or has fields to be
// filled. Lines of text and the screen only set what it says: a new step is a row of
// Script and nothing else.
type Step struct {
	Name   string                         // as the screen's row of steps has it; "" for one that belongs to the step before
	Title  string                         // over what is shown or chosen
	Shows  func(*Table) []Block           // nil for nothing
	Ask    func(*Table) (*Question, bool) // nil for a step of fields; false where there is nothing to ask
	Kinds  []Kind                         // of its fields
	IsDone func(*Table) bool
}

// Names of steps that others know of.
const (
	StepCautions = "Caution"
	StepNames    = "Names"
	StepValues   = "Values"
	StepByHand   = "By hand"
	StepReadings = "Readings"
	StepResult   = "Result"
)

// Script is a run from beginning to end.
func Script() []Step {
	return []Step{
		{Name: StepCautions, Title: titleCaution, Shows: func(*Table) []Block { return []Block{CautionBlock()} }, Ask: (*Table).askCautions, IsDone: passed(StepCautions)},
		{Name: StepNames, Title: titleNames, Shows: (*Table).whoSees, Ask: (*Table).askNames, IsDone: func(t *Table) bool { return len(t.Students) > 0 }},
		{Title: titleEarlier, Ask: (*Table).askEarlier},
		{Name: StepValues, Kinds: []Kind{Measure, Hanger, Ring, Scale}, IsDone: filled(Measure, Hanger, Ring, Scale)},
		{Name: StepByHand, Title: StepByHand, Ask: (*Table).askByHand, IsDone: passed(StepByHand)},
		{Name: StepReadings, Kinds: []Kind{Reading}, IsDone: filled(Reading)},
		{Name: StepResult, IsDone: passed(StepResult)},
	}
}

// script are the steps that the table goes through.
func (t *Table) script() []Step {
	if t.Steps == nil {
		t.Steps = Script()
	}
	return t.Steps
}

// Named is the place of the step of a name in the script, −1 for none.
func (t *Table) Named(name string) int {
	return slices.IndexFunc(t.script(), func(s Step) bool { return s.Name == name })
}

// Asks is the place of the step that has fields of a kind, −1 for none.
func (t *Table) Asks(k Kind) int {
	return slices.IndexFunc(t.script(), func(s Step) bool { return slices.Contains(s.Kinds, k) })
}

func passed(step string) func(*Table) bool { return func(t *Table) bool { return t.passed[step] } }

// filled reports whether a value that can be used stands in a field of these kinds.
func filled(kinds ...Kind) func(*Table) bool {
	return func(t *Table) bool {
		return t.Form != nil && slices.ContainsFunc(t.Form.Fields, func(e Field) bool { return slices.Contains(kinds, e.Kind) && e.Good() })
	}
}

func (t *Table) askCautions() (*Question, bool) {
	return &Question{Text: saidReadCautions, onward: true, Take: func(string) Answer {
		t.Pass(StepCautions, true)
		return says()
	}}, !t.passed[StepCautions]
}

func (t *Table) whoSees() []Block {
	return []Block{{Title: titleNames, Lines: saidWhoSees(t.Tutor.SavedIn())}}
}

func (t *Table) askNames() (*Question, bool) {
	return &Question{Text: saidWho, Sample: sampleNames, Typed: strings.Join(t.Names, ", "), Take: func(line string) Answer {
		// The line holds all names: whoever is no longer named has gone.
		t.Students = nil
		if why := t.Enrol(line); why != "" {
			return refuses(why)
		}
		t.Pass(StepNames, true)
		return says(t.Seated())
	}}, !t.passed[StepNames]
}

// askEarlier offers the runs of this apparatus, those of others too.
func (t *Table) askEarlier() (*Question, bool) {
	runs, err := t.Runs(true)
	if err != nil || len(runs) == 0 || t.passed[titleEarlier] {
		return nil, false
	}
	q := &Question{Text: saidReopen, Choices: []Choice{{Label: choiceNewRun}}, Take: func(line string) Answer {
		if line == "" {
			t.Pass(titleEarlier, true)
			return says()
		}
		a := t.open(line)
		t.Pass(titleEarlier, !a.Stay)
		return a
	}}
	q.Choices = append(q.Choices, t.choices(runs)...)
	return q, true
}

// choices are runs to be picked from.
func (t *Table) choices(runs []Run) []Choice {
	who, _ := Names(t.Tutor.Record)
	choices := make([]Choice, len(runs))
	for i, run := range runs {
		head, typed, _ := strings.Cut(run.Said(who, t.zone()), ": ")
		choices[i] = Choice{head, typed, fmt.Sprint(run.Number)}
	}
	return choices
}

// askByHand has each student predict on the measured numbers before the equations are
// solved for them.
func (t *Table) askByHand() (*Question, bool) {
	// Nobody is asked to predict before the values are there, or while one of them is refused.
	if _, why := t.Form.Copy(); t.passed[StepByHand] || len(t.Students) == 0 || why != "" || t.Form.Bad() != nil {
		return nil, false
	}
	return t.ByHand(), true
}

// ByHand asks who predicts by hand. An empty line goes on.
func (t *Table) ByHand() *Question {
	text := saidByHand
	// Whoever has seen the result can still work it out, but it is no prediction any more.
	if t.passed[StepResult] {
		text = saidByHandLate
	}
	q := &Question{Text: text, Take: func(line string) Answer {
		if line == "" {
			t.Pass(StepByHand, true)
			return says()
		}
		return t.predict(line)
	}}
	for i, said := range t.Statuses() {
		q.Choices = append(q.Choices, Choice{Label: said, Line: t.Students[i].Name})
	}
	q.Choices = append(q.Choices, Choice{Label: choiceGoOn})
	return q
}

// predict leads the student of a name through the lesson on the measured numbers.
func (t *Table) predict(name string) Answer {
	if _, why := t.Form.Copy(); why != "" {
		return refuses(why)
	}
	s, why := t.Called(name)
	if why != "" {
		return refuses(why)
	}
	if err := t.SaveRun(); err != nil {
		return refuses(record.Sentence(err))
	}
	return Answer{Stay: true, Predicts: &s}
}

// Result saves the run and is its result, or what stands in the way of one.
func (t *Table) Result() Answer { return t.page(PageResult) }

// page is one page of the result.
func (t *Table) page(page Page) Answer {
	r, why := t.Form.Result()
	if why != nil {
		return refuses(append(why, saidCorrectValues)...)
	}
	a := Answer{Page: page}
	switch page {
	case PageResult:
		a.Blocks = append([]Block{{Title: titleWarning, Lines: r.Warnings}}, r.Main()...)
	case PageBudget:
		a.Blocks = r.Details()
	case PageValues:
		a.Blocks = r.MeasuredBlocks()
	}
	t.Pass(StepResult, true)
	if err := t.SaveRun(); err != nil {
		a.Said = []string{record.Sentence(err)}
	}
	return a
}
