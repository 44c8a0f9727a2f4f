package main

import (
	"encoding/json"
	"errors"
	"os"
	"strings"
	"testing"

	"example.org/standstill/tutor/door"
)

func TestJSONThatActsOnNothing(t *testing.T) {
	text := "a\u009b2J \u202e \U000e0001 \" \\ é \u2028"
	var b strings.Builder
	if err := writeJSON(&b, text, ""); err != nil {
		t.Fatal(err)
	}
	var back string
	if err := json.Unmarshal([]byte(b.String()), &back); err != nil || back != text {
		t.Errorf("%q is read back as %q, %v", text, back, err)
	}
	var seen strings.Builder
	if _, err := door.To(&seen).Write([]byte(b.String())); err != nil || seen.String() != b.String() {
		t.Errorf("%q acts", b.String())
	}
}

// full is a stream that takes nothing.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }

// Input that cannot be read and output that cannot be written are no success.
func TestBrokenStreams(t *testing.T) {
	folder, err := os.Open(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	defer folder.Close()
	var out, trouble strings.Builder
	if code := run(t.Context(), []string{"mark"}, streams{folder, &out, &trouble}); code != exitFound || !strings.Contains(trouble.String(), "The input cannot be read") {
		t.Errorf("mark of a folder ends with %d: %q", code, trouble.String())
	}
	for _, command := range []string{"bank list", "bank check ../../problems/bank/canal-lantern.yaml", "solve canal-lantern", "version"} {
		trouble.Reset()
		if code := run(t.Context(), strings.Fields(command), streams{os.Stdin, full{}, &trouble}); code != exitFound || !strings.Contains(trouble.String(), "o space left on device") {
			t.Errorf("%s into a full disk ends with %d: %q", command, code, trouble.String())
		}
	}
}
