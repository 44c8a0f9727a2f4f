package bench

import (
	"strings"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/record"
)

// Command is a word that can be typed once there is an apparatus on the table. Does says
// what it does, Takes what may stand behind it, as it may be typed; "" for nothing.
type Command struct {
	Word, Takes string
	Does        string
	do          func(t *Table, rest string) Answer
}

// Commands is the table of these words, in the order in which help and the menu list
// them. Some others belong to lines or to the screen alone: help, leave.
func Commands() []Command {
	show := func(page Page) func(*Table, string) Answer {
		return func(t *Table, _ string) Answer { return t.page(page) }
	}
	tell := func(title string, lines func(*Table) []string) func(*Table, string) Answer {
		return func(t *Table, _ string) Answer {
			return Answer{Title: title, Blocks: []Block{{Title: title, Lines: lines(t)}}}
		}
	}
	return []Command{
		{"result", "", "Show the prediction and the comparison", show(PageResult)},
		{"budget", "", "Show where the uncertainty comes from", show(PageBudget)},
		{"plot", "alpha", "Plot the predictions and the readings", (*Table).plot},
		{"values", "", "Show how the program reads your values", show(PageValues)},
		{"series", "1-5", "Show your runs in a table", (*Table).series},
		{"residuals", "T1", "Plot reading minus prediction for each run", (*Table).residuals},
		{"line", "T against 1/(2 sin theta)", "Fit a straight line to your runs", (*Table).line},
		{"predict", "Ana", "Calculate the prediction by hand", (*Table).predictNow},
		{"again", "", "Start a new run with the same values", func(t *Table, _ string) Answer { return t.again() }},
		{"runs", "all", "List your runs, or all runs", (*Table).listRuns},
		{"open", "1", "Open a run", func(t *Table, number string) Answer { return t.openOr(number) }},
		{"compare", "1 2", "Compare runs with this apparatus", (*Table).compareRuns},
		{"students", "Ana, Ben", "Show who is in the group, or add names", (*Table).atTable},
		{"note", "the ring stuck", "Add a note to the run", (*Table).note},
		{"conclusion", "T grows as 1/sin θ", "Write a conclusion for the run", (*Table).conclude},
		{"report", "my-run.html", "Save a page for the lab book", (*Table).report},
		{"sheet", "my-sheet.html", "Save a sheet to fill in by hand", (*Table).sheet},
		{"export", "my-runs.csv", "Save your runs as a table for other programs", (*Table).export},
		{"look", "", "List common systematic errors", tell(titleSystematic, func(*Table) []string { return Systematic() })},
		{"cautions", "", "Show the safety rules again", tell(titleCaution, func(*Table) []string { return Cautions() })},
		{"warnings", "", "Show the warnings about these values", tell(titleWarning, (*Table).warnings)},
		{"text", "", "Show the text of the problem", tell(titleApparatus, func(t *Table) []string { return []string{t.Form.Statement()} })},
		{"drawing", "", "Draw the apparatus with the measured angles", (*Table).drawing},
	}
}

// CommandOf finds the command that a line begins with, and what stands behind it; a word
// that takes nothing stands alone. The quotation marks in which sentences print commands
// may be typed around them.
func CommandOf(line string) (c Command, rest string, ok bool) {
	first, rest, _ := strings.Cut(tutor.Unquoted(line), " ")
	rest = strings.TrimSpace(rest)
	for _, c := range Commands() {
		if strings.EqualFold(c.Word, first) {
			// “text of mine” is an answer and not the command “text”.
			return c, rest, rest == "" || c.Takes != ""
		}
	}
	return c, "", false
}

// Do obeys a command.
func (t *Table) Do(c Command, rest string) Answer { return c.do(t, rest) }

// plot draws what is predicted against a letter or an expression, with the readings of
// this group's runs; with "all" behind it, of everybody's.
func (t *Table) plot(by string) Answer {
	by, which := withoutAll(by)
	computed, why := t.chosen(which)
	if why != "" {
		return refuses(why)
	}
	scene, notes, why := Plot(computed, by)
	if why != "" {
		return refuses(why)
	}
	return Answer{Page: PagePlot, Title: scene.Title, Scene: &scene, Said: notes}
}

// withoutAll takes the word all off the end of a text.
func withoutAll(text string) (head, all string) {
	if strings.EqualFold(text, "all") {
		return "", text
	}
	if head, found := strings.CutSuffix(text, " all"); found {
		return strings.TrimSpace(head), "all"
	}
	return text, ""
}

// together answers with the series of the runs that are named, of all of the group's
// where none is.
func (t *Table) together(numbers string, answer func(*Series) (Answer, string)) (a Answer) {
	computed, why := t.chosen(numbers)
	if why != "" {
		return refuses(why)
	}
	s, why := NewSeries(computed)
	if why == "" {
		a, why = answer(s)
	}
	if why != "" {
		return refuses(why)
	}
	return a
}

func (t *Table) series(numbers string) Answer {
	return t.together(numbers, func(s *Series) (Answer, string) { return s.Answer("", "") })
}

func (t *Table) residuals(letter string) Answer {
	return t.together("", func(s *Series) (Answer, string) {
		if letters := s.letters(); letter == "" && len(letters) == 0 {
			return Answer{}, saidNothingRead
		} else if letter == "" {
			letter = letters[0]
		}
		return s.Answer("", letter)
	})
}

// Answer is a series with its table; with a straight line where two axes are named, or a
// plot of the residuals of a letter. why is a sentence about what cannot be.
func (s *Series) Answer(axes, residuals string) (a Answer, why string) {
	switch {
	case residuals != "":
		letter, ok := s.model.letter(residuals)
		if !ok {
			return a, s.model.saidNoLetter(residuals)
		}
		scene := s.Scene(letter)
		return Answer{Title: scene.Title, Scene: &scene}, ""
	case axes == "":
		return Answer{Title: titleSeries, Blocks: s.Blocks()}, ""
	}
	x, y, origin := splitAxes(axes)
	if x == "" || y == "" {
		return a, saidLineSample
	}
	l, why := s.Line(x, y, origin)
	if why != "" {
		return a, why
	}
	scene := l.Scene()
	return Answer{Title: l.Title(), Blocks: l.Blocks(), Scene: &scene}, ""
}

func (t *Table) line(axes string) Answer {
	if axes == "" {
		return refuses(saidLineSample)
	}
	a := t.together("", func(s *Series) (Answer, string) { return s.Answer(axes, "") })
	// Remembered for the report, but only if there was such a line.
	if !a.Stay {
		t.axes = axes
	}
	return a
}

func (t *Table) predictNow(name string) Answer {
	// With one student at the table it is clear who predicts.
	if name == "" && len(t.Students) != 1 {
		if len(t.Students) == 0 {
			return refuses(saidNobodyThere)
		}
		return Answer{Then: t.ByHand()}
	}
	return t.predict(name)
}

// listRuns lists this group's runs, or all, to be opened or compared.
func (t *Table) listRuns(which string) Answer {
	// Saved first, so that the run in hand is in the list.
	if err := t.SaveRun(); err != nil {
		return refuses(record.Sentence(err))
	}
	runs, err := Runs(t.Tutor.Record, "")
	if err != nil {
		return refuses(record.Sentence(err))
	}
	text, every := saidWhichRun, len(t.ofUs(runs, true))
	runs = t.ofUs(runs, strings.EqualFold(which, "all"))
	if len(runs) < every {
		text += " " + saidOthersRuns
	}
	if len(runs) == 0 {
		return refuses(strings.TrimSpace(saidNoRuns + " " + strings.TrimPrefix(text, saidWhichRun)))
	}
	return Answer{Title: titleRuns, Then: &Question{Text: text, Choices: t.choices(runs), Many: true, Free: true, Take: func(line string) Answer {
		if line == "" {
			return says()
		}
		return t.openOr(line)
	}}}
}

// openOr opens the run of a number, or compares several.
func (t *Table) openOr(numbers string) Answer {
	switch len(Numbers(numbers)) {
	case 0:
		return t.listRuns("")
	case 1:
		return t.open(numbers)
	}
	return t.compareRuns(numbers)
}

func (t *Table) compareRuns(numbers string) Answer {
	if numbers == "" {
		return t.listRuns("")
	}
	computed, why := t.chosen(numbers)
	if why != "" {
		return refuses(why)
	}
	blocks, why := Compare(computed)
	if why != "" {
		return refuses(why)
	}
	return Answer{Title: blocks[0].Title, Blocks: blocks}
}

// atTable takes others in, or asks who joins and says how far each predicted by hand.
func (t *Table) atTable(others string) Answer {
	join := func(line string) Answer {
		if line == "" {
			return says()
		}
		if why := t.Enrol(line); why != "" {
			return refuses(why)
		}
		if err := t.SaveRun(); err != nil {
			return refuses(record.Sentence(err))
		}
		return says(t.Seated())
	}
	if others != "" {
		return join(others)
	}
	return Answer{Title: titleNames, Said: t.Statuses(), Then: &Question{Text: saidJoining, Sample: sampleNames, Free: true, Take: join}}
}

func (t *Table) note(text string) Answer {
	if text == "" {
		return Answer{Title: titleNotes, Blocks: t.Form.written()}
	}
	t.Form.Notes = append(t.Form.Notes, text)
	return t.noted(saidNoted)
}

func (t *Table) conclude(text string) Answer {
	if text == "" {
		return Answer{Title: titleNotes, Blocks: t.Form.written()}
	}
	t.Form.Conclusion = text
	return t.noted(saidConcluded)
}

func (t *Table) noted(said string) Answer {
	if err := t.SaveRun(); err != nil {
		return refuses(record.Sentence(err))
	}
	return says(said)
}

func (t *Table) warnings() []string {
	warnings := t.Form.Warnings()
	// Before the result has been seen, the warnings with predicted forces in them would give it away.
	if r, why := t.Form.Result(); why == nil && t.passed[StepResult] {
		warnings = r.Warnings
	}
	if warnings == nil {
		return []string{saidNoWarnings}
	}
	return warnings
}

func (t *Table) drawing(string) Answer {
	scene := picture.OfProblem(t.Form.Ref(), picture.View{})
	return Answer{Title: titleApparatus, Scene: &scene}
}
