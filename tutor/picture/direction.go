package picture

import (
	"fmt"
	"math"
)

// whither says where a force points.
func (t *teller) whither(i int) string {
	f := &t.scene.Forces[i]
	b := &t.scene.Bodies[f.On]
	x := turn(b.Tilt, f.Direction)
	slope := onSlope(b)
	away := ""
	if f.Kind == Normal {
		away = wordAway
	}
	switch {
	// The ways of a slope come before those of the room: up the slope is what a solver resolves along.
	case slope && near(x, 0, 180):
		return slopeWay(b, f.Direction)
	case slope && near(x, 90):
		if away != "" {
			return away + "at right angles to it"
		}
		return "away from the slope, at right angles to it"
	case slope && near(x, -90):
		return "into the slope, at right angles to it"
	case near(turn(0, f.Direction), 90, -90):
		// On a slope the vertical is none of the axes, so its angle to them is told too.
		return away + "straight " + t.heights()[sign(-heading(f.Direction).y)] + t.measured(i, !level(b.Tilt))
	case near(turn(0, f.Direction), 0, 180):
		return away + straight(f.Kind) + acrossWords[sign(heading(f.Direction).x)] + t.measured(i, !level(b.Tilt))
	}
	return away + t.sides(f.Direction) + t.measured(i, true)
}

// straight is said of every level force but friction, which is said to act along
// the surface.
func straight(k Kind) string {
	if k == Friction {
		return ""
	}
	return wordStraight
}

// slopeWay says which way along its slope a direction goes.
func slopeWay(b *Body, direction float64) string {
	if heading(direction).y < 0 {
		return "up the slope"
	}
	return "down the slope"
}

// sides says to which sides of the room a direction points.
func sides(direction float64) string {
	d := heading(direction)
	switch across, height := acrossWords[sign(d.x)], heightWords[sign(-d.y)]; {
	case math.Abs(d.x) < 1e-3:
		return "straight " + height
	case math.Abs(d.y) < 1e-3:
		return across
	default:
		return height + wordAnd + across
	}
}

// sides says a direction as the scene is seen: from above there is no up and down.
func (t *teller) sides(direction float64) string {
	if t.fromAbove() {
		return aboveWay(heading(direction))
	}
	return sides(direction)
}

func (t *teller) heights() map[int]string {
	if t.fromAbove() {
		return depthWords
	}
	return heightWords
}

func (t *teller) fromAbove() bool {
	return t.scene.Above || t.scene.Setup != nil && t.scene.Setup.Above
}

// level tells whether axes are not turned.
func level(tilt float64) bool { return math.Abs(turn(0, tilt)) < 0.05 }

// onSlope tells whether a body's x axis lies along a sloping surface of it.
func onSlope(b *Body) bool {
	for _, s := range b.Surfaces {
		// Neither a floor nor a wall; and only if the axes lie along it.
		slopes := math.Abs(turn(90, s.Normal)) > 0.05 && math.Abs(turn(90, s.Normal)) < 89.5
		if slopes && math.Abs(turn(b.Tilt+90, s.Normal)) < 0.5 {
			return true
		}
	}
	return false
}

// measured says the angle of a force from an axis: from the one its arc starts
// at, else from the x axis if that is wanted. A direction that is only sketched
// has no number.
func (t *teller) measured(i int, wanted bool) string {
	for _, a := range t.scene.Angles {
		if a.Force == i {
			return ", " + t.angle(a)
		}
	}
	// A sketch is drawn where the force may be, so its direction is not to be read off.
	if !wanted || t.scene.Forces[i].Sketch {
		return ""
	}
	a := Angle{Force: i}
	if b := &t.scene.Bodies[t.scene.Forces[i].On]; !level(b.Tilt) && axisAngle(b.Tilt, AxisX, t.scene.Forces[i].Direction) > 45 {
		// From the nearer axis: the angle is then the small one of the textbooks.
		a.From = AxisY
	}
	return ", " + t.angle(a)
}

// angle says one angle with its axis: "alpha (35°) above the x axis".
func (t *teller) angle(a Angle) string {
	f := &t.scene.Forces[a.Force]
	b := &t.scene.Bodies[f.On]
	size := fullTurn(b.Tilt, f.Direction)
	from := "x"
	if !a.Full {
		if a.From == AxisY {
			from = "y"
		}
		size = axisAngle(b.Tilt, a.From, f.Direction)
	}
	words := degreesText(size) + "°"
	switch {
	case f.Sketch && a.Name != "":
		// The number would be that of the drawing, which is asked for.
		words = fmt.Sprintf(saysUnknown, a.Name)
	case f.Sketch:
		words = wordUnknown
	case a.Name != "":
		words = lettered(a.Name, words)
	}
	return fmt.Sprintf("%s %s the %s axis", words, t.relation(a, b, f.Direction), from)
}

// relation says on which side of an axis a direction lies. Turned axes, and
// axes that are seen from above, have no above and below.
func (t *teller) relation(a Angle, b *Body, direction float64) string {
	d := heading(direction)
	switch {
	case a.Full:
		return wordAnticlock + " from"
	case !level(b.Tilt) || t.fromAbove():
		return "from"
	case a.From == AxisY:
		return acrossWords[sign(d.x)] + " of"
	case d.y > 0:
		return "below"
	}
	return "above"
}

// lettered joins a letter with what it stands for. A letter that is the number
// itself is not said twice.
func lettered(letter, meaning string) string {
	if letter == meaning {
		return meaning
	}
	return letter + " (" + meaning + ")"
}

// axisAngle is the angle between a direction and the nearer half of an axis.
func axisAngle(tilt float64, from Axis, direction float64) float64 {
	if from == AxisY {
		tilt += 90
	}
	a := math.Abs(turn(tilt, direction))
	return min(a, 180-a)
}

// moreAngles tells the arcs of a force beyond the first.
func (t *teller) moreAngles(i int) {
	first := true
	for _, a := range t.scene.Angles {
		if a.Force != i {
			continue
		}
		// The first angle is in the sentence of the force.
		if !first && a.Name != "" {
			t.say(saysAngle, a.Name, either(t.scene.Forces[i].Name, wordForce), string("xy"[a.From&1]))
		}
		first = false
	}
}
