// Inside the package: it reads every place of a page, asked for or not.

package tutor

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// A reader has one misconception and mends a line only by what is said: once the texts
// that it has read about the line since it was refused hold all that it has to be told.
// In the patterns, {force} is the force in which the line is wrong as it is printed. Who
// made a slip has to be told where to look and what at; who believes what was typed has to
// be told how it is in truth. Only after both hints it copies the step.
type reader struct {
	name     string
	spoil    func(l *Lesson, stage checker.Stage, item string) string // "" where it changes nothing
	slip     []string
	believer []string
}

const (
	itsForce  = `{force}`
	aFunction = `(?i)\bsides?\b|\bangle|function|sine\b`
	aRule     = `(?i)mass times|\bm ?g\b`
)

var readers = []reader{
	{"cosine for x, from the vertical", cosineForX, []string{itsForce, aFunction}, []string{itsForce, `(?i)opposite.* sine|sine.* opposite`}},
	{"sine for x, from the horizontal", sineForX, []string{itsForce, aFunction}, []string{itsForce, `(?i)adjacent.* cosine|cosine.* adjacent`}},
	{"tangent for a component", tangent, []string{itsForce, `(?i)tangent|function|\bsides?\b`}, []string{itsForce, `(?i)cosine`}},
	{"every sign plus", everyPlus, []string{itsForce, `(?i)\bsign`}, []string{itsForce, `(?i)negative`}},
	{"mass for weight", massForWeight, []string{itsForce, `(?i)\bunit|\bmass\b`}, []string{aRule}},
	{"mass for weight in a sum", massInSum, []string{`\bw\b`, `(?i)\bunit|\bmass\b`}, []string{aRule}},
	{"normal force is the weight", normalIsWeight, []string{`(?i){force}|normal force`, `(?i)\bweight\b`}, []string{`(?i){force}|normal force`, `(?i)no other force`}},
	{"leaves the unit out", noUnit, []string{`(?i)\bunit`}, []string{`(?i)\bunit`, `(?i)newton|pound`}},
	{"g is 10", otherG, []string{`\bg\b`}, []string{`\bg\b`, `9\.8`}},
	{"leaves a force out of a sum", forceLeftOut, []string{`(?i)include every force`}, []string{itsForce}},
	{"resolves what lies along the axis", resolvesAll, []string{itsForce}, []string{itsForce, `(?i)along`}},
	{"friction drives", frictionDrives, []string{itsForce, `(?i)point|direction|way`}, []string{itsForce, `(?i)opposes|opposite`}},
	{"forgets the weight in Forces", weightForgotten, []string{`(?i)not include every force`}, []string{`(?i)weight|without touching`}},
	{"a driving force in Forces", drivingForce, []string{itsForce}, []string{itsForce, `(?i)touch|exert`}},
}

func tangent(l *Lesson, stage checker.Stage, item string) string {
	f, _, ok := componentOf(l.Problem.System, item)
	if stage != checker.Components || !ok || !f.Slanted() || f.Direction != nil {
		return ""
	}
	return fmt.Sprintf("%s = %s tan(%s)", expr.Glyph(item), expr.Glyph(f.Name), l.Ref.Print(f.Angle))
}

func massInSum(l *Lesson, stage checker.Stage, item string) string {
	right := answer(l, stage, item)
	if stage != checker.YSum || !l.Ref.Has("m") {
		return ""
	}
	return changed(right, regexp.MustCompile(`\bw\b`), "m")
}

func changed(text string, what *regexp.Regexp, to string) string {
	if again := what.ReplaceAllString(text, to); again != text {
		return again
	}
	return ""
}

// otherG works with 10 for g, where what is asked grows with it.
func otherG(l *Lesson, stage checker.Stage, item string) string {
	g, given := l.Problem.System.Given("g")
	unit := l.Ref.Unit(item)
	if stage != checker.Solve || !given || unit.Dim != quantity.Force || l.IsFormula(item) || slices.ContainsFunc(l.Problem.System.Givens, func(other statics.Given) bool {
		return other.Unit.Dim == quantity.Force
	}) {
		return ""
	}
	value, _ := l.Ref.Value(item)
	return expr.Glyph(item) + " = " + unit.In(value*10/g.Value(), 4)
}

// forceLeftOut leaves the last force out of a sum of three or more.
func forceLeftOut(l *Lesson, stage checker.Stage, item string) string {
	if stage != checker.XSum && stage != checker.YSum {
		return ""
	}
	terms := strings.FieldsFunc(strings.TrimSuffix(answer(l, stage, item), " = 0"), func(r rune) bool { return r == '+' || r == '−' })
	if len(terms) < 3 {
		return ""
	}
	text := strings.TrimSuffix(answer(l, stage, item), " = 0")
	return strings.TrimRight(text[:len(text)-len(terms[len(terms)-1])], " +−") + " = 0"
}

// resolvesAll writes a cosine to a force that lies along the axis, too.
func resolvesAll(l *Lesson, stage checker.Stage, item string) string {
	body, _ := l.Problem.System.Body(item)
	if stage != checker.XSum && stage != checker.YSum || body == nil {
		return ""
	}
	var along, angle string
	for i := range body.Forces {
		f := &body.Forces[i]
		switch {
		case f.Slanted() && f.Direction == nil:
			angle = l.Ref.Print(f.Angle)
		case !f.Slanted() && f.Kind != statics.Weight && f.Factor(axisOf(stage)).Sign != 0:
			along = expr.Set(f.Name)
		}
	}
	if along == "" || angle == "" {
		return ""
	}
	return changed(answer(l, stage, item), regexp.MustCompile(regexp.QuoteMeta(along)+`( |$)`), along+" cos("+angle+")$1")
}

var opposite = map[string]string{"up": "down", "down": "up", "left": "right", "right": "left", "into": "away from", "away from": "into"}

// frictionDrives lets friction point the way in which it drives.
func frictionDrives(l *Lesson, stage checker.Stage, item string) string {
	return inForces(l, stage, item, statics.Friction, func(one string) string {
		name, way, _ := strings.Cut(one, " ")
		for word, other := range opposite {
			if strings.HasPrefix(way, word) {
				return name + " " + other + strings.TrimPrefix(way, word)
			}
		}
		return one
	})
}

func weightForgotten(l *Lesson, stage checker.Stage, item string) string {
	return inForces(l, stage, item, statics.Weight, func(string) string { return "" })
}

// drivingForce adds a force of motion beside friction.
func drivingForce(l *Lesson, stage checker.Stage, item string) string {
	return inForces(l, stage, item, statics.Friction, func(one string) string {
		if l.Ref.Has("D") {
			return one
		}
		return one + "; D" + one[strings.Index(one, " "):]
	})
}

// inForces changes the first force of a kind in the list of forces.
func inForces(l *Lesson, stage checker.Stage, item string, kind statics.Kind, change func(string) string) string {
	body, _ := l.Problem.System.Body(item)
	if stage != checker.Diagram || body == nil {
		return ""
	}
	i := slices.IndexFunc(body.Forces, func(f statics.Force) bool { return f.Kind == kind })
	right := answer(l, stage, item)
	list := strings.Split(right, "; ")
	if i < 0 || len(list) != len(body.Forces) || len(list) < 2 {
		return ""
	}
	if list[i] = change(list[i]); list[i] == "" {
		list = slices.Delete(list, i, i+1)
	}
	if text := strings.Join(list, "; "); text != right {
		return text
	}
	return ""
}

// wayOut is what mended a line.
type wayOut int

const (
	byMessage  wayOut = iota
	bySameNote        // the message of a mistake made before, with the rule
	byHint1
	byHint2
	byCopying
	waysOut
)

// reading is what a reader goes through: a page, and what it has been told.
type reading struct {
	*Lesson
	needs   []string
	told    bool // the rule, on this page
	out     [waysOut]int
	refused int
}

// understands reports whether what was read holds all that has to be told.
func (r *reading) understands(said, force string) bool {
	for _, need := range r.needs {
		name := regexp.QuoteMeta(expr.Set(force))
		if !regexp.MustCompile(`(?s)` + strings.ReplaceAll(need, "{force}", name)).MatchString(said) {
			return false
		}
	}
	return true
}

// mend types what the misconception gives, reads until it understands, and types the
// right line.
func (r *reading) mend(t *testing.T, stage checker.Stage, item, text string) {
	line := r.Add(answered(stage, item, text))
	if line.Verdict == checker.Right {
		return // the misconception does no harm here
	}
	r.refused++
	said := strings.Join(append([]string{line.Doubt, line.Message}, line.Notes...), " ")
	out := byMessage
	force := r.wrongIn(stage, item, line.Report)
	if len(line.Notes) > 0 {
		out, r.told = bySameNote, true
	}
	for !r.understands(said, force) && out < byCopying {
		out = max(out, bySameNote) + 1
		hint := r.Add(record.Entry{Kind: record.Hint, Stage: string(stage), Item: item, Detail: fmt.Sprint(int(out - bySameNote))})
		if said += " " + hint.Message; hint.Level >= ruleLevel {
			r.told = true
		}
	}
	if out == byCopying {
		t.Logf("   %s %s: %q: %q", r.Problem.ID, stage, text, said)
	}
	r.out[out]++
	if again := r.Add(answered(stage, item, answer(r.Lesson, stage, item))); again.Verdict != checker.Right {
		t.Errorf("%s: %s %s: the right line is %s", r.Problem.ID, stage, item, again.Code)
	}
}

// wrongIn is the force in which a line is wrong: that of the component, that of the item,
// or the one that is told.
func (r *reading) wrongIn(stage checker.Stage, item string, report checker.Report) string {
	if f, _, ok := componentOf(r.Problem.System, item); stage == checker.Components && ok {
		return f.Name
	}
	return report.About
}

// TestReaders lets each reader go through the first sixteen problems in which its
// misconception gives other lines, and says what mended them. A slip is mended by where
// the message points, a belief at the latest by the rule; hardly anybody has to copy.
func TestReaders(t *testing.T) {
	t.Logf("%-44s refused  message  said again  hint 1  hint 2  copied  most in one", "sixteen problems each")
	for _, s := range readers {
		for _, kind := range []string{"slip", "belief"} {
			needs := map[string][]string{"slip": s.slip, "belief": s.believer}[kind]
			w := s.read(t, needs)
			t.Logf("%-44s %7d  %7d  %10d  %6d  %6d  %6d  %11d", s.name+", "+kind, w.refused, w.out[byMessage], w.out[bySameNote],
				w.out[byHint1], w.out[byHint2], w.out[byCopying], w.most)
			if w.problems < studied {
				t.Errorf("%s: only %d problems", s.name, w.problems)
			}
			if w.most > 2 {
				t.Errorf("%s, %s: refused %d times in one problem", s.name, kind, w.most)
			}
			mended := w.refused - w.out[byCopying]
			if kind == "slip" {
				mended = w.out[byMessage] + w.out[bySameNote]
			}
			if mended*10 < w.refused*9 {
				t.Errorf("%s, %s: %d of %d lines were mended", s.name, kind, mended, w.refused)
			}
		}
	}
}

// studied is how many problems a reader goes through.
const studied = 16

// wentReading is how a reader went through its problems.
type wentReading struct {
	problems, refused, most int
	out                     [waysOut]int
}

func (s *reader) read(t *testing.T, needs []string) (w wentReading) {
	for _, h := range problems.Embedded().List() {
		if w.problems == studied {
			break
		}
		g, err := NewPage(problemOf(t, h.ID))
		if err != nil {
			t.Fatal(err)
		}
		r := reading{Lesson: &Lesson{Page: g}, needs: needs}
		for _, p := range g.places() {
			if text := s.spoil(r.Lesson, p.Stage, p.Item); text != "" && !r.told {
				r.mend(t, p.Stage, p.Item, text)
			}
		}
		if r.refused > 0 {
			w.problems++
		}
		w.refused += r.refused
		w.most = max(w.most, r.refused)
		for i, n := range r.out {
			w.out[i] += n
		}
	}
	return w
}
