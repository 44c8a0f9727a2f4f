package picture

import (
	"encoding/xml"
	"hash/fnv"
	"math"
	"strconv"
	"strings"
)

// svgDot is the side of a dot in pixels; a cell is then 8 by 16, which a letter
// of some 13 pixels fills.
const svgDot = 4.0

// SVG draws the scene as one self-contained SVG element for paper: black, on
// whatever it lies on, with dashes and letters where a screen would have
// colours. Its title and description hold the scene's sentences. Every stroke
// and text has a class ("force force-3 hand", "axis"), so that a sheet may style
// it; the width and height are pixels, cut to what MaxCols and MaxRows cells take.
func SVG(s Scene, width, height int) string {
	width, height = min(max(width, 0), MaxCols*8), min(max(height, 0), MaxRows*16)
	d := compose(s, medium{cols: width / 8, rows: height / 16, pen: (*grid).dot, fine: true})
	w := &svgWriter{}
	w.open(s, width, height)
	for i := range d.strokes {
		w.stroke(&d.strokes[i])
		w.closeBox(d.strokes[i:])
	}
	for i := range d.labels {
		if d.labels[i].shown {
			w.label(&d.labels[i])
		}
	}
	w.b.WriteString("</svg>\n")
	return w.b.String()
}

type svgWriter struct{ b strings.Builder }

// svgStyle is everything that makes the drawing readable without a style sheet.
const svgStyle = `fill="none" stroke="black" stroke-width="1.6" stroke-linecap="round" stroke-linejoin="round" ` +
	`font-family="'DejaVu Sans', Arial, sans-serif" font-size="13.5"`

func (w *svgWriter) open(s Scene, width, height int) {
	title := s.Title
	if title == "" {
		title = "Forces"
	}
	told := strings.Join(Sentences(s), " ")
	h := fnv.New32a()
	h.Write([]byte(title + told))
	id := "s" + strconv.FormatUint(uint64(h.Sum32()), 36)
	w.put(`<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="`, id, `t `, id, `d" viewBox="0 0 `,
		strconv.Itoa(width), " ", strconv.Itoa(height), `" width="`, strconv.Itoa(width), `" height="`, strconv.Itoa(height), `" `, svgStyle, ">\n")
	w.put(`<title id="`, id, `t">`, escaped(title), "</title>\n")
	w.put(`<desc id="`, id, `d">`, escaped(told), "</desc>\n")
}

func (w *svgWriter) put(parts ...string) {
	for _, p := range parts {
		w.b.WriteString(p)
	}
}

// escaped makes any text safe inside XML; what XML cannot hold is replaced.
func escaped(text string) string {
	var b strings.Builder
	xml.EscapeText(&b, []byte(text)) // a Builder never fails
	return b.String()
}

// svgClass is the class of everything with a tag.
var svgClass = map[Tag]string{
	TagAxis: "axis", TagSurface: "surface", TagLink: "link", TagBody: "body", TagAngle: "angle", TagMarker: "marker",
}

func class(l look) string {
	c := svgClass[l.tag]
	if colour, ok := l.tag.Force(); ok {
		c = "force force-" + strconv.Itoa(colour)
	}
	if l.strong {
		c += " hand"
	}
	return c
}

// pixel writes a place or length in dots as pixels.
func pixel(dots float64) string {
	return strconv.FormatFloat(math.Round(dots*svgDot*100)/100+0, 'f', -1, 64)
}

// at writes a place; the middle of dot 0 lies half a dot from the edge.
func at(p vec) string { return pixel(p.x+0.5) + " " + pixel(p.y+0.5) }

func (w *svgWriter) stroke(s *stroke) {
	w.put(`<path class="`, class(s.look), `"`)
	if s.form == wedge || s.full || s.form == glyph && fullSigns[s.rune] {
		w.put(` fill="black"`)
	}
	w.put(strokeWidth(s), strokeDash(s), ` d="`)
	switch s.form {
	case round:
		w.round(s)
	case glyph:
		w.glyph(s)
	case coil:
		w.path(zigzag(s.points[0], s.points[1]), false)
	default:
		w.path(s.points, s.form == wedge)
	}
	w.put("\"/>\n")
}

// signLines is what stands on paper for a character: lines in its cell, in dots from
// its middle.
var signLines = map[rune][][]vec{
	'╱': {{{-1, 2}, {1, -2}}}, '╲': {{{-1, -2}, {1, 2}}},
	'═': {{{-1, -0.8}, {1, -0.8}}, {{-1, 0.8}, {1, 0.8}}},
	'║': {{{-0.6, -2}, {-0.6, 2}}, {{0.6, -2}, {0.6, 2}}},
	'∼': {{{-1, 0.3}, {-0.4, -0.5}, {0.4, 0.5}, {1, -0.3}}},
	'├': {{{0, -2}, {0, 2}}, {{0, 0}, {1, 0}}}, '┤': {{{0, -2}, {0, 2}}, {{0, 0}, {-1, 0}}},
	'┬': {{{-1, 0}, {1, 0}}, {{0, 0}, {0, 2}}}, '┴': {{{-1, 0}, {1, 0}}, {{0, 0}, {0, -2}}}, '┼': {{{0, -2}, {0, 2}}, {{-1, 0}, {1, 0}}},
	'[': {{{1, -2}, {-0.5, -2}, {-0.5, 2}, {1, 2}}}, ']': {{{-1, -2}, {0.5, -2}, {0.5, 2}, {-1, 2}}},
	'▪': {{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}, {-1, -1}}},
}

// roundSigns are the radii of characters that are circles.
var roundSigns = map[rune]float64{'o': 1.3, '●': 1.5, '∙': 0.5}

// fullSigns are filled.
var fullSigns = map[rune]bool{'●': true, '∙': true, '▪': true}

// glyph draws what a character stands for.
func (w *svgWriter) glyph(s *stroke) {
	at := s.points[0]
	if r := roundSigns[s.rune]; r > 0 {
		w.round(&stroke{centre: at, radius: r, sweep: 360})
	}
	for _, line := range signLines[s.rune] {
		points := make([]vec, len(line))
		for i := range line {
			points[i] = at.plus(line[i])
		}
		w.path(points, false)
	}
}

// closeBox draws the upper and lower edge of a box of one row, which characters show by its
// sides alone; strokes begin with one of them.
func (w *svgWriter) closeBox(strokes []stroke) {
	left := &strokes[0]
	if left.form != glyph || left.rune != '[' {
		return
	}
	for i := range strokes {
		right := &strokes[i]
		if right.form != glyph || right.rune != ']' || right.thing != left.thing {
			continue
		}
		for _, y := range []float64{-2, 2} {
			w.stroke(&stroke{look: left.look, form: path, points: []vec{left.points[0].plus(vec{0.5, y}), right.points[0].plus(vec{-0.5, y})}})
		}
		return
	}
}

// strokeWidth sets forces above what only explains them.
func strokeWidth(s *stroke) string {
	_, force := s.tag.Force()
	switch {
	case s.form == wedge:
		return ` stroke-width="0.5"`
	case s.strong:
		return ` stroke-width="4"`
	case force && s.dash == solid, s.tag == TagSurface && !s.soft:
		return ` stroke-width="2.2"`
	case s.soft, s.tag == TagAngle, s.tag == TagLink:
		return ` stroke-width="1"`
	}
	return ""
}

func strokeDash(s *stroke) string {
	switch s.dash {
	case dashed:
		return ` stroke-dasharray="9 6"`
	case dotted:
		return ` stroke-dasharray="2 5"`
	}
	return ""
}

func (w *svgWriter) path(points []vec, closed bool) {
	for i, p := range points {
		w.put([]string{"L", "M"}[b2i(i == 0)], at(p))
	}
	if closed {
		w.put("Z")
	}
}

// round writes an arc; a full circle takes two, because an arc that ends where
// it begins is nothing.
func (w *svgWriter) round(s *stroke) {
	w.put("M", at(s.centre.along(heading(s.from), s.radius)))
	for i := 1; i <= 2; i++ {
		end := s.centre.along(heading(s.from+s.sweep*float64(i)/2), s.radius)
		w.put("A", pixel(s.radius), " ", pixel(s.radius), " 0 0 ", strconv.Itoa(b2i(s.sweep < 0)), " ", at(end))
	}
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// label writes a text in the cells it was given, on a white rim that keeps it
// clear of thin lines under it.
func (w *svgWriter) label(l *label) {
	middle := vec{float64(2*l.col+len(l.text)) - 0.5, float64(4*l.row) + 1.5}
	if l.exact != (vec{}) {
		middle = l.exact
	}
	const baseline = 1.2 // dots from the middle of a letter to its foot
	w.put(`<text class="`, class(l.look), `" x="`, pixel(middle.x+0.5), `" y="`, pixel(middle.y+0.5+baseline),
		`" text-anchor="middle" fill="black" stroke="white" stroke-width="3" paint-order="stroke"`)
	if l.look.strong {
		w.put(` font-weight="bold"`)
	}
	w.put(">", escaped(strings.ReplaceAll(string(l.text), "\x00", "")), "</text>\n")
}
