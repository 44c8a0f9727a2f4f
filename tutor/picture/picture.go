// Package picture shows one scene of forces to a student.
//
// Fill a Scene with bodies, forces and whatever else the lesson is about, then
// hand it to Braille for a terminal, to ASCII for a plain one, to SVG for paper
// or to Sentences for a listener. All four show the same facts: whatever is
// drawn is also said. Nothing here knows a terminal; a Canvas tells by a Tag what
// each cell belongs to, and the caller chooses the colours.
//
// Every drawing first lays out strokes and labels on a grid of cells that are
// twice as high as wide (drawing.go, figure.go, label.go); braille.go, ascii.go
// and svg.go only differ in how they put these down.
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
