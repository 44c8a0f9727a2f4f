package picture

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
)

// setup says what a problem is about, one thing in each sentence: the thing, what holds
// it, to which side, at which angle.
func (t *teller) setup(s *Setup) {
	d := describer{s}
	if s.Above {
		t.say("%s", saysAbove)
	}
	for i := range s.Objects {
		t.all(d.object(i))
	}
	for k := range s.Holds {
		t.all(d.hold(k))
	}
	if s.NotTrue {
		t.say("%s", saysNotTrue)
	}
}

func (t *teller) all(lines []string) {
	for _, line := range lines {
		t.say("%s", line)
	}
}

type describer struct{ *Setup }

// formWords names an object that the file does not name, and goes before a letter that
// is a name.
var formWords = [...]string{Eye: "ring", Box: "body", Drum: "round body", Wheel: "pulley"}

// name is an object in a sentence: "the ring", "ring A", "the pail".
func (d describer) name(i int) string {
	o := &d.Objects[i]
	switch {
	// “body A”, as a textbook has it, and not “the A”.
	case len([]rune(o.Name)) == 1:
		return formWords[o.Form] + " " + o.Name
	case o.Name != "":
		return "the " + o.Name
	case o.Form == Wheel:
		// “pulley with its load”: the load has its own sentence.
		noun, _, _ := strings.Cut(cmp.Or(o.Noun, formWords[Wheel]), " with ")
		return theNoun(noun)
	case o.Noun != "" && (o.Form != Eye || isPlace(o.Noun)):
		return theNoun(o.Noun)
	}
	return "the " + formWords[o.Form]
}

// theNoun puts the article before what a file calls a thing, unless a letter names it,
// as in "cord A".
func theNoun(noun string) string {
	if last := noun[strings.LastIndexByte(noun, ' ')+1:]; len(last) < len(noun) && len([]rune(last)) == 1 {
		return noun
	}
	return "the " + noun
}

// places are the first words of what a file calls its body where that is the place in
// which ropes meet, and not the load below it.
var places = []string{"ring", "knot", "hook", "shackle", "rope", "cord", "head", "end", "middle", "top"}

func isPlace(noun string) bool {
	first, _, _ := strings.Cut(noun, " ")
	return slices.Contains(places, first)
}

func sentence(text string) string { return strings.ToUpper(text[:1]) + text[1:] + "." }

// object says what a body carries, weighs and lies on.
func (d describer) object(i int) []string {
	o := &d.Objects[i]
	var lines []string
	// A load without a letter is an empty one in the list: it hangs there, but has nothing in brackets.
	letters := slices.DeleteFunc(slices.Clone(o.Letters), func(l string) bool { return l == "" })
	switch {
	case len(o.Letters) == 0:
	case o.Form == Eye && o.Noun != "" && !isPlace(o.Noun):
		// The text of the problem has no ring.
		lines = append(lines, sentence(fmt.Sprintf("the drawing shows %s%s as a load that hangs from a ring", theNoun(o.Noun), bracketed(letters))))
	case o.Form == Eye:
		lines = append(lines, sentence(fmt.Sprintf("a load%s hangs from %s", bracketed(letters), d.name(i))))
	case o.Form == Wheel && len(letters) > 1:
		lines = append(lines, sentence(fmt.Sprintf("a load (%s) hangs from %s (%s)", letters[0], d.name(i), letters[1])))
	}
	own := ""
	if o.Form != Eye && len(lines) == 0 {
		own = bracketed(letters)
	}
	for k := range o.Faces {
		if line := d.face(i, k, own); line != "" {
			// The letters stand once, with the first sentence that names the body.
			lines, own = append(lines, line), ""
		}
	}
	if own != "" && len(o.Faces) == 0 {
		lines = append(lines, sentence(d.name(i)+own+" "+d.carried(i)))
	}
	return slices.DeleteFunc(lines, func(l string) bool { return l == "" })
}

// carried says how a body without a surface is held: on what it stands, or from what it hangs.
func (d describer) carried(i int) string {
	var from []string
	for k := range d.Holds {
		h := &d.Holds[k]
		isAbove := h.On == i && h.out().y < -1e-3 && h.Kind != Push || h.To == i && (h.End == OverWheel || h.End == Joined && h.out().y > 1e-3)
		switch {
		case h.On == i && h.End == Water:
			return "is under water"
		case h.Squeezed && h.On == i:
			return fmt.Sprintf("stands on %s", plural(h.Count, "spring"))
		case isAbove && h.Count > 1 && h.To == i:
			from = append(from, "the same "+d.plainNoun(h))
		case isAbove:
			from = append(from, d.plainNoun(h))
		}
	}
	if from == nil {
		return "is held in place"
	}
	return "hangs from " + listed(from)
}

func bracketed(letters []string) string {
	if len(letters) == 0 {
		return ""
	}
	return " (" + strings.Join(letters, ", ") + ")"
}

var countWords = [...]string{1: "one", 2: "two", 3: "three", 4: "four", 5: "five", 6: "six"}

func plural(n int, noun string) string {
	if n <= 1 || n >= len(countWords) {
		return "a " + noun
	}
	return countWords[n] + " " + noun + "s"
}

// face says what a body lies on.
func (d describer) face(i, k int, own string) string {
	o, f := &d.Objects[i], &d.Objects[i].Faces[k]
	subject := d.name(i) + own
	rough := ""
	if f.Rough != "" {
		rough = fmt.Sprintf(" (coefficient of friction %s)", f.Rough)
	}
	touches := "is on"
	if len(o.fixed()) > 1 || o.Form == Drum {
		touches = "touches"
	}
	side := "left"
	if heading(f.Normal).x < 0 {
		// The normal points from the wall to the body.
		side = "right"
	}
	switch {
	case f.On >= 0 && f.isFloor():
		return sentence(fmt.Sprintf("%s is on %s%s", subject, d.name(f.On), rough))
	// Both bodies have this face, and the other one's sentence has told it.
	case f.On >= 0 && (f.On < i || f.isCeiling()):
		return ""
	case f.On >= 0:
		return sentence(fmt.Sprintf("%s touches %s%s", subject, d.name(f.On), d.apart(f)))
	case f.isFloor():
		return sentence(fmt.Sprintf("%s %s a horizontal surface%s", subject, touches, rough))
	case f.isCeiling():
		return sentence(fmt.Sprintf("%s touches a ceiling above it%s", subject, rough))
	case f.isWall():
		return sentence(fmt.Sprintf("%s touches a vertical wall on the %s%s", subject, side, rough))
	}
	rises := "right"
	if f.rise() < 0 {
		rises = "left"
	}
	angle := ""
	switch {
	case f.Angle != "" && f.Asked:
		angle = " at the unknown angle " + f.Angle
	case f.Angle != "":
		angle = " at an angle " + f.Angle
	case f.Along != "" && f.Upright != "":
		angle = fmt.Sprintf(" (length %s, height %s)", f.Along, f.Upright)
	}
	return sentence(fmt.Sprintf("%s %s a slope that rises to the %s%s%s", subject, touches, rises, angle, rough))
}

// apart says how far the middles of two round bodies are from each other.
func (d describer) apart(f *Face) string {
	if f.Along == "" {
		return ""
	}
	text := fmt.Sprintf("; their centres are %s apart", f.Along)
	if f.Level != "" {
		text += fmt.Sprintf(" (%s horizontally)", f.Level)
	}
	return text
}

// hold says where a rope, spring, strut or pole runs, and who or what pulls or pushes
// where nothing else is drawn.
func (d describer) hold(k int) []string {
	h := &d.Holds[k]
	switch h.End {
	case Wind:
		return []string{sentence(fmt.Sprintf("wind%s blows against %s from the %s", d.letter(h), d.name(h.On), sideOf(h.out())))}
	case Water:
		return []string{sentence(fmt.Sprintf("the water%s pushes %s from below", d.letter(h), d.name(h.On)))}
	}
	if h.Squeezed {
		return []string{sentence(fmt.Sprintf("%s%s %s squeezed between %s and a support %s", d.noun(h), d.letter(h), isAre(h.Count), d.name(h.On), d.behind(h)))}
	}
	if h.Kind == Push {
		return []string{sentence(fmt.Sprintf("%s%s pushes %s from %s%s", d.noun(h), d.letter(h), d.name(h.On), d.whence(h), d.angle(h)))}
	}
	if h.End == Knob {
		letter := d.letter(h)
		if h.Scale {
			letter = "" // said with the scale
		}
		return []string{sentence(d.noun(h) + letter + " pulls " + d.name(h.On) + " " + d.way(h) + d.angle(h))}
	}
	angle, way, end := d.angle(h), d.way(h), d.end(h)
	if h.End == Wall && way == "horizontally to the "+sideOf(h.out()) {
		way, end = "horizontally", " to the wall on the "+sideOf(h.out())
	}
	// The angle stands between two commas, and an end may bring the second one itself.
	if angle != "" && !strings.HasPrefix(end, ",") {
		angle += ","
	}
	return []string{sentence(d.noun(h) + runs(h.Count) + "from " + d.start(h) + " " + way + angle + end)}
}

// start is where a hold runs from. “The arm runs from the end of the arm” would say the arm twice.
func (d describer) start(h *Hold) string {
	name := d.name(h.On)
	if place, found := strings.CutSuffix(name, " of the "+h.By); found && h.By != "" {
		return "its " + strings.TrimPrefix(place, "the ")
	}
	return name
}

func isSaid(text string) bool { return text != "" }

func isAre(n int) string {
	if n > 1 {
		return "are"
	}
	return "is"
}

func runs(n int) string {
	if n > 1 {
		return " run "
	}
	return " runs "
}

func sideOf(out vec) string {
	if out.x < 0 {
		return "left"
	}
	return "right"
}

func (d describer) behind(h *Hold) string {
	switch {
	case near(h.Direction, 90):
		return "below it"
	case d.Objects[h.On].alongSlope(h.out().degrees()):
		return "on the slope"
	}
	return "next to it"
}

// whence is where a pole comes from.
func (d describer) whence(h *Hold) string {
	out, words := h.out(), []string{}
	switch {
	case out.y < -1e-3:
		words = append(words, "above")
	case out.y > 1e-3:
		words = append(words, "below")
	}
	if math.Abs(out.x) > 1e-3 {
		words = append(words, "the "+sideOf(out))
	}
	return strings.Join(words, " and from ")
}

// holdWords names what holds, by kind.
var holdWords = map[Kind]string{Tension: "rope", Spring: "spring", Strut: "strut", Push: "pole", Pull: "rope"}

func (d describer) noun(h *Hold) string {
	noun := d.plainNoun(h)
	if h.Along != "" {
		noun += " (length " + h.Along + ")"
	}
	if h.Kind == Spring && !h.Squeezed {
		noun += d.letter(h)
	}
	if h.Scale {
		noun += " with a spring scale" + d.letter(h)
	}
	return noun
}

// plainNoun is a hold without its letters.
func (d describer) plainNoun(h *Hold) string {
	if h.By != "" && h.Count == 1 {
		// The words of the problem name one thing; several are only counted.
		return theNoun(h.By)
	}
	return plural(h.Count, holdWords[h.Kind])
}

func (d describer) letter(h *Hold) string {
	return bracketed(only([]string{h.Letter}, isSaid))
}

// way says to which side a hold goes.
func (d describer) way(h *Hold) string {
	out := h.out()
	deg := out.degrees()
	o := &d.Objects[h.On]
	switch {
	case d.Above:
		return aboveWay(out)
	case h.End == OnSlope || o.alongSlope(deg):
		if out.y < 0 {
			return "up along the slope"
		}
		return "down along the slope"
	case math.Abs(out.y) < 1e-3:
		return "horizontally " + acrossWords[int(sgn(out.x))]
	}
	return sides(deg)
}

// aboveWay says a direction in a view from above.
func aboveWay(out vec) string {
	far := "away from you"
	if out.y > 0 {
		far = "towards you"
	}
	switch {
	case math.Abs(out.y) < 1e-3:
		return "straight " + acrossWords[int(sgn(out.x))]
	case math.Abs(out.x) < 1e-3:
		return "straight " + far
	}
	return far + wordAnd + acrossWords[int(sgn(out.x))]
}

// angle says the angle of a hold, by its letter or by lengths.
func (d describer) angle(h *Hold) string {
	text := ""
	if h.Angle != "" {
		at := "an angle " + h.Angle
		if h.Asked {
			at = "the unknown angle " + h.Angle
		}
		text = fmt.Sprintf(", at %s %s", at, d.line(h))
	}
	switch {
	case h.Level != "" && h.Upright != "":
		text += fmt.Sprintf(", over a horizontal distance %s and a vertical distance %s", h.Level, h.Upright)
	case h.Level != "":
		text += ", over a horizontal distance " + h.Level
	case h.Upright != "":
		text += ", over a vertical distance " + h.Upright
	}
	return text
}

// line is what an angle is measured from.
func (d describer) line(h *Hold) string {
	switch {
	case h.Full:
		return "anticlockwise from the x axis"
	case d.Above && near(math.Mod(h.From+360, 180), 0):
		return "to the x axis"
	case d.Above:
		return "to the y axis"
	case near(math.Mod(h.From+360, 180), 90):
		return "to the vertical"
	case !near(math.Mod(h.From+360, 180), 0):
		return "to the slope"
	case h.inward():
		return "to the horizontal"
	case h.out().y < 0:
		return "above the horizontal"
	}
	return "below the horizontal"
}

// end says what a hold ends at.
func (d describer) end(h *Hold) string {
	switch h.End {
	case Wall:
		return " to the wall"
	case Ground:
		return " to the ground"
	case Post:
		return " to a post"
	case OnSlope:
		return " to a post on the slope"
	case Hanger:
		return fmt.Sprintf(", over a pulley, to a hanging load%s", d.letter(h))
	case OverWheel:
		return ", over a pulley, to " + d.name(h.To)
	case Joined:
		text := " to " + d.name(h.To)
		if h.Kind == Tension {
			text += d.letter(h)
		}
		return text
	}
	return " to a fixed point"
}
