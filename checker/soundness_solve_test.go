package checker_test

import (
	"math"
	"slices"
	"strconv"

	"example.org/standstill/checker/quantity"
)

// inUnit prints a value with its unit and that many figures.
func (w *writer) inUnit(name string, x float64, figures int) (text string, ok bool) {
	unit := w.ref.Unit(name)
	if f := w.forces[name]; f && unit.Symbol == "N" && chance(w.Rand, 0.15) {
		unit = quantity.Unit{Symbol: "kN", Dim: unit.Dim, Factor: 1000}
	}
	number := rounded(x/unit.Factor, figures)
	text = w.style.number(number)
	switch unit.Symbol {
	case "none":
		return text, true
	case "deg":
		return text + pick(w.Rand, "°", " deg", "°", " degrees"), true
	case "N":
		return text + pick(w.Rand, " N", " N", "N", " newtons", " newton"), true
	}
	return text + pick(w.Rand, " ", " ", "") + unit.Symbol, true
}

// settling writes a line that settles an unknown.
func (w *writer) settling() (text string, settles []string) {
	name := w.sys.Find[w.IntN(len(w.sys.Find))]
	x := w.at[name]
	number, _ := w.inUnit(name, x, pick(w.Rand, 2, 3, 3, 3, 4, 5))
	settles = []string{name}
	asked := w.style.letter(name)
	if e := w.equalLetter(name); e != "" && chance(w.Rand, 0.5) {
		asked = w.style.letter(e)
		settles = w.equals(e)
	}
	if l, ok := w.formula(name); ok && chance(w.Rand, 0.4) {
		return asked + w.style.equals + w.style.print(l.sides[1]) + w.style.equals + number, settles
	}
	return asked + pick(w.Rand, w.style.equals, w.style.equals, " ≈ ") + number, settles
}

func (w *writer) equals(letter string) []string {
	for _, e := range w.sys.Equal {
		if e.Letter == letter {
			return slices.DeleteFunc(slices.Clone(w.sys.Find), func(n string) bool { return !slices.Contains(e.Names, n) })
		}
	}
	return nil
}

// formula solves two sums that are straight in two unknowns by determinants.
func (w *writer) formula(name string) (line, bool) {
	if len(w.unknowns) != 2 || len(w.sums) != 2 || !slices.Contains(w.unknowns, name) {
		return line{}, false
	}
	var rows [2][3]*tree
	for i, s := range w.sums {
		row, ok := w.coefficients(s)
		if !ok {
			return line{}, false
		}
		rows[i] = row
	}
	i, j := slices.Index(w.unknowns, name), 1-slices.Index(w.unknowns, name)
	top := cross(rows[0][j], rows[1][2], rows[1][j], rows[0][2])
	under := cross(rows[0][i], rows[1][j], rows[1][i], rows[0][j])
	if top == nil || under == nil {
		return line{}, false
	}
	l := line{sides: []*tree{letter(name), over(top, under)}}
	return l, l.miss(w.at) < 0.003
}

// coefficients writes a sum as a·u + b·v + c with trees; nil is zero.
func (w *writer) coefficients(s sum) (row [3]*tree, ok bool) {
	var parts [3][]*tree
	for _, t := range s.terms {
		size := t.size
		if w.sizes[t.force.Name] != nil {
			size = w.sizes[t.force.Name]
		}
		factors, place := factorsOf(size), 2
		for k, name := range w.unknowns {
			if i := slices.IndexFunc(factors, letter(name).same); i >= 0 {
				factors, place = slices.Delete(slices.Clone(factors), i, i+1), k
			}
		}
		p := piece{neg: t.neg}
		for _, f := range factors {
			p.top = append(p.top, w.leaves(f))
		}
		if t.fn != "" {
			p.top = append(p.top, w.function(t.fn, t.angle)...)
		}
		for _, name := range p.tree().letters() {
			if slices.Contains(w.unknowns, name) {
				return row, false
			}
		}
		parts[place] = append(parts[place], p.tree())
	}
	for k := range parts {
		if len(parts[k]) > 0 {
			row[k] = plus(parts[k]...)
		}
	}
	return row, true
}

// cross returns a·b − c·d, nil where it is zero.
func cross(a, b, c, d *tree) *tree {
	switch {
	case a == nil || b == nil:
		if c == nil || d == nil {
			return nil
		}
		return negative(product(c, d))
	case c == nil || d == nil:
		return product(a, b)
	}
	return plus(product(a, b), negative(product(c, d)))
}

// product multiplies two trees, with their signs in front.
func product(a, b *tree) *tree {
	neg := (a.op == '-') != (b.op == '-')
	if a.op == '-' {
		a = a.args[0]
	}
	if b.op == '-' {
		b = b.args[0]
	}
	p := times(slices.Concat(factorsOf(a), factorsOf(b))...)
	if one := func(t *tree) bool { return t.text == "1" }; one(a) {
		p = b
	} else if one(b) {
		p = a
	}
	if neg {
		return negative(p)
	}
	return p
}

// substituted puts what one sum says about an unknown into the other.
func (w *writer) substituted() (line, bool) {
	i := w.IntN(len(w.sums))
	j := w.IntN(len(w.sums))
	if i == j || len(w.sums[i].terms) < 2 || len(w.sums[j].terms) == 0 {
		return line{}, false
	}
	var pieces, others []piece
	for _, t := range w.sums[i].terms {
		pieces = append(pieces, w.write(t))
	}
	for _, t := range w.sums[j].terms {
		others = append(others, w.write(t))
	}
	x, ok := w.isolated(pieces)
	if !ok {
		return line{}, false
	}
	l := w.split(others)
	l.label = ""
	found := false
	for k, side := range l.sides {
		found = found || slices.Contains(side.letters(), x.sides[0].name)
		l.sides[k] = side.replace(x.sides[0].name, x.sides[1])
	}
	return l, found
}

// triangle writes the rule of sines or of cosines for three forces at one point.
func (w *writer) triangle() (line, bool) {
	if len(w.sys.Bodies) != 1 || len(w.sys.Bodies[0].Forces) != 3 {
		return line{}, false
	}
	var size [3]*tree
	var turn [3]float64
	for i, f := range w.sys.Bodies[0].Forces {
		size[i] = times(w.size(letter(f.Name))...)
		x, y := w.direction(f)
		turn[i] = math.Atan2(y, x)
		if len(letterUnknown(w, f)) > 0 {
			return line{}, false
		}
	}
	between := func(i, j int) *tree {
		d := math.Abs(turn[i]-turn[j]) * 180 / math.Pi
		return degrees(strconv.FormatFloat(math.Round(math.Min(d, 360-d)*100)/100, 'f', -1, 64))
	}
	i := w.IntN(3)
	j, k := (i+1)%3, (i+2)%3
	if math.Abs(math.Sin(turn[i]-turn[j])) < 0.01 || w.nothing(w.sums[0].terms) {
		return line{}, false
	}
	if chance(w.Rand, 0.6) {
		return line{sides: []*tree{over(size[i], apply("sin", between(j, k))), over(size[j], apply("sin", between(i, k)))}}, true
	}
	cosine := times(whole(2), size[j], size[k], apply("cos", between(j, k)))
	return line{sides: []*tree{squared(size[i]), plus(squared(size[j]), squared(size[k]), cosine)}}, true
}
