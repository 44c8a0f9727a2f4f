package problems

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"go.yaml.in/yaml/v4"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
)

// Most bodies and forces of a problem, so that a file from anywhere is solved in
// good time.
const (
	mostBodies = 8
	mostForces = 30
)

// longestBody is the most letters that a body's name may have.
const longestBody = 24

// formula is an expression of the file: its place, then the tree.
type formula struct {
	node  *yaml.Node
	what  string
	angle bool
	tree  *expr.Node
	// letter is the given that the formula is for, "" for what belongs to a force.
	letter string
}

// forceEntry is one force of the file with the places of its parts.
type forceEntry struct {
	statics.Force
	node                   *yaml.Node
	name                   *yaml.Node
	size, angle, direction *formula
	by                     string
	hangs                  bool // a weight that points straight down by itself
}

// bodies reads the names of the bodies; one body without a name if there is no
// such part.
func (r *reader) bodies(n *yaml.Node) []string {
	if n == nil {
		return []string{""}
	}
	var names []string
	for _, item := range r.list(n, `"bodies"`, "[A, B]") {
		name, ok := r.word(item, "a body", "A")
		switch {
		case !ok:
		case !isBodyName(name):
			r.at(item, fmt.Sprintf("%q cannot be the name of a body", shorten(name)), fmt.Sprintf("one word of at most %d letters and digits", longestBody))
			// Or it would be refused again wherever a force or the tilt names it.
			names = append(names, name)
		case slices.Contains(names, name):
			r.at(item, fmt.Sprintf("the body %s is listed twice", name), "each body once")
		case len(names) == mostBodies:
			r.at(item, "there are too many bodies", fmt.Sprintf("at most %d", mostBodies))
			// Told once, not for every further body.
			return names
		default:
			names = append(names, name)
		}
	}
	return names
}

func isBodyName(name string) bool {
	letters := strings.IndexFunc(name, func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < 'A' || r > 'Z') && (r < '0' || r > '9')
	})
	return letters < 0 && len(name) <= longestBody && (name[0] < '0' || name[0] > '9')
}

// forces reads the part "forces" with its expressions still unread.
func (r *reader) forces(n *yaml.Node, bodies []string) []*forceEntry {
	var list []*forceEntry
	for i, item := range r.list(n, `"forces"`, "- {name: w, kind: weight, points: down, size: m*g}") {
		if i == mostForces {
			r.at(item, "there are too many forces", fmt.Sprintf("at most %d", mostForces))
			break
		}
		if f, ok := r.force(item, bodies); ok {
			r.unlike(list, f)
			list = append(list, f)
		}
	}
	return list
}

func (r *reader) force(n *yaml.Node, bodies []string) (*forceEntry, bool) {
	p := r.fields(n, "a force", forceKeys)
	name, ok := r.letter(p.values["name"], "the force")
	if !ok {
		return nil, false
	}
	f := &forceEntry{node: n, name: p.values["name"]}
	f.Name = name
	f.On, ok = r.on(p, bodies)
	kind, kinded := r.oneOf(p.values["kind"], "the kind of force", kinds())
	f.Kind = statics.Kind(kind)
	f.by, _ = r.word(p.values["by"], "what exerts "+name, "left cord")
	// Every part is read although an earlier one was wrong, so that the author sees all findings at once.
	placed := r.direct(f, p)
	f.size = r.formula(p.values["size"], "the size of "+name, false)
	return f, ok && kinded && placed
}

func kinds() []string {
	var all []string
	for _, k := range statics.Kinds {
		all = append(all, string(k))
	}
	return all
}

// formula takes down an expression of the file, to be read once every letter is
// known; nil for none.
func (r *reader) formula(n *yaml.Node, what string, angle bool) *formula {
	example := "m*g"
	if angle {
		example = "35 deg"
	}
	if _, ok := r.word(n, what, example); !ok {
		return nil
	}
	return &formula{node: n, what: what, angle: angle}
}

// on reads the body on which a force acts.
func (r *reader) on(p part, bodies []string) (string, bool) {
	n := p.values["on"]
	if n == nil {
		// After a name that cannot be used, the file may have meant one body only.
		if len(bodies) > 1 && !p.misspelt("on", forceKeys) && !slices.ContainsFunc(bodies, func(b string) bool { return !isBodyName(b) }) {
			r.at(p.node, "the file does not say on which body the force acts", "on: "+strings.Join(bodies, " or on: "))
			return "", false
		}
		// The only body, named or not. After a misspelt “on” this may
		// be no body's name, but then the file is refused anyway.
		return strings.Join(bodies, ""), true
	}
	if len(bodies) == 1 && bodies[0] == "" {
		r.at(n, "the force names a body, but the problem has no \"bodies\"", "bodies: [A, B] above, or no \"on\" here")
		return "", false
	}
	if len(bodies) == 0 {
		return "", false
	}
	return r.oneOf(n, "the body", bodies)
}

// sides is what each word of "points" says of the two axes.
var sides = []struct {
	word string
	side statics.Side
}{
	{"up", statics.Side{0, 1}}, {"down", statics.Side{0, -1}}, {"left", statics.Side{-1, 0}}, {"right", statics.Side{1, 0}},
}

// otherSides are words that authors use for the same.
var otherSides = map[string]string{
	"upper": "up", "top": "up", "upward": "up", "upwards": "up", "lower": "down", "bottom": "down", "downward": "down", "downwards": "down",
	"leftward": "left", "leftwards": "left", "rightward": "right", "rightwards": "right",
}

const sidesExpected = "up, down, left or right, or two of these words, such as up left"

// direct reads where a force points: points with an angle from an axis, or a
// direction.
func (r *reader) direct(f *forceEntry, p part) bool {
	points, direction := p.values["points"], p.values["direction"]
	switch {
	case points != nil && direction != nil:
		r.at(direction, f.Name+" has both \"points\" and \"direction\"", "one of the two")
	// The misspelt key has been refused already.
	case points == nil && direction == nil && (p.misspelt("points", forceKeys) || p.misspelt("direction", forceKeys)):
	case points == nil && direction == nil && f.Kind == statics.Weight && p.values["angle"] == nil && p.values["from"] == nil:
		f.hangs = true
		return true
	case points == nil && direction == nil:
		r.at(p.node, "the file does not say where "+f.Name+" points", "\"points\" or \"direction\"")
	case direction != nil:
		return r.circle(f, p)
	default:
		return r.pointed(f, p)
	}
	return false
}

func (r *reader) circle(f *forceEntry, p part) bool {
	for _, key := range []string{"angle", "from"} {
		if n := p.values[key]; n != nil {
			r.at(n, fmt.Sprintf("%s has both \"direction\" and %q", f.Name, key), "only the direction, measured anticlockwise from the x axis")
			return false
		}
	}
	f.direction = r.formula(p.values["direction"], "the direction of "+f.Name, true)
	return f.direction != nil
}

func (r *reader) pointed(f *forceEntry, p part) bool {
	text, ok := r.word(p.values["points"], "where "+f.Name+" points", "up left")
	if !ok {
		return false
	}
	if f.Points, ok = readSides(text); !ok {
		expected := sidesExpected
		if strings.IndexFunc(text, unicode.IsDigit) >= 0 {
			expected += "; for an angle between 0° and 360°, use \"direction\" instead"
		}
		r.at(p.values["points"], fmt.Sprintf("%q is not a direction that \"points\" can have", shorten(text)), expected)
		return false
	}
	angle, from := p.values["angle"], p.values["from"]
	if f.Points[statics.X] == 0 || f.Points[statics.Y] == 0 {
		return r.alongAxis(f, text, angle, from)
	}
	if angle == nil {
		if p.misspelt("angle", forceKeys) {
			return false
		}
		r.at(p.node, fmt.Sprintf("%s points %s but has no angle", f.Name, text), "\"angle\" and \"from\"")
		return false
	}
	f.angle = r.formula(angle, "the angle of "+f.Name, true)
	if from == nil {
		if p.misspelt("from", forceKeys) {
			return false
		}
		r.at(angle, "the file does not say from which axis the angle of "+f.Name+" is measured", "from: x or from: y")
		return false
	}
	axis, ok := r.axis(from)
	if axis == "y" {
		f.From = statics.Y
	}
	return ok && f.angle != nil
}

// axis reads from which axis an angle is measured, and offers it for what it is called
// where it is level.
func (r *reader) axis(n *yaml.Node) (string, bool) {
	text := strings.ToLower(n.Value)
	for _, row := range []struct{ word, axis string }{{"horizontal", "x"}, {"vertical", "y"}} {
		if n.Kind == yaml.ScalarNode && strings.Contains(text, row.word) {
			r.at(n, fmt.Sprintf("unknown axis %q", shorten(n.Value)), fmt.Sprintf("%s, which is the %s axis unless the axes are turned", row.axis, row.word))
			return "", false
		}
	}
	return r.oneOf(n, "the axis", []string{"x", "y"})
}

func (r *reader) alongAxis(f *forceEntry, text string, angle, from *yaml.Node) bool {
	for _, n := range []*yaml.Node{angle, from} {
		if n != nil {
			r.at(n, fmt.Sprintf("%s points %s, which is along an axis, but it also has an angle", f.Name, text), "no angle, or two directions such as up left")
			return false
		}
	}
	return true
}

func readSides(text string) (statics.Side, bool) {
	var found statics.Side
	words := strings.FieldsFunc(strings.ToLower(text), func(c rune) bool { return c == ' ' || c == '-' || c == ',' })
	for _, word := range words {
		if other, ok := otherSides[word]; ok {
			word = other
		}
		known := false
		for _, s := range sides {
			if s.word != word {
				continue
			}
			known = true
			for axis := range s.side {
				// “up down” contradicts itself, and “left left” is a slip.
				if s.side[axis] != 0 && found[axis] != 0 {
					return found, false
				}
				found[axis] += s.side[axis]
			}
		}
		if !known {
			return found, false
		}
	}
	return found, len(words) > 0
}

// unlike refuses a force whose name stands already on its body.
func (r *reader) unlike(list []*forceEntry, f *forceEntry) {
	for _, g := range list {
		if g.Name == f.Name && g.On == f.On {
			r.at(f.name, fmt.Sprintf("the force %s is listed twice on one body, first on line %d", f.Name, g.name.Line), "a different name for each force on a body")
			return
		}
	}
}
