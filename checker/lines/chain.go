package lines

// unchained makes one line for each component of a chain that gives several the same
// value ("T1x = wx = 0"); anything else is one line.
func (s *splitter) unchained(p piece) []Line {
	signs := equalsOf(p.runes)
	if len(signs) < 2 || len(signs) > Most || s.Component == nil {
		return []Line{p.line()}
	}
	var names []piece
	from := 0
	for _, sign := range signs {
		name := p.part(from, sign.from).trimmed()
		// T1x = T1 cos α = 0 is a chain about one component, not a value for two.
		if !s.component(name.text()) {
			return []Line{p.line()}
		}
		names = append(names, name)
		from = sign.to
	}
	value := p.part(signs[len(signs)-1].from, len(p.runes))
	var all []Line
	for _, name := range names {
		one := name.joined(value)
		one.body, one.concludes = p.body, p.concludes
		all = append(all, one.line())
	}
	return all
}
