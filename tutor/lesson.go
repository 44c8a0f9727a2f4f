package tutor

import (
	"example.org/standstill/checker"
	"example.org/standstill/tutor/record"
)

// Lesson is a page that a student writes on. Whatever changes it is in the record
// before the method returns; with an error nothing has changed, and
// [record.Sentence] says why.
type Lesson struct {
	*Page
	desk    *Desk
	attempt *Attempt
	mayPass *bool // Components may be passed over; nil before it was found out
}

// Result is what came of a line: the line as it stands on the page, whether the
// next stage was reached, and whether the last was.
type Result struct {
	Line   *Line
	Said   string // of a prediction, or of the question after Solve
	Moved  bool
	Solved bool
}

// Check marks a typed line for what is in hand and saves it. What holds nothing
// to read is not saved: the Result's Line is nil then. Once nothing is open, lines
// are taken as further working.
func (l *Lesson) Check(text string) (Result, error) {
	text = tidyText(text)
	if text == "" {
		return Result{}, nil
	}
	if r, taken, err := l.answerQuestion(text); taken || err != nil {
		return r, err
	}
	stage, item, open := l.InHand()
	if !open {
		stage = checker.Solve
	}
	at, of := stage, item
	if open {
		at, of = l.placeFor(text, stage, item)
	}
	line, err := l.note(record.Entry{Kind: record.Answer, Stage: string(at), Item: of, Text: text})
	if err != nil {
		return Result{}, err
	}
	return l.result(line, stage, open), nil
}

// answerQuestion takes a text for the prediction or the limit that is asked for. A text
// that is none of the choices passes the prediction over, unless the class requires it.
func (l *Lesson) answerQuestion(text string) (r Result, taken bool, err error) {
	if p, asked := l.Predict(); asked {
		chosen, ok := p.choice(text)
		if !ok {
			return Result{Said: saidMustPredict}, l.class.Predictions == QuestionsRequired, nil
		}
		line, err := l.note(record.Entry{Kind: record.Predicted, Item: p.ID, Text: text, Detail: p.Choices[chosen].Word})
		return Result{Line: line, Said: saidNoted}, true, err
	}
	q, asked := l.Limit()
	if !asked || l.saysOther(text, q.name) {
		return Result{}, false, nil
	}
	if _, read := q.judge(text); !read {
		return Result{Said: saidLimitUnread}, true, nil
	}
	line, err := l.note(record.Entry{Kind: record.Limited, Item: q.ID, Text: text})
	if err != nil {
		return Result{}, true, err
	}
	return Result{Line: line, Said: line.Message}, true, nil
}

func (l *Lesson) result(line *Line, was checker.Stage, wasOpen bool) Result {
	now, _, open := l.InHand()
	return Result{Line: line, Moved: open && now != was, Solved: wasOpen && !open}
}

// Dispute lets the last refused line of the stage in hand stand against our
// judgement, flagged for the teacher, and goes on. The Result's Line is nil where
// no line was refused.
func (l *Lesson) Dispute() (Result, error) {
	stage, _, open := l.InHand()
	refused := l.refused(stage)
	if !open || refused == "" {
		return Result{}, nil
	}
	line, err := l.note(record.Entry{Kind: record.Disputed, Stage: string(stage), Ref: refused})
	if err != nil {
		return Result{}, err
	}
	return l.result(line, stage, open), nil
}

// refused returns the entry of the line that was checked last at a stage, if it was
// refused.
func (l *Lesson) refused(stage checker.Stage) string {
	for i := len(l.lines) - 1; i >= 0; i-- {
		line := &l.lines[i]
		if line.Kind != Typed || line.TypedIn != stage {
			continue
		}
		if line.Verdict == checker.Right || line.Disputed || line.Accepted {
			return ""
		}
		return line.ID
	}
	return ""
}

// CanDispute reports whether there is a refused line that could be disputed.
func (l *Lesson) CanDispute() bool {
	stage, _, open := l.InHand()
	return open && l.refused(stage) != ""
}

// Solution returns the worked solution, and saves that it was shown: the problem
// then counts as shown, unless it was solved before.
func (l *Lesson) Solution() ([]Step, error) {
	if !l.Over() {
		stage, item, _ := l.InHand()
		if _, err := l.note(record.Entry{Kind: record.Solution, Stage: string(stage), Item: item}); err != nil {
			return nil, err
		}
	}
	return l.Worked(), nil
}

// Echo says how a half-typed line is read for the item in hand, "" where nothing
// can be said yet.
func (l *Lesson) Echo(text string) string {
	stage, item, open := l.InHand()
	text = tidyText(text)
	if _, isWord := l.WordOf(text); text == "" || isWord {
		return ""
	}
	if !open {
		stage = checker.Solve
	}
	read := ""
	_ = Fenced(func() { read = l.Page.echo(stage, item, text) }) // what cannot be shown is said when it is checked
	return read
}

// note saves an entry about this lesson, then writes it on the page.
func (l *Lesson) note(e record.Entry) (*Line, error) {
	e.Student = l.desk.Student.ID
	e.Problem, e.Hash, e.Givens, e.Copy = l.Problem.ID, l.Problem.Hash, l.Problem.Copy, l.attempt.Copy
	kept, err := l.desk.tutor.Record.Append(e)
	if err != nil {
		return nil, err
	}
	l.desk.history.Add(kept)
	if e.Kind == record.Answer {
		l.desk.kept(l.attempt).Store(new(string)) // its half-typed lines went with it
	}
	line := l.Page.Add(kept)
	if told := l.desk.tutor.Told; told != nil && line != nil {
		told(l.Problem, line)
	}
	return line, nil
}
