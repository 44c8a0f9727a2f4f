package screen

import (
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// componentTable shows what stands for each part of each force: what the student
// wrote, which is asked now, which is still open.
func componentTable(m *model, cols int) []frame.Row {
	l := m.look
	names := forceColumn(m.lesson.Page)
	width := 3
	for _, n := range names {
		width = max(width, frame.TextWidth(n)+2)
	}
	cell := (cols - width) / 2
	rows := []frame.Row{append(frame.Row{frame.Gap(width)}, append(l.Row(frame.Quiet, wordAlongX).Padded(cell), l.Text(frame.Quiet, wordAlongY))...)}
	items := m.lesson.Items(checker.Components)
	for i := 0; i+1 < len(items); i += 2 {
		r := append(frame.Row{frame.Gap(1)}, m.tint(frame.Bold, names[i/2], false)...).Padded(width)
		r = append(r, m.cell(items[i], cell)...).Padded(width + cell)
		rows = append(rows, append(r, m.cell(items[i+1], cell)...))
	}
	return rows
}

// forceColumn lists the forces in the order of their components.
func forceColumn(g *tutor.Page) []string {
	var names []string
	for _, b := range g.Ref.Bodies {
		for _, f := range b.Forces {
			name := frame.OnPaper(f.Name)
			if b.Name != "" && len(g.Ref.Bodies) > 1 {
				name = b.Name + " " + name
			}
			names = append(names, name)
		}
	}
	return names
}

func (m *model) cell(item tutor.Item, width int) frame.Row {
	l := m.look
	switch {
	case item.Done:
		r := m.tint(frame.Plain, m.flat(checker.Components, m.written(item.Name)), false)
		if item.Kept {
			r = append(frame.Row{l.Text(frame.Near, l.Signs.Kept+" ")}, r...)
		}
		return r.Cut(width - 1)
	case m.now.open && m.stage() == checker.Components && item.Name == m.now.ask.Item:
		return frame.Row{l.Text(frame.Bold, l.Signs.HandLeft+" "+wordNow)}
	}
	return frame.Row{l.Text(frame.Quiet, l.Signs.Nothing)}
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
