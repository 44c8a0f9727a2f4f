// Package picture shows one scene of forces to a student.
//
// Fill a Scene with bodies, forces and whatever else the lesson is about, then
// hand it to Braille for a terminal, to ASCII for a plain one, to SVG for paper
// or to Sentences for a listener. All four show the same facts: whatever is
// drawn is also said. Nothing here knows a terminal; a Canvas tells by a Tag what
// each cell belongs to, and the caller chooses the colours.
//
// Every drawing first lays out strokes and labels on a grid of cells that are
// twice as high as wide; braille.go, ascii.go and svg.go only differ in how they put
// these down. The files in the order in which a problem passes through them:
//
//	problem.go, scene.go                a solved problem → its bodies and forces, as a scene
//	sanitise.go                         the scene made safe to draw
//	drawing.go, panel.go                a drawing, its parts side by side
//	figure.go, fit.go, arrange.go       bodies with their forces: place and scale
//	axes.go, arc.go                     their axes and angles
//	body.go, link.go, arrow.go, overlap.go   what they are drawn with
//	polygon.go, chain.go                the polygon of forces, the terms of a sum
//	label.go                            where letters and names stand
//	grid.go, braille.go, ascii.go, rule.go, canvas.go   strokes in cells, as characters
//	svg.go, page.go                     the same on paper
//	sentence.go, tell.go, direction.go, describe.go   the same facts in sentences
//	words.go, transliterate.go          the words of these, and seven bits for a letter
//	vec.go, number.go                   places and ways; how numbers are written
//
// Two panels have a beginning of their own:
//
//	setup.go, infer.go                  the thing before any force, and how it is worked out
//	setuplayout.go, search.go           where its parts stand, the best of many places
//	faces.go, holds.go, measure.go      what it lies on, what holds it, lengths and angles
//	plot.go, plotscale.go, asymptote.go   a curve with measured points
package picture

// Braille draws the scene in true proportion on cells of two by four dots.
// Sizes below one give an empty canvas, sizes above MaxCols and MaxRows are cut
// to them.
func Braille(s Scene, cols, rows int) Canvas {
	return compose(s, medium{cols: cols, rows: rows, pen: (*grid).dot}).grid.canvas()
}

// ASCII is Braille in characters of seven bits: letters of other alphabets are
// spelled out, lines are made of dashes, slashes and dots.
func ASCII(s Scene, cols, rows int) Canvas {
	return compose(s, medium{cols: cols, rows: rows, pen: (*grid).typed, ascii: true}).grid.canvas()
}

// compose lays out a scene.
func compose(s Scene, m medium) *drawing {
	d := &drawing{grid: newGrid(m.cols, m.rows), pen: m.pen, ascii: m.ascii, fine: m.fine,
		strokes: make([]stroke, 0, 48), points: make([]vec, 0, 160), labels: make([]label, 0, 24)}
	d.grid.ascii = m.ascii
	// A terminal of no size still gets a drawing, an empty one.
	if len(d.grid.marks) == 0 {
		return d
	}
	s = sanitise(s)
	d.panels(&s, box{0, 0, d.grid.cols, d.grid.rows})
	return d
}
