package sheet

import (
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
		if html := write(t, true, paper(t, h.ID, "")); !strings.Contains(html, "Key: ") {
			t.Errorf("%s has no key", h.ID)
		}
	}
}
