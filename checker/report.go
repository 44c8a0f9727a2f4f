package checker

import (
	"slices"
	"strings"

	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/wording"
)

// Verdict is what is said of a line.
type Verdict string

// The verdicts. Almost is right but for its form; Unread counts no attempt.
const (
	Right  Verdict = "right"
	Almost Verdict = "almost"
	Wrong  Verdict = "wrong"
	Unread Verdict = "unread"
)

// Answer is one typed line. Item names what it is about where the stage has
// several items (a component "T1x", a body, an unknown); it may be empty.
type Answer struct {
	Stage Stage  `json:"stage"`
	Item  string `json:"item,omitempty"`
	Text  string `json:"answer"`
}

// Report is the judgement of one line. Code and About are set with Wrong and
// Almost, Settles (never nil for a right line) in the stage Solve. Pos and End
// are rune offsets into the typed text as [lines.Clean] leaves it, for Unread and Wrong
// lines; Item is the item that the line was taken for, Stage the stage that it was judged
// for. Text is the line alone, as it was judged, and From and To are where it stands in
// the typed text. Answers lists the items that it is an answer to, right or wrong, Void
// those of them that another line of the same text answers otherwise, so that none is
// settled. AsSize is what is said of a right component whose sign was left out. Concludes
// says that the line was said to follow from the one before it. Working lists the unknowns
// that a right line of the stage Solve says something of beyond their value. Each holds the reports of
// a text with several lines.
type Report struct {
	Verdict  Verdict
	Code     Code
	About    string
	Item     string
	Read     string
	Message  string
	Settles  []string
	Pos, End int
	Stage    Stage
	Text     string
	From, To int
	Answers  []string
	Void     []string

	row       *mistake.Row  // the mistake, where a row of the table explains it
	used      *solved.Place // the sum that it is in, where that is not the one asked for
	hints     []string      // the author's own, where the author watches for the mistake
	is        sameness      // which mistake it is, to compare it with others
	AsSize    string
	Concludes bool
	Working   []string
	Each      []Report
}

// Together makes one report of those of several lines: right if all are, else what is
// said of the first that is not. Different answers to one item settle nothing.
func Together(each []Report) Report {
	if len(each) == 1 {
		return each[0]
	}
	voidTwice(each)
	all := Report{Verdict: Right}
	var read, settles []string
	for _, one := range each {
		if one.Read != "" {
			read = append(read, one.Read)
		}
		if all.Verdict == Right && one.Verdict != Right {
			all = one
		}
		// An empty list differs from none: it says that a line of working was right and settled nothing.
		if one.Settles != nil && settles == nil {
			settles = []string{}
		}
		for _, name := range one.Settles {
			if !slices.Contains(settles, name) {
				settles = append(settles, name)
			}
		}
	}
	if all.Verdict == Right {
		all.Stage = each[0].Stage
	}
	all.Settles = settles
	all.Read = strings.Join(read, "; ")
	all.Each = each
	return all
}

// voidTwice takes back what is settled by a line where another line of the same text
// answers the same item wrongly.
func voidTwice(each []Report) {
	for i := range each {
		one := &each[i]
		if one.Verdict != Right {
			continue
		}
		// The right one of two answers may be a guess.
		for _, item := range one.Answers {
			if !slices.ContainsFunc(each, func(other Report) bool { return other.contradicts(one, item) }) {
				continue
			}
			one.Void = append(one.Void, item)
			one.Settles = slices.DeleteFunc(one.Settles, func(s string) bool { return s == item })
		}
		if one.Void != nil {
			one.Message = wording.Join(one.Message, wording.SaidTwoAnswers)
		}
	}
}

// contradicts reports whether a line of the same text is another answer to an item that a
// right line answers. What is concluded from a sum is no other sum.
func (other *Report) contradicts(right *Report, item string) bool {
	isSum := other.Stage == XSum || other.Stage == YSum
	return other.Verdict == Wrong && other.Stage == right.Stage && slices.Contains(other.Answers, item) &&
		!(isSum && other.Concludes && other.From > right.From)
}

// isExplained reports whether a wrong line has a mistake that is named.
func isExplained(a Report) bool {
	return a.Verdict == Wrong && !a.Code.IsOpen()
}

// better reports whether a later reading is to be preferred: one that is right, or one
// that explains what the first leaves unexplained.
func better(later, first Report) bool {
	return rankOf(later) < rankOf(first) && (later.Verdict == Right || rankOf(first) > rankOf(Report{Verdict: Wrong}))
}

func rankOf(a Report) int {
	rank := slices.Index([]Verdict{Right, Almost, Wrong, Unread}, a.Verdict) * 2
	if a.Code.IsOpen() {
		rank++
	}
	return rank
}
