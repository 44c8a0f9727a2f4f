package wording

import (
	"strings"

	"example.org/standstill/checker/solved"
)

// lookalikes are Latin letters that are typed for Greek ones.
var lookalikes = map[string]string{"a": "alpha", "b": "beta", "o": "theta", "0": "theta", "u": "mu", "p": "phi", "y": "gamma"}

// NearLetter finds the one letter of the problem that is nearly what was typed.
func NearLetter(r *solved.System, name string) string {
	if r.Model.Has(lookalikes[strings.ToLower(name)]) {
		return lookalikes[strings.ToLower(name)]
	}
	var near []string
	for _, v := range r.Model.Variables {
		// Short names are all near one another: T1 and T2 differ in one letter.
		misspelt := len(name) > 3 && Apart(strings.ToLower(name), strings.ToLower(v.Name)) <= 1+len(name)/5
		if misspelt || solved.SameStem(name, v.Name) {
			near = append(near, v.Name)
		}
	}
	// Of two near letters neither is likelier, and a guess would send the student the wrong way.
	if len(near) != 1 {
		return ""
	}
	return near[0]
}

// Apart counts the letters that must be changed, added, dropped or exchanged with
// their neighbour to turn one word into the other.
func Apart(one, other string) int {
	a, b := []rune(one), []rune(other)
	// Three rows, because an exchange of neighbours looks back two.
	row, before, last := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		last, before, row = before, row, last
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := before[j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			row[j] = min(before[j]+1, row[j-1]+1, change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], last[j-2]+1)
			}
		}
	}
	return row[len(b)]
}
