package picture

// holdLengths marks the lengths from which a hold's direction follows: along it, and
// the two sides of the triangle under it.
func (l *layout) holdLengths(k int, from, to vec) {
	h, thing := &l.Holds[k], l.holdThing(k)
	if h.Along != "" {
		l.note(thing, h.Along, from.plus(to).times(0.5), upSide(to.minus(from).unit()), TagAngle)
	}
	if h.Level == "" && h.Upright == "" {
		return
	}
	if l.hasLevelBar(h.On) {
		l.measureLevel(thing, h.Level, from, to.x, from.y+4)
		l.measureUpright(thing, h.Upright, to.x-6*sgn(to.x-from.x)*-1, to.y, from.y)
		return
	}
	l.measureLevel(thing, h.Level, to, from.x, to.y-8)
	if h.Upright != "" && l.firstUpright(k) {
		l.rule2(thing, from.plus(vec{0, -4}), vec{from.x, to.y})
		l.note(thing, h.Upright, vec{from.x, (from.y + to.y) / 2}, vec{1, 0}, TagAngle)
	} else if h.Upright == "" {
		l.rule2(thing, from.plus(vec{0, -4}), vec{from.x, to.y})
	}
}

// firstUpright tells whether a height has not been marked yet.
func (l *layout) firstUpright(k int) bool {
	for j := range l.Holds[:k] {
		if l.Holds[j].On == l.Holds[k].On && l.Holds[j].Upright == l.Holds[k].Upright {
			return false
		}
	}
	return true
}

// hasLevelBar tells whether a level strut ends at an object: lengths are then marked
// along it.
func (l *layout) hasLevelBar(object int) bool {
	for k := range l.Holds {
		h := &l.Holds[k]
		if h.On == object && h.Kind == Strut && near(h.out().y, 0) {
			return true
		}
	}
	return false
}

// measureLevel is a level length with its letter, at a height.
func (l *layout) measureLevel(thing int, letter string, from vec, to, y float64) {
	if letter == "" {
		return
	}
	a, b := cell(cellOf(vec{min(from.x, to), y})), cell(cellOf(vec{max(from.x, to), y}))
	col := (int(a.x+b.x)/2 - 1) >> 1
	mid := cell(col, 0).x
	l.glyph(thing, TagAngle, '├', a)
	l.glyph(thing, TagAngle, '┤', b)
	l.rule(thing, TagAngle, a, vec{mid - 2, a.y})
	l.rule(thing, TagAngle, vec{mid + 2, a.y}, b)
	l.inBoxTag(thing, vec{mid, a.y}, letter, TagAngle)
}

// measureUpright is a vertical length with its letter.
func (l *layout) measureUpright(thing int, letter string, x, from, to float64) {
	if letter == "" {
		return
	}
	a, b := cell(cellOf(vec{x, min(from, to)})), cell(cellOf(vec{x, max(from, to)}))
	mid := cell(cellOf(vec{x, (a.y + b.y) / 2})).y
	l.glyph(thing, TagAngle, '┬', a)
	l.glyph(thing, TagAngle, '┴', b)
	l.rule(thing, TagAngle, vec{a.x, a.y}, vec{a.x, mid - 4})
	l.rule(thing, TagAngle, vec{a.x, mid + 4}, b)
	l.inBoxTag(thing, vec{a.x, mid}, letter, TagAngle)
}

func (l *layout) inBoxTag(thing int, at vec, text string, tag Tag) {
	col, row := cellOf(at)
	l.labels = append(l.labels, label{text: []rune(text), at: at, look: look{tag: tag}, thing: thing, fixed: true, col: col - (len([]rune(text))-1)/2, row: row})
}

// slopeLengths marks the lengths from which a slope follows.
func (l *layout) slopeLengths(thing int, f *Face, low, high vec) {
	if f.Measure == (Measure{}) {
		return
	}
	u := high.minus(low).unit()
	if f.Along != "" {
		l.note(thing, f.Along, low.along(u, 0.5*high.minus(low).len()).plus(vec{0, 4}), vec{0.3 * sgn(u.x), 1}, TagAngle)
	}
	if f.Upright != "" {
		top := cell(cellOf(high))
		l.add(thing, stroke{look: look{tag: TagAngle}, form: rule, dash: dotted, points: []vec{{top.x, top.y + 4}, {top.x, l.groundY() - 4}}})
		l.note(thing, f.Upright, vec{top.x, (top.y + l.groundY()) / 2}, vec{-sgn(u.x), 0}, TagAngle)
	}
	if f.Level != "" {
		l.note(thing, f.Level, vec{(low.x + high.x) / 2, l.groundY() - 3}, vec{0, -1}, TagAngle)
	}
}

// lineOfCentres marks the distance between two round bodies, and how far one is beside
// the other.
func (l *layout) lineOfCentres(i int, f *Face) {
	a, b := l.at[i], l.at[f.On]
	thing := l.objectThing(i)
	l.add(thing, stroke{look: look{tag: TagAngle}, form: path, dash: dotted, points: []vec{a, b}})
	n := b.minus(a).unit()
	l.note(thing, f.Along, a.plus(b).times(0.5).along(n.left(), 1), vec{0.8, 0.6}, TagAngle)
	low := l.at[i]
	if b.y > low.y {
		low = b
	}
	l.measureLevel(thing, f.Level, a, b.x, low.y+l.half(i).y+6)
}
