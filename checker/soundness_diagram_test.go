package checker_test

import (
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/statics"
)

// room returns the sides of the room that a force points to.
func (b *bench) room(body statics.Body, f statics.Force) (x, y int) {
	bx, by := b.direction(f)
	if f.XLeft {
		bx = -bx // the room has no axes
	}
	tilt := 0.0
	if body.Tilt != nil {
		tilt = treeOf(body.Tilt).value(b.at)
	}
	return side(bx*math.Cos(tilt) - by*math.Sin(tilt)), side(bx*math.Sin(tilt) + by*math.Cos(tilt))
}

func side(x float64) int {
	switch {
	case x > 1e-6:
		return 1
	case x < -1e-6:
		return -1
	}
	return 0
}

// sides says two sides in words.
func (w *writer) sides(x, y int) string {
	upright := map[int]string{1: pick(w.Rand, "up", "up", "upwards", "up"), -1: pick(w.Rand, "down", "down", "downwards")}[y]
	level := map[int]string{1: pick(w.Rand, "right", "to the right"), -1: pick(w.Rand, "left", "to the left")}[x]
	switch {
	case upright == "":
		return level
	case level == "":
		return pick(w.Rand, "", "straight ") + upright
	}
	words := []string{upright, level}
	if chance(w.Rand, 0.3) {
		slices.Reverse(words)
	}
	return strings.Join(words, pick(w.Rand, " ", " ", " and ", "-"))
}

// slope says where a force points on a slope, "" where it has no simple word.
func (w *writer) slope(body statics.Body, f statics.Force) string {
	if body.Tilt == nil {
		return ""
	}
	x, y := w.direction(f)
	if treeOf(body.Tilt).value(w.at) < 0 {
		x = -x
	}
	slope := pick(w.Rand, "slope", "slope", "ramp", "incline")
	switch [2]int{side(x), side(y)} {
	case [2]int{1, 0}:
		return "up the " + slope
	case [2]int{-1, 0}:
		return "down the " + slope
	case [2]int{0, 1}:
		return "out of the " + slope
	case [2]int{0, -1}:
		return "into the " + slope
	}
	return ""
}

// called names a force as a student would.
func (w *writer) called(body statics.Body, f statics.Force) string {
	alone := 0
	for _, other := range body.Forces {
		if other.Kind == f.Kind {
			alone++
		}
	}
	words := map[statics.Kind]string{statics.Weight: "weight", statics.Normal: "normal force", statics.Friction: "friction", statics.Tension: "tension", statics.Spring: "spring force"}
	if word, ok := words[f.Kind]; ok && alone == 1 && chance(w.Rand, 0.25) {
		return word
	}
	return w.style.letter(f.Name)
}

// entry is one force of a diagram: which, and where to.
type entry struct{ who, where string }

func (w *writer) entries(body statics.Body) []entry {
	var all []entry
	for _, f := range body.Forces {
		x, y := w.room(body, f)
		where := w.sides(x, y)
		if s := w.slope(body, f); s != "" && chance(w.Rand, 0.6) {
			where = s
		}
		all = append(all, entry{w.called(body, f), where})
	}
	return all
}

func (w *writer) diagram(all []entry) string {
	all = slices.Clone(all)
	w.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	var parts []string
	link := pick(w.Rand, " ", " ", ": ", " points ")
	for _, e := range all {
		parts = append(parts, e.who+link+e.where)
	}
	return strings.Join(parts, pick(w.Rand, "; ", "; ", ", ", "\n", ";"))
}

// wrongDiagram spoils one force.
func (w *writer) wrongDiagram(body statics.Body) (text string, m mistake) {
	all := w.entries(body)
	i := w.IntN(len(all))
	f := body.Forces[i]
	x, y := w.room(body, f)
	switch w.IntN(4) {
	case 0:
		if len(all) > 1 {
			return w.diagram(slices.Delete(all, i, i+1)), mistake{codes: codes(checker.MissingForce), about: f.Name}
		}
	case 1:
		if extra := w.missingKind(body); extra != "" {
			all = append(all, entry{extra, w.sides(1-2*w.IntN(2), w.IntN(3)-1)})
			return w.diagram(all), mistake{codes: codes(checker.ExtraForce)}
		}
	}
	wx, wy := w.IntN(3)-1, w.IntN(3)-1
	for wx == x && wy == y || wx == 0 && wy == 0 {
		wx, wy = w.IntN(3)-1, w.IntN(3)-1
	}
	all[i].where = w.sides(wx, wy)
	return w.diagram(all), mistake{codes: codes(checker.WrongSide), about: f.Name}
}

// missingKind names a kind of force that the body has none of.
func (w *writer) missingKind(body statics.Body) string {
	kinds := []struct {
		kind statics.Kind
		word string
	}{{statics.Normal, "normal force"}, {statics.Friction, "friction"}, {statics.Tension, "tension"}}
	for _, k := range kinds {
		has := slices.ContainsFunc(body.Forces, func(f statics.Force) bool { return f.Kind == k.kind })
		if !has && chance(w.Rand, 0.6) {
			return k.word
		}
	}
	return ""
}
