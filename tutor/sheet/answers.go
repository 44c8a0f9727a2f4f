package sheet

import (
	_ "embed"
	"html/template"
	"io"
	"strings"
	"sync"

	"example.org/standstill/checker/expr"
	"example.org/standstill/tutor"
)

//go:embed answers.html
var answersSource string

var answersPage = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("answers").Funcs(template.FuncMap{"style": Style}).Parse(answersSource))
})

// answerTable is one problem with the numbers and results of every student.
type answerTable struct {
	Title, ID string
	Rows      []answerRow
}

type answerRow struct {
	Student string
	Numbers []string
	Results string
}

// WriteAnswers writes the results of a whole class, one page for each problem: a row
// for each paper, with its student, numbers and results.
func WriteAnswers(w io.Writer, papers []Paper) error {
	return answersPage().Execute(w, struct {
		Title  string
		Tables []answerTable
	}{titles(papers), tablesOf(papers)})
}

// tablesOf gathers the papers of each problem, in the order in which they come.
func tablesOf(papers []Paper) (tables []answerTable) {
	at := map[string]int{}
	for _, p := range papers {
		id := p.Page.Problem.ID
		i, known := at[id]
		if !known {
			i = len(tables)
			at[id] = i
			tables = append(tables, answerTable{Title: p.Page.Problem.Title, ID: id})
		}
		row := answerRow{Student: p.Student, Results: strings.Join(results(p.Page), "; ")}
		for _, g := range p.Page.Givens() {
			row.Numbers = append(row.Numbers, g.Text())
		}
		tables[i].Rows = append(tables[i].Rows, row)
	}
	return tables
}

// results are the values asked for, or the line that the worked solution ends with
// where a formula is asked for.
func results(page *tutor.Page) (all []string) {
	for _, name := range page.Problem.System.Find {
		value, ok := page.Ref.Value(name)
		if !ok || page.IsFormula(name) {
			steps := page.Worked()
			if lines := steps[len(steps)-1].Lines; len(lines) > 0 {
				_, answer, found := strings.Cut(lines[len(lines)-1], ": ")
				if found {
					return []string{answer}
				}
				return lines[len(lines)-1:]
			}
			continue
		}
		all = append(all, expr.Set(name)+" = "+page.Ref.Unit(name).In(value, figures))
	}
	return all
}

// figures is how many figures a result is given with.
const figures = 3

func titles(papers []Paper) string {
	var all []string
	seen := map[string]bool{}
	for _, p := range papers {
		if title := p.Page.Problem.Title; !seen[title] {
			seen[title] = true
			all = append(all, title)
		}
	}
	return strings.Join(all, ", ")
}
