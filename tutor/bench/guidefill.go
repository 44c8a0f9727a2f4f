package bench

import (
	"strings"

	"example.org/standstill/checker/quantity"
)

// measure asks for every given in turn.
func (g *Guide) measure() error {
	for i := range g.form.Fields {
		if g.form.Fields[i].Kind != Measure {
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
	for i := range g.form.Fields {
		e := &g.form.Fields[i]
		if e.Kind != Reading || !g.form.asked(e.Letter) {
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
	e := &g.form.Fields[i]
	before := e.Typed
	g.say(g.form.saidAsk(e))
	for {
		line, err := g.ask()
		if err != nil {
			return err
		}
		switch {
		case is(line, wordHelp):
			g.blocks([]Block{Notation()})
			g.say(g.form.saidAsk(e))
		case line == "":
			g.form.Type(i, before)
			g.say(g.form.saidLeft(e))
			return nil
		case strings.Contains(line, "="):
			if g.assign(line); e.Typed != before && e.Good() {
				return g.quality(i)
			}
		case g.form.Type(i, line):
			g.say(saidTaken(e))
			return g.quality(i)
		default:
			g.say(saidMend(e))
		}
	}
}

// quality asks how sure a value is where its text does not say: for the division of the
// scale behind repeated readings, for anything behind one reading alone. A constant
// such as g may well be exact.
func (g *Guide) quality(i int) error {
	e := &g.form.Fields[i]
	word := ""
	switch {
	case e.Value.AssumedDivision:
		word = "div "
		g.say(saidAskDivision(e))
	case e.Value.Measured && len(e.Value.Parts) == 0 && e.Want.Dim != quantity.Acceleration:
		g.say(saidAskQuality(e))
	default:
		return nil
	}
	before := e.Typed
	for {
		line, err := g.ask()
		if err != nil || line == "" {
			return err
		}
		line = word + strings.TrimSpace(strings.TrimPrefix(line, word))
		if g.form.Type(i, before+" "+line) {
			g.say(saidTaken(e))
			return nil
		}
		g.say(saidMend(e))
		g.form.Type(i, before)
	}
}

// assign obeys a line that names its field: "m = 0.5 kg ± 1 %", "hanger m = 50 g",
// "ring = 12 g", "T1 = 3.6 N div 0.1 N". Where what stands behind the sign cannot be read,
// the field keeps what it had; with nothing behind it, it is emptied.
func (g *Guide) assign(line string) bool {
	kind, rest := g.kindOf(line)
	name, value, _ := strings.Cut(rest, "=")
	i, why := g.form.Find(kind, name)
	if why != "" {
		g.say(why)
		return false
	}
	e := &g.form.Fields[i]
	before := e.Typed
	if !g.form.Type(i, value) {
		g.say(saidMend(e))
		if g.form.Type(i, before); before != "" {
			g.say(g.form.saidLeft(e))
		}
		return false
	}
	if e.Typed == "" {
		g.say(g.form.saidLeft(e))
	} else {
		g.say(saidTaken(e))
	}
	return true
}

// kindOf finds what a line with an equals sign is about.
func (g *Guide) kindOf(line string) (Kind, string) {
	word, rest, _ := strings.Cut(strings.TrimSpace(line), " ")
	for _, kind := range []Kind{Hanger, Ring} {
		switch {
		case strings.EqualFold(word, kindWords[kind]):
			return kind, rest
		case kind == Ring && strings.HasPrefix(strings.ToLower(line), "ring="):
			return Ring, line[len("ring"):]
		}
	}
	name, _, _ := strings.Cut(line, "=")
	if _, why := g.form.Find(Reading, name); why == "" {
		return Reading, line
	}
	return Measure, line
}

// extras asks for what comes on top of a mass, until an empty line.
func (g *Guide) extras() error {
	said := g.form.saidExtras()
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
	r, why := g.form.Result()
	if why != nil {
		g.say(why...)
		return nil
	}
	g.blocks([]Block{{Title: "Warning", Lines: r.Warnings}})
	if g.Practise == nil || len(g.students) == 0 {
		return nil
	}
	g.say(saidByHand(names(g.students)))
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
	p, why := g.form.Copy()
	if why != "" {
		g.say(why)
		return nil
	}
	if err := g.keep(); err != nil {
		return err
	}
	for _, s := range g.students {
		if strings.EqualFold(s.Name, name) {
			err := g.Practise(s, p, g.run)
			g.say(saidBackFrom(s.Name, saidStanding(standing(g.Tutor, s.ID, g.form))), saidByHandAgain)
			return err
		}
	}
	g.say(saidNobodyCalled(name, names(g.students)))
	return nil
}
