// Inside the package: it uses the samples of bank_test.go.

package problems

import "testing"

// Two of thirty students hardly ever get the same numbers, and every problem has
// numbers to draw and says for what it is practised.
func TestThirtyStudentsHaveNumbersOfTheirOwn(t *testing.T) {
	for i, p := range bank(t) {
		if i%everyNth > 0 {
			continue
		}
		if p.Notes == "" {
			t.Errorf("%s does not say what it trains", p.ID)
		}
		d := p.Draws(150)
		if len(p.Vary) == 0 || d.Usable == 0 {
			t.Errorf("%s has no numbers to draw", p.ID)
		}
		if len(p.Vary) > 1 && d.Shared >= 0.10 {
			t.Errorf("%s: two of thirty share their numbers with a chance of %.0f %%", p.ID, 100*d.Shared)
		}
	}
}
