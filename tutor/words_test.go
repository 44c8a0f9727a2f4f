// Inside the package: it uses the bank of guesser_test.go.

package tutor

import (
	"bufio"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
)

// TestWords reads testdata/words.txt: what a whole line is taken for.
func TestWords(t *testing.T) {
	file, err := os.Open("testdata/words.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	g, err := NewPage(problemOf(t, "canal-lantern"))
	if err != nil {
		t.Fatal(err)
	}
	lines := 0
	for in := bufio.NewScanner(file); in.Scan(); {
		line, want, found := strings.Cut(in.Text(), " → ")
		if !found {
			continue
		}
		lines++
		word, ok := g.WordOf(line)
		if !ok {
			word = "none"
		}
		if string(word) != want {
			t.Errorf("%q is %s, want %s", line, word, want)
		}
	}
	if lines < 50 {
		t.Fatalf("only %d lines were found", lines)
	}
}

// TestNoWordIsALetter: a force of that name would hide the word.
func TestNoWordIsALetter(t *testing.T) {
	words := []string{string(AskMenu), "keep", "leave"}
	for _, w := range Words() {
		words = append(words, string(w.Word))
	}
	for _, word := range words {
		if err := (problems.Draft{}).WrongForce(word); err == nil || !strings.Contains(err.Error(), "is a command in the tutor") {
			t.Errorf("a force called %q: %v", word, err)
		}
	}
}

// TestNoAnswerIsAWord reads every answer whose label says that it can be read: none of them is taken for a
// word.
func TestNoAnswerIsAWord(t *testing.T) {
	files, err := filepath.Glob("../testdata/marking/*.jsonl")
	if err != nil || len(files) == 0 {
		t.Fatal("no labelled answers were found", err)
	}
	answers := 0
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, line := range strings.Split(string(text), "\n") {
			var one struct {
				Answer string
				Want   struct{ Verdict checker.Verdict }
			}
			if json.Unmarshal([]byte(line), &one) != nil || one.Want.Verdict == checker.Unread || strings.TrimSpace(one.Answer) == "" {
				continue
			}
			answers++
			if word, is := WordOf(one.Answer); is {
				t.Errorf("%q is taken for the word %s", one.Answer, word)
			}
		}
	}
	if answers < 1000 {
		t.Fatalf("only %d answers were found", answers)
	}
}

// TestALetterIsNoWord has a problem whose letters are words elsewhere.
func TestALetterIsNoWord(t *testing.T) {
	p := problemOf(t, "canal-lantern")
	for _, word := range []string{"skip", "menu", "quit", "exit", "sums", "how", "idk"} {
		text := strings.Replace(string(p.Raw), "\ngiven:\n", "\nsurplus: ["+word+"]\ngiven:\n  "+word+": 2 kg\n", 1)
		own, found := problems.ReadSaved("words.yaml", []byte(text))
		if err := found.Err(); err != nil {
			t.Fatal(err)
		}
		g, err := NewPage(own)
		if err != nil {
			t.Fatal(err)
		}
		if w, is := g.WordOf(word); is {
			t.Errorf("%q is taken for the word %s, and it is a letter", word, w)
		}
		if _, is := g.WordOf("help"); !is {
			t.Error("help is no word any more")
		}
	}
}

// TestHelpIsThereInEveryStage asks for help all the way through a problem: something
// is said each time, nothing goes onto the page, and no expression of the answer is
// given.
func TestHelpIsThereInEveryStage(t *testing.T) {
	l := open(t, seat(t, ""), "keg-counterweight")
	said := map[checker.Stage]string{}
	for range 40 {
		stage, item, open := l.InHand()
		lost := l.Lost()
		if lost.Now == "" || open && (lost.Example == "" || !strings.HasSuffix(lost.Now, ".")) {
			t.Fatalf("%s %s: %+v", stage, item, lost)
		}
		said[stage] = lost.Now
		if !open {
			break
		}
		lines := len(l.Lines())
		if text := answer(l, stage, item); strings.Contains(lost.Now+lost.Example, text) {
			t.Errorf("%s %s: the answer %q is given: %+v", stage, item, text, lost)
		}
		hand(t, l, answer(l, stage, item))
		if len(l.Lines()) != lines+1 {
			t.Fatal("help went onto the page")
		}
	}
	for stage, said := range said {
		if axes := stage == checker.Components || stage == checker.XSum || stage == checker.YSum; strings.Contains(said, "Axes: positive x: ") != axes {
			t.Errorf("%s: the axes are not named where they are needed, and only there: %s", stage, said)
		}
	}
	if len(said) != len(checker.Stages)+1 {
		t.Fatalf("help was heard in %d stages", len(said))
	}
}
