package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"

	"example.org/standstill/checker/expr"
)

// lineReader reads lines of any sensible length.
type lineReader struct{ *bufio.Scanner }

func newQuestions(in io.Reader, out io.Writer) *questions {
	return &questions{lines: &lineReader{bufio.NewScanner(in)}, out: out}
}

// ask asks until check has nothing to say against the answer. The end of the input
// is an error, and nothing is written then.
func (q *questions) ask(question string, check func(string) string) (string, error) {
	for {
		fmt.Fprint(q.out, question, "\n> ")
		if !q.lines.Scan() {
			fmt.Fprintln(q.out)
			return "", errors.New(saidAnswersEnd)
		}
		answer := strings.TrimSpace(expr.Clean(q.lines.Text()))
		if check == nil {
			return answer, nil
		}
		said := check(answer)
		if said == "" {
			return answer, nil
		}
		fmt.Fprintln(q.out, said)
	}
}
