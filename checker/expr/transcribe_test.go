package expr_test

import (
	"testing"
	"unicode"

	"example.org/standstill/checker/expr"
)

// staysTranscribed fails where a transcribed text is changed when it is transcribed again.
func staysTranscribed(t *testing.T, text string) {
	t.Helper()
	plain, _ := expr.Transcribe(expr.Clean(text))
	if clean := expr.Clean(plain); clean != plain {
		t.Fatalf("%q is transcribed as %q, which is cleaned to %q", text, plain, clean)
	}
	again, places := expr.Transcribe(plain)
	if again != plain {
		t.Fatalf("%q is transcribed as %q, and that as %q", text, plain, again)
	}
	for i, at := range places {
		if at != i {
			t.Fatalf("%q: rune %d of %q is said to come from rune %d of it", text, i, plain, at)
		}
	}
}

func TestTranscribedRunesStay(t *testing.T) {
	if testing.Short() {
		t.Skip("goes over too much for a short run")
	}
	for r := rune(' '); r <= unicode.MaxRune; r++ {
		staysTranscribed(t, "5"+string(r))
	}
}

func FuzzTranscribe(f *testing.F) {
	for _, text := range []string{`T = \math.sin(θ)`, `\foo{{}} {{},}`, `\@$\frac{1}{2}`, `\`, `5{}⁰ \!`, `sin5"⁰`, `pi()()`, `=\ > < = >`, `x\ –\ axis: T`, `\text{ﾞ}`, `２⁰²`, "$T$\n$"} {
		f.Add(text)
	}
	f.Fuzz(staysTranscribed)
}
