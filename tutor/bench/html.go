package bench

import (
	"bytes"
	_ "embed"
	"html/template"
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/sheet"
)

//go:embed sheet.html
var sheetHTML string

//go:embed report.html
var reportHTML string

// PageMark is in every page that Sheet and Report write.
const PageMark = `<meta name="generator" content="Standstill bench">`

// Sizes of drawings on paper, in pixels.
const (
	drawingWidth, drawingHeight = 560, 340
	besideWidth, besideHeight   = 344, 240 // two side by side
	plotWidth, plotHeight       = 640, 380
)

// blank is what the printable sheet shows. The drawing is of the file's numbers without
// any answer.
type blank struct {
	Title, ID  string
	Statement  string
	Cautions   []string
	Drawing    template.HTML
	Said       []string
	Measured   []sheetRow
	Read       []sheetRow
	Series     []sheetRow // columns of the table for a series
	Rows       []int      // its rows
	Qualities  []Block
	Systematic []string
}

// sheetRow is one line to fill in.
type sheetRow struct{ Letter, What, Unit string }

// Sheet is a printable sheet for the measurements of a problem: one HTML file that
// works without scripts and from a stick, cautions on top.
func Sheet(f *Form) ([]byte, error) {
	p := f.problem
	s := blank{
		Title: p.Title, ID: p.ID, Statement: f.Statement(),
		Cautions: Cautions(), Drawing: f.drawn(), Systematic: Systematic(), Rows: []int{1, 2, 3, 4, 5, 6},
		Qualities: []Block{Notation()},
	}
	for i := range f.Fields {
		e := &f.Fields[i]
		row := sheetRow{expr.Set(e.Letter), f.what(e), shown(e.Want.Unit)}
		switch {
		case f.isAsked(e):
			s.Read = append(s.Read, row)
			s.Series = append(s.Series, sheetRow{row.Letter, "read", row.Unit}, sheetRow{row.Letter, "predicted", row.Unit})
		case e.Kind == Hanger, e.Kind == Ring, e.Kind == Scale:
			row.Letter = ""
			s.Measured = append(s.Measured, row)
		case e.Kind == Measure:
			s.Measured = append(s.Measured, row)
			if e.Want.Dim == quantity.Angle || e.Want.Dim == quantity.Mass {
				s.Series = append(s.Series, row)
			}
		}
	}
	return fillIn("sheet", sheetHTML, s)
}

// drawn shows what the problem is about, or, where its file wants no such drawing, the
// forces, all equally long.
func (f *Form) drawn() template.HTML {
	if drawn := setup(f.problem, f.ref, drawingWidth, drawingHeight); drawn != "" {
		return drawn
	}
	scene := picture.OfProblem(f.ref, picture.View{})
	for i := range scene.Forces {
		// All forces equally long: their lengths would be the answer.
		scene.Forces[i].Size = 0
	}
	return template.HTML(picture.SVG(scene, drawingWidth, drawingHeight))
}

// setup draws what a problem is about; empty where its file wants no such drawing.
func setup(p *problems.Problem, ref *checker.Reference, width, height int) template.HTML {
	s := picture.NewSetup(ref, p.Figure)
	if s == nil {
		return ""
	}
	return template.HTML(picture.SVG(picture.Scene{Title: p.Title, Setup: s}, width, height))
}

// Statement is the text of the problem with letters in the place of its numbers: on the
// bench others count.
func (f *Form) Statement() string {
	text := placeholder().ReplaceAllStringFunc(f.problem.Text, func(marked string) string {
		if letter, ok := f.letter(marked[1 : len(marked)-1]); ok {
			return expr.Set(letter)
		}
		return marked
	})
	return strings.Join(strings.Fields(f.problem.Lettered(text)), " ")
}

var placeholder = pattern.Of(`\{([^{}]*)\}`)

// isAsked reports whether a field is a reading of what the problem asks for.
func (f *Form) isAsked(e *Field) bool {
	return e.Kind == Reading && slices.Contains(f.problem.System.Find, e.Letter)
}

// what says what a field is about, for somebody who has the apparatus before them.
func (f *Form) what(e *Field) string {
	switch {
	case e.Kind == Hanger:
		return "mass of the hanger for " + expr.Set(e.Letter) + ", if " + expr.Set(e.Letter) + " does not include it"
	case e.Kind == Ring:
		return strings.TrimPrefix(e.Want.Name, "the ")
	case e.Kind == Scale && e.Letter == scaleZero:
		return "zero reading of the spring scale, with nothing on it"
	case e.Kind == Scale:
		return "calibration factor of the spring scale: a known force divided by its reading"
	}
	if force, ok := f.model.Force(e.Letter); ok && e.Kind == Reading {
		return map[statics.Kind]string{
			statics.Tension: "tension in a string, read on a spring scale", statics.Spring: "force of a spring, read on a spring scale", statics.Weight: "weight, read on a spring scale",
		}[force.Kind]
	}
	return e.Want.Dim.String()
}

// report is what the page for the lab book shows.
type report struct {
	Title, ID string
	Statement string
	Groups    []About
	Cautions  []string
	Warnings  []string
	Setup     template.HTML // the apparatus as it was measured
	Drawing   template.HTML // its forces, to scale
	Blocks    []Block
	Plots     []plotted
}

// plotted is a plot with its title and what is said about it.
type plotted struct {
	Title   string
	Drawing template.HTML
	Notes   []string
}

// Report is a page for the lab book: cautions and warnings, inputs, predictions, budget,
// drawing, plots and comparison, in one HTML file without scripts. The last of these
// is the one reported; the others stand in a table with it, each with the group that made
// it. axes names a straight line, as in "T against 1/(2 sin θ)"; "" for none.
func Report(computed []Computed, axes string) ([]byte, error) {
	// The last is the one that the group has just made.
	r := computed[len(computed)-1]
	p := r.form.problem
	out := report{
		Title: p.Title, ID: p.ID, Statement: r.form.Statement(),
		Cautions: Cautions(), Warnings: r.Warnings,
	}
	out.Setup, out.Drawing = r.drawings()
	for _, t := range computed {
		about := t.About
		about.Number = t.Number
		out.Groups = append(out.Groups, about)
	}
	blocks := append(append(r.MeasuredBlocks(), r.Main()...), r.Details()...)
	out.plot(Plot(computed, ""))
	if s, why := NewSeries(computed); why == "" {
		blocks = append(blocks, s.Blocks()...)
		for _, letter := range s.letters() {
			out.plot(s.Scene(letter), nil, "")
		}
		if x, y, origin := splitAxes(axes); axes != "" {
			if l, why := s.Line(x, y, origin); why == "" {
				blocks = append(blocks, l.Blocks()...)
				out.plot(l.Scene(), nil, "")
			}
		}
	}
	if beside, why := Compare(computed); why == "" {
		blocks = append(blocks, beside...)
	}
	if r.form.Notes != nil || r.form.Conclusion != "" {
		blocks = append(blocks, r.form.written()...)
	}
	for _, b := range blocks {
		if len(b.Lines)+len(b.Rows) > 0 {
			out.Blocks = append(out.Blocks, b)
		}
	}
	return fillIn("report", reportHTML, out)
}

// plot adds a plot to a report, where there is one.
func (r *report) plot(scene picture.Scene, notes []string, why string) {
	if why == "" {
		r.Plots = append(r.Plots, plotted{scene.Title, template.HTML(picture.SVG(scene, plotWidth, plotHeight)), notes})
	}
}

// drawings are the apparatus as it was measured and its forces to scale; empty where the
// measured numbers make no problem that can be drawn.
func (r *Result) drawings() (apparatus, forces template.HTML) {
	p, why := r.form.Copy()
	if why != "" {
		return "", ""
	}
	ref, err := p.Reference()
	if err != nil {
		return "", ""
	}
	scene := picture.OfProblem(ref, picture.View{Solved: true})
	return setup(p, ref, besideWidth, besideHeight), template.HTML(picture.SVG(scene, besideWidth, besideHeight))
}

// fillIn fills a page. Everything but the drawings, whose texts package picture
// escapes, is escaped here.
func fillIn(name, page string, data any) ([]byte, error) {
	t, err := template.New(name).Funcs(template.FuncMap{"style": sheet.Style}).Parse(page)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = t.Execute(&b, data)
	return b.Bytes(), err
}

// written is what the group noted and concluded.
func (f *Form) written() []Block {
	if f.Notes == nil && f.Conclusion == "" {
		return []Block{{Title: titleNotes, Lines: []string{saidNoNotes}}}
	}
	conclusion := Block{Title: titleConclusion}
	if f.Conclusion != "" {
		conclusion.Lines = []string{f.Conclusion}
	}
	return []Block{{Title: titleNotes, Lines: f.Notes}, conclusion}
}
