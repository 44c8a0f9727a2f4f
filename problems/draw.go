package problems

import (
	"encoding/binary"
	"errors"
	"fmt"
	"slices"
	"strings"

	"golang.org/x/text/cases"
	"golang.org/x/text/unicode/norm"

	"example.org/standstill/checker"
	"example.org/standstill/problems/draw"
)

// Seed says whose copy of a problem is drawn. Class and Student are compared after
// NFC, trimming and case folding. Repeat counts how often the student has begun
// the problem anew.
type Seed struct {
	Class, Student string
	Repeat         int
}

// mostTries is how many draws may be thrown back before a problem counts as one
// that cannot be drawn.
const mostTries = 3000

// Draw returns the student's own copy. Without a class, and at the first time, it
// is the problem with the numbers of its file, as it is for a problem that does
// not vary. The same seed gives the same numbers on every machine and in every
// version of the program. The error says that no usable numbers were found, which
// for a file that Read has passed is all but impossible.
func (p *Problem) Draw(s Seed) (*Problem, error) {
	if len(p.Vary) == 0 || Fold(s.Class) == "" && s.Repeat == 0 {
		return p, nil
	}
	return p.draw(s.dice(p.ID, p.Numbers), mostTries)
}

func (p *Problem) draw(d *draw.Dice, tries int) (*Problem, error) {
	for range tries {
		own := p.roll(d)
		if own.thrownBack() == "" {
			return own, nil
		}
	}
	return nil, errors.New("no usable number set for " + p.ID)
}

// roll draws every varied given once, in the order of their names.
func (p *Problem) roll(d *draw.Dice) *Problem {
	values := make([]int, len(p.Vary))
	// By name, so that moving a line of the file changes nobody's numbers.
	for _, i := range p.byName() {
		values[i] = d.Pick(p.Vary[i].Count())
	}
	return p.pickedOut(values)
}

// byName lists the places in Vary by the names of the givens.
func (p *Problem) byName() []int {
	places := make([]int, len(p.Vary))
	for i := range places {
		places[i] = i
	}
	slices.SortFunc(places, func(a, b int) int { return strings.Compare(p.Vary[a].Name, p.Vary[b].Name) })
	return places
}

func Fold(id string) string {
	return norm.NFC.String(cases.Fold().String(norm.NFC.String(strings.TrimSpace(id))))
}

// dice returns the generator for a student's numbers of a problem.
func (s Seed) dice(id, numbers string) *draw.Dice {
	var repeat [8]byte
	binary.BigEndian.PutUint64(repeat[:], uint64(s.Repeat))
	// The first part keeps these apart from the numbers of samples and probes.
	return draw.NewDice("number set", Fold(s.Class), Fold(s.Student), id, numbers, string(repeat[:]))
}

// drawTries is how many draws the reader of files tries before it says that a
// problem has none.
const drawTries = 400

// drawable checks that "vary" leaves usable numbers, and says what stands in the
// way most often if it does not. It does not look into paths that are exactly right:
// they are so always, or for hardly any numbers.
func (r *reader) drawable(d *draft) {
	n := d.top.values["vary"]
	if len(d.Vary) == 0 || n == nil {
		return
	}
	dice := draw.NewDice("sample", d.Numbers)
	refused := map[string]int{}
	for range drawTries {
		why, _ := d.roll(dice).nearPaths()
		if why == "" {
			return
		}
		refused[why]++
	}
	r.at(n, fmt.Sprintf("%d number sets from these ranges were tried, and none of them can be used, most often because %s", drawTries, mostOften(refused)), "other ranges")
}

func mostOften(refused map[string]int) string {
	most := ""
	for why, n := range refused {
		// Of equals the first by name: a map has no order.
		if most == "" || n > refused[most] || n == refused[most] && why < most {
			most = why
		}
	}
	return sayThrownBack(most)
}

// sayThrownBack words a reason for which a draw is thrown back.
func sayThrownBack(why string) string {
	switch why {
	case NoSolution:
		return "the equations do not have exactly one solution"
	case Unphysical:
		return "a force or an angle has an impossible value"
	case TooSpread:
		return "one force is more than ten times as large as another"
	}
	return "a common mistake (" + checker.Code(why).Meaning() + ") gives almost the right result"
}
