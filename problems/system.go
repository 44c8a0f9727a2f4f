package problems

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// draft is a problem while it is read: its parts with their places in the file.
type draft struct {
	*Problem
	top    part
	given  map[string]*yaml.Node // every key of "given", readable or not
	bodies []string
	forces []*forceEntry
	follow []*formula // the givens that are formulas
	tilts  map[string]*formula
	find   []*yaml.Node
	units  map[string]*yaml.Node // what "answer" asks for by name
}

// formulas lists every expression of the file in the order of the forces.
func (d *draft) formulas() []*formula {
	all := slices.Clone(d.follow)
	for _, f := range d.forces {
		for _, e := range []*formula{f.size, f.angle, f.direction} {
			if e != nil {
				all = append(all, e)
			}
		}
	}
	for _, body := range d.bodies {
		if t := d.tilts[body]; t != nil {
			all = append(all, t)
		}
	}
	return all
}

// system reads what the file says about forces.
func (r *reader) system(d *draft) {
	s := &statics.System{}
	d.System = s
	s.Givens, d.follow = r.givens(d.top.values["given"])
	d.given = givenNames(d.top.values["given"])
	d.bodies = r.bodies(d.top.values["bodies"])
	d.forces = r.forces(d.top.values["forces"], d.bodies)
	d.tilts = r.tilts(d.top.values["axes"], d.bodies)
	// Only after all parts: an expression may use the letters of any of them.
	letters := vocabulary(s.Givens, d.forces, d.formulas())
	for _, f := range d.formulas() {
		r.read(f, letters)
	}
	for _, f := range d.follow {
		if f.tree != nil {
			s.Formulas = append(s.Formulas, statics.Formula{Name: f.letter, Tree: f.tree})
		}
	}
	for _, f := range d.forces {
		f.Size, f.Angle, f.Direction = f.size.root(), f.angle.root(), f.direction.root()
	}
	// Before the bodies are assembled, because it may find that one of them hangs and has no turned axes.
	r.hang(d)
	r.sizes(d)
	r.assemble(d)
	s.Equal = r.equal(d)
	r.finds(d)
	d.makeEqualWhatIsAsked()
	r.assumeGravity(d)
	r.answers(d)
	r.words(d)
}

func (f *formula) root() *expr.Node {
	if f == nil {
		return nil
	}
	return f.tree
}

func givenNames(n *yaml.Node) map[string]*yaml.Node {
	names := map[string]*yaml.Node{}
	if n != nil && n.Kind == yaml.MappingNode {
		for i := 0; i+1 < len(n.Content); i += 2 {
			if key := n.Content[i]; key.Kind == yaml.ScalarNode {
				names[canonical(key.Value)] = key
			}
		}
	}
	return names
}

// tilts reads "axes": one angle for every body, or one for each named body; or that x
// is counted to the left.
func (r *reader) tilts(n *yaml.Node, bodies []string) map[string]*formula {
	if n == nil {
		return nil
	}
	found := map[string]*formula{}
	values := r.fields(n, `"axes"`, axesKeys).values
	tilt := values["tilt"]
	if x := values["x"]; x != nil {
		if _, ok := r.oneOf(x, "the side of x", []string{"left", "right"}); ok && tilt != nil {
			r.at(x, "the axes have both \"tilt\" and \"x\"", "one of the two")
		}
	}
	switch {
	case tilt == nil:
	case tilt.Kind == yaml.MappingNode:
		for _, e := range r.entries(tilt) {
			if len(bodies) == 1 && bodies[0] == "" {
				r.at(e.key, "the tilt names a body, but the problem has no \"bodies\"", "one angle, such as tilt: alpha")
				break
			}
			if !slices.Contains(bodies, e.key.Value) {
				r.at(e.key, fmt.Sprintf("unknown body %q", shorten(e.key.Value)), instead(e.key.Value, bodies))
				continue
			}
			found[e.key.Value] = r.tilt(e.value, "the tilt of "+e.key.Value)
		}
	default:
		f := r.tilt(tilt, "the tilt of the axes")
		for _, b := range bodies {
			found[b] = f
		}
	}
	return found
}

// tilt reads one angle. A bare number is refused here: it would be told of the weight,
// whose direction is worked out from it.
func (r *reader) tilt(n *yaml.Node, what string) *formula {
	f := r.formula(n, what, true)
	if f == nil {
		return nil
	}
	if g, wrong := readGiven("", n.Value); wrong == nil && !g.Any && g.Unit.Dim == quantity.None && g.Number.Value != 0 {
		r.at(n, what+" has no unit", strings.TrimSpace(n.Value)+" deg")
		return nil
	}
	return f
}

// sizes gives forces of one name one size, and a force named like a given that
// given as its size.
func (r *reader) sizes(d *draft) {
	first := map[string]*forceEntry{}
	for _, f := range d.forces {
		g, isGiven := d.System.Given(f.Name)
		if isGiven && f.size == nil && first[f.Name] == nil {
			f.Size = expr.Letter(g.Name)
		}
		if isGiven && f.Size != nil && !expr.Equal(f.Size, expr.Letter(g.Name)) {
			r.at(f.size.node, fmt.Sprintf("the force %s has the same name as a given value, but this value is not the size of the force", f.Name), "a different name for one of them")
		}
		if f.Size == nil {
			continue
		}
		if other := first[f.Name]; other != nil && !expr.Equal(other.Size, f.Size) {
			r.at(f.size.node, fmt.Sprintf("the size of %s here is different from its size on %s", f.Name, other.On), "the same size, or no size here: give the size only once for forces with the same name")
			continue
		}
		first[f.Name] = f
	}
	for _, f := range d.forces {
		if other := first[f.Name]; other != nil {
			// In a second round: the size may be given only at a later force of that name.
			f.Size = other.Size
		}
	}
}

// assemble puts the forces on their bodies.
func (r *reader) assemble(d *draft) {
	for _, name := range d.bodies {
		body := statics.Body{Name: name, Tilt: d.tilts[name].root(), XLeft: d.xLeft()}
		for _, f := range d.forces {
			if f.On == name {
				f.XLeft = body.XLeft
				body.Forces = append(body.Forces, f.Force)
			}
		}
		if len(body.Forces) == 0 && len(r.found) == 0 {
			r.at(d.top.values["bodies"], fmt.Sprintf("no force acts on the body %s", name), "forces on every body")
		}
		d.System.Bodies = append(d.System.Bodies, body)
	}
}

// equal reads the letters for sizes that are equal.
func (r *reader) equal(d *draft) []statics.Equal {
	var list []statics.Equal
	for _, e := range r.mapping(d.top.values["equal"], `"equal"`, "T: [T1, T2]") {
		letter, ok := r.letter(e.key, "the letter")
		if !ok {
			continue
		}
		if d.taken(letter) {
			r.at(e.key, fmt.Sprintf("%s has another meaning in this problem", letter), "a letter that is not used for anything else")
			continue
		}
		equal := statics.Equal{Letter: letter}
		for _, item := range r.list(e.value, "what "+letter+" stands for", "[T1, T2]") {
			name, ok := r.letter(item, "the force")
			// After another finding the force may be one that could not be read.
			if _, isForce := d.force(name); ok && !isForce && len(r.found) == 0 {
				r.at(item, fmt.Sprintf("there is no force %s", name), instead(name, d.forceNames()))
			}
			equal.Names = append(equal.Names, name)
		}
		if len(equal.Names) == 1 {
			r.at(e.value, letter+" stands for only one force", "two or more forces")
		}
		list = append(list, equal)
	}
	return list
}

func (d *draft) force(name string) (*forceEntry, bool) {
	for _, f := range d.forces {
		if f.Name == name {
			return f, true
		}
	}
	return nil, false
}

func (d *draft) forceNames() []string {
	var names []string
	for _, f := range d.forces {
		if !slices.Contains(names, f.Name) {
			names = append(names, f.Name)
		}
	}
	return names
}

// taken reports whether a letter is a given, a force or part of an expression.
func (d *draft) taken(letter string) bool {
	if _, given := d.given[letter]; given {
		return true
	}
	if _, force := d.force(letter); force {
		return true
	}
	return d.uses(letter)
}

func (d *draft) uses(letter string) bool {
	return slices.ContainsFunc(d.formulas(), func(f *formula) bool { return f.tree != nil && f.tree.Has(letter) })
}

// finds reads what is asked for; whether it is there to be found is seen once the
// system is compiled.
func (r *reader) finds(d *draft) {
	for _, item := range r.list(d.top.values["find"], `"find"`, "[T1, T2]") {
		name, ok := r.letter(item, "the unknown")
		switch {
		case !ok:
		case slices.Contains(d.System.Find, name):
			r.at(item, name+" is asked for twice", "each letter once")
		default:
			d.System.Find = append(d.System.Find, name)
			d.find = append(d.find, item)
		}
	}
}

// assumeGravity adds g where it is used and neither given nor asked for.
func (r *reader) assumeGravity(d *draft) {
	inText := d.top.values["text"] != nil && strings.Contains(d.top.values["text"].Value, "{g}")
	if _, given := d.given["g"]; given || slices.Contains(d.System.Find, "g") || !inText && !d.uses("g") {
		return
	}
	if _, force := d.force("g"); force {
		return
	}
	g, _ := readGiven("g", StandardGravity)
	d.System.Givens = append(d.System.Givens, g)
	d.AssumedG = true
}

// answers reads the units in which answers are asked.
func (r *reader) answers(d *draft) {
	d.System.Answer = map[string]quantity.Unit{}
	d.units = map[string]*yaml.Node{}
	for _, e := range r.mapping(d.top.values["answer"], `"answer"`, "T1: {unit: N}") {
		name, ok := r.letter(e.key, "the letter")
		if ok && !slices.Contains(d.System.Find, name) {
			r.at(e.key, name+" is not asked for", instead(name, d.System.Find))
			continue
		}
		unit := r.fields(e.value, "the answer for "+name, answerKeys).values["unit"]
		text, typed := r.word(unit, "the unit", "N")
		if !ok || !typed {
			continue
		}
		u, wrong := readUnit(text)
		if wrong != nil {
			r.at(unit, wrong.what, wrong.expected)
			continue
		}
		d.System.Answer[name] = u
		d.units[name] = unit
	}
}

// valued refuses formulas that have no value, such as the arc sine of 1.3.
func (r *reader) valued(d *draft) {
	for _, f := range d.follow {
		if x, ok := d.angle(f.tree); ok && (math.IsNaN(x) || math.IsInf(x, 0)) {
			r.at(f.node, fmt.Sprintf("%s has no value with these numbers", f.letter), "lengths that are possible")
		}
	}
}
