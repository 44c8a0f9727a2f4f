// Package views knows how each thing that a student sees is laid out on the screen: a view is
// a value that holds what it needs, and draws itself into a number of columns and rows. It
// changes nothing: what a drawing came to (how much of a list was seen, say) is handed back,
// and what follows from a key is another value.
//
// Start with Screen, which is everything that is seen at once; Draw makes its rows. What lies
// on the place of drawing and page is a Sheet:
//
//	screen.go, head.go, bottom.go, keyrow.go   what stands around the sheets
//	lesson.go          what a lesson comes to, as the sheets read it
//	work.go, forces.go, statement.go, table.go, page.go   the work on one problem
//	list.go, menu.go, students.go, welcome.go, reader.go, past.go, solution.go, angles.go
//	action.go          what can be done, for the menu and the keys
//	memo.go            what is kept of a costly drawing
//	pen.go, mark.go, gutter.go, canvas.go      how texts, marks and drawings come into rows
//	sentences.go       everything that is said
package views
