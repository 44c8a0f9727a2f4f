package screen

import (
	"math"
	"slices"
	"strings"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// chooser is the force diagram by keys: each force that is offered can be pointed
// with the arrow keys. What is chosen stands in the line as text, and what is
// typed in the line is chosen, so that both ways say the same.
type chooser struct {
	active bool // the arrow keys point forces
	ref    *checker.Reference
	body   *statics.Body
	offers []offer
	at     int
}

// offer is one force that may act. Sides is what is said of it, "" while it is
// left out.
type offer struct {
	name, gloss string
	kind        statics.Kind
	sides       string
}

// begin offers the forces for a body, unless it is in hand already.
func (c *chooser) begin(ref *checker.Reference, name string) {
	body, ok := ref.Body(name)
	if !ok {
		// A problem with one body asks for no name.
		body = &ref.Bodies[0]
	}
	if c.body != body {
		*c = chooser{ref: ref, body: body, offers: offersFor(ref, body), active: true}
	}
}

// rankOf puts the kinds into one order, whether they act or not, so that a
// force's place in the list tells nothing.
var rankOf = []statics.Kind{
	statics.Weight, statics.Normal, statics.Friction, statics.Tension, statics.Spring, statics.Strut, statics.Push, statics.Pull,
}

// strangers are offered where the body has no force of their kind.
var strangers = []struct {
	name string
	kind statics.Kind
}{
	{"w", statics.Weight}, {"N", statics.Normal}, {"f", statics.Friction}, {"T", statics.Tension},
}

// offersFor lists the forces on the body among others that do not act on it.
func offersFor(ref *checker.Reference, body *statics.Body) []offer {
	var all []offer
	add := func(name string, kind statics.Kind, of string) {
		if !slices.ContainsFunc(all, func(o offer) bool { return o.name == name }) {
			all = append(all, offer{name: name, gloss: saidKind(kind, of), kind: kind})
		}
	}
	// Forces on other bodies are offered too, or the list would be the answer.
	for _, b := range ref.Bodies {
		for _, f := range b.Forces {
			add(f.Name, f.Kind, b.Name)
		}
	}
	for _, s := range strangers {
		if !ref.Has(s.name) && !slices.ContainsFunc(body.Forces, func(f statics.Force) bool { return f.Kind == s.kind }) {
			add(s.name, s.kind, "")
		}
	}
	slices.SortStableFunc(all, func(a, b offer) int { return slices.Index(rankOf, a.kind) - slices.Index(rankOf, b.kind) })
	return all
}

// press points the force in hand, which changes the text, or moves to the next.
func (c *chooser) press(k tea.KeyMsg) (changed, ok bool) {
	switch k.Type {
	case tea.KeyTab:
		if c.active {
			// The first Tab only goes to the list; a force is skipped by the second.
			c.at = (c.at + 1) % len(c.offers)
		}
		c.active = true
		return false, true
	case tea.KeyShiftTab:
		c.at = (c.at + len(c.offers) - 1) % len(c.offers)
		c.active = true
		return false, true
	}
	if !c.active {
		return false, false
	}
	step, ok := map[tea.KeyType][2]int{tea.KeyUp: {0, 1}, tea.KeyDown: {0, -1}, tea.KeyLeft: {-1, 0}, tea.KeyRight: {1, 0}}[k.Type]
	if !ok {
		return false, false
	}
	o := &c.offers[c.at]
	x, y := roomSides(o.sides)
	o.sides = saidSides(min(max(x+step[0], -1), 1), min(max(y+step[1], -1), 1))
	return true, true
}

// meet puts "; " between what the arrow keys wrote and a letter that is typed after it.
func (c *chooser) meet(line *frame.Line, k tea.KeyMsg) {
	text := line.Text()
	if !c.active || line.IsRefused() || text == "" || text != c.text() || k.Type != tea.KeyRunes || len(k.Runes) == 0 || !unicode.IsLetter(k.Runes[0]) {
		return
	}
	line.Set(text + "; ")
}

// text is what is chosen, as it would be typed.
func (c *chooser) text() string {
	var parts []string
	for _, o := range c.offers {
		if o.sides != "" {
			parts = append(parts, expr.Glyph(o.name)+" "+o.sides)
		}
	}
	return strings.Join(parts, "; ")
}

// follow chooses what the line says, as it is read back: "" for an empty line.
func (c *chooser) follow(echo string) {
	for i := range c.offers {
		c.offers[i].sides = ""
	}
	for _, part := range strings.Split(echo, "; ") {
		name, sides, _ := strings.Cut(part, " ")
		for i := range c.offers {
			if o := &c.offers[i]; name == expr.Glyph(o.name) && o.sides == "" {
				// A letter typed twice is two forces, and the second row of that name is the other.
				o.sides = sides
				break
			}
		}
	}
}

// listed are the chosen forces, for the drawing.
func (c *chooser) listed() []picture.Listed {
	var all []picture.Listed
	for i, o := range c.offers {
		if direction, ok := c.direction(o.sides); ok {
			all = append(all, picture.Listed{Name: o.name, Kind: o.kind, Direction: direction, InHand: c.active && i == c.at})
		}
	}
	return all
}

// direction is where words point, in degrees. Two sides of the room at a surface
// are meant along it or out of it: the words are the same, and the drawing is
// truer.
func (c *chooser) direction(sides string) (float64, bool) {
	// The sides of a slope are turned with its axes.
	slope := c.ref.Tilt(c.body) / quantity.Degree
	up := 0.0
	if math.Sin(slope*quantity.Degree) < 0 {
		up = 180
	}
	switch {
	case sides == "":
		return 0, false
	case strings.HasPrefix(sides, "up the slope"):
		return slope + up, true
	case strings.HasPrefix(sides, "down the slope"):
		return slope + up + 180, true
	case strings.HasPrefix(sides, "away from"):
		return slope + 90, true
	case strings.HasPrefix(sides, "into"):
		return slope - 90, true
	}
	x, y := roomSides(sides)
	rough := math.Atan2(float64(y), float64(x)) / quantity.Degree
	// “up right” on a slope is along it in the student's mind, and not at 45°.
	if x != 0 && y != 0 && c.onSlope() && math.Mod(slope, 90) != 0 {
		return slope + 90*math.Round((rough-slope)/90), true
	}
	return rough, true
}

func (c *chooser) onSlope() bool {
	return slices.ContainsFunc(c.body.Forces, func(f statics.Force) bool { return f.Kind == statics.Normal })
}

// roomSides reads the sides of the room that words name.
func roomSides(sides string) (x, y int) {
	// The “up” of “up the slope” is no side of the room.
	if strings.Contains(sides, "the slope") {
		return 0, 0
	}
	for _, word := range strings.Fields(sides) {
		switch word {
		case "up":
			y = 1
		case "down":
			y = -1
		case "left":
			x = -1
		case "right":
			x = 1
		}
	}
	return x, y
}

func saidSides(x, y int) string {
	words := append([][]string{{"down"}, nil, {"up"}}[y+1], [][]string{{"left"}, nil, {"right"}}[x+1]...)
	return strings.Join(words, " ")
}

// offered are the offers as they are shown.
func (c *chooser) offered() views.Offers {
	shown := views.Offers{At: c.at, Active: c.active}
	for _, o := range c.offers {
		direction, ok := c.direction(o.sides)
		shown.List = append(shown.List, views.Offer{Name: o.name, Gloss: o.gloss, IsChosen: ok, Direction: direction})
	}
	return shown
}
