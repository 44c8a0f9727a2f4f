package views

import (
	"slices"

	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
)

// Offers are the forces that may act, of which each can be pointed with the arrow keys.
type Offers struct {
	List   []Offer
	At     int
	Active bool // the arrow keys point forces
}

// Offer is one force that may act, with where it points, in degrees, once it is chosen.
type Offer struct {
	Name, Gloss string
	IsChosen    bool
	Direction   float64
}

// forces is the first stage: the scene and the text, the offers under them.
func (w Work) forces(s *Screen, cols, rows int) []frame.Row {
	offers := w.Offers.rows(s.Pen, cols)
	band := max(rows-1-len(offers), 1)
	var out []frame.Row
	// Without the scene: text and givens are needed to answer, a drawing is not.
	if s.Rows < LowRows || s.Cols < 72 {
		text := w.statement(s, cols-2)
		out = givenFirst(s.Look, text, w.givens(s.Pen, cols-2, max(band-len(text), 1)), band)
		out = frame.Indented(out)
	} else {
		left := drawingWidth(cols)
		width := cols - left - 2
		text := w.statement(s, width)
		side := givenFirst(s.Look, text, w.givens(s.Pen, width, max(band-len(text), 2)), band)
		out = frame.Columns(w.scene(s, left, band), left+1, frame.Indented(side))
	}
	out = append(frame.Fill(out, band), s.Look.Rule(cols, w.offersTitle(), ""))
	return append(out, offers...)
}

// forcesWide is the first stage where the diagram that grows stands at the left.
func (w Work) forcesWide(s *Screen, cols, rows int) []frame.Row {
	offers := w.Offers.rows(s.Pen, cols)
	text := append(append(w.statement(s, cols), nil), w.givens(s.Pen, cols, 6)...)
	scene := rows - len(text) - len(offers) - 3
	var out []frame.Row
	// A smaller one would be too coarse to read.
	if scene >= 9 {
		out = append(out, w.scene(s, min(cols, 3*scene+6), scene)...)
		out = append(out, nil)
	}
	out = frame.Fill(append(out, text...), rows-1-len(offers))
	return append(append(out, s.Look.Rule(cols, w.offersTitle(), "")), offers...)
}

func (w Work) offersTitle() string {
	if w.Ask.Item != "" {
		return saidForcesOn(w.Ask.Item)
	}
	return wordForces
}

// scene paints what the problem is about: without arrows, and the same as long as the
// problem is.
func (w Work) scene(s *Screen, cols, rows int) []frame.Row {
	if w.Setup == nil {
		return s.Drawing(cols, rows)
	}
	return s.Memos.scene.get(sceneKey{w.Problem, cols, rows, s.Look}, func() []frame.Row {
		setup := w.Setup()
		// As many empty rows, so that nothing jumps where a file wants no drawing.
		if setup == nil {
			return make([]frame.Row, rows)
		}
		return s.Paint(picture.Scene{Setup: setup}, cols, rows)
	})
}

// givenFirst puts the givens under a text; where there is no room for both, the text says
// how it goes on, because the givens are needed in every line.
func givenFirst(look *frame.Look, text, givens []frame.Row, rows int) []frame.Row {
	switch {
	case len(text)+1+len(givens) <= rows:
		return append(append(slices.Clone(text), nil), givens...)
	case len(text)+len(givens) <= rows:
		return append(slices.Clone(text), givens...)
	}
	return append(withRest(look, text, rows-len(givens)), givens...)
}

// withRest is a text in so many rows; where it goes on, the last one says so.
func withRest(look *frame.Look, text []frame.Row, rows int) []frame.Row {
	if len(text) <= rows || rows < 1 {
		return text
	}
	return append(text[:rows-1:rows-1], look.Row(frame.Quiet, saidTextGoesOn))
}

// rows shows the offers in as many columns as fit.
func (o Offers) rows(p *Pen, cols int) []frame.Row {
	gloss := 8
	for _, one := range o.List {
		gloss = max(gloss, frame.TextWidth(one.Gloss))
	}
	across := max(cols/(offerSign+gloss+offerSides), 1)
	width := cols / across
	var rows []frame.Row
	down := (len(o.List) + across - 1) / across
	for i := range down {
		var r frame.Row
		for j := range across {
			// Down the columns, as the Tab key goes.
			if n := j*down + i; n < len(o.List) {
				r = append(r.Padded(j*width), o.row(p, n, width, gloss)...)
			}
		}
		rows = append(rows, r)
	}
	return rows
}

// The parts of an offer: its letter, and the arrow of its direction.
const (
	offerSign  = 7
	offerSides = 4
)

func (o Offers) row(p *Pen, n, width, gloss int) frame.Row {
	l, one := p.Look, o.List[n]
	pick, shade := " ", frame.Plain
	if o.Active && n == o.At {
		pick, shade = l.Signs.Pick, frame.Bold
	}
	r := append(frame.Row{l.Text(frame.Bold, " "+pick+" ")}, p.Tint(shade, frame.OnPaper(one.Name), false)...).Padded(offerSign)
	r = append(r, l.Text(frame.Quiet, one.Gloss)).Padded(offerSign + gloss + 1)
	if one.IsChosen {
		return append(r, l.Text(frame.Bold, l.Signs.Arrow(one.Direction))).Cut(width)
	}
	return append(r, l.Text(frame.Quiet, l.Signs.Nothing)).Cut(width)
}
