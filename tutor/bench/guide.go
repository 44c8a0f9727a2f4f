package bench

import (
	"errors"
	"slices"
	"strings"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/record"
)

// Guide leads a table through the script in lines of text, one question after another.
// Tutor, Say and Ask are needed. Ask waits for a line; its error ends the run, with
// everything typed so far kept.
//
// Practise leads a student through the stages of a problem with the numbers of a run;
// where it is nil, nobody is asked to predict by hand.
type Guide struct {
	Table
	Say      func(line string)
	Ask      func() (string, error)
	Practise func(*tutor.Desk, *tutor.Lesson) error
	Style    Style
	Begun    *Form // what was measured already of the problem that Run is given; may be nil
}

// errQuit ends a run: the students leave.
var errQuit = errors.New("leave")

// Words of the lines alone.
const (
	wordQuit = "quit"
	wordStop = "leave" // the same, for whoever is used to it
	wordHelp = "help"
)

func is(line, word string) bool { return strings.EqualFold(strings.TrimSpace(line), word) }

// Run leads through one run, or as many as the students like. p is the model, nil to have
// them choose one. The error is that of the record or of Ask, nil when the students
// leave.
func (g *Guide) Run(p *problems.Problem) error {
	err := g.lead(p)
	// Also after an error: what was typed so far is saved.
	kept := g.SaveRun()
	if errors.Is(err, errQuit) {
		return kept
	}
	return err
}

func (g *Guide) lead(p *problems.Problem) (err error) {
	if p == nil {
		if p, err = g.choose(); err != nil {
			return err
		}
	}
	if err = g.Begin(p); err != nil {
		return err
	}
	if g.Begun != nil {
		g.Form = g.Begun
	}
	g.say(saidApparatus(g.Form.Heading()), g.Form.Statement(), saidLetters(g.Form.letterNames()))
	for _, s := range g.script() {
		if err := g.step(s); err != nil {
			return err
		}
	}
	return g.talk()
}

// step shows a step and puts its questions until they are answered.
func (g *Guide) step(s Step) error {
	// The last moment before the scales are read, when something can still be changed safely.
	if s.Name == StepReadings {
		g.blocks([]Block{{Title: titleWarning, Lines: g.Form.Warnings()}})
	}
	if s.Shows != nil {
		g.blocks(s.Shows(&g.Table))
	}
	for i := range g.Form.Fields {
		if g.isAsked(s, i) {
			if err := g.put(g.Field(i)); err != nil {
				return err
			}
		}
	}
	if extras := g.extras(s); extras != nil {
		if err := g.put(extras); err != nil {
			return err
		}
	}
	// Nobody can lead a lesson here, so it is not offered.
	if s.Ask == nil || s.Name == StepByHand && g.Practise == nil {
		return nil
	}
	for {
		q, ok := s.Ask(&g.Table)
		if !ok {
			return nil
		}
		if err := g.put(q); err != nil {
			return err
		}
	}
}

// isAsked reports whether lines ask for a field by itself: for what is put into the
// equations, and for readings of what the problem asks for.
func (g *Guide) isAsked(s Step, i int) bool {
	e := &g.Form.Fields[i]
	return slices.Contains(s.Kinds, e.Kind) && (e.Kind == Measure || g.Form.isAsked(e))
}

// extras asks for all other fields of a step at once, until an empty line.
func (g *Guide) extras(s Step) *Question {
	said := g.Form.saidExtras(s.Kinds)
	if said == "" {
		return nil
	}
	return &Question{Text: said, Take: func(line string) Answer {
		switch {
		case line == "":
			return says()
		case !Assigns(line):
			return refuses(said)
		}
		a := g.Assign(line)
		// The question stays open until an empty line.
		a.Stay = true
		return a
	}}
}

// put asks a question until it is answered, and what follows from the answer.
func (g *Guide) put(q *Question) error {
	g.asks(q)
	for {
		line, err := g.ask()
		if err != nil {
			return err
		}
		if is(line, wordHelp) {
			g.blocks([]Block{Notation()})
			g.asks(q)
			continue
		}
		// Only where any text may be the answer; elsewhere Accept knows the commands.
		if _, _, ok := CommandOf(line); ok && q.Free {
			_, err := g.answered(g.obey(line))
			return err
		}
		a := q.Accept(line)
		stay, err := g.answered(a)
		if err != nil || !stay {
			return err
		}
		if a.Predicts != nil {
			return nil // the question is another one now
		}
	}
}

func (g *Guide) asks(q *Question) {
	text := q.Text
	if q.Sample != "" {
		text += " " + saidSample(q.Sample)
	}
	g.say(text)
	for _, c := range q.Choices {
		if c.Line != "" {
			g.say(strings.TrimSuffix(c.Label+": "+c.Detail, ": "))
		}
	}
}

// answered says and shows an answer, puts the question that follows, and reports whether
// the question before is still open.
func (g *Guide) answered(a Answer) (stay bool, err error) {
	if a.Scene != nil {
		g.show(*a.Scene)
	}
	g.blocks(a.Blocks)
	g.say(a.Said...)
	switch {
	case a.Predicts != nil:
		return a.Stay, g.practise(*a.Predicts)
	case a.Then != nil:
		return false, g.put(a.Then)
	}
	return a.Stay, nil
}

func (g *Guide) practise(s record.Student) error {
	if g.Practise == nil {
		g.say(saidNoPractice)
		return nil
	}
	desk, lesson, err := g.Lesson(s)
	if err == nil {
		err = g.Practise(desk, lesson)
	}
	g.say(saidBackFrom(g.Status(s)))
	return err
}

// talk shows the result and obeys commands, until the students leave.
func (g *Guide) talk() error {
	for a := g.Result(); ; {
		if _, err := g.answered(g.shortened(a)); err != nil {
			return err
		}
		g.say(saidThen)
		line, err := g.ask()
		if err != nil {
			return err
		}
		// A value that needs one more answer, such as its division, gets it before the result is shown.
		if a = g.obey(line); a.Then != nil && Assigns(line) {
			if _, err := g.answered(a); err != nil {
				return err
			}
			a = g.Result()
		}
	}
}

// shortened leaves the list of systematic errors to its own word: what must not be
// overlooked stands above what would push it off the screen.
func (g *Guide) shortened(a Answer) Answer {
	for i := range a.Blocks {
		if b := &a.Blocks[i]; b.Title == titleLookAt && b.Lines != nil {
			b.Lines = []string{saidLook}
		}
	}
	return a
}

func (g *Guide) obey(line string) Answer {
	c, rest, ok := CommandOf(line)
	switch {
	case ok:
		a := g.Do(c, rest)
		// Whoever opens a run wants to see what came of it.
		if a.Opened && c.Word == "open" && !a.Stay {
			return merged(a, g.Result())
		}
		return a
	case is(line, wordHelp):
		return Answer{Blocks: []Block{commandsHelp(), Notation()}}
	case Assigns(line):
		a := g.Assign(line)
		if a.Stay || a.Then != nil || g.Form.Bad() != nil {
			return a
		}
		return merged(a, g.Result())
	case line != "":
		return says(saidNotKnown(line))
	}
	return says()
}

// merged is one answer and another after it.
func merged(a, b Answer) Answer {
	b.Said = append(a.Said, b.Said...)
	return b
}

// say sets lines to the width.
func (g *Guide) say(lines ...string) {
	for _, line := range lines {
		if g.Style.Plain {
			g.Say(line)
			continue
		}
		for _, wrapped := range wrap(line, g.Style.width(), "") {
			g.Say(wrapped)
		}
	}
}

func (g *Guide) blocks(blocks []Block) {
	for _, line := range g.Style.Set(blocks) {
		g.Say(line)
	}
}

// ask waits for a line and leaves where that is what it says.
func (g *Guide) ask() (string, error) {
	line, err := g.Ask()
	if err != nil {
		return "", err
	}
	if is(line, wordQuit) || is(line, wordStop) {
		return "", errQuit
	}
	return strings.TrimSpace(line), nil
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

// commandsHelp lists the commands.
func commandsHelp() Block {
	b := Block{Title: titleWords, Head: headWords()}
	for _, c := range Commands() {
		b.Rows = append(b.Rows, []string{strings.TrimSpace(c.Word + " " + c.Takes), c.Does})
	}
	b.Rows = append(b.Rows, []string{wordHelp, saidHelpDoes}, []string{wordQuit, saidQuitDoes})
	return b
}
