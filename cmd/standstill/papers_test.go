package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// The man macros take a line that begins with a dot or an apostrophe for a request.
func TestManualHasEveryCommandAndFlag(t *testing.T) {
	c := root(&app{})
	page := manual(c)
	commands, flags := 0, 0
	for _, sub := range commandsBelow(c) {
		commands++
		_, rest, found := strings.Cut(page, "\n.SS "+manText(sub.CommandPath())+"\n")
		if !found {
			t.Errorf("%s is not in the manual page", sub.CommandPath())
		}
		part, _, _ := strings.Cut(rest, "\n.S")
		sub.NonInheritedFlags().VisitAll(func(f *pflag.Flag) {
			flags++
			if !f.Hidden && f.Name != "help" && !strings.Contains(part, "\n.B "+manText(dashes(f.Name))) {
				t.Errorf("the manual page does not explain %s %s", sub.CommandPath(), dashes(f.Name))
			}
		})
	}
	if commands < 30 || flags < 50 {
		t.Errorf("only %d commands and %d flags", commands, flags)
	}
	for _, line := range strings.Split(page, "\n") {
		request := strings.HasPrefix(line, ".") || strings.HasPrefix(line, "'")
		if request && !regexp.MustCompile(`^\.(TH|SH|SS|TP|PP|B|I|br|nf|fi|RS|RE)\b`).MatchString(line) {
			t.Errorf("not a request: %s", line)
		}
	}
}

func TestManText(t *testing.T) {
	for text, want := range map[string]string{
		".5 N":         `\&.5 N`,
		`C:\lab 'x'`:   `C:\elab \(aqx\(aq`,
		"--set m=1^2":  `\-\-set m=1\(ha2`,
		"T1 cos alpha": "T1 cos alpha",
	} {
		if got := manText(text); got != want {
			t.Errorf("%s becomes %s, want %s", text, got, want)
		}
	}
	p := &manPage{}
	p.help("One\nparagraph.\n\n  a line\n\n  another\nThe end.")
	want := "One\nparagraph.\n.PP\n.PP\n.RS 4\n.nf\n  a line\n\n  another\n.fi\n.RE\n.PP\nThe end.\n"
	if p.String() != want {
		t.Errorf("%q, want %q", p.String(), want)
	}
}

func TestPapers(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "papers")
	if code, stdout, stderr := inProcess(t, "", "papers", folder); code != exitFine || stdout+stderr != "" {
		t.Fatal(code, stdout, stderr)
	}
	for name, holds := range map[string]string{
		"standstill.1": ".TH STANDSTILL 1", "problems.txt": "canal-lantern", "problem-file.txt": "street-sign", "promises.txt": "hand-in", "changes.txt": version,
		"completions/standstill.bash": "complete", "completions/_standstill": "#compdef standstill", "completions/standstill.fish": "complete -c standstill",
		"completions/standstill.ps1": "Register-ArgumentCompleter",
	} {
		text, err := os.ReadFile(filepath.Join(folder, filepath.FromSlash(name)))
		if err != nil || !strings.Contains(string(text), holds) {
			t.Errorf("%s does not hold %s: %v", name, holds, err)
		}
	}
}

// A shell asks the program itself what may come next.
func TestCompletion(t *testing.T) {
	for words, want := range map[string]bool{
		"solve canal-l": true, "sheet crate-ramp canal-l": true, "class show nele canal-l": true,
		"solve canal-lantern c": false, "class show c": false, "hand-in c": false,
	} {
		code, stdout, _ := inProcess(t, "", append([]string{cobra.ShellCompRequestCmd}, strings.Fields(words)...)...)
		if got := strings.Contains(stdout, "canal-lantern\t"); code != exitFine || got != want {
			t.Errorf("%s is completed by a problem: %v, want %v (%d)\n%s", words, got, want, code, stdout)
		}
	}
}

func TestChangesBeginWithThisVersion(t *testing.T) {
	newest := regexp.MustCompile(`(?m)^(\d+\.\d+\.\d+)\n-+$`).FindStringSubmatch(saidChanges)
	if newest == nil || newest[1] != version {
		t.Errorf("changes.txt begins with %v, and this is version %s", newest, version)
	}
}
