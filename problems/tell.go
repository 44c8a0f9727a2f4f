package problems

import (
	"fmt"
	"maps"
	"slices"

	"go.yaml.in/yaml/v4"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
)

// What a file says for sentences and pictures, and what of it is refused.

// words reads what the parts of the problem are called and how they look.
func (r *reader) words(d *draft) {
	w := &d.System.Words
	w.Meaning = r.meanings(d)
	w.By = map[string]string{}
	for _, f := range d.forces {
		if f.by == "" {
			continue
		}
		// The first wording goes by the force's name alone; only one that differs needs the body in front.
		if said, twice := w.By[f.Name]; twice && said != f.by {
			w.By[f.On+"."+f.Name] = f.by
		} else {
			w.By[f.Name] = f.by
		}
	}
	if n := d.top.values["body"]; n != nil {
		w.Body, _ = r.word(n, `"body"`, "lantern")
		if d.top.values["bodies"] != nil {
			r.at(n, "the problem has both \"body\" and \"bodies\"", "\"body\" if there is only one body, \"bodies\" if there are several")
		}
	}
	w.Surplus = r.surplus(d)
}

// meanings reads what letters are; whether there are such letters is seen once the
// system is compiled.
func (r *reader) meanings(d *draft) map[string]string {
	said := map[string]string{}
	for _, e := range r.mapping(d.top.values["meaning"], `"meaning"`, "h: height of the hook above the ring") {
		name, ok := r.letter(e.key, "the letter")
		if !ok {
			continue
		}
		known := d.letters()
		if !slices.Contains(known, name) && len(r.found) == 0 {
			r.at(e.key, fmt.Sprintf("there is no letter %s in this problem", name), instead(name, known))
		}
		if text, ok := r.word(e.value, "the meaning of "+name, "height of the hook above the ring"); ok {
			said[name] = text
		}
	}
	return said
}

// letters lists every letter of the problem.
func (d *draft) letters() []string {
	known := map[string]bool{}
	for name := range d.given {
		known[name] = true
	}
	for _, g := range d.System.Givens {
		known[g.Name] = true
	}
	for _, f := range d.forces {
		known[f.Name] = true
	}
	for _, f := range d.formulas() {
		if f.tree != nil {
			for _, name := range f.tree.Names() {
				known[name] = true
			}
		}
	}
	for _, e := range d.System.Equal {
		known[e.Letter] = true
	}
	for _, name := range d.System.Find {
		known[name] = true
	}
	return slices.Sorted(maps.Keys(known))
}

// surplus reads the givens that are there to be left aside.
func (r *reader) surplus(d *draft) []string {
	var names []string
	for _, item := range r.list(d.top.values["surplus"], `"surplus"`, "[h]") {
		name, ok := r.letter(item, "the given value")
		switch {
		case !ok:
		case d.given[name] == nil:
			r.at(item, name+" is not given", instead(name, slices.Sorted(maps.Keys(d.given))))
		case d.uses(name):
			r.at(item, name+" is not surplus, because the solution uses it", "a given value that the solution does not need")
		default:
			names = append(names, name)
		}
	}
	return names
}

// watch reads a teacher's own mistakes. A line that is right is no mistake, and one
// that cannot be read will never be typed.
func (r *reader) watch(d *draft) {
	for _, item := range r.list(d.top.values["watch"], `"watch"`, "- "+watchKeys.example) {
		p := r.fields(item, "a line of \"watch\"", watchKeys)
		stage, staged := r.oneOf(p.values["stage"], "the stage", stageNames())
		typed, written := r.word(p.values["typed"], "the line", "N = w")
		say, said := r.word(p.values["say"], "what is said", "The rope pulls up here, too.")
		if !staged || !written || !said {
			continue
		}
		own := checker.Own{Stage: checker.Stage(stage), Typed: typed, Say: say}
		if p.values["item"] != nil {
			own.Item, _ = r.word(p.values["item"], "the item", "T1x")
		}
		for _, hint := range r.list(p.values["hints"], "\"hints\"", "[Look at the rope.]") {
			if text, ok := r.word(hint, "a hint", "Look at the rope."); ok {
				own.Hints = append(own.Hints, text)
			}
		}
		if r.isMistake(d, p.values["typed"], own) {
			d.Watch = append(d.Watch, own)
		}
	}
	if len(d.Watch) > 0 {
		// The reference by which the lines were judged did not know them as mistakes yet.
		d.prepare()
	}
}

func (r *reader) isMistake(d *draft, n *yaml.Node, own checker.Own) bool {
	ref, err := d.Reference()
	if err != nil {
		return true
	}
	if r.kept {
		return true // it is judged by later rules, too, and was a mistake by those of its time
	}
	switch report := ref.Mark(checker.Answer{Stage: own.Stage, Item: own.Item, Text: own.Typed}, nil); report.Verdict {
	case checker.Right:
		r.at(n, fmt.Sprintf("the line %q is right", shorten(own.Typed)), "a line with a mistake")
		return false
	case checker.Unread:
		r.at(n, fmt.Sprintf("the line %q is not understood: %s", shorten(own.Typed), fragment(report.Message)), "a line as a student would type it")
		return false
	}
	return true
}

func stageNames() []string {
	var names []string
	for _, s := range checker.Stages {
		names = append(names, string(s))
	}
	return names
}

// follows reports whether a given is a formula.
func (d *draft) follows(name string) bool {
	return slices.ContainsFunc(d.follow, func(f *formula) bool { return f.letter == name })
}

// formulaFor is the formula of a given as the file has it.
func (d *draft) formulaFor(name string) string {
	i := slices.IndexFunc(d.follow, func(f *formula) bool { return f.letter == name })
	return shorten(d.follow[i].node.Value)
}

func (d *draft) xLeft() bool {
	axes := d.top.values["axes"]
	if axes == nil {
		return false
	}
	for i := 0; i+1 < len(axes.Content); i += 2 {
		if axes.Content[i].Value == "x" {
			return axes.Content[i+1].Value == "left"
		}
	}
	return false
}

// makeEqualWhatIsAsked gives forces one size where the file asks for their common
// letter.
func (d *draft) makeEqualWhatIsAsked() {
	s := d.System
	// From the back, because oneSize takes the entry out of the list.
	for i := len(s.Equal) - 1; i >= 0; i-- {
		if slices.Contains(s.Find, s.Equal[i].Letter) {
			d.oneSize(i)
		}
	}
}

// makeEqual gives every set of forces that "equal" names one size, and reports whether
// there was any.
func (d *draft) makeEqual() bool {
	any := len(d.System.Equal) > 0
	for i := len(d.System.Equal) - 1; i >= 0; i-- {
		d.oneSize(i)
	}
	return any
}

// oneSize makes the letter of the i-th entry of "equal" the size of its forces.
func (d *draft) oneSize(i int) {
	s := d.System
	e := s.Equal[i]
	s.Equal = slices.Delete(slices.Clone(s.Equal), i, i+1)
	for b := range s.Bodies {
		for j := range s.Bodies[b].Forces {
			if f := &s.Bodies[b].Forces[j]; slices.Contains(e.Names, f.Name) && f.Size == nil {
				f.Size = expr.Letter(e.Letter)
			}
		}
	}
}
