package problems

import (
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"example.org/standstill/checker/statics"
)

// figureWords are the words of "figure" and what each is said of: the view, a body,
// or forces of some kinds.
var figureWords = []struct {
	word, of string
	kinds    []statics.Kind
}{
	{viewAbove, "view", nil},
	{"round", "body", nil},
	{"pulley", "body", nil},
	{"free", "force", []statics.Kind{statics.Tension}},
	{"hook", "force", []statics.Kind{statics.Pull}},
	{"ground", "force", []statics.Kind{statics.Strut}},
	{"post", "force", []statics.Kind{statics.Tension}},
	{"squeezed", "force", []statics.Kind{statics.Spring}},
	{"wind", "force", []statics.Kind{statics.Push}},
	{"water", "force", []statics.Kind{statics.Push}},
	{"scale", "force", []statics.Kind{statics.Tension}},
}

// viewAbove is the word for a view in which up in the drawing is away from who looks at it.
const viewAbove = "above"

// OnlyBody is the key of "figure" for the one body without a name, View the one for
// the whole picture, NoFigure the value of View that leaves the picture out.
const (
	OnlyBody = "body"
	View     = "view"
	NoFigure = "none"
)

// figure reads what the picture cannot tell from the forces: "none", or a mapping of
// a body, a force ("T1", "pulley.TR") or "view" to a word.
func (r *reader) figure(d *draft) map[string]string {
	n := d.top.values["figure"]
	if n == nil {
		return nil
	}
	if n.Kind == yaml.ScalarNode && n.Value == NoFigure {
		return map[string]string{View: NoFigure}
	}
	figure := map[string]string{}
	for _, e := range r.mapping(n, `"figure"`, "{A: round}") {
		key := e.key.Value
		of, kind := d.drawn(key)
		if of == "" {
			r.at(e.key, fmt.Sprintf("%q in \"figure\" is not a body or a force of this problem", shorten(key)), instead(key, d.drawable()))
			continue
		}
		words := wordsOf(of, kind)
		word, ok := r.word(e.value, `the word for `+key, "round")
		switch {
		case !ok:
		case !slices.Contains(words, word) && len(words) == 0:
			r.at(e.value, fmt.Sprintf("\"figure\" cannot have an entry for %[1]s, because the kind of %[1]s is %[2]s", key, kind), "entries for the bodies and the other forces only")
		case !slices.Contains(words, word):
			r.at(e.value, fmt.Sprintf("%q is not possible for %s in \"figure\"", shorten(word), key), instead(word, words))
		default:
			figure[key] = word
		}
	}
	return figure
}

// drawn says what a key of "figure" names.
func (d *draft) drawn(key string) (of string, kind statics.Kind) {
	if key == View {
		return "view", ""
	}
	body, name, dotted := strings.Cut(key, ".")
	if !dotted {
		body, name = "", key
	}
	for _, b := range d.System.Bodies {
		// Bodies come first: a force with the letter of a body can still be named with its body in front.
		if !dotted && (b.Name == key || b.Name == "" && key == OnlyBody) {
			return "body", ""
		}
	}
	for _, b := range d.System.Bodies {
		if dotted && b.Name != body {
			continue
		}
		if f, ok := b.Force(canonical(name)); ok {
			return "force", f.Kind
		}
	}
	return "", ""
}

// drawable lists the keys that "figure" may have.
func (d *draft) drawable() []string {
	keys := []string{View}
	for _, b := range d.System.Bodies {
		if b.Name == "" {
			keys = append(keys, OnlyBody)
		} else {
			keys = append(keys, b.Name)
		}
		for i := range b.Forces {
			keys = append(keys, b.Forces[i].Name)
		}
	}
	return keys
}

func wordsOf(of string, kind statics.Kind) []string {
	var words []string
	for _, w := range figureWords {
		if w.of == of && (of != "force" || slices.Contains(w.kinds, kind)) {
			words = append(words, w.word)
		}
	}
	return words
}
