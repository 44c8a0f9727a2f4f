package bench

import (
	"bytes"
	_ "embed"
	"html/template"
	"regexp"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/statics"
	"example.org/standstill/tutor/picture"
)

//go:embed sheet.html
var sheetHTML string

//go:embed report.html
var reportHTML string

//go:embed paper.css
var paperCSS string

// Sizes of drawings on paper, in pixels.
const (
	drawingWidth, drawingHeight = 560, 340
	plotWidth, plotHeight       = 640, 380
)

// sheet is what the printable sheet shows. The drawing is of the file's numbers without
// any answer.
type sheet struct {
	CSS        template.CSS
	Title, ID  string
	Statement  string
	Cautions   []string
	Drawing    template.HTML
	Said       []string
	Measured   []sheetRow
	Read       []sheetRow
	Qualities  []Block
	Systematic []string
}

// sheetRow is one line to fill in.
type sheetRow struct{ Letter, What, Unit string }

// Sheet is a printable sheet for the measurements of a problem: one HTML file that
// works without scripts and from a stick, cautions on top.
func Sheet(f *Form) ([]byte, error) {
	p := f.problem
	scene := picture.OfProblem(f.ref, picture.View{})
	for i := range scene.Forces {
		scene.Forces[i].Size = 0
	}
	s := sheet{
		CSS: template.CSS(paperCSS), Title: p.Title, ID: p.ID, Statement: f.Statement(),
		Cautions: Cautions(), Drawing: template.HTML(picture.SVG(scene, drawingWidth, drawingHeight)), Systematic: Systematic(),
		Qualities: []Block{Notation()},
	}
	for i := range f.Fields {
		e := &f.Fields[i]
		row := sheetRow{expr.Set(e.Letter), f.what(e), shown(e.Want.Unit)}
		switch {
		case e.Kind == Reading && f.asked(e.Letter):
			s.Read = append(s.Read, row)
		case e.Kind == Hanger, e.Kind == Ring:
			row.Letter = ""
			s.Measured = append(s.Measured, row)
		case e.Kind == Measure:
			s.Measured = append(s.Measured, row)
		}
	}
	return fillIn("sheet", sheetHTML, s)
}

// Statement is the text of the problem with letters in the place of its numbers: on the
// bench others count.
func (f *Form) Statement() string {
	text := placeholder.ReplaceAllStringFunc(f.problem.Text, func(marked string) string {
		if letter, ok := f.letter(marked[1 : len(marked)-1]); ok {
			return expr.Set(letter)
		}
		return marked
	})
	return strings.Join(strings.Fields(text), " ")
}

var placeholder = regexp.MustCompile(`\{([^{}]*)\}`)

func (f *Form) asked(letter string) bool {
	for _, name := range f.problem.System.Find {
		if name == letter {
			return true
		}
	}
	return false
}

// what says what a field is about, for somebody who has the apparatus before them.
func (f *Form) what(e *Field) string {
	switch {
	case e.Kind == Hanger:
		return "own mass of the hanger of " + expr.Set(e.Letter) + ", if it is not in " + expr.Set(e.Letter)
	case e.Kind == Ring:
		return "own mass of " + e.Want.Name
	}
	if force, ok := f.model.Force(e.Letter); ok && e.Kind == Reading {
		return map[statics.Kind]string{
			statics.Tension: "pull of a string, by a scale in it", statics.Spring: "pull of a spring, by a scale", statics.Weight: "weight, by a scale",
		}[force.Kind]
	}
	return e.Want.Dim.String()
}

// report is what the page for the lab book shows.
type report struct {
	CSS           template.CSS
	Title, ID     string
	Statement     string
	Students      []string
	When          string
	Cautions      []string
	Warnings      []string
	Drawing, Plot template.HTML
	PlotNotes     []string
	Blocks        []Block
}

// About is what a report says besides the result: who was at the table, each with
// what they did there, and when.
type About struct {
	Students []string
	When     string
	Names    []string // the students without what they did
}

// Report is a page for the lab book: inputs, predictions, budget, drawing, plot,
// comparison and cautions, in one HTML file without scripts. The last of the trials is
// the one reported; the others stand in the plot and in a table beside it.
func Report(trials []Trial, about About) ([]byte, error) {
	r := trials[len(trials)-1]
	p := r.form.problem
	out := report{
		CSS: template.CSS(paperCSS), Title: p.Title, ID: p.ID, Statement: r.form.Statement(),
		Students: about.Students, When: about.When, Cautions: Cautions(), Warnings: r.Warnings, Drawing: r.drawing(),
	}
	if scene, notes, why := Plot(trials, ""); why == "" {
		out.Plot, out.PlotNotes = template.HTML(picture.SVG(scene, plotWidth, plotHeight)), notes
	}
	blocks := append(append(r.MeasuredBlocks(), r.Main()...), r.Details()...)
	if beside, why := Compare(trials); why == "" {
		blocks = append(blocks, beside...)
	}
	for _, b := range blocks {
		if len(b.Lines)+len(b.Rows) > 0 {
			out.Blocks = append(out.Blocks, b)
		}
	}
	return fillIn("report", reportHTML, out)
}

// drawing is the apparatus as measured, to scale; empty where the measured numbers make
// no problem that can be drawn.
func (r *Result) drawing() template.HTML {
	p, why := r.form.Copy()
	if why != "" {
		return ""
	}
	ref, err := p.Reference()
	if err != nil {
		return ""
	}
	return template.HTML(picture.SVG(picture.OfProblem(ref, picture.View{Solved: true}), drawingWidth, drawingHeight))
}

// fillIn fills a page. Everything but the drawings, whose texts package picture
// escapes, is escaped here.
func fillIn(name, page string, data any) ([]byte, error) {
	t, err := template.New(name).Parse(page)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = t.Execute(&b, data)
	return b.Bytes(), err
}
