// Inside the package: it compares the first bits of the dice, which later versions must not change.

package draw

import (
	"strconv"
	"strings"
	"testing"
)

// The generator by itself: the first numbers for a key, computed with another
// program from the description above type dice.
func TestGeneratorIsFixedForGood(t *testing.T) {
	d := NewDice("own copy", "3b", "anna", "quay-bell", "")
	var got []string
	for range 6 {
		got = append(got, strconv.FormatUint(d.next(), 16))
	}
	want := "57b5d5c52e48c889 ab06dea6c10a8695 81246399e049c7ba 7ac3115d14a18e91 36884deb05055d5a 1da987edefb49882"
	if strings.Join(got, " ") != want {
		t.Errorf("%s", strings.Join(got, " "))
	}
}

func TestPickIsEvenOverItsRange(t *testing.T) {
	d := NewDice("even")
	counts := make([]int, 7)
	for range 7000 {
		counts[d.Pick(7)]++
	}
	for k, n := range counts {
		if n < 850 || n > 1150 {
			t.Errorf("%d was picked %d times of 7000", k, n)
		}
	}
}
