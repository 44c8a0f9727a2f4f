package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/spf13/cobra"

	"example.org/standstill/tutor/record"
)

// inProcess runs one command line with the content of a file as its input.
func inProcess(t *testing.T, input string, args ...string) (code int, stdout, stderr string) {
	t.Helper()
	return inProcessUntil(t, "", input, args...)
}

// inProcessUntil stops the command once it has printed a text, if there is one.
func inProcessUntil(t *testing.T, end, input string, args ...string) (code int, stdout, stderr string) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "input")
	if err := os.WriteFile(file, []byte(input), 0o600); err != nil {
		t.Fatal(err)
	}
	in, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer in.Close()
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	var errs bytes.Buffer
	out := &heard{end: end, stop: stop}
	code = run(ctx, args, streams{in, out, &errs})
	return code, out.String(), errs.String()
}

// heard keeps what is written, and stops the writer once that has the end in it.
type heard struct {
	strings.Builder
	end  string
	stop func()
}

func (h *heard) Write(p []byte) (int, error) {
	n, err := h.Builder.Write(p)
	if h.end != "" && strings.Contains(h.String(), h.end) {
		h.stop()
	}
	return n, err
}

func TestExitCodes(t *testing.T) {
	t.Setenv("STANDSTILL_DATA", t.TempDir())
	for _, c := range []struct {
		args string
		want int
	}{
		{"version", exitFine}, {"bank list", exitFine}, {"help mark", exitFine}, {"solve canal-lantern", exitFine},
		{"solve no-such-problem", exitFound}, {"bank check no-such-folder", exitFound}, {"record", exitFound},
		{"sing", exitMisuse}, {"mark --loud", exitMisuse}, {"solve", exitMisuse}, {"--record", exitMisuse},
		{"--light --dark", exitMisuse}, {"bank check", exitMisuse},
	} {
		code, _, stderr := inProcess(t, "", strings.Fields(c.args)...)
		if code != c.want {
			t.Errorf("standstill %s ends with %d, want %d", c.args, code, c.want)
		}
		if lines := strings.Count(stderr, "\n"); c.want != exitFine && lines != 1 {
			t.Errorf("standstill %s says %d lines: %s", c.args, lines, stderr)
		}
	}
}

// TestExamplesRun runs every example of every help text. A command that serves is stopped once
// it does so; where a database at a school is meant, only the words and flags are looked at.
func TestExamplesRun(t *testing.T) {
	t.Setenv("STANDSTILL_DATA", t.TempDir())
	bank, err := os.ReadFile(filepath.Join("..", "..", "problems", "bank", "canal-lantern.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	files := map[string]string{
		"answers.jsonl":            `{"problem":"canal-lantern","stage":"solve","answer":"T2 = 25.8 N"}` + "\n",
		"lantern.yaml":             string(bank),
		"my-problems/lantern.yaml": string(bank),
		"students.csv":             "id,name\nnele,Nele\ns01,Sam\n",
		"id_ed25519.pub":           "ssh-ed25519 AAAAC3NzaC1lZDI1NTE5AAAAIAABAgMEBQYHCAkKCwwNDg8QERITFBUWFxgZGhscHR4f sam\n",
		"physics-10b.yaml":         "name: Physics 10b\ncode: harbour-2\nstudents: students.csv\nproblems:\n  - {problem: canal-lantern}\n",
	}
	for name, content := range files {
		if err := os.MkdirAll(filepath.Dir(name), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	ran := 0
	// The lesson comes first, so that there is a record to print.
	eachCommand(root(&app{}), func(c *cobra.Command) {
		if c.Example == "" {
			t.Errorf("%s has no example", c.CommandPath())
			return
		}
		for _, example := range strings.Split(c.Example, "\n") {
			words := wordsOf(example)
			input := "Nele\nleave\n"
			if i := len(words) - 2; i > 0 && words[i] == "<" {
				input, words = files[words[i+1]], words[:i]
			}
			if i := len(words) - 2; i > 0 && words[i] == ">" {
				words = words[:i]
			}
			meant, rest, err := root(&app{}).Find(words[1:])
			if err != nil {
				t.Errorf("%s: %v", example, err)
				continue
			}
			ran++
			if slices.ContainsFunc(rest, record.IsDatabase) {
				if err := errors.Join(meant.ParseFlags(rest), meant.ValidateArgs(meant.Flags().Args())); err != nil {
					t.Errorf("%s: %v", example, err)
				}
				continue
			}
			served := meant.Annotations[serves]
			if served != "" {
				words = append(words, "--listen", "127.0.0.1:0")
			}
			code, stdout, stderr := inProcessUntil(t, served, input, words[1:]...)
			if served != "" && strings.Contains(stdout, served) {
				stderr = "" // its log
			}
			if strings.HasPrefix(strings.TrimSpace(example), exampleAccept) {
				code, stderr = code-exitFound, strings.Replace(stderr, "No entry in the class record has an id that begins with these characters.\n", "", 1)
			}
			if code != exitFine || stderr != "" {
				t.Errorf("%s ends with %d: %s", strings.TrimSpace(example), code, stderr)
			}
		}
	})
	if ran < 10 {
		t.Fatalf("only %d examples ran", ran)
	}
}

func eachCommand(c *cobra.Command, f func(*cobra.Command)) {
	f(c)
	for _, sub := range c.Commands() {
		eachCommand(sub, f)
	}
}

// TestMarkAgreesWithTheGivenCases pipes every labelled answer through the headless
// form and holds each line of output against its label.
func TestMarkAgreesWithTheGivenCases(t *testing.T) {
	cases, err := os.ReadFile(filepath.Join("..", "..", "testdata", "marking", "given.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	code, stdout, stderr := inProcess(t, string(cases), "mark")
	in, out := lines(string(cases)), lines(stdout)
	if code != exitFine || stderr != "" || len(in) != len(out) || len(in) == 0 {
		t.Fatalf("%d lines in, %d out, code %d, %s", len(in), len(out), code, stderr)
	}
	for i := range in {
		var label struct {
			Want struct{ Verdict string }
		}
		var got struct{ Verdict, Error string }
		if json.Unmarshal([]byte(in[i]), &label) != nil || json.Unmarshal([]byte(out[i]), &got) != nil {
			t.Fatalf("line %d: %s", i+1, out[i])
		}
		if got.Verdict != label.Want.Verdict {
			t.Errorf("%s\n  gives %s", in[i], out[i])
		}
	}
}

func lines(text string) []string { return strings.Split(strings.TrimSpace(text), "\n") }

func TestMarkGoesOnAfterAnEndlessLine(t *testing.T) {
	request := `{"problem":"canal-lantern","stage":"solve","answer":"T2 = 25.8 N"}` + "\n"
	_, stdout, _ := inProcess(t, strings.Repeat("x", 3<<20)+"\n"+request+strings.TrimSpace(request), "mark")
	out := lines(stdout)
	if len(out) != 3 || !strings.Contains(out[0], `"error"`) || out[1] != out[2] || !strings.Contains(out[1], `"right"`) {
		t.Fatalf("%q", out)
	}
}
