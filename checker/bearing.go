package checker

import (
	"math"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
)

// Words behind an angle say from where it is measured: "from y", "below the x axis",
// "west of south".

// angleWords is what they say: the axis that the angle is measured from, and the sides
// to which it lies, 0 where they do not say. The zero value says nothing.
type angleWords struct {
	said  bool
	axis  statics.Axis
	x, y  int
	words string // as they are read back
}

// fromAxis matches "from y", "from the vertical", "above the negative x axis". Groups: the
// sign and axis behind "from"; above or below, the sign and axis behind it; the side of the vertical.
var fromAxis = pattern.Of(`(?i)\s*(?:(?:measured\s+)?(?:(?:counter[-−–]?\s?|anti[-−–]?)?clockwise\s+)?(?:from|to|with|off)\s+(?:the\s+)?(negative\s+|positive\s+|[-+−])?\s*(x|y|horizontal|vertical)(?:[-−–\s]*(?:axis|direction|line))?` +
	`|(above|below)\s+(?:the\s+)?(negative\s+|positive\s+|[-+−])?(x|horizontal)(?:[-−–\s]*(?:axis|direction|line))?` +
	`|to\s+the\s+(left|right)\s+of\s+(?:the\s+)?(?:vertical|y)(?:[-−–\s]*(?:axis|direction|line))?)\s*\.?\s*$`)

// ofCompass matches "west of south": the angle begins at south and goes towards west.
var ofCompass = pattern.Of(`(?i)\s*\b(?:to\s+the\s+)?(north|south|east|west)\s+of\s+(?:due\s+|the\s+)?(north|south|east|west)\s*\.?\s*$`)

// cutAngleWords takes the words behind an angle off the line.
func cutAngleWords(text string) (string, angleWords) {
	if m := ofCompass().FindStringSubmatchIndex(text); m != nil {
		if w, ok := compassWords(strings.ToLower(text[m[2]:m[3]]), strings.ToLower(text[m[4]:m[5]])); ok {
			return text[:m[0]], w
		}
	}
	at := fromAxis().FindStringSubmatchIndex(text)
	if at == nil {
		return text, angleWords{}
	}
	m := fromAxis().FindStringSubmatch(text)
	w := angleWords{said: true}
	axis := strings.ToLower(m[2] + m[5])
	if axis == "" || axis[0] == 'y' || axis[0] == 'v' {
		w.axis = statics.Y
	}
	sign := 0
	switch strings.ToLower(strings.TrimSpace(m[1] + m[4])) {
	case "negative", "-", "−":
		sign = -1
	}
	if w.axis == statics.X {
		w.x = sign
	} else {
		w.y = sign
	}
	switch strings.ToLower(m[3] + m[6]) {
	case "above":
		w.y = +1
	case "below":
		w.y = -1
	case "left":
		w.x = -1
	case "right":
		w.x = +1
	}
	w.words = w.spelled()
	return text[:at[0]], w
}

// spelled writes the axis and the sides out: "from the x axis", "below the negative x axis".
func (w angleWords) spelled() string {
	switch {
	case w.axis == statics.Y && w.x != 0:
		return map[int]string{-1: " to the left of the y axis", +1: " to the right of the y axis"}[w.x]
	case w.axis == statics.Y && w.y < 0:
		return " from the negative y axis"
	case w.axis == statics.Y:
		return " from the y axis"
	}
	lead := map[int]string{-1: " below", 0: " from", +1: " above"}[w.y]
	if w.x < 0 {
		return lead + " the negative x axis"
	}
	return lead + " the x axis"
}

// compassWords is what "toward of from" says; ok is false where the two do not cross.
func compassWords(toward, from string) (w angleWords, ok bool) {
	w = angleWords{said: true, words: " " + toward + " of " + from}
	for _, side := range []string{toward, from} {
		switch side {
		case "north":
			w.y = +1
		case "south":
			w.y = -1
		case "east":
			w.x = +1
		case "west":
			w.x = -1
		}
	}
	if from == "north" || from == "south" {
		w.axis = statics.Y
	}
	return w, w.x != 0 && w.y != 0
}

// measured returns an angle that was said with words as the problem measures it: from the
// other axis, or all the way round.
func (w angleWords) measured(s *solved.System, name string, angle float64) float64 {
	// A full-circle direction: both sides are needed to tell in which quarter it lies.
	if f := directed(s, name); f != nil && w.x != 0 && w.y != 0 {
		along := [2]float64{math.Cos(angle), math.Sin(angle)}
		if w.axis == statics.Y {
			along[0], along[1] = along[1], along[0]
		}
		return math.Atan2(float64(w.y)*along[1], float64(w.x)*along[0])
	}
	if w.axis != fromOf(s, name) {
		return math.Pi/2 - angle
	}
	return angle
}

// directed returns the force whose full-circle direction a letter is, nil for none.
func directed(s *solved.System, name string) *statics.Force {
	f, _ := forceOfAngle(s, name)
	if f == nil || f.Direction == nil {
		return nil
	}
	return f
}

// forceOfAngle finds the force that lies at an angle which is a letter, and its body.
func forceOfAngle(s *solved.System, name string) (*statics.Force, *statics.Body) {
	for b := range s.Bodies {
		for i := range s.Bodies[b].Forces {
			f := &s.Bodies[b].Forces[i]
			if expr.IsLetter(f.Angle, name) || expr.IsLetter(f.Direction, name) {
				return f, &s.Bodies[b]
			}
		}
	}
	return nil, nil
}

// missForce reports whether the words behind an angle say a side to which its
// force does not point.
func (w angleWords) missForce(s *solved.System, name string) bool {
	f, body := forceOfAngle(s, name)
	if f == nil || f.Direction != nil || body.Tilt != nil {
		return false
	}
	x, y := s.UnitVector(f)
	return w.x*solved.SignOf(x) < 0 || w.y*solved.SignOf(y) < 0
}

// fromOf returns the axis that an unknown angle is measured from.
func fromOf(s *solved.System, name string) statics.Axis {
	for _, b := range s.Bodies {
		for _, f := range b.Forces {
			if f.Angle != nil && f.Angle.Op == expr.Name && f.Angle.Name == name {
				return f.From
			}
		}
	}
	return statics.X
}
