package checker

import (
	"slices"

	"example.org/standstill/checker/statics"
)

// The mistakes that befall a sum as a whole.

// changeNormalAlone sets the normal force equal to the weight, whatever else there is.
func changeNormalAlone(r *Reference, at place, _ row) []variant {
	body := &r.Bodies[at.body]
	normal, weight := onlyOf(body, statics.Normal), onlyOf(body, statics.Weight)
	if normal == nil || weight == nil {
		return nil
	}
	alone := row{{force: normal, scale: 1, slot: r.slots[normal.Name]}, {force: weight, scale: -1, slot: r.slots[weight.Name]}}
	return []variant{{code: NormalEqualsWeight, about: []string{normal.Name}, row: alone}}
}

// changeBothParts puts both parts of a force into one sum.
func changeBothParts(_ *Reference, _ place, w row) []variant {
	var all []variant
	for _, t := range w {
		other, slanted := swapped[t.function]
		if !slanted {
			continue
		}
		for _, sign := range bothSigns {
			part := t
			part.function, part.scale = other, sign
			all = append(all, variant{code: ExtraForce, about: []string{t.force.Name}, row: append(slices.Clone(w), part)})
		}
	}
	return all
}

// everyTerm makes one mistake with all terms that it can befall, where there are
// several.
func everyTerm(code Code, each func(*Reference, place, term) []term) func(*Reference, place, row) []variant {
	return func(r *Reference, at place, w row) []variant {
		v := variant{code: code, row: append(row(nil), w...)}
		for i := range w {
			if ways := each(r, at, w[i]); len(ways) > 0 {
				v.row[i] = ways[0]
				v.about = append(v.about, w[i].force.Name)
			}
		}
		if len(v.about) < 2 {
			return nil
		}
		return []variant{v}
	}
}

// changeAxis writes the sum along the other axis.
func changeAxis(r *Reference, at place, w row) []variant {
	return []variant{{code: WrongAxis, row: r.row(at.body, at.axis.Other())}}
}

// changeShare lets one string carry half the weight, or all of it.
func changeShare(r *Reference, at place, w row) []variant {
	if onlyOf(&r.Bodies[at.body], statics.Tension) != nil {
		return nil // one string shares with nobody
	}
	var all []variant
	for i := range w {
		for j := range w {
			if w[i].force.Kind != statics.Tension || w[j].force.Kind != statics.Weight || w[i].scale == 0 || w[j].scale == 0 {
				continue
			}
			half, straight := w[j], w[i]
			half.scale /= 2
			straight.function = whole
			for _, shared := range []row{{w[i], half}, {straight, half}, {straight, w[j]}} {
				all = append(all, variant{code: SharedWeight, about: []string{w[i].force.Name}, row: shared})
			}
		}
	}
	return all
}

// changeTwice puts a force beside its own component.
func changeTwice(_ *Reference, _ place, w row) []variant {
	var all []variant
	for i := range w {
		if w[i].function == whole || w[i].scale == 0 {
			continue
		}
		for _, sign := range bothSigns {
			again := w[i]
			again.function = whole
			again.scale *= sign
			all = append(all, variant{code: TwiceCounted, about: []string{w[i].force.Name}, row: append(append(row(nil), w...), again)})
		}
	}
	return all
}

// changeForeign puts a force into the sum that acts on another body only.
func changeForeign(r *Reference, at place, w row) []variant {
	var all []variant
	seen := map[string]bool{}
	for i := range w {
		seen[w[i].force.Name] = true
	}
	for b := range r.Bodies {
		for i := range r.Bodies[b].Forces {
			f := &r.Bodies[b].Forces[i]
			if seen[f.Name] {
				continue
			}
			seen[f.Name] = true
			for _, sign := range bothSigns {
				extra := term{force: f, scale: sign, slot: r.slots[f.Name]}
				all = append(all, variant{code: OtherBody, about: []string{f.Name}, row: append(append(row(nil), w...), extra)})
			}
		}
	}
	return all
}
