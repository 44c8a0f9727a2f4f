package screen

import (
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
)

// componentTable shows what stands for each part of each force: what the student
// wrote, which is asked now, which is still open.
func componentTable(m *model, cols int) []row {
	l := m.look
	names := forceColumn(m.lesson.Page)
	width := 3
	for _, n := range names {
		width = max(width, textWidth(n)+2)
	}
	cell := (cols - width) / 2
	rows := []row{append(row{gap(width)}, append(l.row(quiet, wordAlongX).padded(cell), l.text(quiet, wordAlongY))...)}
	items := m.lesson.Items(checker.Components)
	for i := 0; i+1 < len(items); i += 2 {
		r := append(row{gap(1)}, m.tint(bold, names[i/2], false)...).padded(width)
		r = append(r, m.cell(items[i], cell)...).padded(width + cell)
		rows = append(rows, append(r, m.cell(items[i+1], cell)...))
	}
	return rows
}

// forceColumn lists the forces in the order of their components.
func forceColumn(g *tutor.Page) []string {
	var names []string
	for _, b := range g.Ref.Bodies {
		for _, f := range b.Forces {
			name := onPaper(f.Name)
			if b.Name != "" && len(g.Ref.Bodies) > 1 {
				name = b.Name + " " + name
			}
			names = append(names, name)
		}
	}
	return names
}

func (m *model) cell(item tutor.Item, width int) row {
	l := m.look
	switch {
	case item.Done:
		r := m.tint(plain, m.flat(checker.Components, m.written(item.Name)), false)
		if item.Kept {
			r = append(row{l.text(near, l.signs.kept+" ")}, r...)
		}
		return r.cut(width - 1)
	case m.now.open && m.stage() == checker.Components && item.Name == m.now.ask.Item:
		return row{l.text(bold, l.signs.handLeft+" "+wordNow)}
	}
	return row{l.text(quiet, l.signs.nothing)}
}

// written is the right side of what the student wrote for a component, with the sign that
// it has on the axis: what was taken as a size goes into the sum with a minus.
func (m *model) written(item string) string {
	text, isSize := "", false
	lines := m.lesson.Lines()
	for i := range lines {
		line := &lines[i]
		for _, p := range line.Statements() {
			if p.Stage == checker.Components && p.Item == item && (p.Verdict == checker.Right || line.Kept || line.Accepted) {
				text, isSize = p.Read, p.AsSize != ""
			}
		}
	}
	if at := strings.LastIndex(text, "= "); at >= 0 {
		text = text[at+2:]
	}
	switch {
	case isSize && strings.ContainsAny(text, "+−"):
		return "−(" + text + ")"
	case isSize:
		return "−" + text
	}
	return text
}
