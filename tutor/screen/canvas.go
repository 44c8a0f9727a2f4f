package screen

import (
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
)

// drawing paints the scene in hand.
func (m *model) drawing(cols, rows int) []frame.Row {
	key := drawingKey{version: m.now.version, cols: cols, rows: rows, at: -1}
	if m.choosing() {
		c := &m.work.chooser
		key.listed = c.text()
		if c.active {
			key.at = c.at
		}
	}
	return m.memos.drawing.get(key, func() []frame.Row { return m.paint(m.picture(), cols, rows) })
}

// scene paints what the problem is about: without arrows, and the same as long as the
// problem is.
func (m *model) scene(cols, rows int) []frame.Row {
	if !m.lesson.ShowsScene() {
		return m.drawing(cols, rows)
	}
	p := m.lesson.Problem
	key := sceneKey{p.Hash, p.Copy, cols, rows, m.look}
	return m.memos.scene.get(key, func() []frame.Row {
		s := picture.NewSetup(m.lesson.Ref, p.Figure)
		if s == nil {
			return make([]frame.Row, rows)
		}
		return m.paint(picture.Scene{Setup: s}, cols, rows)
	})
}

// picture is what the student is working on.
func (m *model) picture() picture.Scene {
	if m.isAtBench() {
		return picture.OfProblem(m.bench.ref, picture.View{})
	}
	v := picture.View{Stage: m.stage(), Solved: !m.now.open}
	if m.now.open {
		v.Item = m.now.ask.Item
	}
	if v.Stage == checker.Diagram && m.now.open {
		v.Body, v.Listed = m.now.ask.Item, m.work.chooser.listed(m)
	}
	return picture.OfProblem(m.lesson.Ref, v)
}

// paint draws a scene in its colours.
func (m *model) paint(s picture.Scene, cols, rows int) []frame.Row {
	draw := picture.Braille
	if m.look.Ascii {
		draw = picture.ASCII
	}
	canvas := draw(s, cols, rows)
	out := make([]frame.Row, canvas.Rows)
	for i := range out {
		out[i] = m.canvasRow(canvas.Row(i))
	}
	return out
}

func (m *model) canvasRow(cells []picture.Cell) frame.Row {
	var r frame.Row
	var text strings.Builder
	shadeOf := func(c picture.Cell) frame.Shade {
		if colour, ok := c.Tag.Force(); ok {
			if m.choosing() {
				return frame.Plain // no colour tells which forces act
			}
			return frame.ForceShade(colour)
		}
		if c.Tag == picture.TagBody || c.Tag == picture.TagAngle || c.Tag == picture.TagMarker || c.Tag == picture.TagLink {
			return frame.Plain
		}
		return frame.Quiet
	}
	now := frame.Plain
	for _, c := range cells {
		if c.Rune == 0 {
			continue
		}
		if s := shadeOf(c); s != now && c.Rune != ' ' {
			r = m.append(r, now, text.String())
			text.Reset()
			now = s
		}
		text.WriteRune(c.Rune)
	}
	return m.append(r, now, text.String())
}
