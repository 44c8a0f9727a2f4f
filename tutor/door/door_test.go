package door_test

import (
	"strings"
	"testing"

	"example.org/standstill/tutor/door"
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
			d := door.To(&b)
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
