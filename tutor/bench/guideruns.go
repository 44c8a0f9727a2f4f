package bench

// plot draws what is predicted against a letter, with the points of every run of this
// apparatus.
func (g *Guide) plot(by string) error {
	scene, notes, why, err := g.table.Plot(by)
	if err != nil {
		return err
	}
	if why != "" {
		g.say(why)
		return nil
	}
	g.show(scene)
	g.say(notes...)
	return nil
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

// again begins another run of the apparatus.
func (g *Guide) again() error {
	said, err := g.table.Again()
	if err == nil {
		g.say(said)
	}
	return err
}

func (g *Guide) compare(numbers string) error {
	blocks, why := g.table.Compare(numbers)
	if why != "" {
		g.say(why)
		return nil
	}
	g.blocks(blocks)
	return nil
}
