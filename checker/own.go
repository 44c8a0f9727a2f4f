package checker

// Own is a mistake that the author of a problem watches for: a line that is wrong and
// equal to Typed as algebra, for the same stage and item, is told Say. Item is "" for
// any item; Hints may be empty.
type Own struct {
	Stage      Stage
	Item       string
	Typed, Say string
	Hints      []string
}

// Watching returns a reference that knows these mistakes.
func (r *Reference) Watching(own []Own) *Reference {
	if len(own) == 0 {
		return r
	}
	c := *r
	c.Watched = own
	return &c
}
