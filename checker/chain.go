package checker

import (
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/mistake"
)

// inChain tells a link of a chain that is a slip of working from one that is a mistake in the
// physics: between two numbers, or where nothing explains it.
func inChain(line expr.Line, f mistake.Finding, i int) mistake.Finding {
	sides := line.Sides
	numbers := len(sides[i-1].Names()) == 0 && len(sides[i].Names()) == 0
	// The first link carries the physics, so its mistakes are told as such.
	if len(sides) < 3 || i < 2 || !numbers && !f.Code.IsOpen() {
		return f
	}
	return mistake.Finding{Code: Link}
}

// pointAt marks the equals sign that a report about a link is about.
func pointAt(line expr.Line, report *Report, i int) {
	if report.Code == Link {
		report.Pos, report.End = line.Sides[i-1].End, line.Sides[i].Pos
	}
}
