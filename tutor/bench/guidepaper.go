package bench

// report writes the page for the lab book.
func (g *Guide) report(name string) error {
	if err := g.keep(); err != nil {
		return err
	}
	trials, err := g.table.Trials()
	if err != nil {
		return err
	}
	if n := len(trials); n == 0 || trials[n-1].form != g.table.Form {
		g.with(func(*Result) {})
		return nil
	}
	page, err := Report(trials, About{Students: g.table.Standings(), When: trials[len(trials)-1].when(g)})
	if err != nil {
		return err
	}
	g.save(name, g.table.Form.problem.ID+"-report.html", page)
	return nil
}

// when is the time of the run in hand.
func (t Trial) when(g *Guide) string {
	runs, _, err := g.runs(g.table.Form.problem.ID)
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
	page, err := Sheet(g.table.Form)
	if err != nil {
		return err
	}
	g.save(name, g.table.Form.problem.ID+"-sheet.html", page)
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
