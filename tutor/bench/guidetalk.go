package bench

import (
	"strconv"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/problems"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/record"
)

// What may be typed once the form was gone through.
const (
	wordLeave    = "leave"
	wordHelp     = "help"
	wordResult   = "result"
	wordBudget   = "budget"
	wordValues   = "values"
	wordPlot     = "plot"
	wordDrawing  = "drawing"
	wordRuns     = "runs"
	wordOpen     = "open"
	wordAgain    = "again"
	wordCompare  = "compare"
	wordPredict  = "predict"
	wordStudents = "students"
	wordReport   = "report"
	wordSheet    = "sheet"
	wordCautions = "cautions"
	wordText     = "text"
)

func is(line, word string) bool { return strings.EqualFold(strings.TrimSpace(line), word) }

// talk shows the result and obeys words, until the students leave.
func (g *Guide) talk() error {
	g.result()
	g.say(saidThen)
	for {
		line, err := g.ask()
		if err != nil {
			return err
		}
		if err := g.obey(line); err != nil {
			return err
		}
	}
}

func (g *Guide) obey(line string) error {
	if strings.Contains(line, "=") {
		if g.assign(line) {
			g.result()
		}
		return nil
	}
	word, rest, _ := strings.Cut(line, " ")
	rest = strings.TrimSpace(rest)
	if do, ok := g.words()[strings.ToLower(word)]; ok {
		return do(rest)
	}
	g.say(saidThen)
	return nil
}

// words is the table of what a word does; each is given what stands behind it.
func (g *Guide) words() map[string]func(string) error {
	plainly := func(do func()) func(string) error { return func(string) error { do(); return nil } }
	return map[string]func(string) error{
		wordResult:   plainly(func() { g.result() }),
		wordBudget:   plainly(g.budget),
		wordValues:   plainly(g.values),
		wordHelp:     plainly(func() { g.blocks([]Block{wordsHelp(), Notation()}) }),
		wordCautions: plainly(func() { g.blocks([]Block{{Title: "Caution", Lines: Cautions()}}) }),
		wordText:     plainly(g.opening),
		wordDrawing:  plainly(g.draw),
		wordPlot:     g.plot,
		wordRuns:     func(string) error { return g.listRuns() },
		wordOpen: func(rest string) error {
			if err := g.keep(); err != nil {
				return err
			}
			if g.open(rest) {
				g.result()
			}
			return nil
		},
		wordAgain:    func(string) error { return g.again() },
		wordCompare:  g.compare,
		wordStudents: g.atTable,
		wordPredict:  g.predictNow,
		wordReport:   g.report,
		wordSheet:    g.sheet,
	}
}

// result shows the short of a run and keeps it.
func (g *Guide) result() {
	r, why := g.form.Result()
	if why != nil {
		g.say(why...)
		g.say(saidMendValues)
		return
	}
	blocks := append([]Block{{Title: "Warning", Lines: r.Warnings}}, r.Main()...)
	for i := range blocks {
		if blocks[i].Title == titleLookAt && g.looked {
			blocks[i].Lines = nil // said once
		}
		g.looked = g.looked || blocks[i].Title == titleLookAt && blocks[i].Lines != nil
	}
	g.blocks(blocks)
	if err := g.keep(); err != nil {
		g.say(record.Sentence(err))
	}
}

// with does something with the result, or says why there is none.
func (g *Guide) with(do func(*Result)) {
	r, why := g.form.Result()
	if why != nil {
		g.say(why...)
		return
	}
	do(r)
}

func (g *Guide) budget() { g.with(func(r *Result) { g.blocks(r.Details()) }) }

// values shows everything that was typed, the fields that are to be mended too.
func (g *Guide) values() {
	for i := range g.form.Fields {
		switch e := &g.form.Fields[i]; {
		case e.Why != "":
			g.say(saidMend(e))
		case e.Typed != "":
			g.say(saidTaken(e))
		case e.Kind == Measure:
			g.say(g.form.saidLeft(e))
		}
	}
}

// Sizes of drawings on a terminal, and the room that they leave for the question.
const (
	canvasRows = 19
	canvasCols = 78
)

func (g *Guide) show(scene picture.Scene) {
	if g.Style.Plain {
		g.say(picture.Sentences(scene)...)
		return
	}
	for _, line := range picture.Braille(scene, min(g.Style.width()-2, canvasCols), canvasRows).Lines() {
		g.Say(line)
	}
}

func (g *Guide) draw() {
	p, why := g.form.Copy()
	if why != "" {
		g.say(why)
		return
	}
	if ref, err := p.Reference(); err == nil {
		g.show(picture.OfProblem(ref, picture.View{}))
	}
}

// plot draws what is predicted against a letter, with the points of every run of this
// apparatus.
func (g *Guide) plot(by string) error {
	if err := g.keep(); err != nil {
		return err
	}
	trials, err := g.trials()
	if err != nil {
		return err
	}
	scene, notes, why := Plot(trials, by)
	if why != "" {
		g.say(why)
		return nil
	}
	g.show(scene)
	g.say(notes...)
	return nil
}

// trials are all runs of this apparatus that have a result, the one in hand last.
func (g *Guide) trials() ([]Trial, error) {
	runs, _, err := g.runs("")
	if err != nil {
		return nil, err
	}
	own := Trial{Number: len(runs) + 1}
	var trials []Trial
	for _, run := range runs {
		if run.ID == g.run {
			own.Number = run.Number
		}
		if run.ID == g.run || run.Problem != g.form.problem.ID {
			continue
		}
		if t, ok := g.trial(run); ok {
			trials = append(trials, t)
		}
	}
	if r, why := g.form.Result(); why == nil {
		own.Result = r
		trials = append(trials, own)
	}
	return trials, nil
}

func (g *Guide) trial(run Run) (Trial, bool) {
	f, err := run.Open(g.Tutor.Record, g.Tutor.Bank)
	if err != nil {
		return Trial{}, false
	}
	r, why := f.Result()
	return Trial{Number: run.Number, Result: r}, why == nil
}

func (g *Guide) listRuns() error {
	runs, who, err := g.runs("")
	if err != nil {
		return err
	}
	if len(runs) == 0 {
		g.say(saidNoRuns)
	}
	for _, run := range runs {
		g.say(run.Said(who, g.zone()))
	}
	return nil
}

// again begins another run of the apparatus: values stay, readings are emptied.
func (g *Guide) again() error {
	if err := g.keep(); err != nil {
		return err
	}
	for i := range g.form.Fields {
		if g.form.Fields[i].Kind == Reading {
			g.form.Type(i, "")
		}
	}
	g.run, g.kept = "", ""
	g.say(saidAgain)
	return nil
}

func (g *Guide) compare(numbers string) error {
	if err := g.keep(); err != nil {
		return err
	}
	var trials []Trial
	for _, number := range strings.FieldsFunc(numbers, func(r rune) bool { return r == ' ' || r == ',' }) {
		run, ok := g.numbered(number)
		if !ok {
			return nil
		}
		t, ok := g.trial(run)
		if !ok {
			g.say(saidCannotOpen(run.Number))
			return nil
		}
		trials = append(trials, t)
	}
	blocks, why := Compare(trials)
	if why != "" {
		g.say(why)
		return nil
	}
	g.blocks(blocks)
	return nil
}

// atTable lists the students with what they predicted, or takes others in.
func (g *Guide) atTable(others string) error {
	if others != "" {
		g.enrol(others)
		g.kept = "" // those who joined are written to the run
		return g.keep()
	}
	for _, line := range g.standings() {
		g.say(line)
	}
	if len(g.students) == 0 {
		g.say(saidNobodyThere)
	}
	return nil
}

func (g *Guide) standings() []string {
	var lines []string
	for _, s := range g.students {
		lines = append(lines, s.Name+g.standing(s))
	}
	return lines
}

// standing says how far a student has come by hand on the measured numbers.
func (g *Guide) standing(s record.Student) string {
	if g.Standing == nil {
		return ""
	}
	p, why := g.form.Copy()
	if why != "" {
		return ""
	}
	return saidStanding(g.Standing(s, p))
}

func (g *Guide) predictNow(name string) error {
	if g.Practise == nil {
		g.say(saidNoPractice)
		return nil
	}
	if name == "" && len(g.students) == 1 {
		name = g.students[0].Name
	}
	return g.predict(name)
}

// choose has the students choose the problem that is built like their apparatus.
func (g *Guide) choose() (*problems.Problem, error) {
	var topics []string
	byTopic := map[string][]problems.Heading{}
	for _, h := range g.Tutor.Bank.List() {
		if byTopic[h.Topic] == nil {
			topics = append(topics, h.Topic)
		}
		byTopic[h.Topic] = append(byTopic[h.Topic], h)
	}
	for {
		g.say(saidChooseTopic)
		for i, topic := range topics {
			g.say(strconv.Itoa(i+1) + ". " + titleOf(topic))
		}
		line, err := g.ask()
		if err != nil {
			return nil, err
		}
		if p, err := g.Tutor.Bank.Get(line); err == nil {
			return p, nil
		}
		i, err := strconv.Atoi(strings.TrimSuffix(line, "."))
		if err != nil || i < 1 || i > len(topics) {
			continue
		}
		if p, err := g.chooseFrom(byTopic[topics[i-1]]); p != nil || err != nil {
			return p, err
		}
	}
}

func titleOf(topic string) string {
	for _, t := range problems.Topics() {
		if t.ID == topic {
			return t.Title
		}
	}
	return topic
}

func (g *Guide) chooseFrom(list []problems.Heading) (*problems.Problem, error) {
	for i, h := range list {
		g.say(strconv.Itoa(i+1) + ". " + h.Title + " (" + h.ID + ")")
	}
	g.say(saidChooseProblem)
	line, err := g.ask()
	if err != nil {
		return nil, err
	}
	id := expr.Clean(line)
	if i, err := strconv.Atoi(strings.TrimSuffix(line, ".")); err == nil && i >= 1 && i <= len(list) {
		id = list[i-1].ID
	}
	p, err := g.Tutor.Bank.Get(id)
	if err != nil {
		return nil, nil
	}
	return p, nil
}

// report writes the page for the lab book.
func (g *Guide) report(name string) error {
	if err := g.keep(); err != nil {
		return err
	}
	trials, err := g.trials()
	if err != nil {
		return err
	}
	if n := len(trials); n == 0 || trials[n-1].form != g.form {
		g.with(func(*Result) {})
		return nil
	}
	page, err := Report(trials, About{Students: g.standings(), When: trials[len(trials)-1].when(g)})
	if err != nil {
		return err
	}
	g.save(name, g.form.problem.ID+"-report.html", page)
	return nil
}

// when is the time of the run in hand.
func (t Trial) when(g *Guide) string {
	runs, _, err := g.runs(g.form.problem.ID)
	if err != nil {
		return ""
	}
	for _, run := range runs {
		if run.Number == t.Number {
			return run.when(g.zone())
		}
	}
	return ""
}

func (g *Guide) sheet(name string) error {
	page, err := Sheet(g.form)
	if err != nil {
		return err
	}
	g.save(name, g.form.problem.ID+"-sheet.html", page)
	return nil
}

func (g *Guide) save(name, usual string, page []byte) {
	if g.Save == nil {
		g.say(saidNoFiles)
		return
	}
	where, err := g.Save(name, usual, page)
	if err != nil {
		g.say(saidNotSaved(err))
		return
	}
	g.say(saidSaved(where))
}
