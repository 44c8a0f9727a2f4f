package checker_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"

	"example.org/standstill/checker/statics"
)

// writer puts terms on paper as one student does: which letters, which numbers,
// how far rounded.
type writer struct {
	*bench
	*rand.Rand
	style    *style
	numbers  float64 // how likely a given's letter is replaced by its number
	decimals float64 // how likely a sine or a product is worked out
	figures  int
	usual    bool   // usual letters for forces
	equal    bool   // the letter of equal sizes
	parts    string // component letters: "", "size" or "signed"
	body     string
}

func (b *bench) newWriter(r *rand.Rand, body string) *writer {
	w := &writer{bench: b, Rand: r, style: newStyle(r), body: body, figures: pick(r, 3, 3, 4, 5)}
	w.numbers = pick(r, 0, 0, 0.5, 1, 1)
	w.decimals = pick(r, 0, 0, 0, 0.5, 1)
	w.usual, w.equal = chance(r, 0.2), chance(r, 0.4)
	w.parts = pick(r, "", "", "", "", "", "size", "signed")
	return w
}

// piece is a term on paper: a sign, factors above the line and below it.
type piece struct {
	neg        bool
	top, under []*tree
}

func (p piece) unsigned() *tree {
	if len(p.under) == 0 {
		return times(p.top...)
	}
	return over(times(p.top...), times(p.under...))
}

func (p piece) tree() *tree {
	if p.neg {
		return negative(p.unsigned())
	}
	return p.unsigned()
}

func (p piece) times(top, under []*tree) piece {
	return piece{p.neg, slices.Concat(p.top, top), slices.Concat(p.under, under)}
}

// write dresses a term. Every way keeps its value.
func (w *writer) write(t term) piece {
	if p, ok := w.component(t); ok {
		return p
	}
	p := piece{neg: t.neg, top: w.size(t.size)}
	if t.fn != "" {
		p.top = append(p.top, w.function(t.fn, t.angle)...)
	}
	for _, f := range t.beside {
		p.top = append(p.top, w.leaves(f))
	}
	for _, f := range t.below {
		p.under = append(p.under, w.leaves(f))
	}
	return w.workOut(p)
}

// component writes the letter of a whole component, if this student does so.
func (w *writer) component(t term) (piece, bool) {
	plain := len(t.beside) == 0 && len(t.below) == 0 && t.letter != ""
	if !plain || w.parts == "" || chance(w.Rand, 0.4) {
		return piece{}, false
	}
	if w.parts == "signed" {
		if t.product().value(w.at) < 0 && t.force.Direction == nil {
			return piece{}, false
		}
		return piece{top: []*tree{stands(t.letter, t.signed())}}, true
	}
	if t.force.Direction != nil || t.product().value(w.at) < 0 {
		return piece{}, false
	}
	return piece{neg: t.neg, top: []*tree{stands(t.letter, t.product())}}, true
}

// workOut multiplies out what is known.
func (w *writer) workOut(p piece) piece {
	var known, open []*tree
	for _, f := range p.top {
		if w.isKnown(f) {
			known = append(known, f)
		} else {
			open = append(open, f)
		}
	}
	if len(known) < 2 || !chance(w.Rand, w.decimals*0.6) {
		return p
	}
	x := times(known...).value(w.at)
	if math.Abs(x) < 1e-9 {
		return p
	}
	return piece{p.neg != (x < 0), append([]*tree{rounded(math.Abs(x), w.figures)}, open...), p.under}
}

// isKnown reports whether a tree holds nothing but givens that have a value, and
// no angle by itself.
func (b *bench) isKnown(t *tree) bool {
	for _, name := range t.letters() {
		if g, given := b.sys.Given(name); (!given || g.Any) && !b.known(name) {
			return false
		}
	}
	return true
}

// known reports whether a sized force depends on givens alone.
func (b *bench) known(name string) bool {
	size := b.sizes[name]
	return size != nil && b.isKnown(size)
}

// size writes a force's size as factors.
func (w *writer) size(size *tree) []*tree {
	if size.op != 'v' {
		return factorsOf(w.leaves(size))
	}
	name := size.name
	if w.equal {
		if e := w.equalLetter(name); e != "" {
			return []*tree{letter(e)}
		}
	}
	if usual := w.usualLetter(name); usual != "" && w.usual {
		return []*tree{stands(usual, letter(name))}
	}
	if s := w.sizes[name]; s != nil && chance(w.Rand, 0.6) {
		return factorsOf(w.leaves(s))
	}
	return []*tree{w.leaves(size)}
}

func factorsOf(t *tree) []*tree {
	if t.op == '*' {
		return t.args
	}
	return []*tree{t}
}

func (b *bench) equalLetter(name string) string {
	for _, e := range b.sys.Equal {
		if slices.Contains(e.Names, name) {
			return e.Letter
		}
	}
	return ""
}

// usualLetter returns a letter that teachers use for the force where the problem
// leaves it free: only one force of its kind is on the body.
func (w *writer) usualLetter(name string) string {
	body, ok := w.sys.Body(w.body)
	if !ok {
		return ""
	}
	f, ok := body.Force(name)
	if !ok {
		return ""
	}
	alone := 0
	for _, other := range body.Forces {
		if other.Kind == f.Kind {
			alone++
		}
	}
	letters := map[statics.Kind]string{statics.Weight: "w W Fg", statics.Normal: "N FN R", statics.Friction: "f Ff", statics.Tension: "T FT"}
	free := slices.DeleteFunc(strings.Fields(letters[f.Kind]), w.taken)
	if alone != 1 || len(free) == 0 {
		return ""
	}
	return pick(w.Rand, free...)
}

// taken reports whether the problem uses the letter.
func (b *bench) taken(name string) bool {
	_, used := b.at[name]
	_, body := b.sys.Body(name)
	return used || body && name != ""
}

// leaves replaces givens by their numbers.
func (w *writer) leaves(t *tree) *tree {
	if t.op == 'v' && t.means == nil {
		if n := w.numberOf(t.name); n != nil && chance(w.Rand, w.numbers) {
			return n
		}
		return t
	}
	c := *t
	c.args = make([]*tree, len(t.args))
	for i, a := range t.args {
		c.args[i] = w.leaves(a)
	}
	return &c
}

// numberOf returns a given as it is typed in SI; nil where that is not usual.
func (b *bench) numberOf(name string) *tree {
	g, ok := b.sys.Given(name)
	switch {
	case !ok || g.Any || g.Minus:
		return nil
	case g.Unit.Symbol == "deg":
		return degrees(g.Number.Text)
	case g.Unit.Factor == 1 && g.Unit.Symbol != "lb":
		return typed(g.Number.Text, g.Number.Value)
	case g.Unit.Symbol == "lb":
		return nil
	}
	x := g.Number.Value * g.Unit.Factor
	return typed(strconv.FormatFloat(x, 'f', -1, 64), x)
}
