package bench

import (
	"strings"
)

// measure asks for every given in turn.
func (g *Guide) measure() error {
	for i := range g.table.Form.Fields {
		if g.table.Form.Fields[i].Kind != Measure {
			continue
		}
		if err := g.field(i); err != nil {
			return err
		}
	}
	return nil
}

// read asks for every reading that the problem asks for.
func (g *Guide) read() error {
	for i := range g.table.Form.Fields {
		e := &g.table.Form.Fields[i]
		if e.Kind != Reading || !g.table.Form.asked(e.Letter) {
			continue
		}
		if err := g.field(i); err != nil {
			return err
		}
	}
	return nil
}

// field asks for one field until its text can be read. An empty line leaves it as it
// was before; a line that names a letter goes there.
func (g *Guide) field(i int) error {
	e := &g.table.Form.Fields[i]
	before := e.Typed
	g.say(g.table.Form.saidAsk(e))
	for {
		line, err := g.ask()
		if err != nil {
			return err
		}
		switch {
		case is(line, wordHelp):
			g.blocks([]Block{Notation()})
			g.say(g.table.Form.saidAsk(e))
		case line == "":
			g.table.Form.Type(i, before)
			g.say(g.table.Form.saidLeft(e))
			return nil
		case strings.Contains(line, "="):
			if g.assign(line); e.Typed != before && e.Good() {
				return g.quality(i)
			}
		case g.table.Form.Type(i, line):
			g.say(saidTaken(e))
			return g.quality(i)
		default:
			g.say(saidMend(e))
		}
	}
}

// quality asks how sure a value is where its text does not say.
func (g *Guide) quality(i int) error {
	e := &g.table.Form.Fields[i]
	question, _ := g.table.Form.Unsure(i)
	if question == "" {
		return nil
	}
	g.say(question)
	before := e.Typed
	for {
		line, err := g.ask()
		if err != nil || line == "" {
			return err
		}
		if g.table.Form.Type(i, g.table.Form.Surer(i, line)) {
			g.say(saidTaken(e))
			return nil
		}
		g.say(saidMend(e))
		g.table.Form.Type(i, before)
	}
}

// assign obeys a line that names its field: "m = 0.5 kg ± 1 %", "hanger m = 50 g",
// "ring = 12 g", "T1 = 3.6 N div 0.1 N". Where what stands behind the sign cannot be read,
// the field keeps what it had; with nothing behind it, it is emptied.
func (g *Guide) assign(line string) bool {
	i, value, why := g.table.Form.Aim(line)
	if why != "" {
		g.say(why)
		return false
	}
	e := &g.table.Form.Fields[i]
	if why := g.table.Form.Put(i, value); why != "" {
		g.say(saidRefused(why))
		if e.Typed != "" {
			g.say(g.table.Form.saidLeft(e))
		}
		return false
	}
	if e.Typed == "" {
		g.say(g.table.Form.saidLeft(e))
	} else {
		g.say(saidTaken(e))
	}
	return true
}

// extras asks for what comes on top of a mass, until an empty line.
func (g *Guide) extras() error {
	said := g.table.Form.saidExtras()
	if said == "" {
		return nil
	}
	g.say(said)
	for {
		line, err := g.ask()
		if err != nil || line == "" {
			return err
		}
		if is(line, wordHelp) || !strings.Contains(line, "=") {
			g.say(said)
			continue
		}
		g.assign(line)
	}
}

// byHand warns of what the values mean for the apparatus, and has each student
// predict before the sums are shown.
func (g *Guide) byHand() error {
	r, why := g.table.Form.Result()
	if why != nil {
		g.say(why...)
		return nil
	}
	g.blocks([]Block{{Title: "Warning", Lines: r.Warnings}})
	if g.Practise == nil || len(g.table.Students) == 0 {
		return nil
	}
	g.say(saidByHand(names(g.table.Students)))
	for {
		line, err := g.ask()
		if err != nil || line == "" {
			return err
		}
		if err := g.predict(line); err != nil {
			return err
		}
	}
}

// predict leads the student of that name through the stages on the measured numbers.
func (g *Guide) predict(name string) error {
	p, why := g.table.Form.Copy()
	if why != "" {
		g.say(why)
		return nil
	}
	if err := g.keep(); err != nil {
		return err
	}
	s, why := g.table.Called(name)
	if why != "" {
		g.say(why)
		return nil
	}
	err := g.Practise(s, p, g.table.run)
	g.say(saidBackFrom(g.table.Standing(s)), saidByHandAgain)
	return err
}
