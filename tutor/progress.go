package tutor

import "example.org/standstill/checker"

// Progress is how a student stands with one problem: the best of all attempts.
// Stage is the one in hand of the attempt that is not finished, "" if there is
// none. The counts are those of the best attempt.
type Progress struct {
	Status     Status
	Stage      checker.Stage
	Attempts   int
	Items      int // answered
	RightFirst int // of these, right first time
	Lines      int // checked
	Refused    int // of these, wrong or almost right
	Hints      int
	StepsShown int
}

// Progress says how the student stands with a problem.
func (d *Desk) Progress(id string) Progress {
	var best Progress
	stage := checker.Stage("")
	for _, a := range d.history.Of(id) {
		page, err := d.pageOf(a)
		if err != nil {
			continue
		}
		// Of equals, the later attempt.
		if now := page.Progress(); now.Status >= best.Status {
			best = now
		}
		stage = ""
		if !page.Over() {
			stage, _, _ = page.InHand()
		}
	}
	best.Stage, best.Attempts = stage, len(d.history.Of(id))
	return best
}

// Progress says how far the page has come.
func (g *Page) Progress() Progress {
	p := Progress{Status: g.status(), Attempts: 1}
	p.Hints, p.StepsShown = g.Hints()
	p.RightFirst, p.Items = g.RightFirst()
	for _, l := range g.lines {
		switch {
		case l.Kind != Typed || l.Verdict == checker.Unread:
		case l.Verdict == checker.Right:
			p.Lines++
		default:
			p.Lines++
			p.Refused++
		}
	}
	if !g.Over() {
		p.Stage, _, _ = g.InHand()
	}
	return p
}
