package problems

import (
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"
)

// section is a part of the file with fixed keys.
type section struct {
	needed, optional []string
	example          string
}

func (s section) keys() []string { return append(append([]string(nil), s.needed...), s.optional...) }

// The keys of a problem file, part by part.
var (
	problemKeys = section{
		needed:   []string{"id", "title", "topic", "level", "text", "forces", "find"},
		optional: []string{"given", "meaning", "axes", "body", "bodies", "equal", "answer", "vary", "surplus", "watch", "figure", "notes", "source"},
		example:  "id: canal-lantern",
	}
	forceKeys = section{
		needed:   []string{"name", "kind"},
		optional: []string{"on", "by", "points", "angle", "from", "direction", "size"},
		example:  "{name: w, kind: weight, points: down, size: m*g}",
	}
	axesKeys  = section{optional: []string{"tilt", "x"}, example: "{tilt: alpha}"}
	watchKeys = section{
		needed:   []string{"stage", "typed", "say"},
		optional: []string{"item", "hints"},
		example:  "{stage: y-sum, typed: \"N = w\", say: The rope pulls up here, too.}",
	}
	answerKeys = section{needed: []string{"unit"}, example: "{unit: N}"}
)

// part is a mapping of the file, read key by key.
type part struct {
	node   *yaml.Node
	values map[string]*yaml.Node
}

// fields reads a mapping with fixed keys. What is not a mapping gives an empty
// part and a finding.
func (r *reader) fields(n *yaml.Node, what string, s section) part {
	p := part{node: n, values: map[string]*yaml.Node{}}
	if n.Kind != yaml.MappingNode {
		r.at(n, what+" is "+shape(n), "keys with values, such as "+s.example)
		return p
	}
	for _, e := range r.entries(n) {
		key := e.key.Value
		if !slices.Contains(s.keys(), key) {
			r.at(e.key, fmt.Sprintf("unknown key %q", shorten(key)), instead(key, s.keys()))
			continue
		}
		p.values[key] = e.value
	}
	var missing []string
	for _, key := range s.needed {
		if p.values[key] == nil && !p.misspelt(key, s) {
			// Gathered, so that a nearly empty file gives one finding and not one for each key.
			missing = append(missing, fmt.Sprintf("%q", key))
		}
	}
	switch len(missing) {
	case 0:
	case 1:
		r.at(n, what+" has no "+missing[0], "this key with a value")
	default:
		r.at(n, what+" has no "+listed(missing, "or"), "these keys with their values")
	}
	return p
}

// misspelt reports whether a missing key is there under a name for which it has
// been offered already.
func (p part) misspelt(key string, s section) bool {
	for i := 0; i+1 < len(p.node.Content); i += 2 {
		have := p.node.Content[i].Value
		if !slices.Contains(s.keys(), have) && offer(have, s.keys()) == key {
			return true
		}
	}
	return false
}

type entry struct{ key, value *yaml.Node }

// entries lists a mapping's keys and values and refuses keys that stand twice.
func (r *reader) entries(n *yaml.Node) []entry {
	var list []entry
	first := map[string]int{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		if key.Kind != yaml.ScalarNode {
			r.at(key, "a key is "+shape(key), "a word")
			continue
		}
		if line, twice := first[key.Value]; twice {
			r.at(key, fmt.Sprintf("the key %q appears twice, first on line %d", shorten(key.Value), line), "each key once")
			continue
		}
		first[key.Value] = key.Line
		list = append(list, entry{key, value})
	}
	return list
}

// mapping lists the entries of a part whose keys are letters or bodies; a finding
// where it is none. A missing part has no entries.
func (r *reader) mapping(n *yaml.Node, what, example string) []entry {
	if n == nil {
		return nil
	}
	if n.Kind != yaml.MappingNode {
		r.at(n, what+" is "+shape(n), "keys with values, such as "+example)
		return nil
	}
	return r.entries(n)
}

// list returns the items of a list; a finding where it is none, or empty.
func (r *reader) list(n *yaml.Node, what, example string) []*yaml.Node {
	if n == nil {
		return nil
	}
	if n.Kind != yaml.SequenceNode || len(n.Content) == 0 {
		shaped := shape(n)
		if n.Kind == yaml.SequenceNode {
			shaped = "an empty list"
		}
		r.at(n, what+" is "+shaped, "a list, such as "+example)
		return nil
	}
	return n.Content
}

// word returns a value that is one line of text. The words of YAML for true and
// false, and numbers, are text as typed.
func (r *reader) word(n *yaml.Node, what, example string) (string, bool) {
	if n == nil {
		return "", false
	}
	text := strings.TrimSpace(n.Value)
	switch {
	case n.Kind != yaml.ScalarNode || text == "":
		shaped := shape(n)
		if n.Kind == yaml.ScalarNode {
			shaped = "empty"
		}
		r.at(n, what+" is "+shaped, "text, such as "+example)
	case strings.Contains(text, "\n"):
		r.at(n, what+" has several lines", "one line, such as "+example)
	default:
		return text, true
	}
	return "", false
}

// oneOf returns a word of a fixed list, and offers the nearest for another.
func (r *reader) oneOf(n *yaml.Node, what string, known []string) (string, bool) {
	text, ok := r.word(n, what, known[0])
	if !ok {
		return "", false
	}
	if !slices.Contains(known, text) {
		r.at(n, fmt.Sprintf("unknown %s %q", strings.TrimPrefix(what, "the "), shorten(text)), instead(text, known))
		return "", false
	}
	return text, true
}
