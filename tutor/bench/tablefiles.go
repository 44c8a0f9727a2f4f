package bench

// Saver writes a file of that name, or of the usual one where name is "", and returns
// where it is.
type Saver func(name, usual string, content []byte) (where string, err error)

// report keeps the run and writes its page for the lab book, with this group's runs of
// the apparatus in it.
func (t *Table) report(name string) Answer {
	trials, why := t.chosen("")
	if why != "" {
		return refuses(why)
	}
	// The run in hand has no result yet: its own sentence says what is missing.
	if n := len(trials); n == 0 || trials[n-1].form != t.Form {
		_, why := t.Form.Result()
		return refuses(why...)
	}
	page, err := Report(trials, t.axes)
	if err != nil {
		return refuses(saidNotSaved(err))
	}
	return t.saved(name, t.Form.problem.ID+"-report.html", page)
}

// sheet writes the sheet to fill in.
func (t *Table) sheet(name string) Answer {
	page, err := Sheet(t.Form)
	if err != nil {
		return refuses(saidNotSaved(err))
	}
	return t.saved(name, t.Form.problem.ID+"-sheet.html", page)
}

// export writes this group's runs of the apparatus as a table.
func (t *Table) export(name string) Answer {
	trials, why := t.chosen("")
	if why != "" {
		return refuses(why)
	}
	if len(trials) == 0 {
		return refuses(saidNothingToPlot)
	}
	table, err := Export(trials)
	if err != nil {
		return refuses(saidNotSaved(err))
	}
	return t.saved(name, t.Form.problem.ID+"-runs.csv", table)
}

func (t *Table) saved(name, usual string, content []byte) Answer {
	if t.Save == nil {
		return refuses(saidNoFiles)
	}
	where, err := t.Save(name, usual, content)
	if err != nil {
		return refuses(saidNotSaved(err))
	}
	return says(saidSaved(where))
}
