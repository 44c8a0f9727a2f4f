package problems

import (
	"fmt"
	"sync"

	"example.org/standstill/checker"
	"example.org/standstill/checker/statics"
)

// Reference returns the solved system of this copy, ready to judge lines; it is
// solved once and kept. An error is possible only for a copy made of given values:
// files and draws have been solved before they are handed out.
func (p *Problem) Reference() (*checker.Reference, error) { return p.reference() }

// ranges writes "vary" in the form of draw.Numbers.
func (p *Problem) ranges() []string {
	lines := make([]string, len(p.Vary))
	for i, v := range p.Vary {
		lines[i] = fmt.Sprintf("%s %d %d %d %d", v.Name, v.Low, v.High, v.Step, v.Places)
	}
	return lines
}

func (p *Problem) prepare() {
	// When it is first asked for: most copies are thrown back before anybody needs their reference.
	p.reference = sync.OnceValues(func() (*checker.Reference, error) {
		ref, err := checker.NewOf(p.kin, p.System)
		if err != nil {
			return nil, err
		}
		return ref.Watching(p.Watch), nil
	})
}

// solution is a solved system with the value of every letter, in SI. A draw is
// looked at in this form first, since most that are thrown back are so for reasons
// that need no more.
type solution struct {
	*statics.Model
	env []float64
}

func solve(s *statics.System) (*solution, error) {
	m, err := statics.Compile(s)
	if err != nil {
		return nil, err
	}
	env, err := m.Solve(m.Environment())
	if err != nil {
		return nil, err
	}
	return &solution{m, env}, nil
}
