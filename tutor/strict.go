package tutor

import (
	"fmt"
	"slices"

	"example.org/standstill/checker"
)

// What a class asks for beyond a right line. Signs and figures are the checker's to
// judge; whether a value has its working is seen from the page.

// wantingWork turns a value without a line of working into one that is almost right,
// where the class asks for working. before are the reports of the lines above it in the
// same text.
func (g *Page) wantingWork(before []checker.Report, r checker.Report) checker.Report {
	if !g.lacksWorking(before, r) {
		return r
	}
	about := r.Settles[0]
	r.Verdict, r.Code, r.About, r.Settles = checker.Almost, checker.NoWorking, about, nil
	r.Message = g.Ref.SaidNoWorking(about)
	return r
}

// lacksWorking reports whether a line settles an unknown of which no line of working,
// itself included, says anything.
func (g *Page) lacksWorking(before []checker.Report, r checker.Report) bool {
	if !g.class.Working || r.Verdict != checker.Right || len(r.Settles) == 0 {
		return false
	}
	worked := slices.Clone(r.Working)
	for _, one := range before {
		worked = append(worked, one.Working...)
	}
	// Lines of every stage count: working may stand under the sums already.
	for i := range g.lines {
		if l := &g.lines[i]; l.Kind == Typed {
			for _, one := range l.Statements() {
				worked = append(worked, one.Working...)
			}
		}
	}
	return slices.ContainsFunc(r.Settles, func(name string) bool { return !slices.Contains(worked, name) })
}

// saidRule tells what the class asks for at a stage, "" for nothing beyond the usual.
func (g *Page) saidRule(stage checker.Stage) string {
	switch {
	case stage == checker.Solve && g.class.Working && g.class.Figures > 2:
		return fmt.Sprintf(saidClassBoth, g.class.Figures)
	case stage == checker.Solve && g.class.Working:
		return saidClassWorking
	case stage == checker.Solve && g.class.Figures > 2:
		return fmt.Sprintf(saidClassFigures, g.class.Figures)
	}
	return ""
}

// ShowsScene reports whether a picture of what the text describes may be shown; some
// classes draw it themselves.
func (g *Page) ShowsScene() bool { return !g.class.NoScenes }
