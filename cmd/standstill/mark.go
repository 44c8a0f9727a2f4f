package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
)

func markCommand(a *app) *cobra.Command {
	var own whose
	c := &cobra.Command{
		Use:   "mark",
		Short: "Mark answers that another program sends as JSON",
		Long: `This command reads requests from standard input. Each line is one request,
written as a JSON object. For each request, the command writes one line with the
result. The results are in the same order as the requests. A request looks like
this:

  {"problem":"canal-lantern","stage":"solve","answer":"T1 = 20.2 N"}

The stages are diagram, components, x-sum, y-sum and solve. If a stage asks for
several things, "item" says which of them the answer is about. "before" is a
list of the accepted answers that the student gave earlier, each with "stage",
"item" and "answer". "student" and "class" (a number key) choose the numbers of
one student; if a request does not have them, the command uses --student and
--numbers. With --class, the number key, g and the tolerance come from the class
file. If a line is not a request, the result is {"error":"…"}, and the command
continues with the next line.`,
		Example: `  standstill mark < answers.jsonl`,
		Args:    exactly(0, ""),
		RunE: func(*cobra.Command, []string) error {
			if len(own.students) > 1 {
				return misuse{errors.New(saidOneStudent)}
			}
			all, err := own.copies(a)
			if err != nil {
				return err
			}
			m := &marker{copies: all, refs: map[copyKey]*checker.Reference{}}
			return m.markAll(a.In, a.Out)
		},
	}
	own.flags(c)
	return c
}

// longestRequest is the most bytes that one line of input may have.
const longestRequest = 1 << 20

// marker marks requests. It keeps the references that it has solved.
type marker struct {
	*copies
	refs map[copyKey]*checker.Reference
}

type copyKey struct{ problem, student, class string }

// mostRefs bounds what is kept for a class of any size.
const mostRefs = 512

type request struct {
	Problem string           `json:"problem"`
	Stage   checker.Stage    `json:"stage"`
	Item    string           `json:"item"`
	Answer  *string          `json:"answer"`
	Before  []checker.Answer `json:"before"`
	Student string           `json:"student"`
	Class   string           `json:"class"`
}

// verdict is one line of output. Settles is there for every right line of the
// stage solve; Item only in Each.
type verdict struct {
	Verdict checker.Verdict `json:"verdict"`
	Code    checker.Code    `json:"code,omitempty"`
	About   string          `json:"about,omitempty"`
	Item    string          `json:"item,omitempty"`
	Settles *[]string       `json:"settles,omitempty"`
	Read    string          `json:"read"`
	Message string          `json:"message,omitempty"`
	Each    []verdict       `json:"each,omitempty"`
}

type refusal struct {
	Error string `json:"error"`
}

// markAll answers line after line. What is wrong with a line is an answer too; the
// error is that of the streams.
func (m *marker) markAll(in io.Reader, out io.Writer) error {
	r := bufio.NewReaderSize(in, 64<<10)
	w := bufio.NewWriter(out)
	var trouble error
	for {
		line, tooLong, err := readLine(r)
		if err != nil && err != io.EOF {
			trouble = err
		}
		// A last line without an end is a request like any other.
		if err != nil && len(line) == 0 && !tooLong {
			break
		}
		if wrote := writeJSON(w, m.answer(line, tooLong), ""); wrote != nil {
			return wrote
		}
		// Whoever waits for each answer gets it; whoever sends a file does not pay for a write per line.
		if r.Buffered() == 0 || err != nil {
			if flushed := w.Flush(); flushed != nil {
				return flushed
			}
		}
		if err != nil {
			break
		}
	}
	if trouble != nil {
		return errors.Join(w.Flush(), fmt.Errorf(saidNoInput, plainCause(trouble)))
	}
	return w.Flush()
}

// readLine reads one line without its end. Of a line that is too long the rest is
// read and dropped.
func readLine(r *bufio.Reader) (line []byte, tooLong bool, err error) {
	for {
		part, more, err := r.ReadLine()
		// Read to its end, or its rest would be taken for further requests.
		if len(line) <= longestRequest {
			line = append(line, part...)
		}
		if err != nil || !more {
			return line, len(line) > longestRequest, err
		}
	}
}

// answer judges one request. A fault of our own spoils one line, not the rest.
func (m *marker) answer(line []byte, tooLong bool) (out any) {
	defer func() {
		if fault := recover(); fault != nil {
			out = refusal{fmt.Sprintf("internal error: %v", fault)}
		}
	}()
	if tooLong {
		return refusal{fmt.Sprintf("the line is longer than %d bytes", longestRequest)}
	}
	q, err := readRequest(line)
	if err != nil {
		return refusal{err.Error()}
	}
	// Only where the request leaves it open.
	if q.Student == "" && len(m.students) == 1 {
		q.Student = m.students[0].ID
	}
	ref, err := m.reference(copyKey{q.Problem, q.Student, q.Class})
	if err != nil {
		return refusal{err.Error()}
	}
	if q.Item, err = itemOf(ref, q); err != nil {
		return refusal{err.Error()}
	}
	report := ref.Mark(checker.Answer{Stage: q.Stage, Item: q.Item, Text: *q.Answer}, q.Before)
	return verdictOf(q.Stage, report)
}

func readRequest(line []byte) (q request, err error) {
	line = bytes.TrimPrefix(line, []byte("\ufeff")) // some shells put a mark in front of what they pipe
	if len(bytes.TrimSpace(line)) == 0 {
		return q, errors.New("the line is empty; expected a request")
	}
	if err := json.Unmarshal(line, &q); err != nil {
		return q, errors.New("not a request: " + plainJSON(err))
	}
	switch {
	case q.Problem == "":
		return q, errors.New(`the request has no "problem"`)
	case q.Stage == "":
		return q, errors.New(`the request has no "stage"`)
	case q.Answer == nil:
		return q, errors.New(`the request has no "answer"`)
	case !slices.Contains(checker.Stages, q.Stage):
		return q, fmt.Errorf("there is no stage %q; expected one of %v", q.Stage, checker.Stages)
	}
	for i, earlier := range q.Before {
		if !slices.Contains(checker.Stages, earlier.Stage) {
			return q, fmt.Errorf(`answer %d of "before": there is no stage %q; expected one of %v`, i+1, earlier.Stage, checker.Stages)
		}
	}
	return q, nil
}

// plainJSON says what is wrong with a line without Go's names for things.
func plainJSON(err error) string {
	var kind *json.UnmarshalTypeError
	var syntax *json.SyntaxError
	switch {
	case errors.As(err, &kind) && kind.Field != "":
		return fmt.Sprintf("the value of %q cannot be a JSON %s", kind.Field, kind.Value)
	case errors.As(err, &kind):
		return "expected a JSON object, not a JSON " + kind.Value
	case errors.As(err, &syntax):
		return fmt.Sprintf("the line is not valid JSON; the error is at byte %d", syntax.Offset)
	}
	return err.Error()
}

// itemOf checks the item of a request. Where the stage has one thing to ask, its
// name does not matter.
func itemOf(ref *checker.Reference, q request) (string, error) {
	items := ref.Items(q.Stage)
	switch {
	case q.Item == "" || slices.Contains(items, q.Item):
		return q.Item, nil
	case len(items) == 1 && items[0] == "":
		return "", nil
	}
	// Any letter may be worked out on the way to what is asked for.
	if q.Stage == checker.Solve {
		for _, e := range ref.Equal {
			if e.Letter == q.Item {
				return q.Item, nil
			}
		}
		if ref.Has(q.Item) {
			return q.Item, nil
		}
	}
	return "", fmt.Errorf("the stage %s of %s has no item %q; expected one of %v", q.Stage, q.Problem, q.Item, items)
}

func (m *marker) reference(key copyKey) (*checker.Reference, error) {
	if ref := m.refs[key]; ref != nil {
		return ref, nil
	}
	p, err := m.bank.Get(key.problem)
	if err != nil {
		return nil, err
	}
	asked := copies{app: m.app, rules: m.rules}
	if key.class != "" {
		asked.rules = tutor.Class{Code: key.class} // the request's own key, whatever was set for the others
	}
	page, err := asked.page(p, key.student)
	if err != nil {
		return nil, err
	}
	ref := page.Ref
	if len(m.refs) >= mostRefs {
		// Requests come student by student or problem by problem, so an older reference is hardly needed again.
		clear(m.refs)
	}
	m.refs[key] = ref
	return ref, nil
}

func verdictOf(stage checker.Stage, r checker.Report) verdict {
	v := verdict{Verdict: r.Verdict, Code: r.Code, About: r.About, Read: r.Read, Message: strings.TrimSpace(r.Message + " " + r.AsSize)}
	if stage == checker.Solve && r.Verdict == checker.Right {
		// Not nil: a right line that settles nothing has an empty list, and the other stages have none.
		settles := append([]string{}, r.Settles...)
		v.Settles = &settles
	}
	for _, one := range r.Each {
		each := verdictOf(stage, one)
		each.Item = one.Item
		v.Each = append(v.Each, each)
	}
	return v
}
