package checker

import (
	"slices"

	"example.org/standstill/checker/trial"

	"example.org/standstill/checker/statics"
)

// The mistakes that befall a sum as a whole.

// changeNormalAlone sets the normal force equal to the weight, whatever else there is.
func changeNormalAlone(r *Reference, at trial.Place, _ trial.Sum) []variant {
	body := &r.Bodies[at.Body]
	normal, weight := trial.OnlyOf(body, statics.Normal), trial.OnlyOf(body, statics.Weight)
	if normal == nil || weight == nil {
		return nil
	}
	alone := trial.Sum{{Force: normal, Scale: 1, Slot: r.Slots[normal.Name]}, {Force: weight, Scale: -1, Slot: r.Slots[weight.Name]}}
	return []variant{{code: NormalEqualsWeight, about: []string{normal.Name}, row: alone}}
}

// changeBothParts puts both parts of a force into one sum.
func changeBothParts(_ *Reference, _ trial.Place, w trial.Sum) []variant {
	var all []variant
	for _, t := range w {
		other, slanted := trial.Swapped[t.Function]
		if !slanted {
			continue
		}
		for _, sign := range trial.BothSigns {
			part := t
			part.Function, part.Scale = other, sign
			all = append(all, variant{code: ExtraForce, about: []string{t.Force.Name}, row: append(slices.Clone(w), part)})
		}
	}
	return all
}

// everyTerm makes one mistake with all terms that it can befall, where there are
// several.
func everyTerm(code Code, each func(*Reference, trial.Place, trial.Term) []trial.Term) func(*Reference, trial.Place, trial.Sum) []variant {
	return func(r *Reference, at trial.Place, w trial.Sum) []variant {
		v := variant{code: code, row: append(trial.Sum(nil), w...)}
		for i := range w {
			if ways := each(r, at, w[i]); len(ways) > 0 {
				v.row[i] = ways[0]
				v.about = append(v.about, w[i].Force.Name)
			}
		}
		if len(v.about) < 2 {
			return nil
		}
		return []variant{v}
	}
}

// changeAxis writes the sum along the other axis.
func changeAxis(r *Reference, at trial.Place, w trial.Sum) []variant {
	return []variant{{code: WrongAxis, row: r.SumOf(at.Body, at.Axis.Other())}}
}

// changeShare lets one string carry half the weight, or all of it.
func changeShare(r *Reference, at trial.Place, w trial.Sum) []variant {
	if trial.OnlyOf(&r.Bodies[at.Body], statics.Tension) != nil {
		return nil // one string shares with nobody
	}
	var all []variant
	for i := range w {
		for j := range w {
			if w[i].Force.Kind != statics.Tension || w[j].Force.Kind != statics.Weight || w[i].Scale == 0 || w[j].Scale == 0 {
				continue
			}
			half, straight := w[j], w[i]
			half.Scale /= 2
			straight.Function = trial.Whole
			for _, shared := range []trial.Sum{{w[i], half}, {straight, half}, {straight, w[j]}} {
				all = append(all, variant{code: SharedWeight, about: []string{w[i].Force.Name}, row: shared})
			}
		}
	}
	return all
}

// changeTwice puts a force beside its own component.
func changeTwice(_ *Reference, _ trial.Place, w trial.Sum) []variant {
	var all []variant
	for i := range w {
		if w[i].Function == trial.Whole || w[i].Scale == 0 {
			continue
		}
		for _, sign := range trial.BothSigns {
			again := w[i]
			again.Function = trial.Whole
			again.Scale *= sign
			all = append(all, variant{code: TwiceCounted, about: []string{w[i].Force.Name}, row: append(append(trial.Sum(nil), w...), again)})
		}
	}
	return all
}

// changeForeign puts a force into the sum that acts on another body only.
func changeForeign(r *Reference, at trial.Place, w trial.Sum) []variant {
	var all []variant
	seen := map[string]bool{}
	for i := range w {
		seen[w[i].Force.Name] = true
	}
	for b := range r.Bodies {
		for i := range r.Bodies[b].Forces {
			f := &r.Bodies[b].Forces[i]
			if seen[f.Name] {
				continue
			}
			seen[f.Name] = true
			for _, sign := range trial.BothSigns {
				extra := trial.Term{Force: f, Scale: sign, Slot: r.Slots[f.Name]}
				all = append(all, variant{code: OtherBody, about: []string{f.Name}, row: append(append(trial.Sum(nil), w...), extra)})
			}
		}
	}
	return all
}
