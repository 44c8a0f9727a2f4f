package summary

import (
	"fmt"
	"io"
	"strings"
	"time"
	"unicode/utf8"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/classfile"
)

// letters stand for each status in a table, in their order.
const letters = "-PSDHTWF"

func Letter(c Cell) string {
	letter := letters[c.Status : c.Status+1]
	switch {
	case c.Late:
		return letter + "*"
	case c.Overdue:
		return letter + "!"
	}
	return letter
}

// Words says how a student stands with a problem.
func Words(c Cell) string {
	words := c.Status.String()
	switch {
	case c.Late:
		words += ", " + Times(c.Days, "day") + " late"
	case c.Overdue:
		words += ", " + Times(c.Days, "day") + " overdue"
	}
	switch {
	// Its own words say “right first time” already.
	case c.Status == tutor.RightFirst:
		words += fmt.Sprintf(", %d of %d", c.RightFirst, c.Items)
	case c.Status.Done():
		words += fmt.Sprintf(", %d of %d right first time", c.RightFirst, c.Items)
	}
	if c.Stage != "" && c.Status == tutor.Begun {
		words += ", at " + Place(c.Stage, c.Item)
	}
	return words
}

// Place names a stage, and the item in it.
func Place(stage checker.Stage, item string) string {
	name := strings.ToLower(tutor.Title(stage))
	if item != "" {
		name += " " + expr.Glyph(classfile.Shown(item))
	}
	return name
}

// Layout says how a report is written as text. Plain writes lines without columns,
// the important word first, for screen readers; Width is that of the terminal, 80
// if zero.
type Layout struct {
	Plain bool
	Width int
}

// WriteText writes the report to be read on a terminal.
func (r *Report) WriteText(w io.Writer, l Layout) error {
	if l.Width == 0 {
		l.Width = 80
	}
	t := &Text{}
	t.Line(saidReport, classfile.Shown(r.Name), r.Code, Day(r.At, true), Times(len(r.Students), "student"), Times(len(r.Work), "problem"), Entries(r.Entries))
	t.columns(r)
	if l.Plain {
		t.rows(r)
	} else {
		t.table(r, l.Width)
	}
	t.Line("%s", saidTimeRule)
	t.stuck(r)
	t.ideas(r, l)
	t.mistakes(r)
	t.disputed(r)
	t.remarks(r)
	t.Line("\n%s", SaidRecorded)
	_, err := io.WriteString(w, t.String())
	return err
}

// Text is a page of text while it is written.
type Text struct{ strings.Builder }

func (t *Text) Line(format string, parts ...any) { fmt.Fprintf(t, format+"\n", parts...) }

func (t *Text) columns(r *Report) {
	t.Line("\n%s", headSet)
	for i, c := range r.Work {
		line := fmt.Sprintf("%3d  %s  %s", i+1, c.ID, c.Title)
		if !c.Due.IsZero() {
			line += ", due " + Day(c.Due, false)
		}
		if r.isWeighted() {
			line += ", weight " + classfile.Number(c.Weight)
		}
		t.Line("%s: %s", line, c.counts(len(r.Students)))
	}
}

// counts says how many students have come how far.
func (c *Column) counts(of int) string {
	done := 0
	for s, n := range c.Students {
		if tutor.Status(s).Done() {
			done += n
		}
	}
	said := fmt.Sprintf("%d of %d done", done, of)
	for _, status := range []tutor.Status{tutor.Shown, tutor.Begun} {
		if n := c.Students[status]; n > 0 {
			said += fmt.Sprintf(", %d %s", n, status)
		}
	}
	if c.Spent > 0 {
		said += ", median time " + Minutes(c.Spent)
	}
	return said
}

// widestName is how much of a name a table shows.
const widestName = 24

// table writes students × problems, as many columns side by side as fit.
func (t *Text) table(r *Report, width int) {
	wide := r.nameWidth()
	// Four cells for each column, and ten for the time at the end.
	atOnce := max(1, (width-wide-10)/4)
	// Once even where nothing is set: the students and their time are shown all the same.
	for from := 0; from < len(r.Work) || from == 0; from += atOnce {
		to := min(from+atOnce, len(r.Work))
		t.Line("\n%s", strings.TrimRight(padded(headStudent, wide)+numbers(from, to)+headTime+r.headShare(), " "))
		for _, row := range r.Students {
			line := padded(row.Name, wide)
			for _, c := range row.Cells[from:to] {
				line += fmt.Sprintf("  %-2s", Letter(c))
			}
			line += "  " + Minutes(row.Spent)
			if r.isWeighted() {
				line += ", " + percent(row.Share)
			}
			t.Line("%s", line)
		}
	}
	t.Line("%s", saidLetters)
}

// headShare heads what is done by weight.
func (r *Report) headShare() string {
	if r.isWeighted() {
		return headShare
	}
	return ""
}

func percent(share float64) string { return fmt.Sprintf("%.0f %%", 100*share) }

func numbers(from, to int) string {
	var b strings.Builder
	for i := from; i < to; i++ {
		fmt.Fprintf(&b, "  %-2d", i+1)
	}
	return b.String()
}

// padded fills a name up, or cuts it, to a width.
func padded(name string, wide int) string {
	runes := []rune(classfile.Shown(name))
	// In characters and not in bytes, or names with accents would move the columns.
	if len(runes) > wide {
		runes = append(runes[:wide-1], '…')
	}
	return string(runes) + strings.Repeat(" ", wide-len(runes))
}

// rows writes one line for every student and problem that was begun.
func (t *Text) rows(r *Report) {
	t.Line("\n%s", headStudents)
	for _, row := range r.Students {
		begun := 0
		for i, c := range row.Cells {
			if c.Status == tutor.NotBegun {
				continue
			}
			begun++
			t.Line("%s: %s: %s; %s.", classfile.Shown(row.Name), r.Work[i].ID, Words(c), Minutes(c.Spent))
		}
		if r.isWeighted() {
			t.Line(saidShare, classfile.Shown(row.Name), percent(row.Share))
		}
		t.Line(saidRow, classfile.Shown(row.Name), begun, len(r.Work), Minutes(row.Spent))
	}
}

// The most that a list shows of each kind; what is left out is counted.
const (
	mostStuck    = 20
	mostMistakes = 12
	mostDisputed = 20
	mostRemarks  = 40
	mostNames    = 10
)

func (t *Text) stuck(r *Report) {
	if len(r.Stuck) == 0 {
		return
	}
	t.Line("\n%s", headStuck)
	for _, s := range r.Stuck[:min(len(r.Stuck), mostStuck)] {
		t.Line("%s", s.String())
	}
	t.more(len(r.Stuck), mostStuck)
}

func (t *Text) more(all, most int) {
	if all > most {
		t.Line(saidMore, all-most)
	}
}

func (t *Text) mistakes(r *Report) {
	for _, list := range []struct {
		head   string
		of     []Tally
		naming func(Tally) string
	}{
		{headByStage, r.ByStage, func(one Tally) string { return tutor.Title(one.Stage) }},
		{headByProblem, r.ByProblem, func(one Tally) string { return one.Problem }},
	} {
		if len(list.of) == 0 {
			continue
		}
		t.Line("\n%s", list.head)
		for _, one := range list.of[:min(len(list.of), mostMistakes)] {
			t.Line(saidTally, list.naming(one), one.Code.Meaning(), Times(one.Count, "time"), Times(one.Students, "student"), r.some(one.Who), Quoted(one.Line))
		}
		t.more(len(list.of), mostMistakes)
	}
}

// some are the names of students, all of them up to a bound, and then how many more.
func (r *Report) some(ids []string) string {
	if len(ids) <= mostNames {
		return r.names(ids)
	}
	return fmt.Sprintf("%s and %d more", r.names(ids[:mostNames]), len(ids)-mostNames)
}

// ideas writes who has come how far with what there is to understand, and who needs
// the same.
func (t *Text) ideas(r *Report, l Layout) {
	if len(r.Ideas) == 0 {
		return
	}
	t.Line("\n%s", headIdeas)
	for i, c := range r.Ideas {
		t.Line("%3d  %s: %d steady, %d learning, %d slipping, %d new", i+1, c.Title(), len(c.Steady), len(c.Learning), len(c.Slipping), len(c.New))
		if len(c.Slipping) > 0 {
			t.Line(saidSlipping, r.some(c.Slipping))
		}
	}
	// A table of letters says nothing when it is read aloud.
	if l.Plain {
		return
	}
	wide := r.nameWidth()
	t.Line("\n%s", strings.TrimRight(padded(headStudent, wide)+numbers(0, len(r.Ideas)), " "))
	for _, row := range r.Students {
		line := padded(row.Name, wide)
		for _, c := range r.Ideas {
			line += fmt.Sprintf("  %-2s", MarkOf(row.StateOf(c.Idea)))
		}
		t.Line("%s", strings.TrimRight(line, " "))
	}
	t.Line("%s", saidMarks)
}

// nameWidth is how wide the names of the students are in a table.
func (r *Report) nameWidth() int {
	wide := utf8.RuneCountInString(headStudent)
	for _, row := range r.Students {
		wide = max(wide, min(utf8.RuneCountInString(classfile.Shown(row.Name)), widestName))
	}
	return wide
}

func (t *Text) disputed(r *Report) {
	if len(r.Disputed) == 0 {
		return
	}
	t.Line("\n%s", headDisputed)
	for _, k := range r.Disputed[:min(len(r.Disputed), mostDisputed)] {
		word := saidWaits
		if k.Accepted {
			word = saidAccepted
		}
		t.Line("%s  %s, %s, %s: %s (%s)", ShortID(k.Entry), classfile.Shown(k.Name), k.Problem, Place(k.Stage, k.Item), Quoted(k.Line), word)
	}
	t.more(len(r.Disputed), mostDisputed)
}

func (t *Text) remarks(r *Report) {
	if len(r.Remarks) == 0 {
		return
	}
	t.Line("\n%s", headRemarks)
	for _, one := range r.Remarks[:min(len(r.Remarks), mostRemarks)] {
		t.Line("%s", r.Say(one))
	}
	t.more(len(r.Remarks), mostRemarks)
}

// Say words a remark.
func (r *Report) Say(one Remark) string { return SayRemark(one, r.nameOf) }

func (r *Report) nameOf(id string) string {
	for _, row := range r.Students {
		// A student may have typed the id with capitals on another machine.
		if problems.Fold(row.ID) == problems.Fold(id) {
			return classfile.Shown(row.Name)
		}
	}
	return classfile.Shown(id)
}

// Day writes a date, and the time of the day where it matters.
func Day(at time.Time, clock bool) string {
	if clock {
		return at.Local().Format("2 Jan 2006 15:04")
	}
	return at.Local().Format("2 Jan 2006")
}

func Minutes(d time.Duration) string {
	if d < time.Minute && d > 0 {
		return "under 1 min"
	}
	// Up to here minutes are easier to compare than hours with a fraction.
	if d >= 100*time.Minute {
		return fmt.Sprintf("%.1f h", d.Hours())
	}
	return fmt.Sprintf("%.0f min", d.Minutes())
}

func Times(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// Entries is how many entries there are: “1 entry”, “12 entries”.
func Entries(n int) string {
	if n == 1 {
		return "1 entry"
	}
	return fmt.Sprintf("%d entries", n)
}

func Quoted(line string) string { return "“" + classfile.Shown(line) + "”" }

// statusWord is a status in words.
func statusWord(s int) string { return tutor.Status(s).String() }

// ShortID is as much of an entry's id as a teacher types.
func ShortID(id string) string { return id[:min(8, len(id))] }
