package main

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
)

// question is one part of what a dialogue makes. Check says what is wrong with an
// answer, "" for nothing.
type question struct {
	Part, Ask string
	Check     func(string) string
}

// dialogue asks for parts and loses none: each answer is checked and kept in a draft
// when it is given, so that whoever breaks off is asked on from there. Back goes to
// the part before, and at the end each part can be changed.
type dialogue struct {
	in      *bufio.Scanner
	out     io.Writer
	draft   string // the file that keeps the answers
	answers map[string]string
}

func newDialogue(in io.Reader, out io.Writer, draft string) *dialogue {
	return &dialogue{in: bufio.NewScanner(in), out: out, draft: draft, answers: map[string]string{}}
}

// run asks until every part has an answer. An error is a sentence; the answers till
// then are in the draft.
func (d *dialogue) run(questions []question) error {
	if len(questions) == 0 {
		return nil
	}
	d.takeUp(questions)
	for at := 0; at < len(questions); {
		q := questions[at]
		if _, have := d.answers[q.Part]; have {
			at++
			continue
		}
		answer, err := d.ask(q)
		switch {
		case err != nil:
			return err
		case answer == wordBack:
			at = max(at-1, 0)
			delete(d.answers, questions[at].Part)
			continue
		}
		d.answers[q.Part] = answer
		if err := d.keep(); err != nil {
			return err
		}
	}
	return d.mend(questions)
}

// wordBack is an answer that goes to the question before.
const wordBack = "back"

func (d *dialogue) ask(q question) (string, error) {
	for {
		answer, ok := d.read(q.Ask)
		if !ok {
			return "", d.brokenOff()
		}
		if answer == wordBack {
			return answer, nil
		}
		said := q.Check(answer)
		if said == "" {
			return answer, nil
		}
		fmt.Fprintln(d.out, said)
	}
}

func (d *dialogue) read(prompt string) (answer string, ok bool) {
	fmt.Fprint(d.out, prompt, "\n> ")
	if !d.in.Scan() {
		fmt.Fprintln(d.out)
		return "", false
	}
	return strings.TrimSpace(expr.Clean(d.in.Text())), true
}

// mend shows what was answered and changes parts until nothing is named any more.
func (d *dialogue) mend(questions []question) error {
	var parts []string
	for _, q := range questions {
		parts = append(parts, q.Part)
	}
	for {
		for _, q := range questions {
			fmt.Fprintf(d.out, "  %s: %s\n", q.Part, d.answers[q.Part])
		}
		part, ok := d.read(fmt.Sprintf(askMend, strings.Join(parts, ", ")))
		if !ok || part == "" {
			return nil
		}
		at := slices.Index(parts, strings.ToLower(part))
		if at < 0 {
			fmt.Fprintf(d.out, saidNoPart+"\n", part, strings.Join(parts, ", "))
			continue
		}
		answer, err := d.ask(questions[at])
		if err != nil {
			return err
		}
		if answer != wordBack {
			d.answers[parts[at]] = answer
			if err := d.keep(); err != nil {
				return err
			}
		}
	}
}

// takeUp goes on with a draft that was left; answers that are wrong by now are asked
// for again.
func (d *dialogue) takeUp(questions []question) {
	data, err := os.ReadFile(d.draft)
	var kept map[string]string
	if err != nil || json.Unmarshal(data, &kept) != nil {
		return
	}
	for _, q := range questions {
		if answer, ok := kept[q.Part]; ok && q.Check(answer) == "" {
			d.answers[q.Part] = answer
		}
	}
	if len(d.answers) > 0 {
		fmt.Fprintf(d.out, saidTakenUp+"\n", d.draft)
	}
}

func (d *dialogue) keep() error {
	data, err := json.Marshal(d.answers)
	if err == nil {
		err = os.WriteFile(d.draft, append(data, '\n'), 0o600)
	}
	if err != nil {
		return fmt.Errorf(saidNotWritten, d.draft, plainCause(err))
	}
	return nil
}

func (d *dialogue) brokenOff() error {
	if len(d.answers) == 0 {
		return errors.New(saidNoAnswer)
	}
	return fmt.Errorf(saidDraftKept, d.draft)
}

// done throws the draft away once the file is written.
func (d *dialogue) done() { os.Remove(d.draft) }
