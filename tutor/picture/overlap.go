package picture

import (
	"cmp"
	"math"
	"slices"
)

// Arrows of one body closer than crowded (degrees) are kept apart; those closer
// than merged would be one line.
const (
	crowded  = 14.0
	merged   = 5.0
	stagger  = 0.3 // how much shorter each next one is, where lengths tell nothing
	shortest = 0.4
)

// separate keeps arrows of a body apart whose directions nearly agree: shifted
// to the side in the order of their directions, so that they do not cross, and
// shortened in turn where lengths tell nothing. The directions stay true. The two
// ends of a string over a pulley leave its rim on both sides and stay alike.
func (f *figure) separate() {
	for body := range f.scene.Bodies {
		around := f.around(body)
		for from, i := 0, 1; i <= len(around); i++ {
			if i == len(around) || f.gap(around[i-1], around[i]) >= crowded {
				f.spread(around[from:i])
				from = i
			}
		}
	}
}

// gap is the anticlockwise way from one arrow to another.
func (f *figure) gap(i, j int) float64 { return fullTurn(f.arms[i].deg, f.arms[j].deg) }

// around lists the forces of a body anticlockwise, from behind a wide gap.
func (f *figure) around(body int) []int {
	var list []int
	for i := range f.arms {
		if f.scene.Forces[i].On == body {
			list = append(list, i)
		}
	}
	slices.SortStableFunc(list, func(i, j int) int {
		if math.Abs(turn(f.arms[i].deg, f.arms[j].deg)) < 1e-6 {
			return f.reading(i, j)
		}
		return cmp.Compare(fullTurn(0, f.arms[i].deg), fullTurn(0, f.arms[j].deg))
	})
	for k := range list {
		before := list[(k+len(list)-1)%len(list)]
		if len(list) > 1 && f.gap(before, list[k]) >= crowded {
			// The circle is cut open at a gap, or a crowd about 0° would be two.
			return append(list[k:len(list):len(list)], list[:k]...)
		}
	}
	return list
}

// reading orders two arrows of one direction so that the earlier one comes to
// lie on the left.
func (f *figure) reading(i, j int) int {
	if f.arms[i].out.y < 0 {
		return j - i
	}
	return i - j
}

// spread fans out one crowd, listed anticlockwise.
func (f *figure) spread(crowd []int) {
	at, wheel := 0.0, f.scene.Bodies[f.scene.Forces[crowd[0]].On].Shape == Pulley
	for k, i := range crowd {
		if k > 0 && f.gap(crowd[k-1], i) < merged {
			at++
		}
		f.arms[i].shift = at
		if !f.scaled && !wheel {
			// Lengths say nothing where the drawing is not to scale, so they may tell neighbours apart.
			f.arms[i].share = max(1-stagger*float64(k), shortest)
		}
	}
	for _, i := range crowd {
		// About the middle, so that the crowd stays where the forces pull.
		f.arms[i].shift -= at / 2
	}
}
