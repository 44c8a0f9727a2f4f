package views

import "example.org/standstill/tutor/screen/frame"

// Memos keep what is costly to draw and seldom changes from key to key. What is drawn is
// the same without them.
type Memos struct {
	drawing   memo[drawingKey]
	scene     memo[sceneKey]
	page      memo[pageKey]
	statement memo[pageKey]
}

// memo keeps rows for as long as what they were made from is the same. Rows that
// come out of it must not be changed.
type memo[K comparable] struct {
	key  K
	rows []frame.Row
}

func (c *memo[K]) get(key K, make func() []frame.Row) []frame.Row {
	if c.rows == nil || c.key != key {
		c.key, c.rows = key, make()
	}
	return c.rows
}

type drawingKey struct {
	figure     FigureKey
	cols, rows int
}

// sceneKey is all that the picture of a problem depends on.
type sceneKey struct {
	problem    string
	cols, rows int
	look       *frame.Look
}

// pageKey is all that the working and the text depend on. The version stands for the
// lesson itself.
type pageKey struct{ version, cols int }
