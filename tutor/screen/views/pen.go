package views

import (
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/tutor/screen/frame"
)

// Pen writes and draws for one problem: in the look of the instance, each force in its own
// colour, each letter as it stands on paper.
type Pen struct {
	Look    *frame.Look
	tints   map[string]frame.Shade
	letters *expr.Letters
	grey    bool
}

// NewPen makes the pen of a problem, from the colours of its forces and its vocabulary. Both
// are nil where no problem is in hand.
func NewPen(look *frame.Look, colours map[string]int, letters *expr.Letters) *Pen {
	return &Pen{Look: look, tints: tintsOf(colours), letters: letters}
}

// Grey is the same pen without the colours of forces: while forces are chosen, colours
// would tell which of them act.
func (p *Pen) Grey() *Pen {
	grey := *p
	grey.grey = true
	return &grey
}

// tintsOf gives each spelling of a force and its parts the force's shade.
func tintsOf(colours map[string]int) map[string]frame.Shade {
	tints := map[string]frame.Shade{}
	for name, colour := range colours {
		for _, spelling := range []string{name, expr.Glyph(name), expr.Set(name)} {
			for _, part := range []string{"", "x", "y", "ₓ"} {
				tints[spelling+part] = frame.ForceShade(colour)
			}
		}
	}
	return tints
}

// Tint paints the forces' letters in a text, each in its own colour. In prose a
// lone A or I is a word.
func (p *Pen) Tint(base frame.Shade, text string, prose bool) frame.Row {
	text = p.Look.Letters(text)
	var r frame.Row
	from := 0
	for at := 0; at < len(text); {
		size := frame.NameLength(text[at:])
		if size == 0 {
			at += frame.RuneLength(text[at:])
			continue
		}
		name := text[at : at+size]
		// “A force of 3 N”: here A is an article and N the newton.
		if s, ok := p.tintOf(name); ok && !(prose && (name == "A" || name == "I")) && !afterNumber(text[:at], name) {
			r = p.append(r, base, text[from:at])
			r = p.append(r, s, name)
			from = at + size
		}
		at += size
	}
	return p.append(r, base, text[from:])
}

func (p *Pen) tintOf(name string) (frame.Shade, bool) {
	if p.grey {
		return frame.Plain, false
	}
	s, ok := p.tints[name]
	return s, ok
}

func (p *Pen) append(r frame.Row, s frame.Shade, text string) frame.Row {
	if text == "" {
		return r
	}
	return append(r, p.Look.Text(s, text))
}

// afterNumber reports whether an N is the newton of a number in front of it.
func afterNumber(before, name string) bool {
	before = strings.TrimRight(before, " ")
	return name == "N" && before != "" && strings.ContainsRune("0123456789.)", rune(before[len(before)-1]))
}

// Flat sets a read-back in one line, as it stands on the page. A diagram is no
// formula: its names alone are set.
func (p *Pen) Flat(stage checker.Stage, echo string) string {
	if stage == checker.Diagram {
		return frame.SetNames(p.tints, echo)
	}
	// What cannot be set stays as it was read.
	if set := p.Look.Flat(p.letters, echo); set != "" {
		return set
	}
	return echo
}

// Formulas stacks the fractions of a read-back.
func (p *Pen) Formulas(echo string) []frame.Block { return p.Look.Formulas(p.letters, echo) }

// spaced sets texts side by side, none of them broken.
func (p *Pen) spaced(texts []string, cols int) []frame.Row {
	var rows []frame.Row
	var r frame.Row
	for _, text := range texts {
		own := p.Tint(frame.Plain, text, false)
		// A given that is broken after its sign would be misread.
		if len(r) > 0 && r.Width()+3+own.Width() > cols {
			rows, r = append(rows, r), nil
		}
		if len(r) > 0 {
			r = append(r, frame.Gap(3))
		}
		r = append(r, own...)
	}
	if len(r) > 0 {
		rows = append(rows, r)
	}
	return rows
}

// Entry is a word or a sample with what is said about it, wrapped behind it.
func (p *Pen) Entry(label, text string, width, cols int) []frame.Row {
	var rows []frame.Row
	for i, part := range p.Look.WrapMeasured(text, cols-width-1) {
		r := frame.Row{frame.Gap(width)}
		if i == 0 {
			r = frame.Row{frame.Gap(1), p.Look.Text(frame.Bold, label)}.Padded(width)
		}
		rows = append(rows, append(r, p.Tint(frame.Plain, part, true)...))
	}
	return rows
}

// Picked is a row of a list of which one is picked.
func (p *Pen) Picked(picked bool, r frame.Row) frame.Row {
	sign := "  "
	if picked {
		sign = p.Look.Signs.Pick + " "
	}
	return append(frame.Row{frame.Gap(1), p.Look.Text(frame.Bold, sign)}, r...)
}
