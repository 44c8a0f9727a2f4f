package bench

import "slices"

// The result is told in three places. Lines of text show Main, and Details for those who
// ask; the screen shows Short, and Long on the page behind it; the report and a file that
// is worked out at once (Blocks) show Main and Details together. All show MeasuredBlocks.

// Main is the result in sentences: predictions, comparisons, what the measured forces add
// up to, what to measure better, and last the line for the lab book.
func (r *Result) Main() []Block {
	left := Block{Title: titleLeft}
	for _, l := range r.Left {
		left.Lines = append(left.Lines, l.said())
	}
	left.Lines = append(left.Lines, r.NoSum...)
	return []Block{r.glance(), r.predicted(), r.compared(), left, r.causes(), r.better(), r.labBook()}
}

// Details are the budgets, the correlations and the check by random trials.
func (r *Result) Details() []Block {
	var blocks []Block
	for i := range r.Predicted {
		blocks = append(blocks, r.Predicted[i].budget())
	}
	return append(blocks, r.correlations(), r.checked())
}

// Short is the result for one look: a table, a sentence for each comparison, the sums, and
// the lines for the lab book. Long has the numbers behind it.
func (r *Result) Short() []Block {
	table, said := r.glance(), Block{}
	table.Title, table.Glance = "", false
	if r.Compared != nil {
		said.Lines = r.assumedFirst()
	}
	for _, c := range r.Compared {
		said.Lines = append(said.Lines, c.shortSaid())
	}
	said.Lines = append(said.Lines, r.advice()...)
	if slices.ContainsFunc(r.Compared, func(c Comparison) bool { return c.Verdict == Differ }) {
		said.Lines = append(said.Lines, saidLook)
	}
	meaning := Block{Title: titleMeaning, Lines: r.explained()}
	if r.Compared != nil {
		meaning.Lines = append(meaning.Lines, saidEnMeans)
	}
	return []Block{table, said, r.sums(), r.better(), r.labBook(), meaning}
}

// Long is what Short leaves out: each prediction and comparison with its coverage, and
// the details.
func (r *Result) Long() []Block {
	return append([]Block{r.predicted(), r.compared(), r.causes()}, r.Details()...)
}

// Blocks is everything that a run comes to, in the order in which it is told: cautions
// and warnings first, the line for the lab book last.
func (r *Result) Blocks() []Block {
	blocks := []Block{CautionBlock(), {Title: titleWarning, Lines: r.Warnings}}
	blocks = append(blocks, r.MeasuredBlocks()...)
	main := r.Main()
	blocks = append(blocks, main[:len(main)-1]...)
	blocks = append(blocks, r.Details()...)
	return append(blocks, main[len(main)-1])
}

// MeasuredBlocks tells what was put into the equations.
func (r *Result) MeasuredBlocks() []Block {
	measured, assumed := Block{Title: "Measured"}, Block{Title: "Assumed, not measured"}
	for i := range r.Inputs {
		in := &r.Inputs[i]
		if in.Assumed {
			// Kept apart: a value out of the file is no measurement, however exact it looks.
			assumed.Lines = append(assumed.Lines, r.saidAssumed(in))
			continue
		}
		measured.Lines = append(measured.Lines, in.Name()+" = "+in.Taken)
	}
	for i := range r.form.Fields {
		switch e := &r.form.Fields[i]; {
		case e.Kind == Reading && e.Good():
			measured.Lines = append(measured.Lines, e.Name()+", read: "+e.Taken)
		case e.Kind == Scale && e.Good():
			measured.Lines = append(measured.Lines, e.Name()+", used for all force readings: "+e.Taken)
		}
	}
	return []Block{measured, assumed}
}
