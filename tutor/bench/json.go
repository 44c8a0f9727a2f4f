package bench

import (
	"bytes"
	"encoding/json"
	"math"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"

	"example.org/standstill/tutor/bench/measure"
)

// JSON is the result as one JSON object. Values are in the units that stand beside
// them, in full precision; "nu" is left out where k is 2, and what is no number is
// null.
func (r *Result) JSON() ([]byte, error) {
	out := runJSON{
		Problem: r.form.problem.ID, Hash: r.form.problem.Hash, Warnings: r.Warnings, Cautions: Cautions(),
		Draws: drawsJSON{r.Draws, measure.TrialSeed, r.Failed}, Notes: r.NoSum,
		Predicted: map[string]predictionJSON{}, Correlation: map[string]map[string]number{},
	}
	for i := range r.Inputs {
		out.Inputs = append(out.Inputs, inputOut(&r.Inputs[i]))
	}
	for j := range r.Predicted {
		p := &r.Predicted[j]
		out.Order = append(out.Order, p.Letter)
		out.Predicted[p.Letter] = predictionOut(p)
		row := map[string]number{}
		for k := range r.Predicted {
			row[r.Predicted[k].Letter] = number(r.law.Correlation(j, k))
		}
		out.Correlation[p.Letter] = row
	}
	for i := range r.Compared {
		out.Compared = append(out.Compared, comparisonOut(&r.Compared[i]))
	}
	for _, l := range r.Left {
		out.Left = append(out.Left, leftJSON{l.Body, l.Axis.String(), unsureOut(l.Unit, l.Value, l.U, l.Expanded, l.K, l.Nu), l.Within(), l.said()})
	}
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	err := encoder.Encode(out)
	return b.Bytes(), err
}

// number is a float64 that JSON can hold: no number and infinity are null.
type number float64

// MarshalJSON writes the shortest numeral that reads in again as the same number.
func (n number) MarshalJSON() ([]byte, error) {
	if x := float64(n); !math.IsNaN(x) && !math.IsInf(x, 0) {
		return json.Marshal(x)
	}
	return []byte("null"), nil
}

type runJSON struct {
	Problem     string                       `json:"problem"`
	Hash        string                       `json:"hash"`
	Inputs      []inputJSON                  `json:"inputs"`
	Order       []string                     `json:"order"`
	Predicted   map[string]predictionJSON    `json:"predicted"`
	Correlation map[string]map[string]number `json:"correlation"`
	Compared    []comparisonJSON             `json:"compared,omitempty"`
	Left        []leftJSON                   `json:"left,omitempty"`
	Draws       drawsJSON                    `json:"draws"`
	Notes       []string                     `json:"notes,omitempty"`
	Warnings    []string                     `json:"warnings,omitempty"`
	Cautions    []string                     `json:"cautions"`
}

type inputJSON struct {
	Name    string `json:"name"`
	Letter  string `json:"letter"`
	Value   number `json:"value"`
	U       number `json:"u"`
	Unit    string `json:"unit"`
	Assumed bool   `json:"assumed,omitempty"`
	Typed   string `json:"typed,omitempty"`
	Taken   string `json:"taken,omitempty"`
}

func inputOut(in *Input) inputJSON {
	f := in.Unit.Factor
	return inputJSON{in.ascii(), in.Letter, number(in.Estimate / f), number(in.U / f), in.Unit.Symbol, in.Assumed, in.Typed, in.Taken}
}

// ascii is the field's name in letters that any keyboard has.
func (f *Field) ascii() string {
	switch f.Kind {
	case Hanger:
		return "hanger " + expr.Glyph(f.Letter)
	case Ring:
		return f.Name()
	case Scale:
		return "scale " + f.Letter
	}
	return f.Letter
}

// unsureJSON is a value with its uncertainty.
type unsureJSON struct {
	Value    number `json:"value"`
	U        number `json:"u"`
	Expanded number `json:"U"`
	K        number `json:"k"`
	Nu       int    `json:"nu,omitempty"`
	Unit     string `json:"unit"`
}

func unsureOut(unit quantity.Unit, x, u, expanded, k float64, nu int) unsureJSON {
	f := unit.Factor
	return unsureJSON{number(x / f), number(u / f), number(expanded / f), number(k), nu, unit.Symbol}
}

type predictionJSON struct {
	unsureJSON
	Interval [2]number    `json:"interval"`
	From     string       `json:"from"`
	Why      string       `json:"why,omitempty"`
	Drawn    drawnJSON    `json:"drawn"`
	Budget   []budgetJSON `json:"budget"`
	Better   *betterJSON  `json:"better,omitempty"`
	Said     string       `json:"said"`
}

type drawnJSON struct {
	Mean     number    `json:"mean"`
	U        number    `json:"u"`
	Interval [2]number `json:"interval"`
}

type budgetJSON struct {
	Input       string `json:"input"`
	Estimate    number `json:"estimate"`
	U           number `json:"u"`
	Unit        string `json:"unit"`
	Sensitivity number `json:"sensitivity"`
	Share       number `json:"share"`
}

type betterJSON struct {
	Input string `json:"input"`
	Share number `json:"share"`
	U     number `json:"halved"`
}

func predictionOut(p *Prediction) predictionJSON {
	f := p.Unit.Factor
	out := predictionJSON{
		unsureJSON: unsureOut(p.Unit, p.Value, p.U, p.Expanded, p.K, p.Nu), Interval: [2]number{number(p.Low / f), number(p.High / f)}, From: "law of propagation", Why: p.Why, Said: p.said(),
		Drawn: drawnJSON{number(p.Mean / f), number(p.Spread / f), [2]number{number(p.TrialsLow / f), number(p.TrialsHigh / f)}},
	}
	if p.FromTrials {
		out.From = "draws"
	}
	for _, row := range p.Budget {
		g := row.Input.Unit.Factor
		out.Budget = append(out.Budget, budgetJSON{row.Input.ascii(), number(row.Input.Estimate / g), number(row.Input.U / g),
			row.Input.Unit.Symbol, number(row.Sensitivity * g / f), number(row.Share)})
	}
	if most, then, ok := p.Better(); ok {
		out.Better = &betterJSON{most.Input.ascii(), number(most.Share), number(then / f)}
	}
	return out
}

type comparisonJSON struct {
	Letter string `json:"letter"`
	Typed  string `json:"typed"`
	Taken  string `json:"taken"`
	unsureJSON
	Combined number  `json:"combined"`
	En       number  `json:"En"`
	Verdict  Verdict `json:"verdict"`
	Said     string  `json:"said"`
}

func comparisonOut(c *Comparison) comparisonJSON {
	unit := c.Predicted.Unit
	return comparisonJSON{c.Letter, c.Typed, c.Taken, unsureOut(unit, c.Read, c.U, c.Expanded, c.K, c.Nu),
		number(c.Combined / unit.Factor), number(c.En), c.Verdict, c.verdictSaid()}
}

type leftJSON struct {
	Body string `json:"body,omitempty"`
	Axis string `json:"axis"`
	unsureJSON
	Within bool   `json:"within"`
	Said   string `json:"said"`
}

type drawsJSON struct {
	Count  int `json:"count"`
	Seed   int `json:"seed"`
	Failed int `json:"failed"`
}
