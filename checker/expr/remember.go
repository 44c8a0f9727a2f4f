package expr

import "example.org/standstill/checker/memory"

// Remember makes a vocabulary keep its latest readings. It is called when the vocabulary
// is complete; from then on several goroutines may read with it, and nothing is added.
func (l *Letters) Remember() { l.memory = &readings{} }

// readings are what was read last.
type readings = memory.Latest[question, outcome]

// question is what a reading depends on besides the vocabulary.
type question struct {
	text string
	mass bool
}

type outcome struct {
	reading Reading
	err     error
}
