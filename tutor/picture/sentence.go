package picture

import (
	"fmt"
	"math"
	"strings"
	"unicode"

	"example.org/standstill/checker/statics"
)

// Sentences says what the scene shows, one fact in each sentence, letters as
// words ("alpha"). An empty scene has none.
func Sentences(s Scene) []string {
	t := teller{scene: sanitise(s)}
	if s.Setup != nil {
		t.setup(s.Setup)
	}
	for i := range t.scene.Bodies {
		t.body(i)
	}
	t.links()
	for i := range t.scene.Forces {
		t.force(i)
	}
	t.triangle()
	if t.scene.Chain != nil {
		t.chain(t.scene.Chain)
	}
	t.polygon()
	t.plot()
	return t.lines
}

// links tells what is tied to what; a rope over a pulley is one rope.
func (t *teller) links() {
	for i, l := range t.scene.Links {
		from, over, to := t.overPulley(i)
		switch {
		case over < 0:
			t.say(saysLink, capital(t.bodyName(l.From)), t.bodyName(l.To), linkName(l.Kind))
		case to >= 0:
			t.say(saysOver, capital(t.bodyName(from)), t.bodyName(to), t.bodyName(over))
		}
	}
}

// overPulley finds the pulley that link i runs over and the bodies at both ends
// of the rope. over is -1 where there is no such pulley; to is -1 for the second
// part of the rope, which has been told with the first.
func (t *teller) overPulley(i int) (from, over, to int) {
	from, over = t.pulleyOf(i)
	if over < 0 {
		return from, over, -1
	}
	for k := range t.scene.Links {
		other, same := t.pulleyOf(k)
		if k != i && same == over {
			if k < i {
				other = -1
			}
			return from, over, other
		}
	}
	return from, -1, -1
}

// pulleyOf gives the ends of a rope that is tied to a pulley; over is -1 for others.
func (t *teller) pulleyOf(i int) (from, over int) {
	l := t.scene.Links[i]
	switch {
	case l.Kind == Rope && t.scene.Bodies[l.To].Shape == Pulley:
		return l.From, l.To
	case l.Kind == Rope && t.scene.Bodies[l.From].Shape == Pulley:
		return l.To, l.From
	}
	return l.From, -1
}

// teller collects the sentences of a scene.
type teller struct {
	scene Scene
	lines []string
}

func (t *teller) say(format string, parts ...any) {
	t.lines = append(t.lines, spoken(fmt.Sprintf(format, parts...)))
}

func linkName(k LinkKind) string {
	if known(int(k), len(linkWords)) {
		return linkWords[k]
	}
	return linkWords[Rope]
}

// bodyName is the name of a body, or what it is.
func (t *teller) bodyName(i int) string {
	b := &t.scene.Bodies[i]
	switch {
	case b.Name != "":
		return statics.Called(b.Name)
	case known(int(b.Shape), len(shapeWords)):
		return shapeWords[b.Shape]
	}
	return shapeWords[Knot]
}

// capital begins a sentence; letters of forces keep their case, because they
// are names.
func capital(words string) string {
	if !strings.HasPrefix(words, "the ") {
		return words
	}
	return string(unicode.ToUpper(rune(words[0]))) + words[1:]
}

// body tells what a body lies on and how its axes are turned.
func (t *teller) body(i int) {
	b := &t.scene.Bodies[i]
	for _, s := range b.Surfaces {
		t.surface(capital(t.bodyName(i)), s, len(b.Surfaces) > 1)
	}
	switch {
	case !t.acted(i) || b.Bare || level(b.Tilt):
	case onSlope(b):
		t.say(saysSlopeAxes, slopeWay(b, b.Tilt))
	default:
		way := wordAnticlock
		if turn(0, b.Tilt) < 0 {
			way = wordClockwise
		}
		t.say(saysTurnedAxes, degreesText(math.Abs(turn(0, b.Tilt)))+"°", way)
	}
}

// acted tells whether any force acts on a body.
func (t *teller) acted(i int) bool {
	for k := range t.scene.Forces {
		if t.scene.Forces[k].On == i {
			return true
		}
	}
	return false
}

func (t *teller) surface(body string, s Surface, more bool) {
	rise := turn(90, s.Normal)
	angle := degreesText(math.Abs(rise)) + "°"
	if s.Angle != "" {
		angle = lettered(s.Angle, angle)
	}
	switch size := math.Abs(rise); {
	case size < 0.05:
		t.say(saysLevelGround, body)
	case size < 89.5 && more:
		t.say(saysTouchesSlope, body, strings.TrimPrefix(acrossWords[sign(rise)], "to the "), angle)
	case size < 89.5:
		t.say(saysRises, body, strings.TrimPrefix(acrossWords[sign(rise)], "to the "), angle)
	case size < 90.5:
		t.say(saysUpright, body, strings.TrimPrefix(acrossWords[sign(rise)], "to the "))
	default:
		t.say(saysOverhead, body)
	}
}

func sign(x float64) int { return int(math.Copysign(1, x)) }

// force tells what one force does.
func (t *teller) force(i int) {
	f := &t.scene.Forces[i]
	words := f.Kind.words()
	name, does := either(f.Name, words.noun), words.does
	if f.Inward {
		does = words.doesInward
	}
	if note := strings.TrimPrefix(f.Note, "= "); note != "" {
		name += ", " + note + ","
	}
	if len(t.scene.Bodies) > 1 && f.On >= 0 && t.crowded() {
		name = fmt.Sprintf(saysOnBody, name, t.bodyName(f.On))
	}
	if f.On < 0 {
		t.say(saysNoDirection, name)
		return
	}
	t.say(saysForce, name, does, t.whither(i))
	t.moreAngles(i)
	if f.InHand {
		t.say(saysInHand, name)
	}
}

// crowded tells whether forces act on more than one body.
func (t *teller) crowded() bool {
	for i := range t.scene.Forces {
		if on := t.scene.Forces[i].On; on >= 0 && on != t.scene.Forces[0].On {
			return true
		}
	}
	return false
}

// triangle tells the legs of a force.
func (t *teller) triangle() {
	tri := t.scene.Triangle
	if tri == nil {
		return
	}
	f := &t.scene.Forces[tri.Force]
	b := &t.scene.Bodies[f.On]
	var legs []string
	for k, name := range []string{tri.X, tri.Y} {
		axis := b.Tilt + 90*float64(k)
		part := heading(axis).dot(heading(f.Direction))
		if name == "" || math.Abs(part) < 1e-3 {
			continue
		}
		if part < 0 {
			axis += 180
		}
		legs = append(legs, fmt.Sprintf(saysLeg, name, t.sides(axis), string("xy"[k])))
	}
	if len(legs) > 0 {
		t.say(saysTriangle, either(f.Name, f.Kind.words().noun), strings.Join(legs, wordLast))
	}
}
