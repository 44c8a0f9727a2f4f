// Inside the package: it adds mistakes to a list without marking any.

package class

import (
	"regexp"
	"strings"
	"testing"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/class/summary"
)

// What is counted is what students did: neither what is noted about their files nor a
// teacher's word is an entry.
func TestNotesAreNoEntries(t *testing.T) {
	r := newRoom(t)
	l := r.lesson("s01", "canal-lantern")
	r.type_(l, "T1 up left; T2 up right; w down", "T1x = T1 sin α")
	data := edited(t, r.handIn("s01"), func(f map[string]any) {
		if f["text"] == "T1x = T1 sin α" {
			f["said"] = "right"
		}
	})
	r.collect(map[string][]byte{"ada": data})
	report := r.report()
	want(t, "the remarks", notices(report.Remarks), "s01 verdict-other 1")
	if report.Entries != 3 || report.Students[0].Entries != 3 {
		t.Errorf("counted are %d entries, %d of Ada", report.Entries, report.Students[0].Entries)
	}
}

// Everything that a clock ahead is said of is one sentence, whatever there is of it.
func TestClockAheadIsOneSentence(t *testing.T) {
	r := newRoom(t)
	p, err := r.bank.Get("canal-lantern")
	must(t, err)
	data := strings.ReplaceAll(string(crowded(t, p, 500, 0)), "2030-03-02", "2031-03-02")
	sum := r.collect(map[string][]byte{"ada": []byte(data)})
	if list := sum.Files[0].Remarks; len(list) != 1 || list[0].Notice != summary.TimeLater || list[0].Count != 1000 {
		t.Errorf("said is %+v", list)
	}
	for _, one := range r.report().Remarks {
		if one.Notice == summary.TimeLater && one.Count != 1000 {
			t.Errorf("reported is %+v", one)
		}
	}
}

// The page of a report can be read by ear: each table says what it is, each heading what
// it heads, and no name is given twice. What is left out is told, and so is how time is
// counted.
func TestThePageSaysWhatItShows(t *testing.T) {
	r := newRoom(t)
	r.solveLantern(r.lesson("s01", "canal-lantern"))
	r.type_(r.lesson("s02", "canal-lantern"), "T1 up left; T2 up right; w down", "T1x = T1 sin α")
	r.collect(map[string][]byte{"ada": r.handIn("s01"), "ben": r.handIn("s02")})
	report := r.report()
	one := report.ByStage[0]
	for range 30 {
		report.ByStage = append(report.ByStage, one)
	}
	var b strings.Builder
	must(t, report.WriteHTML(&b, r.bank))
	html := b.String()
	if tables, captions := strings.Count(html, "<table"), strings.Count(html, "<caption>"); tables == 0 || captions != tables {
		t.Errorf("%d tables have %d captions", tables, captions)
	}
	for _, head := range regexp.MustCompile(`<th\b[^>]*>`).FindAllString(html, -1) {
		if !strings.Contains(head, "scope=") {
			t.Errorf("%s has no scope", head)
		}
	}
	seen := map[string]bool{}
	for _, id := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(html, -1) {
		if seen[id[1]] {
			t.Errorf("the id %s is given twice", id[1])
		}
		seen[id[1]] = true
	}
	for _, words := range []string{"Key to the bars:", "10 minutes"} {
		if !strings.Contains(html, words) {
			t.Errorf("%q is not on the page", words)
		}
	}
	if rows := strings.Count(html, "T1x = T1 sin α"); rows < 31 && !strings.Contains(html, "more") {
		t.Errorf("%d of 31 rows are on the page, and nothing says so", rows)
	}
	b.Reset()
	must(t, report.WriteText(&b, summary.Layout{}))
	if !strings.Contains(b.String(), "10 minutes") || !strings.Contains(b.String(), "… and 19 more.") {
		t.Errorf("the text leaves out without a word:\n%s", b.String())
	}
}

// The line that shows a mistake is whole and short, in whatever order lines come.
func TestLineThatShowsAMistake(t *testing.T) {
	for _, order := range [][]string{
		{"T1 = = 3", "T1x = T1 sin α", "T1x = T1 sin α + 0"},
		{"T1x = T1 sin α + 0", "T1x = T1 sin α", "T1 = = 3"},
		{"T1x =", "T1x = T1 sin α"},
	} {
		var list []Mistake
		for _, line := range order {
			list = addMistake(list, Mistake{Code: "sine-cosine", Count: 1, Line: line})
		}
		if len(list) != 1 || list[0].Line != "T1x = T1 sin α" || list[0].Count != len(order) {
			t.Errorf("%q is shown by %+v", order, list)
		}
	}
}

// Words stand for mistakes wherever a teacher reads of them, and codes nowhere.
func TestNoCodeIsRead(t *testing.T) {
	r := newRoom(t)
	r.type_(r.lesson("s01", "canal-lantern"), "T1 up left; T2 up right; w down", "T1x = T1 sin α", "T1x = 2 T1 cos α", "T1x = T1 + 77 N")
	data := r.handIn("s01")
	r.collect(map[string][]byte{"ada": data})
	report := r.report()
	outs := map[string]*strings.Builder{"text": {}, "plain": {}, "page": {}, "watch": {}}
	must(t, report.WriteText(outs["text"], summary.Layout{}))
	must(t, report.WriteText(outs["plain"], summary.Layout{Plain: true}))
	must(t, report.WriteHTML(outs["page"], problems.Embedded()))
	w := &Watch{Class: r.class, Bank: r.bank, Paths: []string{r.folder(map[string][]byte{"ada.jsonl": data})}, Now: r.book.Now}
	defer w.Close()
	view, err := w.View(t.Context())
	must(t, err)
	outs["watch"].WriteString(view)
	for name, b := range outs {
		for _, one := range report.ByStage {
			if code := string(one.Code); strings.Contains(code, "-") && strings.Contains(b.String(), code) {
				t.Errorf("%s has the code %s", name, code)
			}
			if words := one.Code.Meaning(); !strings.Contains(b.String(), words) {
				t.Errorf("%s does not say %q:\n%s", name, words, b.String())
			}
		}
	}
}
