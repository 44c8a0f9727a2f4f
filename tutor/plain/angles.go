package plain

import (
	"math"
	"strconv"
	"strings"

	"example.org/standstill/checker/pattern"
	"example.org/standstill/tutor"
)

// turned reads "alpha = 20", "α 20°", "m 2.5 kg": a letter and a number.
var turned = pattern.Of(`^\s*(\S+?)\s*[=\s]\s*([0-9]+(?:[.,][0-9]+)?)\s*\S*\s*$`)

// angles lets the student turn what is given in a solved problem, until a line
// that turns nothing.
func (s *session) angles() error {
	if !s.lesson.Over() {
		s.say(saidAnglesLater)
		return nil
	}
	a := s.lesson.Angles()
	if a == nil {
		s.say(saidNoAngles)
		return nil
	}
	s.say(saidAngles)
	s.settings(a)
	for {
		line, err := s.ask()
		if err != nil {
			return err
		}
		m := turned().FindStringSubmatch(line)
		if m == nil {
			return s.endAngles(line)
		}
		s.turn(a, m[1], m[2])
	}
}

// endAngles leaves the angles; a word is obeyed at once.
func (s *session) endAngles(line string) error {
	s.say(saidAnglesEnd)
	// “angles” once more would end this and begin the same again.
	if word, ok := tutor.WordOf(line); ok && word != tutor.AskAngles {
		return s.word(word)
	}
	return nil
}

func (s *session) turn(a *tutor.Angles, letter, number string) {
	slider, ok := a.Slider(letter)
	value, err := strconv.ParseFloat(strings.Replace(number, ",", ".", 1), 64)
	if !ok || err != nil {
		s.say(saidNoSlider, letter)
		return
	}
	if why := a.Set(slider, value); why != "" {
		s.say(saidNot, why)
		return
	}
	s.settings(a)
	s.curve(a, slider)
}

func (s *session) settings(a *tutor.Angles) {
	var parts []string
	for _, k := range a.Sliders() {
		parts = append(parts, k.String())
	}
	var read []string
	for _, r := range a.Readings() {
		read = append(read, r.String())
	}
	s.say(saidSettings, strings.Join(parts, ", "), strings.Join(read, ", "))
}

// curve tells how what is asked for follows one letter, in a few rows.
func (s *session) curve(a *tutor.Angles, slider int) {
	// More rows would take long to listen to.
	const rows = 8
	curves := a.Curves(slider)
	k := a.Sliders()[slider]
	if len(curves) == 0 {
		return
	}
	last := len(curves[0].Dots) - 1
	for i := range rows + 1 {
		at := i * last / rows
		k.Value = curves[0].Dots[at].X
		var read []string
		for _, c := range curves {
			c.Value = c.Dots[at].Y
			if !math.IsNaN(c.Value) {
				read = append(read, c.Readout.String())
			}
		}
		if read == nil {
			read = []string{saidNoSolution}
		}
		s.say("%s: %s", k, strings.Join(read, ", "))
	}
	if remark := a.Remark(slider, curves); remark != "" {
		s.say(saidNote, remark)
	}
}
