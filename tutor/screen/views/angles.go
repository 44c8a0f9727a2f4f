package views

import (
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker/quantity"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
)

// Angles is what is given in a solved problem, to be changed, and what follows from it.
type Angles struct {
	Sliders  []tutor.Slider
	At       int
	Readings []tutor.Readout
	Curves   []tutor.Curve // over the slider in hand
	Scene    picture.Scene
	Colours  map[string]int
	Remark   string
}

// Under is what is to be noted about the curves.
func (a Angles) Under(s *Screen, cols, rows int) []frame.Row {
	if a.Remark == "" {
		return nil
	}
	return s.LabelledText(wordSteep, a.Remark, cols)
}

// Body is the figure, the table, and the plot under it.
func (a Angles) Body(s *Screen, cols, rows int) ([]frame.Row, frame.Seen) {
	if s.Rows < LowRows {
		return a.low(s, cols, rows), frame.Seen{}
	}
	left := cols * 45 / 100
	right := append(a.table(s.Pen, cols-left-2), nil)
	right = append(right, s.Paint(a.plot(), cols-left-2, rows-len(right))...)
	return frame.Columns(s.Paint(a.figure(s.Cols), left, rows), left+1, frame.Indented(right)), frame.Seen{}
}

// low puts the figure, the plot and the table side by side.
func (a Angles) low(s *Screen, cols, rows int) []frame.Row {
	third := (cols - 20) / 2
	both := frame.Columns(s.Paint(a.figure(s.Cols), third-2, rows), third-1, s.Paint(a.plot(), third+1, rows))
	return frame.Columns(both, 2*third, frame.Indented(a.oneColumn(s.Pen)))
}

// figure is the scene to scale. On a narrow screen the polygon gives way: the
// figure in its own scale tells more than both of them small.
func (a Angles) figure(cols int) picture.Scene {
	scene := a.Scene
	if cols < WideCols {
		scene.Polygon = nil
	}
	return scene
}

// plot shows the sizes of forces over the slider in hand; where none is asked for,
// whatever is asked in the first unit.
func (a Angles) plot() picture.Scene {
	slider := a.Sliders[a.At]
	p := &picture.Plot{X: picture.Scale{Name: slider.Letter, Unit: unitSign(slider.Unit)}, Marked: true, At: slider.Value}
	var unit quantity.Unit
	for _, c := range a.forcesFirst() {
		// One axis, one unit.
		if p.Curves != nil && c.Unit != unit {
			continue
		}
		unit = c.Unit
		curve := picture.Curve{Name: frame.OnPaper(c.Name), Colour: a.Colours[c.Name]}
		for _, d := range c.Dots {
			curve.Points = append(curve.Points, picture.Point{X: d.X, Y: d.Y})
		}
		p.Curves = append(p.Curves, curve)
	}
	var names []string
	for _, c := range p.Curves {
		names = append(names, c.Name)
	}
	p.Y = picture.Scale{Name: strings.Join(names, ", "), Unit: unitSign(unit)}
	return picture.Scene{Plot: p}
}

func (a Angles) forcesFirst() []tutor.Curve {
	curves := slices.Clone(a.Curves)
	slices.SortStableFunc(curves, func(x, y tutor.Curve) int {
		return rankOfUnit(x.Unit) - rankOfUnit(y.Unit)
	})
	return curves
}

func rankOfUnit(u quantity.Unit) int {
	if u.Dim == quantity.Force {
		return 0
	}
	return 1
}

func unitSign(u quantity.Unit) string {
	switch u.Symbol {
	case "deg":
		return "°"
	case "none":
		return ""
	}
	return u.Symbol
}

// oneColumn is the table in one column.
func (a Angles) oneColumn(p *Pen) []frame.Row {
	rows := a.turned(p)
	for _, r := range a.found(p) {
		rows = append(rows, append(frame.Row{frame.Gap(3)}, r...))
	}
	return rows
}

// table lists what can be turned and what comes out.
func (a Angles) table(p *Pen, cols int) []frame.Row {
	left := cols / 2
	heads := []frame.Row{append(p.Look.Row(frame.Quiet, " "+wordTurn).Padded(left), p.Look.Text(frame.Quiet, wordFollows))}
	return append(heads, frame.Columns(a.turned(p), left, a.found(p))...)
}

func (a Angles) turned(p *Pen) []frame.Row {
	var rows []frame.Row
	for i, k := range a.Sliders {
		rows = append(rows, p.Picked(i == a.At, p.Tint(frame.Plain, k.String(), false)))
	}
	return rows
}

func (a Angles) found(p *Pen) []frame.Row {
	var rows []frame.Row
	for _, r := range a.Readings {
		text := frame.SetNames(p.tints, r.String())
		// Behind an end of the slider there is no rest, and no number.
		if math.IsNaN(r.Value) {
			text = frame.OnPaper(r.Name) + ": " + saidNoRest
		}
		rows = append(rows, p.Tint(frame.Bold, text, false))
	}
	return rows
}
