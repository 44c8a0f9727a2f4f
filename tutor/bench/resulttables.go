package bench

import "example.org/standstill/tutor/bench/measure"

// verdictSigns stand before the verdict in a table. They are not the signs of right and
// wrong in a lesson: about a measurement there is neither.
var verdictSigns = map[Verdict]string{Agree: "=", Differ: "≠", CannotTell: "?"}

// glance is the result as a table: what is predicted, what was read, how far they are
// apart, and how far they may be.
func (r *Result) glance() Block {
	b := Block{Title: "Result", Glance: true, Spare: []int{4, 3}, Head: []string{"", "predicted", "read", "difference", "allowed", "Eₙ"}}
	// Without readings the columns for them would be empty.
	if r.Compared == nil {
		b.Head, b.Spare = b.Head[:2], nil
	}
	for i := range r.Predicted {
		p := &r.Predicted[i]
		row := []string{"  " + p.Name, p.short(), "–", "", "", ""}
		for _, c := range r.Compared {
			if c.Predicted == p {
				// The letter has been read, so its row says more.
				row = []string{verdictSigns[c.Verdict] + " " + p.Name, p.short(), p.spread(c.Read, c.Expanded), c.apart(), p.in(c.Combined), saidEn(c.En)}
			}
		}
		b.Rows = append(b.Rows, row[:len(b.Head)])
	}
	return b
}

// apart is a reading less its prediction, with its sign and as many decimals as what is
// allowed has.
func (c *Comparison) apart() string {
	p := c.Predicted
	x, _ := measure.Quote((c.Read-p.Value)/p.Unit.Factor, c.Combined/p.Unit.Factor)
	if c.Read > p.Value {
		x = "+" + x
	}
	return measure.WithUnit(x, p.Unit)
}

// sums is the table of what the measured forces add up to.
func (r *Result) sums() Block {
	b := Block{Title: titleLeft, Lines: r.NoSum, Head: []string{"", "sum", ""}}
	for _, l := range r.Left {
		sign, said := verdictSigns[Agree], saidZeroWithin
		switch {
		case !(l.U > 0):
			sign, said = " ", ""
		case !l.Within():
			sign, said = verdictSigns[Differ], saidZeroOutside
		}
		b.Rows = append(b.Rows, []string{sign + " " + l.Name(), l.short(), said})
	}
	return b
}

// short is a sum with its expanded uncertainty: "(0.03 ± 0.12) N".
func (l Leftover) short() string {
	x, u := measure.Quote(l.Value/l.Unit.Factor, l.Expanded/l.Unit.Factor)
	if u == "" {
		return measure.WithUnit(measure.Figured(l.Value/l.Unit.Factor, 2), l.Unit)
	}
	return measure.WithUnit("("+x+" ± "+u+")", l.Unit)
}
