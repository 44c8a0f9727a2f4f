package main

import (
	"encoding/json"
	"errors"
	"os"
	"strings"
	"testing"
)

// What acts on a terminal does not pass the door, however it is cut into writes.
func TestDoor(t *testing.T) {
	for text, want := range map[string]string{
		"plain α ₁ ⢈ text\n\tand more\r\n": "plain α ₁ ⢈ text\n\tand more\r\n",
		"\ufeffid,name\r\n\ufeff":          "\ufeffid,name\r\n�",
		"a\x1b[2Jb":                        "a�[2Jb",
		"a\u009b2Jb":                       "a�2Jb",
		"a\u202eb\u2066c\u2028d":           "a�b�c�d",
		"over\rwritten":                    "over�written",
		"bell\a null\x00":                  "bell� null�",
		"not UTF-8 \x9b \xff":              "not UTF-8 � �",
		"me\u200cjoined":                   "me\u200cjoined",
	} {
		for size := 1; size <= len(text); size++ {
			var b strings.Builder
			d := &door{out: &b}
			for rest := text; rest != ""; {
				n := min(size, len(rest))
				if wrote, err := d.Write([]byte(rest[:n])); err != nil || wrote != n {
					t.Fatal(wrote, err)
				}
				rest = rest[n:]
			}
			if got := b.String(); got != want {
				t.Errorf("%q in writes of %d is %q; want %q", text, size, got, want)
			}
		}
	}
}

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
	if _, err := (&door{out: &seen}).Write([]byte(b.String())); err != nil || seen.String() != b.String() {
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
