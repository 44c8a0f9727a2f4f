package bench

import (
	"strings"
)

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

// trial computes a run that is kept; false where it has no result any more.
func (g *Guide) trial(run Run) (Trial, bool) {
	key := run.ID + run.Text
	if t, ok := g.trialled[key]; ok {
		return t, true
	}
	t, wrong, err := run.again(g.Tutor)
	if err != nil || wrong != nil {
		return Trial{}, false
	}
	if g.trialled == nil {
		g.trialled = map[string]Trial{}
	}
	g.trialled[key] = t
	return t, true
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
