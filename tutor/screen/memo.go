package screen

import "example.org/standstill/tutor/screen/frame"

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

// memos are what is costly to make and seldom changes from key to key.
type memos struct {
	drawing   memo[drawingKey]
	scene     memo[sceneKey]
	paper     memo[paperKey]
	statement memo[paperKey]
}

// drawingKey is all that a drawing of the lesson depends on. The version stands
// for the lesson itself.
type drawingKey struct {
	version, cols, rows int
	listed              string
	at                  int
}

// sceneKey is all that the picture of a problem depends on.
type sceneKey struct {
	hash, copy string
	cols, rows int
	look       *frame.Look
}

type paperKey struct{ version, cols int }
