package checker_test

import (
	"fmt"
	"testing"

	"example.org/standstill/checker"
)

func TestShow(t *testing.T) {
	for _, c := range readCases(t, "../testdata/marking/given.jsonl") {
		got := reference(t, c.Problem).Mark(checker.Answer{Stage: c.Stage, Item: c.Item, Text: c.Answer}, c.Before)
		if got.Message != "" {
			fmt.Printf("%s %s %s %q\n   %s %s %s: %s\n", c.Problem, c.Stage, c.Item, c.Answer, got.Verdict, got.Code, got.About, got.Message)
		}
	}
}
