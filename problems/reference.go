package problems

import (
	"sync"

	"example.org/standstill/checker/statics"
)

// solution is a solved system with the value of every letter, in SI.
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

func (p *Problem) prepare() {
	p.reference = sync.OnceValues(func() (*solution, error) { return solve(p.System) })
}

type wrongPath struct {
	Code, Unknown string
	Value         float64
}

func (s *solution) wrongPaths() []wrongPath { return nil }
