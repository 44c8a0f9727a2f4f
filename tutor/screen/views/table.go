package views

import (
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// components is the table of what stands for each part of each force: what the student
// wrote, which is asked now, which is still open.
func (l *Lesson) components(p *Pen, cols int) []frame.Row {
	names := forceColumn(l.Ref)
	width := 3
	for _, n := range names {
		width = max(width, frame.TextWidth(n)+2)
	}
	cell := (cols - width) / 2
	look := p.Look
	rows := []frame.Row{append(frame.Row{frame.Gap(width)}, append(look.Row(frame.Quiet, wordAlongX).Padded(cell), look.Text(frame.Quiet, wordAlongY))...)}
	// The components come in pairs, x and y of each force.
	for i := 0; i+1 < len(l.Components); i += 2 {
		r := append(frame.Row{frame.Gap(1)}, p.Tint(frame.Bold, names[i/2], false)...).Padded(width)
		r = append(r, l.cell(p, l.Components[i], cell)...).Padded(width + cell)
		rows = append(rows, append(r, l.cell(p, l.Components[i+1], cell)...))
	}
	return rows
}

// forceColumn lists the forces in the order of their components.
func forceColumn(ref *checker.Reference) []string {
	var names []string
	for _, b := range ref.Bodies {
		for _, f := range b.Forces {
			name := frame.OnPaper(f.Name)
			if b.Name != "" && len(ref.Bodies) > 1 {
				name = b.Name + " " + name
			}
			names = append(names, name)
		}
	}
	return names
}

func (l *Lesson) cell(p *Pen, item tutor.Item, width int) frame.Row {
	look := p.Look
	switch {
	case item.Done:
		r := p.Tint(frame.Plain, p.Flat(checker.Components, l.written(item.Name)), false)
		if item.Disputed {
			r = append(frame.Row{look.Text(frame.Near, look.Signs.Disputed+" ")}, r...)
		}
		return r.Cut(width - 1)
	case l.Open && l.Stage() == checker.Components && item.Name == l.Ask.Item:
		return frame.Row{look.Text(frame.Bold, look.Signs.HandLeft+" "+wordNow)}
	}
	return frame.Row{look.Text(frame.Quiet, look.Signs.Nothing)}
}

// written is the right side of what the student wrote for a component, with the sign that
// it has on the axis: what was taken as a size goes into the sum with a minus.
func (l *Lesson) written(item string) string {
	text, isSize := "", false
	for i := range l.Lines {
		line := &l.Lines[i]
		for _, one := range line.Statements() {
			if one.Stage == checker.Components && one.Item == item && counts(line, one) {
				text, isSize = one.Read, one.AsSize != ""
			}
		}
	}
	// Of “T1x = T1 cos α = 3.2 N” the end is what counts.
	if at := strings.LastIndex(text, "= "); at >= 0 {
		text = text[at+2:]
	}
	switch {
	// The minus is for the whole sum.
	case isSize && strings.ContainsAny(text, "+−"):
		return "−(" + text + ")"
	case isSize:
		return "−" + text
	}
	return text
}

// counts reports whether a statement of a line stands, as right or in dispute.
func counts(l *tutor.Line, one checker.Report) bool {
	return one.Verdict == checker.Right || l.Disputed || l.Accepted
}

// found shows the sums as they were written, and the values that are found.
func (l *Lesson) found(p *Pen, cols int) []frame.Row {
	var rows []frame.Row
	for _, stage := range []checker.Stage{checker.XSum, checker.YSum} {
		for _, line := range l.of(stage) {
			for _, one := range line.Statements() {
				if one.Stage == stage && counts(line, one) && strings.Contains(one.Read, "=") {
					rows = append(rows, l.sum(p, one, cols))
				}
			}
		}
	}
	if len(rows) > 0 {
		rows = append(rows, nil)
	}
	for _, item := range l.Unknowns {
		word, value := wordToFind, frame.Row{p.Look.Text(frame.Quiet, "?")}
		if item.Done {
			word, value = wordFound, p.Tint(frame.Plain, p.Flat(checker.Solve, l.value(item.Name)), false)
		}
		name := p.Tint(frame.Bold, expr.Set(item.Name), false)
		rows = append(rows, append(append(frame.Row{p.Look.Text(frame.Quiet, word+"  ")}, name...).Padded(12), value...).Cut(cols))
	}
	return rows
}

func (l *Lesson) sum(p *Pen, one checker.Report, cols int) frame.Row {
	name := "ΣFx"
	if one.Stage == checker.YSum {
		name = "ΣFy"
	}
	if one.Item != "" && len(l.Ref.Bodies) > 1 {
		name = one.Item + " " + name
	}
	text := p.Tint(frame.Plain, p.Flat(one.Stage, one.Read), false)
	return append(frame.Row{p.Look.Text(frame.Bold, name), frame.Gap(2)}, text...).Cut(cols)
}

// value is that of an unknown as it was written.
func (l *Lesson) value(name string) string {
	text := ""
	for _, line := range l.of(checker.Solve) {
		for _, one := range line.Statements() {
			if slices.Contains(one.Settles, name) {
				text = one.Read
			}
		}
	}
	if left, right, ok := strings.Cut(text, "="); ok && strings.TrimSpace(left) == expr.Glyph(name) {
		return strings.TrimSpace(right)
	}
	return text
}
