package bench

import (
	"errors"
	"strings"

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
	wordLook     = "look"
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
		err = g.obey(line)
		var fault *record.Error
		if errors.As(err, &fault) {
			// What was typed is still here: the next word tries to keep it again.
			g.say(record.Sentence(err))
			err = nil
		}
		if err != nil {
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
		wordLook:     plainly(func() { g.say(Systematic()...) }),
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
	r, why := g.table.Form.Result()
	if why != nil {
		g.say(why...)
		g.say(saidMendValues)
		return
	}
	blocks := r.Main()
	for i := range blocks {
		if b := &blocks[i]; b.Title == titleLookAt && b.Lines != nil {
			b.Lines = []string{saidLook}
		}
	}
	// What must not be overlooked comes last: the rest may have left the screen.
	g.blocks(append(blocks, Block{Title: "Warning", Lines: r.Warnings}))
	if err := g.keep(); err != nil {
		g.say(record.Sentence(err))
	}
}

// with does something with the result, or says why there is none.
func (g *Guide) with(do func(*Result)) {
	r, why := g.table.Form.Result()
	if why != nil {
		g.say(why...)
		return
	}
	do(r)
}

func (g *Guide) budget() { g.with(func(r *Result) { g.blocks(r.Details()) }) }

// values shows everything that was typed, the fields that are to be mended too.
func (g *Guide) values() {
	for i := range g.table.Form.Fields {
		switch e := &g.table.Form.Fields[i]; {
		case e.Why != "":
			g.say(saidMend(e))
		case e.Typed != "":
			g.say(saidTaken(e))
		case e.Kind == Measure:
			g.say(g.table.Form.saidLeft(e))
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
	p, why := g.table.Form.Copy()
	if why != "" {
		g.say(why)
		return
	}
	if ref, err := p.Reference(); err == nil {
		g.show(picture.OfProblem(ref, picture.View{}))
	}
}

// atTable lists the students with what they predicted, or takes others in.
func (g *Guide) atTable(others string) error {
	if others != "" {
		if why := g.table.Enrol(others); why != "" {
			g.say(why)
		}
		return g.keep()
	}
	for _, line := range g.table.Standings() {
		g.say(line)
	}
	if len(g.table.Students) == 0 {
		g.say(saidNobodyThere)
	}
	return nil
}

func (g *Guide) predictNow(name string) error {
	if g.Practise == nil {
		g.say(saidNoPractice)
		return nil
	}
	if name == "" && len(g.table.Students) == 1 {
		name = g.table.Students[0].Name
	}
	return g.predict(name)
}
