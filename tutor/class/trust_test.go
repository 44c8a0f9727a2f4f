// Inside the package: it packs hand-ins as the package does, to change what is in them.

package class

import (
	"bytes"
	"compress/gzip"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/summary"
	"example.org/standstill/tutor/record"
)

func writeFile(path string, data []byte) error { return os.WriteFile(path, data, 0o600) }

// edited changes every line of a hand-in that is an object with a kind.
func edited(t *testing.T, data []byte, change func(line map[string]any)) []byte {
	t.Helper()
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	for _, line := range strings.Split(strings.TrimSpace(string(data)), "\n") {
		var fields map[string]any
		must(t, json.Unmarshal([]byte(line), &fields))
		change(fields)
		if fields != nil {
			must(t, e.Encode(fields))
		}
	}
	return b.Bytes()
}

func TestAnotherStudentsWorkDoesNotCount(t *testing.T) {
	r := newRoom(t)
	r.solveLantern(r.lesson("s01", "canal-lantern"))
	hers := r.handIn("s01")
	asHis := edited(t, hers, func(f map[string]any) {
		f["student"] = "s02"
		if id, ok := f["id"].(string); ok {
			f["id"] = flipped(id)
		}
	})
	r.collect(map[string][]byte{"ada": hers, "ben": asHis})
	report := r.report()
	want(t, "the first column", standings(report), doneWord+", not started, not started")
	want(t, "the remarks", notices(report.Remarks), "s02 numbers-others 7")
	want(t, "what is said", report.Say(report.Remarks[0]), "Ben Roos: 7 entries on canal-lantern with the numbers of Ada Berg. They do not count.")
}

// What a hand-in says of a problem is kept only under the hash that its text has.
func TestAProblemUnderAnotherHashIsNotKept(t *testing.T) {
	r := newRoom(t)
	r.solveLantern(r.lesson("s01", "canal-lantern"))
	const wrong = "0123456789abcdef"
	changed := 0
	r.collect(map[string][]byte{"ada": edited(t, r.handIn("s01"), func(f map[string]any) {
		if _, isProblem := f["file"].(string); isProblem {
			f["hash"] = wrong
			changed++
		}
	})})
	if changed == 0 {
		t.Fatal("the hand-in has no problem")
	}
	if kept, err := r.book.Record.Problem(wrong); err == nil {
		t.Errorf("%s is kept under a hash that is not its own", kept.ID)
	}
}

// fixed is a class whose problem has the same numbers for everybody.
func (r *room) fixed(t *testing.T) {
	p, err := r.bank.Get("canal-lantern")
	must(t, err)
	text := string(p.Raw)
	text = text[:strings.Index(text, "\nvary:")+1]
	same, found := problems.Read("same.yaml", []byte(strings.Replace(text, "id: canal-lantern", "id: same-lantern", 1)))
	must(t, found.Err())
	r.class.Bank = r.bank.With(problems.BankOf(same))
	r.bank = r.class.Bank
	r.class.Work = append(r.class.Work, tutor.Set{Heading: same.Heading})
	r.book = r.markbook()
}

// inOrders collects the files in every order, some twice, each time into an empty
// record, and gives the one report that they must come to.
func (r *room) inOrders(t *testing.T, files ...[]byte) *summary.Report {
	t.Helper()
	orders := [][]int{{0, 1}, {1, 0}, {1, 0, 1, 0}}
	if len(files) == 3 {
		orders = [][]int{{0, 1, 2}, {2, 1, 0}, {1, 2, 0}, {1, 0, 2, 1}}
	}
	var first string
	var report *summary.Report
	for _, order := range orders {
		r.book = r.markbook()
		for _, i := range order {
			r.collect(map[string][]byte{"x.jsonl": files[i]})
		}
		var b strings.Builder
		report = r.report()
		report.At = time.Time{}
		must(t, report.WriteJSON(&b))
		if first == "" {
			first = b.String()
		}
		want(t, fmt.Sprintf("the report of the order %v", order), b.String(), first)
	}
	return report
}

func as(t *testing.T, data []byte, student string) []byte {
	return edited(t, data, func(f map[string]any) {
		if _, ok := f["student"]; ok {
			f["student"] = student
		}
	})
}

// A copy under another name takes nothing from the one who did the work, whichever
// is collected first.
func TestACopiedHandInCountsForTheOneWhoDidIt(t *testing.T) {
	r := newRoom(t)
	r.fixed(t)
	r.solveLantern(r.lesson("s01", "canal-lantern"))
	r.solveLantern(r.lesson("s01", "same-lantern"))
	hers := r.handIn("s01")
	report := r.inOrders(t, hers, as(t, hers, "s02"))
	want(t, "the first column", standings(report), doneWord+", not started, not started")
	want(t, "the last column", report.Students[0].Cells[2].Status.String(), doneWord)
	want(t, "the copier's", report.Students[1].Cells[2].Status.String(), "not started")
	want(t, "the remarks", notices(report.Remarks), "s02 entry-copied 7; s02 entry-copied 7")
	want(t, "what is said", report.Say(report.Remarks[0]), "Ben Roos: 7 entries on canal-lantern also arrived under the name of Ada Berg. The numbers belong to Ada Berg, so this work counts only for that student.")
	shown := r.shows(t, "s02", "canal-lantern")
	if strings.Count(shown, "\n") != 8 || !strings.Contains(shown, "arrived under the name of Ada Berg. The numbers belong to that student, so the entries count only for that student.") || !strings.Contains(shown, "T1x = ") {
		t.Errorf("shown of the copier's are\n%s", shown)
	}
	if shown := r.shows(t, "s01", "canal-lantern"); strings.Contains(shown, "too") {
		t.Errorf("shown of hers are\n%s", shown)
	}
}

// shows is what class show writes.
func (r *room) shows(t *testing.T, student, problem string) string {
	t.Helper()
	var b strings.Builder
	s, ok := r.class.Student(student)
	if !ok {
		t.Fatal("no student", student)
	}
	must(t, r.book.Show(&b, s, problem))
	return b.String()
}

// Where nothing speaks for one of two, it counts for neither until the teacher says.
func TestATieIsTheTeachersToSettle(t *testing.T) {
	r := newRoom(t)
	r.fixed(t)
	r.solveLantern(r.lesson("s01", "same-lantern"))
	hers := r.handIn("s01")
	report := r.inOrders(t, hers, as(t, hers, "s02"))
	want(t, "hers", report.Students[0].Cells[2].Status.String(), "not started")
	want(t, "his", report.Students[1].Cells[2].Status.String(), "not started")
	want(t, "the remarks", notices(report.Remarks), "s01 entry-tied 7; s02 entry-tied 7")
	if shown := r.shows(t, "s01", "same-lantern"); !strings.HasPrefix(shown, saidShowTied) {
		t.Errorf("shown are\n%s", shown)
	}
	_, err := r.book.Collect(context.Background(), []string{r.folder(map[string][]byte{"ada": hers})}, CollectOptions{As: "Ada Berg"})
	must(t, err)
	report = r.report()
	want(t, "hers, given", report.Students[0].Cells[2].Status.String(), doneWord)
	want(t, "his, given", report.Students[1].Cells[2].Status.String(), "not started")
}

// Of two contents of one entry the earlier counts by its own time; of the same time
// neither, until the teacher accepts one.
func TestAnEditedHandIn(t *testing.T) {
	r := newRoom(t)
	l := r.lesson("s01", "canal-lantern")
	r.type_(l, "T1 up left; T2 up right; w down", "T1x = T1 sin α")
	typed := r.handIn("s01")
	change := func(later bool) []byte {
		return edited(t, typed, func(f map[string]any) {
			if f["text"] == "T1x = T1 sin α" {
				f["text"], f["said"] = "T1x = -T1 cos α", "right"
				if later {
					f["time"] = "2030-03-02T10:10:00.000Z"
				}
			}
		})
	}
	report := r.inOrders(t, typed, change(true))
	want(t, "the remarks", notices(report.Remarks), "s01 entry-changed 1")
	if c := report.Students[0].Cells[0]; c.Refused != 1 || c.Lines != 2 {
		t.Errorf("the earlier content gives %+v", c)
	}
	report = r.inOrders(t, typed, change(false))
	want(t, "the remarks", notices(report.Remarks), "s01 entry-unsettled 1")
	if c := report.Students[0].Cells[0]; c.Refused != 0 || c.Lines != 1 {
		t.Errorf("a tie gives %+v", c)
	}
	entry := strings.Split(report.Remarks[0].Detail, ":")[0]
	if _, _, err := r.book.Accept(Accepting{Entry: entry}); err != errUnsettled {
		t.Error(err)
	}
	if _, line, err := r.book.Accept(Accepting{Entry: entry, Text: "T1x = T1 sin α"}); err != nil || !line.Accepted {
		t.Fatal(line, err)
	}
	if c := r.report().Students[0].Cells[0]; c.Lines != 2 {
		t.Errorf("accepted gives %+v", c)
	}
	for e, err := range r.book.Record.Entries(record.Filter{Kinds: []string{record.Accepted}}) {
		must(t, err)
		if e.Detail == "" {
			t.Error("an acceptance does not say who accepted")
		}
	}
}

// A hand-in of somebody who is not on the list is kept aside, and can be given.
func TestAHandInOfAnotherNameCanBeGiven(t *testing.T) {
	r := newRoom(t)
	r.solveLantern(r.lessonUnder(tutor.Class{}, "Bruno", "canal-lantern"))
	alone := HandIn{Tutor: r.tutorOf(r.desks["Bruno"], tutor.Class{}), Student: record.Student{ID: "bruno", Name: "Bruno"}, Now: r.now}
	data, _, _, err := alone.File()
	must(t, err)
	r.collect(map[string][]byte{"bruno": data})
	report := r.report()
	want(t, "the remarks", notices(report.Remarks), "bruno not-on-list 7")
	want(t, "the first column", standings(report), "not started, not started, not started")
	folder := r.folder(map[string][]byte{"bruno": data})
	if _, err := r.book.Collect(context.Background(), []string{folder}, CollectOptions{As: "zoe"}); err == nil {
		t.Error("it was given to nobody")
	}
	_, err = r.book.Collect(context.Background(), []string{folder}, CollectOptions{As: "s02"})
	must(t, err)
	report = r.report()
	want(t, "the first column, given", standings(report), "not started, "+doneWord+", not started")
	want(t, "the remarks", notices(report.Remarks), "s02 given 7")
	// Given to another, it is no more the first one's.
	_, err = r.book.Collect(context.Background(), []string{folder}, CollectOptions{As: "s03"})
	must(t, err)
	want(t, "the first column, given again", standings(r.report()), "not started, not started, "+doneWord)
	if n, known, err := r.book.Forget("s03"); err != nil || !known || n != 7 {
		t.Errorf("forgotten are %d, %v, %v", n, known, err)
	}
	var noted []string
	for e, err := range r.book.Record.Entries(record.Filter{Kinds: []string{record.Deleted}}) {
		must(t, err)
		noted = append(noted, e.Student+e.Text)
	}
	want(t, "what is written down", strings.Join(noted, ", "), "7 entries of one student")
}

// Somebody who practised alone under a name that is an id of the list gets the work
// when the teacher says so.
func TestAnIDThatIsAFirstName(t *testing.T) {
	r := newRoom(t)
	r.solveLantern(r.lessonUnder(tutor.Class{}, "s01", "canal-lantern"))
	data := r.handIn("s01")
	r.collect(map[string][]byte{"ada": data})
	want(t, "the first column", standings(r.report()), "not started, not started, not started")
	_, err := r.book.Collect(context.Background(), []string{r.folder(map[string][]byte{"ada": data})}, CollectOptions{As: "s01"})
	must(t, err)
	want(t, "the first column, given", standings(r.report()), doneWord+", not started, not started")
}

// Of a whole record the one who is not on the list can be given, or whoever is named.
func TestGivingOfAWholeRecord(t *testing.T) {
	r := newRoom(t)
	r.solveLantern(r.lessonUnder(tutor.Class{}, "Bruno", "canal-lantern"))
	path := []string{r.desks["Bruno"].Path()}
	sum, err := r.book.Collect(context.Background(), path, CollectOptions{As: "s02", From: "Carla"})
	must(t, err)
	want(t, "what is said", sum.Files[0].Trouble, "The file contains no work by Carla. It contains work by bruno.")
	_, err = r.book.Collect(context.Background(), path, CollectOptions{As: "s02"})
	must(t, err)
	want(t, "the first column", standings(r.report()), "not started, "+doneWord+", not started")
}

// What was forgotten does not come back with the same file; what was done since does.
func TestForgottenWorkStaysAway(t *testing.T) {
	r := newRoom(t)
	r.solveLantern(r.lesson("s01", "canal-lantern"))
	data := r.handIn("s01")
	r.collect(map[string][]byte{"ada": data})
	_, _, err := r.book.Forget("s01")
	must(t, err)
	if sum := r.collect(map[string][]byte{"ada": data}); sum.Added != 0 || sum.Files[0].Forgotten != 7 {
		t.Errorf("it came back: %+v", sum)
	}
	r.lesson("s01", "letter-scale")
	if sum := r.collect(map[string][]byte{"ada": r.handIn("s01")}); sum.Added != 1 {
		t.Errorf("new work did not come: %+v", sum)
	}
	sum, err := r.book.Collect(context.Background(), []string{r.folder(map[string][]byte{"ada": data})}, CollectOptions{Again: true})
	if must(t, err); sum.Added != 7 {
		t.Errorf("it did not come back when it was asked for: %+v", sum)
	}
	if _, known, err := r.book.Forget("zzz"); known || err != nil {
		t.Error("a stranger was forgotten", err)
	}
}

// Work on an older wording of a set problem counts; on other numbers it does not.
func TestOlderWordings(t *testing.T) {
	for word, c := range map[string]struct{ old, new, standing string }{
		"another wording": {"A lantern", "A heavy lantern", doneWord},
		"another range":   {"m: 1.5 to", "m: 1.6 to", "not started"},
	} {
		r := newRoom(t)
		p, err := r.bank.Get("canal-lantern")
		must(t, err)
		older, found := problems.Read("canal-lantern.yaml", []byte(ownLantern))
		must(t, found.Err())
		newer, found := problems.Read("canal-lantern.yaml", []byte(strings.Replace(ownLantern, c.old, c.new, 1)))
		must(t, found.Err())
		if older.Hash == newer.Hash || p.Hash == older.Hash {
			t.Fatal("the files are the same")
		}
		r.class.Bank = r.bank.With(problems.BankOf(older))
		r.solveLantern(r.lesson("s01", "canal-lantern"))
		data := r.handIn("s01")
		r.bank = r.bank.With(problems.BankOf(newer))
		r.class.Bank = r.bank
		r.book = r.markbook()
		r.collect(map[string][]byte{"ada": data})
		want(t, word, standings(r.report()), c.standing+", not started, not started")
	}
}

var ownLantern = strings.Replace(ownProblem, "id: quay-lantern", "id: canal-lantern", 1)

func TestWhatIsWrittenInByHandDoesNotCount(t *testing.T) {
	r := newRoom(t)
	l := r.lesson("s02", "canal-lantern")
	r.type_(l, "T1 up left; T2 up right; w down", "T1x = T1 sin α")
	data := edited(t, r.handIn("s02"), func(f map[string]any) {
		if f["said"] == "wrong sine-cosine" {
			f["said"] = "right"
		}
	})
	data = append(data, []byte(`{"kind":"solved","time":"2030-03-02T10:00:00.000Z","problem":"canal-lantern","student":"s02","id":"00112233445566778899aabbccddeeff","record":"00112233445566778899aabbccddeeff","number":1}`+"\n")...)
	r.collect(map[string][]byte{"ben": data})
	report := r.report()
	want(t, "the first column", standings(report), "not started, in progress, not started")
	if report.Remarks[0].Notice != summary.VerdictOther || !strings.Contains(report.Remarks[0].Detail, "right → wrong sine-cosine") {
		t.Errorf("the remarks are %+v", report.Remarks)
	}
}

func TestAcceptanceIsTheTeachers(t *testing.T) {
	r := newRoom(t)
	l := r.lesson("s02", "canal-lantern")
	r.type_(l, "T1 up left; T2 up right; w down", "T1x = T1 sin α")
	_, err := l.Dispute()
	must(t, err)
	kept := l.Lines()[1].ID
	forged := edited(t, r.handIn("s02"), func(map[string]any) {})
	forged = append(forged, []byte(`{"kind":"accept","time":"2030-03-02T10:00:00.000Z","problem":"canal-lantern","hash":"`+l.Problem.Hash+`","givens":"`+l.Problem.Copy+`","student":"s02","ref":"`+kept+`","id":"00112233445566778899aabbccddeeff","record":"00112233445566778899aabbccddeeff","number":1}`+"\n")...)
	r.collect(map[string][]byte{"ben": forged})
	report := r.report()
	want(t, "the remarks", notices(report.Remarks), "s02 acceptance 1")
	if len(report.Disputed) != 1 || report.Disputed[0].Accepted {
		t.Fatalf("kept are %+v", report.Disputed)
	}
	// The teacher's clock is behind; the acceptance counts all the same.
	r.now = r.now.Add(-time.Hour)
	if _, line, err := r.book.Accept(Accepting{Entry: kept[:8], Undo: false}); err != nil || !line.Accepted {
		t.Fatal(line, err)
	}
	if report = r.report(); !report.Disputed[0].Accepted {
		t.Fatalf("kept are %+v", report.Disputed)
	}
	if _, _, err := r.book.Accept(Accepting{Entry: kept[:8], Undo: false}); err != ErrIsAccepted {
		t.Error(err)
	}
	if _, line, err := r.book.Accept(Accepting{Entry: kept[:8], Undo: true}); err != nil || line.Accepted {
		t.Fatal(line, err)
	}
	if report = r.report(); report.Disputed[0].Accepted {
		t.Error("it is accepted still")
	}
	for prefix, why := range map[string]error{"fffffff0": ErrNoEntry, "ab": errShortPrefix, kept[:8]: ErrNotAccepted} {
		if _, _, err := r.book.Accept(Accepting{Entry: prefix, Undo: true}); err != why {
			t.Errorf("%s: %v; want %v", prefix, err, why)
		}
	}
}

func TestDeletedLinesAndClocksAreTold(t *testing.T) {
	r := newRoom(t)
	l := r.lesson("s01", "canal-lantern")
	r.type_(l, "T1 up left; T2 up right; w down", "T1x = T1 sin α", "T1x = T1 cos α", "T1y = T1 sin α")
	whole := r.handIn("s01")
	var lines []string
	for _, line := range strings.SplitAfter(string(whole), "\n") {
		line = strings.Replace(line, `"entries":5`, `"entries":4`, 1)
		if !strings.Contains(line, "wrong sine-cosine") {
			lines = append(lines, line)
		}
	}
	r.collect(map[string][]byte{"ada": []byte(strings.Join(lines, ""))})
	want(t, "the remarks", notices(r.report().Remarks), "s01 numbers-missing 1")
	// Handed in whole, the gap is closed.
	r.collect(map[string][]byte{"ada": whole})
	want(t, "the remarks", notices(r.report().Remarks), "")

	n := 0
	r.book = r.markbook()
	r.collect(map[string][]byte{"ada": edited(t, whole, func(f map[string]any) {
		if f["kind"] == "answer" {
			n++
			f["time"] = []string{"2019-01-01T00:00:00.000Z", "2030-03-02T10:05:00.000Z", "2030-03-02T09:00:00.000Z", "2041-01-01T00:00:00.000Z"}[n-1]
		}
	})})
	want(t, "the remarks", notices(r.report().Remarks), "s01 time-early 1; s01 time-backwards 2; s01 time-later 1")
}

func TestPractisedAloneDoesNotCount(t *testing.T) {
	r := newRoom(t)
	r.solveLantern(r.lessonUnder(tutor.Class{}, "s01", "canal-lantern"))
	r.collect(map[string][]byte{"ada": r.handIn("s01")})
	report := r.report()
	want(t, "the first column", standings(report), "not started, not started, not started")
	want(t, "the remarks", notices(report.Remarks), "s01 numbers-alone 7")
	var b strings.Builder
	must(t, r.book.Show(&b, r.class.Students[0], "canal-lantern"))
	if !strings.Contains(b.String(), saidShowAlone) || !strings.Contains(b.String(), "T1 cos α = T2 cos β") {
		t.Error(b.String())
	}
}

func TestWholeRecordsOfSharedMachines(t *testing.T) {
	r := newRoom(t)
	r.solveLantern(r.lesson("s01", "canal-lantern"))
	stranger := tutor.New(tutor.Options{Bank: r.bank, Record: r.desks["s01"]})
	s, _, err := stranger.Enrol("Visitor")
	must(t, err)
	d, err := stranger.Seat(s)
	must(t, err)
	_, err = d.Open("canal-lantern")
	must(t, err)
	sum, err := r.book.Collect(context.Background(), []string{r.dir}, CollectOptions{})
	must(t, err)
	if sum.Added != 7 || sum.Files[0].Elsewhere != 1 || sum.Files[0].Trouble != "" {
		t.Fatalf("%+v", sum)
	}
	want(t, "the first column", standings(r.report()), doneWord+", not started, not started")
}

func TestBadFilesAreSentences(t *testing.T) {
	r := newRoom(t)
	l := r.lesson("s01", "canal-lantern")
	r.type_(l, "T1 up left; T2 up right; w down", "T1x = T1 cos α")
	good := r.handIn("s01")
	var packed bytes.Buffer
	must(t, squeeze(&packed, good))
	var bomb bytes.Buffer
	z := gzip.NewWriter(&bomb)
	_, err := z.Write(append([]byte(`{"standstill":"hand-in","form":1,"student":"s01"}`+"\n"), bytes.Repeat([]byte(" "), largestUnpacked+1)...))
	must(t, err)
	must(t, z.Close())
	newer := bytes.Replace(good, []byte(`"form":1`), []byte(`"form":9`), 1)
	sqlite := append([]byte("SQLite format 3\x00"), bytes.Repeat([]byte{7}, 8192)...)
	for name, c := range map[string]struct {
		data []byte
		said string
		add  int
	}{
		"good":      {good, "Ada Berg, 3 entries, 3 new.", 3},
		"packed":    {packed.Bytes(), "Ada Berg, 3 entries, 3 new.", 3},
		"cut":       {good[:len(good)-40], "end of the file is missing", 2},
		"cut-short": {packed.Bytes()[:packed.Len()-20], "end of the file is missing", -1},
		"newer":     {newer, "newer version", 0},
		"bomb":      {bomb.Bytes(), "too large for a hand-in", 0},
		"sqlite":    {sqlite, "is not a Standstill record", 0},
		"garbled":   {append(bytes.Clone(good), "}{ \x1b[2J\x00\n[1,2]\n"...), "Lines that are not entries: 2; the first is line 6", 3},
		"marked":    {append([]byte("\ufeff"), good...), "3 new", 3},
		"endless":   {append(bytes.Clone(good), bytes.Repeat([]byte("x"), 3<<20)...), "Lines that are not entries: 1", 3},
	} {
		r.book = r.markbook()
		sum := r.collect(map[string][]byte{name: c.data})
		var b strings.Builder
		must(t, sum.WriteText(&b, r.class))
		if !strings.Contains(b.String(), c.said) || c.add >= 0 && sum.Added != c.add {
			t.Errorf("%s: %d added; said %s", name, sum.Added, b.String())
		}
		if strings.ContainsRune(b.String(), '\x1b') {
			t.Errorf("%s: an escape reaches the terminal", name)
		}
	}
	for name, data := range map[string][]byte{"empty": {}, "text": []byte("hello"), "gzip": {0x1f, 0x8b, 1}, "null": bytes.Repeat([]byte{0}, 100)} {
		if sum := r.collect(map[string][]byte{name: data}); sum.Added != 0 || !sum.Files[0].Other {
			t.Errorf("%s is taken for %+v", name, sum.Files[0])
		}
	}
}

// TestNoTextActs hands in texts that act on terminals, spreadsheets, pages and
// paths, and looks at everything that comes out.
func TestNoTextActs(t *testing.T) {
	hostile := "=cmd|' /C calc'!A0\x1b[2J\x1b]0;x\x07\u202e../../etc\\..\u2028<script>alert(1)</script>\u0085\x00"
	r := newRoom(t)
	r.class.Students[0].Name = hostile
	r.class.Name = hostile
	l := r.lesson("s01", "canal-lantern")
	r.type_(l, "T1 up left; T2 up right; w down", "T1x = T1 sin α")
	data := edited(t, r.handIn("s01"), func(f map[string]any) {
		if f["text"] == "T1x = T1 sin α" {
			f["text"] = "T1x = T1 sin α" + hostile
			f["item"] = hostile
			f["said"] = hostile
		}
	})
	sum := r.collect(map[string][]byte{"x": data})
	report := r.report()
	outs := map[string]*strings.Builder{}
	out := func(name string) *strings.Builder { outs[name] = &strings.Builder{}; return outs[name] }
	must(t, sum.WriteText(out("collect"), r.class))
	must(t, report.WriteText(out("text"), summary.Layout{}))
	must(t, report.WriteText(out("plain"), summary.Layout{Plain: true}))
	must(t, report.WriteCSV(out("csv"), false))
	must(t, report.WriteHTML(out("html"), r.bank))
	must(t, r.book.Show(out("show"), r.class.Students[0], "canal-lantern"))
	for name, b := range outs {
		if i := strings.IndexAny(strings.ReplaceAll(b.String(), "\r\n", "\n"), "\x1b\x07\x00\u0085\u202e\u2028\r"); i >= 0 {
			t.Errorf("%s lets %q through", name, b.String()[max(0, i-20):i+5])
		}
	}
	if strings.Contains(outs["html"].String(), "<script") {
		t.Error("the page holds a script")
	}
	for _, cell := range strings.Split(outs["csv"].String(), ",") {
		if strings.HasPrefix(strings.Trim(cell, `"`), "=") {
			t.Errorf("a cell begins a formula: %s", cell)
		}
	}
	h := HandIn{Tutor: tutor.New(tutor.Options{Record: r.desks["s01"], Class: tutor.Class{Code: hostile}}), Student: record.Student{ID: "../../../" + hostile}}
	for _, name := range []string{h.name(), RecordName("../" + hostile), RecordName("")} {
		if filepath.Base(name) != name || strings.ContainsAny(name, `/\<>:"|?* `) {
			t.Errorf("%q is no plain file name", name)
		}
	}
}

func TestForgottenStudentsLeaveNothing(t *testing.T) {
	r := newRoom(t)
	r.solveLantern(r.lesson("s01", "canal-lantern"))
	r.collect(map[string][]byte{"ada": r.handIn("s01")})
	r.report()
	if n, known, err := r.book.Forget("S01"); err != nil || !known || n != 7 {
		t.Fatal(n, known, err)
	}
	want(t, "the first column", standings(r.report()), "not started, not started, not started")
}

// doneWord is how a page stands that was solved without a mistake.
var doneWord = tutor.RightFirst.String()
