package pattern_test

import (
	"testing"

	"example.org/standstill/checker/pattern"
)

func TestAPatternIsCompiledWhenItIsAsked(t *testing.T) {
	letters := pattern.Of(`^[a-z]+$`)
	if !letters().MatchString("theta") || letters().MatchString("θ") {
		t.Error("the pattern does not match as its text says")
	}
	if once, again := letters(), letters(); once != again {
		t.Error("the pattern is compiled twice")
	}
	broken := pattern.Of(`(`) // says nothing until it is asked
	defer func() {
		if recover() == nil {
			t.Error("a text that is no expression was taken")
		}
	}()
	broken()
}
