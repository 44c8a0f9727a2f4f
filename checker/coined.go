package checker

import (
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/wording"
)

// Letters of a student's own: "α = atan(h/b)", "let k = cos 35". Such a line is right by
// itself, and its letter may be used from there on.

// coinedLetter is a letter that a student has named, and what it stands for.
type coinedLetter struct {
	name string
	tree *expr.Node
}

// coinedName matches what a student may name: one letter, with an index or without.
var coinedName = pattern.Of(`^(?:[A-Za-z]|[a-z]{2,7})[0-9]?$`)

// definition takes "name = expression" apart: the name is a letter that the problem does
// not have, the expression holds a function or a letter of the problem, and none that is unknown.
// 3 m is three metres here, whatever m is.
func definition(s *solved.System, line expr.Line) (own coinedLetter, ok bool) {
	if len(line.Sides) < 2 || line.Unequal || line.Lettered || line.Sides[0].Op != expr.Name || !line.Sides[0].Unknown {
		return coinedLetter{}, false
	}
	speaks := false
	for i, side := range line.Sides[1:] {
		unknown := false
		side.Walk(func(n *expr.Node) {
			unknown = unknown || n.Unknown
			// k = 3 does not say where the 3 comes from, so its letter is asked about instead.
			speaks = speaks || i == 0 && (n.Op == expr.Call || n.Op == expr.Name)
		})
		if unknown {
			return coinedLetter{}, false
		}
	}
	name := line.Sides[0].Name
	return coinedLetter{name, line.Sides[1]}, speaks && mayBeCoined(s, name)
}

// mayBeCoined reports whether a name is free to be a student's own: a letter that is no axis, no
// usual letter of a force and no other index of one of the problem's.
func mayBeCoined(s *solved.System, name string) bool {
	body := expr.Glyph(name)
	if _, usual := solved.KindOfLetter(name); usual || !coinedName().MatchString(name) || len([]rune(strings.TrimRight(body, "0123456789"))) != 1 {
		return false
	}
	if lower := strings.ToLower(name); lower == "x" || lower == "y" || lower == "e" {
		return false
	}
	for _, v := range s.Model.Variables {
		if solved.SameStem(name, v.Name) {
			return false
		}
	}
	return true
}

// coinedLetters lists the letters that a student named in earlier lines, the last of a name.
func (r *Reference) coinedLetters(before []Answer, item string) []coinedLetter {
	var all []coinedLetter
	for _, a := range before {
		if a.Stage == Diagram || !strings.ContainsAny(a.Text, "=≈~") && !strings.Contains(a.Text, "is") {
			continue
		}
		lines, _ := r.Lines(a)
		for _, l := range lines {
			letters := withCoined(r.solved.LettersFor(item), all)
			reading, err := letters.Read(l.Text)
			if err != nil {
				continue
			}
			if own, ok := definition(r.solved, reading.Lines[0]); ok {
				// Letters may be named by way of earlier ones; trees in the list have only the problem's.
				own.tree = insertCoined(own.tree, all)
				all = append(all, own)
			}
		}
	}
	return all
}

// withCoined returns the vocabulary with a student's own letters in it.
func withCoined(letters *expr.Letters, own []coinedLetter) *expr.Letters {
	if len(own) == 0 {
		return letters
	}
	more := letters.Own()
	for _, o := range own {
		kind := expr.Plain
		dim, known := letters.DimensionOf(o.tree)
		switch {
		case known && dim == quantity.Angle:
			kind = expr.Angle
		case known && dim == quantity.Mass:
			kind = expr.Mass
		}
		more.Add(o.name, kind)
		if known {
			more.Measures(o.name, dim)
		}
	}
	return more
}

// insertCoined puts what they stand for in the place of a student's own letters.
func insertCoined(n *expr.Node, own []coinedLetter) *expr.Node {
	for _, o := range own {
		n = expr.Substitute(n, o.name, o.tree)
	}
	return n
}

// usesUnknownLetter reports whether a reading has a letter that the problem does not have.
func usesUnknownLetter(reading expr.Reading) bool {
	m := &marking{line: reading.Lines[0]}
	return m.unknownLetter() != nil
}

// markCoined judges a line that names a letter of the student's own: it is right if what
// follows in a chain is what it stands for.
func (m *marking) markCoined(own coinedLetter) Report {
	if side := m.withoutValue(); side != nil {
		return Report{Verdict: Unread, Code: Unreadable, Item: m.item, Pos: side.Pos, End: side.End, Message: expr.SaidNoValue}
	}
	if len(m.line.Sides) > 2 {
		rest := *m
		rest.stage, rest.item = Solve, ""
		rest.line.Sides = m.line.Sides[1:]
		if report := rest.markKnownLetters(); report.Verdict != Right && report.Code != HoldsAlways {
			report.Item = m.item
			return report
		}
	}
	report := m.right()
	if m.stage != Solve {
		report = m.almost(TrueNotAsked, "")
	}
	report.Message = expr.Set(own.name) + wording.SaidCoined
	return report
}
