package summary

// Notice says what a teacher should look at. It accuses nobody: clocks are wrong,
// files are copied, programs differ.
type Notice string

// The notices.
const (
	NumbersAlone   Notice = "numbers-alone"
	NumbersOthers  Notice = "numbers-others"
	NumbersNobodys Notice = "numbers-nobodys"
	ProblemOther   Notice = "problem-other"
	TimeBackwards  Notice = "time-backwards"
	TimeEarly      Notice = "time-early"
	TimeLater      Notice = "time-later"
	VerdictOther   Notice = "verdict-other"
	EntryChanged   Notice = "entry-changed"
	NumberTwice    Notice = "number-twice"
	NumbersMissing Notice = "numbers-missing"
	Acceptance     Notice = "acceptance"
	EntryCopied    Notice = "entry-copied"
	EntryTied      Notice = "entry-tied"
	EntryUnsettled Notice = "entry-unsettled"
	NotOnList      Notice = "not-on-list"
	Given          Notice = "given"
	TooMuch        Notice = "too-much"
	Fault          Notice = "fault"
)

// Remark is a notice about one student's entries. Whose is another student
// concerned; Detail is a text of an entry, or what was found; Count the number of
// entries.
type Remark struct {
	Notice  Notice `json:"notice"`
	Student string `json:"student,omitempty"`
	Problem string `json:"problem,omitempty"`
	Whose   string `json:"whose,omitempty"`
	Detail  string `json:"detail,omitempty"`
	Count   int    `json:"count"`
}
