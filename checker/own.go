package checker

import (
	"math"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
	"example.org/standstill/checker/solved"
	"example.org/standstill/checker/trial"
)

// owned says of a wrong line what the author of the problem says of it, if they watch for it.
func (r *Reference) owned(a Answer, line expr.Line, report Report) Report {
	if report.Verdict != Wrong {
		return report
	}
	for _, own := range r.Watched {
		// The same line may be right elsewhere: a mistake is watched for at one place.
		if own.Stage != a.Stage || own.Item != "" && own.Item != report.Item {
			continue
		}
		reading, err := r.solved.LettersFor(a.Item).Read(own.Typed)
		if err == nil && sameLine(r.trial, line, reading.Lines[0]) {
			// The first of several, as the author listed them.
			report.Code, report.About, report.Message = mistake.Own, "", own.Say
			report.hints = own.Hints
			break
		}
	}
	return report
}

// sameLine reports whether two lines are equal as algebra: both sides may be exchanged, terms
// moved, everything multiplied by a number.
func sameLine(p *trial.Problem, a, b expr.Line) bool {
	ratio := 0.0
	for k := range trial.Tries {
		env := p.Samples.Loose(k)
		x, y := difference(p.Solved, a, env), difference(p.Solved, b, env)
		// A watched line that is zero in a sample says nothing there, and must not match everything.
		if y == 0 || math.IsNaN(x/y) {
			return false
		}
		if k > 0 && math.Abs(x/y-ratio) > trial.ExactShare*math.Abs(ratio) {
			return false
		}
		ratio = x / y
	}
	return ratio != 0
}

// difference is what a line's last side is less than its first one; a single side is taken as it
// is, without its sign.
func difference(s *solved.System, line expr.Line, env []float64) float64 {
	last := s.ProgramOf(line.Sides[len(line.Sides)-1]).Run(env)
	if len(line.Sides) == 1 {
		return last
	}
	return s.ProgramOf(line.Sides[0]).Run(env) - last
}
