package wording

import (
	"slices"
	"strings"

	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/statics"
)

// Describe says in words where a force comes from and where it points.
func (s *Subject) Describe(f *statics.Force) string {
	s.Force = f
	where := strings.Join(slices.DeleteFunc([]string{s.points(), s.slant()}, func(w string) bool { return w == "" }), ", ")
	return s.nameOf(f) + ", " + s.nounOf(f) + ", points " + where + "."
}

// nounOf says what a force is, by what exerts it where the problem says that.
func (s *Subject) nounOf(f *statics.Force) string {
	by := s.solved.Words.ByOn(f.On, f.Name)
	noun, told := byNouns[f.Kind]
	switch {
	case by == "" || !told:
		return kindNouns[f.Kind]
	// “the pull exerted by your pull” would be said otherwise.
	case isForceItself().MatchString(by):
		return withArticle(by)
	case (f.Kind == statics.Tension || f.Kind == statics.Pull) && isLine().MatchString(by):
		noun = "the tension in"
	}
	return noun + " " + withArticle(by)
}

// withArticle puts "the" before what exerts a force: "cord A", "your hand" and "both cords" take none.
func withArticle(by string) string {
	if hasNoArticle().MatchString(by) {
		return by
	}
	return "the " + by
}

var (
	hasNoArticle  = pattern.Of(`^(your|both|all) | [A-Z]$`)
	isForceItself = pattern.Of(`^your (pull|push)$| force$`)
	// isLine tells what a tension runs in from a boat that pulls.
	isLine = pattern.Of(`\b(rope|cord|cable|chain|line|wire|string|thread|strap)s?\b`)
)

// byNouns name a force before what exerts it.
var byNouns = map[statics.Kind]string{
	statics.Tension: "the pull exerted by", statics.Normal: "the normal force exerted by", statics.Friction: "the friction force exerted by", statics.Spring: "the force exerted by",
	statics.Push: "the push exerted by", statics.Pull: "the pull exerted by", statics.Strut: "the push exerted by",
}

var kindNouns = map[statics.Kind]string{
	statics.Tension: "a tension", statics.Weight: "the weight", statics.Normal: "the normal force",
	statics.Friction: "the friction force", statics.Spring: "the force exerted by a spring", statics.Push: "a push",
	statics.Pull: "a pull", statics.Strut: "the push exerted by a strut",
}
