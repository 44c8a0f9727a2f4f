// Package diagram reads a force diagram in words, "T1 up left; T2 up right; w down", and knows
// the first thing that is wrong with it. Sides are those of the room, or of the slope where one
// is named.
//
// Start with Read. directions.go has the words for directions, meaning.go what a name can mean on a
// body.
package diagram

import (
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/lines"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/statics"
	"example.org/standstill/checker/wording"
)

// Reading is what came of a typed diagram. A diagram that could not be read says so in Unread;
// Wrong is nil for one that is right. Read lists its forces as they were understood.
type Reading struct {
	Read   []string
	Wrong  *mistake.Finding
	Unread *Unread
}

// Unread says why a diagram was not understood. From and To are where, in runes of the text as
// [lines.Clean] leaves it.
type Unread struct {
	Code     mistake.Code
	Message  string
	From, To int
}

// Read reads the force diagram of one body, named by the item; of the first body where there is
// none of that name.
func Read(s *solved.System, item, text string) Reading {
	d := &drawing{known: known{solved: s, item: item}}
	var ok bool
	if d.body, ok = s.Body(item); !ok {
		d.body = &s.Bodies[0]
	}
	if len(text) > mostDiagram {
		return tooLong()
	}
	entries := lines.Forces(text, SaysForce)
	if len(entries) > lines.Most {
		return tooLong()
	}
	for i := range entries {
		if isListMark().MatchString(entries[i].Text) {
			continue
		}
		apart := d.runOn(entries[i].Text)
		if len(apart) > lines.Most {
			return tooLong()
		}
		for _, one := range apart {
			if unread := d.take(one); unread != nil {
				// The whole entry, also if it was taken apart: plainSides has moved its runes.
				unread.From, unread.To = entries[i].Span()
				return Reading{Unread: unread}
			}
		}
	}
	return d.judged()
}

func tooLong() Reading { return Reading{Unread: unreadable(wording.SaidDiagramLong)} }

func unreadable(message string) *Unread {
	return &Unread{Code: mistake.Unreadable, Message: message}
}

// isListMark matches the number of an item of a list.
var isListMark = pattern.Of(`^\s*(?:\d{1,2}|[-*•])\s*$`)

// mostDiagram is how long a diagram in words may be, in bytes.
const mostDiagram = 2000

// longestForce is how long one force with its side may be, in bytes.
const longestForce = 300

// drawing is the state of reading one: the forces seen so far and the first
// thing that is wrong.
type drawing struct {
	known
	read  []string
	seen  []string
	parts []string // the masses of a lumped weight that were drawn apart
	first *mistake.Finding
}

// runOn takes apart forces that stand one behind the other with nothing between, as in "T1 ↖ T2 ↗":
// behind a side, a name of the body's forces begins another.
func (d *drawing) runOn(text string) []string {
	var all []string
	words := strings.Fields(plainSides(text))
	start := 0
	names := map[string]bool{}
	for i, word := range words {
		if i == start || i-start > longestEntry || len(all) > lines.Most {
			continue
		}
		word = strings.Trim(word, ":=()[]")
		isForce, known := names[word]
		if !known {
			isForce = len(d.meaningOfWord(word).forces) > 0
			names[word] = isForce
		}
		if !isForce {
			continue
		}
		if before := parseEntry(strings.Join(words[start:i], " ")); before.named && len(before.words) > 0 {
			all = append(all, strings.Join(words[start:i], " "))
			// Only here: a name with no side in front of it belongs to the force that is being read.
			start = i
		}
	}
	if start == 0 { // as typed: plainSides may have changed the words
		return []string{text}
	}
	return append(all, strings.Join(words[start:], " "))
}

// take reads one entry. It says why where the entry cannot be read.
func (d *drawing) take(part string) *Unread {
	if len(part) > longestForce {
		return unreadable(wording.SaidDiagramLong)
	}
	e := parseEntry(part)
	if e.name == "" || len(e.words) == 0 || e.isOpposed() {
		return unreadable(wording.SaidDiagramForm(part))
	}
	meant := d.meaningOf(e.name)
	if names := d.severalIn(e.name); len(meant.forces) == 0 && len(names) > 1 {
		for _, name := range names {
			if unread := d.take(name + " " + spoken(e.words)); unread != nil {
				return unread
			}
		}
		return nil
	}
	f := d.unseen(meant.forces, e.words)
	switch {
	case f != nil && d.pointsTo(f, e.words):
		if meant.part != "" && !d.isWhole(f, meant.part) {
			f = nil
		}
	case f != nil && d.isOfMotion(e.name, f):
		d.note(mistake.ExtraForce, "", e.name)
		f = nil
	case f != nil:
		d.note(mistake.WrongSide, f.Name, f.Name)
	case len(meant.forces) > 0 && isOtherLetter(e.name, meant.forces[0]):
		d.note(mistake.ExtraForce, "", e.name) // an F beside the friction f, an R beside the N
	case len(meant.forces) > 0:
		d.note(mistake.ExtraForce, meant.forces[0].Name, meant.forces[0].Name)
	case meant.code != "":
		d.found(mistake.Finding{Code: meant.code, About: meant.about, All: []string{e.name}, Instead: meant.isPart})
	case e.name == "F" && !d.anyPointsTo(e.words):
		d.note(mistake.ExtraForce, "", e.name) // a force of the motion
	case d.isLetter(e.name):
		return unreadable(wording.SaidDiagramForm(part))
	default:
		return &Unread{Code: mistake.UnknownName, Message: wording.SaidUnknownName(d.solved, e.name)}
	}
	name := e.name
	if f != nil {
		d.seen = append(d.seen, f.Name)
		name = expr.Glyph(f.Name)
	}
	d.read = append(d.read, name+" "+spoken(e.words))
	return nil
}

// severalIn takes apart a name that is nothing but letters of forces, as in "T1 and T2 up".
func (d *drawing) severalIn(name string) []string {
	names := strings.Fields(name)
	for _, one := range names {
		if len(names) > longestEntry || len(d.meaningOfWord(one).forces) == 0 {
			return nil
		}
	}
	return names
}

// isWhole adds the weight of one mass to those that were drawn and reports whether they are
// all of a force that the file holds in one.
func (d *drawing) isWhole(f *statics.Force, mass string) bool {
	d.parts = append(d.parts, mass)
	for _, name := range f.Size.Names() {
		if d.solved.LettersFor("").Kind(name) == expr.Mass && !slices.Contains(d.parts, name) {
			return false
		}
	}
	return true
}

// anyPointsTo reports whether some force on the body points to the sides of the words.
func (d *drawing) anyPointsTo(words []sideWord) bool {
	return slices.ContainsFunc(d.body.Forces, func(f statics.Force) bool { return d.pointsTo(&f, words) })
}

// isLetter reports whether a name is a letter of the problem that is no force.
func (d *drawing) isLetter(name string) bool {
	_, ok := d.solved.LetterOf(name, d.item)
	return ok
}

// isOfMotion reports whether a capital F was drawn where the friction f does not point:
// a force of the motion.
func (d *drawing) isOfMotion(name string, f *statics.Force) bool {
	return name == "F" && f.Name == "f"
}

func (d *drawing) note(code mistake.Code, about, name string) {
	d.found(mistake.Finding{Code: code, About: about, All: []string{name}})
}

// found keeps what was found first.
func (d *drawing) found(f mistake.Finding) {
	if d.first == nil {
		d.first = &f
	}
}

// judged judges what was read: the first thing that is wrong, else what is missing.
func (d *drawing) judged() Reading {
	done := Reading{Read: d.read}
	switch {
	case d.first != nil:
		d.first.Instead = d.first.Instead && !slices.Contains(d.seen, d.first.About)
		done.Wrong = d.first
		return done
	case len(d.seen) == 0:
		done.Unread = unreadable(wording.SaidDiagramEmpty)
		return done
	}
	missing := mistake.Finding{Code: mistake.MissingForce}
	for i := range d.body.Forces {
		if name := d.body.Forces[i].Name; !slices.Contains(d.seen, name) {
			missing.All = append(missing.All, name)
		}
	}
	switch len(missing.All) {
	case 0:
		return done
	case 1:
		missing.About = missing.All[0]
	}
	done.Wrong = &missing
	return done
}

func spoken(words []sideWord) string {
	var names []string
	for _, w := range words {
		names = append(names, w.word)
	}
	return strings.Join(names, " ")
}

// pointsTo reports whether the words say where the force points: all sides that
// it points to, and no other.
func (d *drawing) pointsTo(f *statics.Force, words []sideWord) bool {
	var room, slope [2]int
	var usesRoom, usesSlope bool
	for _, w := range words {
		into, used := &room, &usesRoom
		if w.slope {
			into, used = &slope, &usesSlope
		}
		// Left and right, or up and down, of one force contradict each other.
		if w.x != 0 && into[0] != 0 || w.y != 0 && into[1] != 0 {
			return false
		}
		*used = true
		into[0] += w.x
		into[1] += w.y
	}
	x, y := d.solved.Room(d.body, f)
	tilt := d.solved.Slope(d.body)
	along, out := x*math.Cos(tilt)+y*math.Sin(tilt), y*math.Cos(tilt)-x*math.Sin(tilt)
	if math.Sin(tilt) < 0 { // up the slope counts as along, whichever way the slope falls
		along = -along
	}
	return (!usesRoom || room == [2]int{solved.SignOf(x), solved.SignOf(y)}) && (!usesSlope || slope == [2]int{solved.SignOf(along), solved.SignOf(out)})
}

// unseen picks one of the forces that was not named yet, best one that points to
// the sides of the words.
func (d *drawing) unseen(forces []*statics.Force, words []sideWord) *statics.Force {
	var pick *statics.Force
	for _, f := range forces {
		if slices.Contains(d.seen, f.Name) {
			continue
		}
		if d.pointsTo(f, words) {
			return f
		}
		if pick == nil {
			pick = f
		}
	}
	return pick
}
