package summary

import (
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/classfile"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/sheet"
)

// ReportMark is in every page that WriteHTML writes.
const ReportMark = `<meta name="generator" content="Standstill class report">`

//go:embed report.html
var reportPage string

// WriteHTML writes the report as one page that needs nothing else: for reading,
// printing and filing. Plots and drawings are SVG, there are no scripts, and
// nothing is fetched.
func (r *Report) WriteHTML(w io.Writer, bank *problems.Bank) error {
	// Made for each report, because several functions need its data.
	page, err := template.New("report").Funcs(template.FuncMap{
		"style": sheet.Style, "shown": classfile.Shown, "letter": Letter, "words": Words, "minutes": Minutes, "day": Day, "place": Place, "say": r.Say,
		"title": tutor.Title, "short": ShortID, "inc": func(i int) int { return i + 1 }, "names": r.names, "times": Times, "entries": Entries,
		"standings": statusWords, "count": countsOf, "legend": legend, "weighted": r.isWeighted, "number": classfile.Number, "percent": percent, "overdue": r.overdue, "late": r.late,
		"bar":      func(c Column) template.HTML { return statusesPlot(c, len(r.Students)) },
		"mistakes": func(list []Tally) template.HTML { return mistakesPlot(list, len(r.Students)) },
		"drawing":  func(i int, id string) template.HTML { return drawingOf(bank, id, i+1) },
		"mark":     func(row Row, c IdeaColumn) string { return MarkOf(row.StateOf(c.Idea)) },
		"slips":    func(row Row, c IdeaColumn) bool { return row.StateOf(c.Idea) == tutor.Slipping },
		"recorded": func() string { return SaidRecorded }, "letters": func() string { return saidLetters },
		"marks": func() string { return saidMarks }, "timeRule": func() string { return saidTimeRule },
	}).Parse(reportPage)
	if err != nil {
		return err
	}
	return page.Execute(w, r)
}

// fills are the colours of each status in a bar.
var fills = map[tutor.Status]string{tutor.RightFirst: "#1b4965", tutor.WorkedOut: "#2f6690", tutor.ByTrying: "#5fa8d3", tutor.WithSteps: "#81c3d7",
	tutor.Disputed: "#bee9e8", tutor.Shown: "#cccccc", tutor.Begun: "#eeeeee", tutor.NotBegun: "#ffffff"}

// statusWords name each status from the best down.
func statusWords() (words []string) {
	for s := range tutor.RightFirst + 1 {
		words = append(words, (tutor.RightFirst - s).String())
	}
	return words
}

// countsOf are the numbers of students in the order of statusWords.
func countsOf(c Column) []int {
	counts := slices.Clone(c.Students[:])
	slices.Reverse(counts)
	return counts
}

type swatch struct{ Fill, Word string }

func legend() (all []swatch) {
	for s := range tutor.RightFirst + 1 {
		all = append(all, swatch{fills[tutor.RightFirst-s], (tutor.RightFirst - s).String()})
	}
	return all
}

// overdue counts the students whose work on a problem is overdue.
func (r *Report) overdue(at int) (n int) {
	for _, row := range r.Students {
		if row.Cells[at].Overdue {
			n++
		}
	}
	return n
}

// lateRow is a cell that is overdue, or was done after its date.
type lateRow struct{ Name, Problem, Words string }

func (r *Report) late() (all []lateRow) {
	for _, row := range r.Students {
		for i, c := range row.Cells {
			if c.Late || c.Overdue {
				all = append(all, lateRow{classfile.Shown(row.Name), r.Work[i].ID, Words(c)})
			}
		}
	}
	return all
}

// statusesPlot is a bar with a section for each status, from right first time down.
// They differ in their filling, and the numbers stand beside them.
func statusesPlot(c Column, of int) template.HTML {
	const wide, high = 140, 14
	var b strings.Builder
	fmt.Fprintf(&b, `<svg role="img" width="%d" height="%d" viewBox="0 0 %d %d"><title>%s</title>`, wide, high, wide, high, template.HTMLEscapeString(c.counts(of)))
	x := 0.0
	// Without those who have not begun: what is left of the bar is theirs.
	for s := tutor.RightFirst; s >= tutor.Begun; s-- {
		part := float64(wide*c.Students[s]) / float64(max(of, 1))
		if part > 0 {
			fmt.Fprintf(&b, `<rect x="%.1f" y="0" width="%.1f" height="%d" fill="%s" stroke="#333" stroke-width="0.5"/>`, x, part, high, fills[s])
			x += part
		}
	}
	fmt.Fprintf(&b, `<rect x="0" y="0" width="%d" height="%d" fill="none" stroke="#333" stroke-width="0.5"/></svg>`, wide, high)
	return template.HTML(b.String())
}

// mistakesPlot is a bar for each of the most frequent mistakes, as long as the share of
// students who made it; the table below it has them all.
func mistakesPlot(list []Tally, of int) template.HTML {
	const label, wide, row = 330, 240, 18
	list = list[:min(len(list), mostMistakes)]
	var b strings.Builder
	fmt.Fprintf(&b, `<svg role="img" width="%d" height="%d"><title>The most frequent mistakes, with the number of students</title>`, label+wide+60, row*len(list))
	for i, one := range list {
		name := one.Problem
		if name == "" {
			name = tutor.Title(one.Stage)
		}
		y := row * i
		fmt.Fprintf(&b, `<text x="0" y="%d" font-size="12">%s</text>`, y+13, template.HTMLEscapeString(name+", "+one.Code.Meaning()))
		fmt.Fprintf(&b, `<rect x="%d" y="%d" width="%d" height="12" fill="#5fa8d3" stroke="#333" stroke-width="0.5"/>`, label, y+3, wide*one.Students/max(of, 1))
		fmt.Fprintf(&b, `<text x="%d" y="%d" font-size="12">%d</text>`, label+wide*one.Students/max(of, 1)+6, y+13, one.Students)
	}
	b.WriteString("</svg>")
	return template.HTML(b.String())
}

// drawingOf draws a set problem with the numbers of its file.
func drawingOf(bank *problems.Bank, id string, n int) template.HTML {
	p, err := bank.Get(id)
	if err != nil {
		return ""
	}
	ref, err := p.Reference()
	if err != nil {
		return ""
	}
	scene := picture.OfProblem(ref, picture.View{Stage: checker.Diagram})
	if setup := picture.NewSetup(ref, p.Figure); setup != nil {
		scene = picture.Scene{Title: p.Title, Setup: setup}
	}
	// All drawings of the page are in one file, in which their ids must not meet.
	return template.HTML(picture.Numbered(picture.SVG(scene, 320, 224), n))
}
