package bench

// report writes the page for the lab book.
func (g *Guide) report(name string) error {
	said, err := g.table.Report(g.Save, name, g.zone())
	if err == nil {
		g.say(said...)
	}
	return err
}

func (g *Guide) sheet(name string) error {
	said, err := g.table.Sheet(g.Save, name)
	if err == nil {
		g.say(said)
	}
	return err
}
