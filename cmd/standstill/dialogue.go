package main

import (
	"bufio"
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"slices"
	"strings"
	"syscall"

	"example.org/standstill/checker/expr"
	"example.org/standstill/tutor/plain"
)

// question is one part of what a dialogue makes. Check says what is wrong with an
// answer, "" for nothing. Parts with the same Of are shown on one line and can be changed
// together.
type question struct {
	Part, Ask string
	Check     func(string) string
	Of        string
}

func (q question) group() string { return cmp.Or(q.Of, q.Part) }

// dialogue asks for parts and loses none: each answer is checked and saved in a draft
// when it is given, so that whoever stops continues from there. Back goes to the part
// before, and at the end each part can be changed.
type dialogue struct {
	in      chan string
	out     io.Writer
	cols    int    // the width of the terminal, 0 for none
	draft   string // the file that keeps the answers
	answers map[string]string
	saved   bool // there is a draft

	// Next lists the questions, which may depend on the answers so far.
	next func(answers map[string]string) []question
	// Wrong says what is wrong with all answers together, "" for nothing.
	wrong func(answers map[string]string) string
}

func newDialogue(in io.Reader, out io.Writer, draft string) *dialogue {
	d := &dialogue{in: make(chan string), out: out, cols: columns(out), draft: draft, answers: map[string]string{}}
	d.wrong = func(map[string]string) string { return "" }
	go func() { // so that a signal is heard while a line is waited for
		defer close(d.in)
		for lines := bufio.NewScanner(in); lines.Scan(); {
			d.in <- lines.Text()
		}
	}()
	return d
}

// errInputEnds and errStopped are why there is no answer.
var (
	errInputEnds = errors.New("the input ends")
	errStopped   = errors.New("a signal to stop")
)

// run asks until every part has an answer and nothing is wrong. An error is a sentence;
// the answers till then are in the draft.
func (d *dialogue) run() error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	// Flags that say everything ask nothing, as in a script.
	if d.missing() < 0 && d.wrong(d.answers) == "" {
		return nil
	}
	d.takeUp()
	for {
		if err := d.fill(ctx); err != nil {
			return err
		}
		if done, err := d.mend(ctx); done || err != nil {
			return err
		}
	}
}

// missing is the place of the first question without an answer, -1 if there is none.
func (d *dialogue) missing() int {
	return slices.IndexFunc(d.next(d.answers), func(q question) bool {
		_, have := d.answers[q.Part]
		return !have
	})
}

// fill asks for what has no answer.
func (d *dialogue) fill(ctx context.Context) error {
	for at := d.missing(); at >= 0; at = d.missing() {
		// Anew for each answer, which may lead to other questions.
		questions := d.next(d.answers)
		q := questions[at]
		answer, err := d.ask(ctx, q)
		switch {
		case err != nil:
			return err
		case answer == wordBack:
			// The question before as the answers have it now, and not the one asked last.
			before := questions[max(at-1, 0)].Part
			if old := d.answers[before]; old != "" {
				d.say(fmt.Sprintf(saidOldAnswer, old))
			}
			delete(d.answers, before)
			continue
		}
		if err := d.keep(q.Part, answer); err != nil {
			return err
		}
	}
	return nil
}

// wordBack is an answer that goes to the question before.
const wordBack = "back"

// ask asks until an answer can be used.
func (d *dialogue) ask(ctx context.Context, q question) (string, error) {
	for {
		answer, err := d.read(ctx, q.Ask)
		if err != nil {
			return "", d.brokenOff()
		}
		if strings.EqualFold(answer, wordBack) {
			return wordBack, nil
		}
		said := q.Check(answer)
		if said == "" {
			return answer, nil
		}
		d.say(said)
	}
}

func (d *dialogue) read(ctx context.Context, prompt string) (string, error) {
	d.say(prompt)
	fmt.Fprint(d.out, "> ")
	select {
	case line, ok := <-d.in:
		if !ok {
			fmt.Fprintln(d.out)
			return "", errInputEnds
		}
		// Control characters would get into the file that is made.
		return strings.TrimSpace(expr.Clean(line)), nil
	case <-ctx.Done():
		fmt.Fprintln(d.out)
		return "", errStopped
	}
}

// say prints lines, broken between words where the terminal is narrow.
func (d *dialogue) say(text string) {
	for line := range strings.Lines(text) {
		fmt.Fprintln(d.out, plain.Broken(strings.TrimSuffix(line, "\n"), d.cols))
	}
}

// mend shows what was answered and what is wrong with it, and changes one part. It is
// done when nothing is to be changed.
func (d *dialogue) mend(ctx context.Context) (done bool, err error) {
	groups := d.show()
	said, prompt := d.wrong(d.answers), askMend
	if said != "" {
		d.say(said)
		prompt = askMendWrong
	}
	part, err := d.read(ctx, prompt)
	switch {
	// Answers from a file end here, and nothing is to be changed in them.
	case err == errInputEnds && said == "":
		return true, nil
	case err != nil:
		return false, d.brokenOff()
	case part == "":
		return said == "", nil
	case len(d.named(part)) == 0:
		d.say(fmt.Sprintf(saidNoPart, part, strings.Join(groups, ", ")))
		return false, nil
	}
	return false, d.change(ctx, part)
}

// show prints the answers, a line for each group, and returns the groups.
func (d *dialogue) show() (groups []string) {
	answers := map[string][]string{}
	for _, q := range d.next(d.answers) {
		name := q.group()
		if !slices.Contains(groups, name) {
			groups = append(groups, name)
		}
		if answer := d.answers[q.Part]; answer != "" {
			answers[name] = append(answers[name], answer)
		}
	}
	for _, name := range groups {
		d.say(fmt.Sprintf("  %s: %s", name, cmp.Or(strings.Join(answers[name], ", "), "-")))
	}
	return groups
}

// named lists the questions of a part or of a group. Case counts where two names differ
// in it alone.
func (d *dialogue) named(name string) (list []question) {
	for _, same := range []func(a, b string) bool{func(a, b string) bool { return a == b }, strings.EqualFold} {
		for _, of := range []func(question) string{question.group, func(q question) string { return q.Part }} {
			for _, q := range d.next(d.answers) {
				if same(of(q), name) {
					list = append(list, q)
				}
			}
			if list != nil {
				return list
			}
		}
	}
	return nil
}

// change asks again for the questions of a part, one after the other.
func (d *dialogue) change(ctx context.Context, name string) error {
	for at := 0; at >= 0; {
		questions := d.named(name)
		if at >= len(questions) {
			return nil
		}
		q := questions[at]
		if old := d.answers[q.Part]; old != "" {
			d.say(fmt.Sprintf(saidOldAnswer, old))
		}
		answer, err := d.ask(ctx, q)
		if err != nil {
			return err
		}
		if answer == wordBack {
			at--
			continue
		}
		if err := d.keep(q.Part, answer); err != nil {
			return err
		}
		at++
	}
	return nil
}

// takeUp continues a draft that was left; answers that are wrong by now are asked for
// again.
func (d *dialogue) takeUp() {
	data, err := os.ReadFile(d.draft)
	var kept map[string]string
	if err != nil || json.Unmarshal(data, &kept) != nil {
		return
	}
	taken := 0
	for more := true; more; { // an answer may lead to further questions
		more = false
		for _, q := range d.next(d.answers) {
			_, have := d.answers[q.Part]
			// Checked again: since then a file may be there, or an id be taken.
			if answer, ok := kept[q.Part]; ok && !have && q.Check(answer) == "" {
				d.answers[q.Part], more = answer, true
				taken++
			}
		}
	}
	if taken > 0 {
		d.saved = true
		d.say(fmt.Sprintf(saidTakenUp, d.draft))
	}
}

// keep takes an answer and saves all of them.
func (d *dialogue) keep(part, answer string) error {
	d.answers[part] = answer
	data, err := json.Marshal(d.answers)
	if err == nil {
		// A class's list of names is nobody else's business.
		err = os.WriteFile(d.draft, append(data, '\n'), 0o600)
	}
	if err != nil {
		return fmt.Errorf(saidNotWritten, d.draft, plainCause(err))
	}
	d.saved = true
	return nil
}

func (d *dialogue) brokenOff() error {
	if !d.saved {
		return errors.New(saidNoAnswer)
	}
	return fmt.Errorf(saidDraftKept, d.draft)
}

// done throws the draft away once the file is written.
func (d *dialogue) done() { os.Remove(d.draft) }
