package problems

import "example.org/standstill/problems/draw"

// Draws says how a problem varies. Total is how many sets of numbers there are,
// Tried how many of them were looked at (all, or a sample), Usable how many of
// these are handed out, Refused the others by reason. Shared is the chance that two
// of thirty students get the same numbers. Near lists mistakes that come near the right
// number by nature, so that the number cannot tell them.
type Draws struct {
	Total   float64
	Tried   int
	Usable  int
	Refused map[string]int
	Shared  float64
	Near    []string
}

// classSize is the number of students for which Draws.Shared is told.
const classSize = 30

// Draws looks at every set of numbers of the problem, or at a fixed sample of most
// of them where there are more.
func (p *Problem) Draws(most int) Draws {
	all := 1.0
	for _, v := range p.Vary {
		all *= float64(v.Count())
	}
	d := Draws{Total: all, Refused: map[string]int{}}
	if len(p.Vary) == 0 {
		d.Shared = 1
		return d
	}
	sample := draw.NewDice("sample", p.Numbers)
	values := make([]int, len(p.Vary))
	for d.Tried < most && float64(d.Tried) < all {
		own := p.pickedOut(values)
		// Too many to count through, so a sample is rolled; the same one each time.
		if all > float64(most) {
			own = p.roll(sample)
		}
		d.count(own.thrownBack())
		p.advance(values)
	}
	d.Near = p.nearMistakes()
	d.Shared = chanceOfSharing(all * float64(d.Usable) / float64(max(d.Tried, 1)))
	return d
}

func (d *Draws) count(reason string) {
	d.Tried++
	if reason == "" {
		d.Usable++
	} else {
		d.Refused[reason]++
	}
}

// advance counts through every combination, the last given fastest.
func (p *Problem) advance(values []int) {
	for i := len(values) - 1; i >= 0; i-- {
		if values[i]++; values[i] < p.Vary[i].Count() {
			return
		}
		values[i] = 0
	}
}

// chanceOfSharing is that of two equal birthdays in a class, in a year of so many
// days.
func chanceOfSharing(days float64) float64 {
	apart := 1.0
	for i := range classSize {
		apart *= max(1-float64(i)/max(days, 1), 0)
	}
	return 1 - apart
}
