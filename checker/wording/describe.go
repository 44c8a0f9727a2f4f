package wording

import (
	"slices"
	"strings"

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
	if by == "" || !told {
		return kindNouns[f.Kind]
	}
	// "cord A" and "your pull" take no article.
	last := by[strings.LastIndexByte(by, ' ')+1:]
	if !(len(last) == 1 && last[0] >= 'A' && last[0] <= 'Z') && !strings.HasPrefix(by, "your ") {
		by = "the " + by
	}
	return noun + " of " + by
}

// byNouns name a force before what exerts it.
var byNouns = map[statics.Kind]string{
	statics.Tension: "the pull", statics.Normal: "the normal force", statics.Friction: "the friction", statics.Spring: "the force",
	statics.Push: "the push", statics.Pull: "the pull", statics.Strut: "the force",
}

var kindNouns = map[statics.Kind]string{
	statics.Tension: "a tension", statics.Weight: "the weight", statics.Normal: "the normal force",
	statics.Friction: "the friction", statics.Spring: "the force of a spring", statics.Push: "a push",
	statics.Pull: "a pull", statics.Strut: "the force of a strut",
}
