// Inside the package: it looks for the blanks of a problem, which the page only prints.

package sheet

import (
	"regexp"
	"strings"
	"testing"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
)

func paper(t *testing.T, id, student string) Paper {
	t.Helper()
	p, err := problems.Embedded().Get(id)
	if err != nil {
		t.Fatal(err)
	}
	page, err := tutor.NewPage(p)
	if err != nil {
		t.Fatal(err)
	}
	return Paper{student, page}
}

func write(t *testing.T, key bool, papers ...Paper) string {
	t.Helper()
	var b strings.Builder
	if err := Write(&b, papers, key); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestEachPaperHasItsPageAndItsKey(t *testing.T) {
	papers := []Paper{paper(t, "canal-lantern", "Ada <b>Berg</b>"), paper(t, "two-knots", "")}
	for _, key := range []bool{true, false} {
		html := write(t, key, papers...)
		want := len(papers)
		if key {
			want *= 2
		}
		if got := strings.Count(html, "<section>"); got != want || strings.Count(html, "</section>") != want {
			t.Errorf("%d pages, want %d", got, want)
		}
		if strings.Contains(html, "T₂ = w/(") != key {
			t.Errorf("the worked solution is there: %v, want %v", !key, key)
		}
		for _, text := range []string{"3.2 kg", "35°", "<svg", "&lt;b&gt;Berg"} {
			if !strings.Contains(html, text) {
				t.Errorf("%q is not on the sheet", text)
			}
		}
		if strings.Contains(html, "<script") || strings.Contains(html, "<b>") {
			t.Error("something on the sheet could act")
		}
	}
}

// The figure to draw on gives no force away.
func TestTheWorkPageShowsNoForce(t *testing.T) {
	html := write(t, false, paper(t, "canal-lantern", ""))
	if strings.Contains(html, `class="force`) {
		t.Error("a force is drawn on the page of work")
	}
}

func TestEveryProblemOfTheBankFitsOnPaper(t *testing.T) {
	list := problems.Embedded().List()
	if len(list) < 60 {
		t.Fatalf("only %d problems", len(list))
	}
	for _, h := range list {
		if html := write(t, true, paper(t, h.ID, "")); !strings.Contains(html, "Worked solution: ") {
			t.Errorf("%s has no key", h.ID)
		}
	}
}

// The answers of a class are one page for each problem, a row for each student; no
// number is another than that of the student's own paper.
func TestAnswersOfAClass(t *testing.T) {
	class := tutor.Class{Code: "harbour-2", Settings: tutor.Settings{Gravity: "9.81 m/s^2"}}
	var papers []Paper
	for _, student := range []string{"Ada <b>Berg</b>", "Ben Roos"} {
		for _, id := range []string{"canal-lantern", "letter-scale"} {
			p, err := problems.Embedded().Get(id)
			if err != nil {
				t.Fatal(err)
			}
			own, err := class.Copy(p, student, 0)
			if err != nil {
				t.Fatal(err)
			}
			page, err := class.NewPage(own)
			if err != nil {
				t.Fatal(err)
			}
			papers = append(papers, Paper{student, page})
		}
	}
	var b strings.Builder
	if err := WriteAnswers(&b, papers); err != nil {
		t.Fatal(err)
	}
	html := b.String()
	if n := strings.Count(html, "<section>"); n != 2 {
		t.Errorf("%d pages for two problems", n)
	}
	if n := strings.Count(html, "<tr><th scope=\"row\">"); n != len(papers) {
		t.Errorf("%d rows for %d papers", n, len(papers))
	}
	for _, p := range papers {
		for _, g := range p.Page.Givens() {
			if !strings.Contains(html, g.Text()) {
				t.Errorf("%s of %s is missing", g.Text(), p.Student)
			}
		}
		for _, name := range p.Page.Problem.System.Find {
			v, _ := p.Page.Ref.Value(name)
			if text := p.Page.Ref.Unit(name).In(v, 3); !strings.Contains(html, " = "+text) {
				t.Errorf("%s = %s of %s is missing", name, text, p.Student)
			}
		}
	}
	if strings.Contains(html, "<b>") || !strings.Contains(html, "&lt;b&gt;Berg") || !strings.Contains(html, "g = 9.81 m/s²") {
		t.Error("a name acts, or g is another")
	}
}

// The blanks for the results stand with the problem, before the work; a drawing that
// is there several times has ids of its own each time.
func TestBlanksAndDrawings(t *testing.T) {
	html := write(t, true, paper(t, "canal-lantern", "Ada"), paper(t, "canal-lantern", "Ben"))
	if blank, work := strings.Index(html, `class="answer"`), strings.Index(html, `class="work"`); blank < 0 || blank > work {
		t.Error("the blanks stand behind the work")
	}
	seen := map[string]bool{}
	for _, id := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(html, -1) {
		if seen[id[1]] {
			t.Errorf("the id %s is there twice", id[1])
		}
		seen[id[1]] = true
	}
	if len(seen) < 8 {
		t.Errorf("only %d ids", len(seen))
	}
}

func TestEveryProblemHasResults(t *testing.T) {
	for _, h := range problems.Embedded().List() {
		if got := results(paper(t, h.ID, "").Page); len(got) == 0 || got[0] == "" {
			t.Errorf("%s has no results", h.ID)
		}
	}
}

// A class whose students draw the situation themselves gets no picture of it, and still the
// figure to draw on.
func TestAClassMayDrawTheSceneItself(t *testing.T) {
	p, err := problems.Embedded().Get("canal-lantern")
	if err != nil {
		t.Fatal(err)
	}
	drawn := map[bool]int{}
	for _, none := range []bool{false, true} {
		page, err := (&tutor.Class{Settings: tutor.Settings{NoScenes: none}}).NewPage(p)
		if err != nil {
			t.Fatal(err)
		}
		drawn[none] = strings.Count(write(t, false, Paper{"", page}), "<svg")
	}
	if drawn[true] != drawn[false]-1 || drawn[true] == 0 {
		t.Errorf("pictures with scenes and without: %v", drawn)
	}
}

// A sheet says which force each letter is, what each given is, and g: a class works from it
// without the screen.
func TestASheetSaysWhatTheLettersAre(t *testing.T) {
	html := write(t, false, paper(t, "canal-lantern", ""))
	for _, said := range []string{"T₁ (left cord)", "T₂ (right cord)", "α = 35°", "left cord, above the horizontal", "g = 9.8 m/s²"} {
		if !strings.Contains(html, said) {
			t.Errorf("%q is not on the sheet", said)
		}
	}
}
