package problems

import (
	"fmt"
	"math"

	"go.yaml.in/yaml/v4"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
)

// hang lets the weights that say nothing of a direction point straight down, whatever
// the axes are. Where all bodies were given turned axes and one of them has no surface,
// that one hangs: its axes are level.
func (r *reader) hang(d *draft) {
	for _, f := range d.forces {
		if !f.hangs {
			continue
		}
		if tilt := d.tilts[f.On]; tilt != nil && d.tiltIsCommon() && !d.restsOnSurface(f.On) {
			delete(d.tilts, f.On)
		}
		f.straightDown(d, d.tilts[f.On].root())
	}
}

// tiltIsCommon reports whether one angle was given for several bodies.
func (d *draft) tiltIsCommon() bool {
	axes := d.top.values["axes"]
	if len(d.bodies) < 2 || axes == nil || axes.Kind != yaml.MappingNode {
		return false
	}
	for i := 0; i+1 < len(axes.Content); i += 2 {
		if axes.Content[i].Value == "tilt" {
			return axes.Content[i+1].Kind == yaml.ScalarNode
		}
	}
	return false
}

func (d *draft) restsOnSurface(body string) bool {
	for _, f := range d.forces {
		if f.On == body && f.Kind == statics.Normal {
			return true
		}
	}
	return false
}

// straightDown sets a weight's direction in axes that are turned by tilt.
func (f *forceEntry) straightDown(d *draft, tilt *expr.Node) {
	turned, known := d.angle(tilt)
	switch {
	case tilt == nil || known && turned == 0:
		f.Points = statics.Side{0, -1}
	// An angle that is not known is taken for that of a slope that rises to the right.
	case !known || turned > 0 && turned < math.Pi/2:
		f.Points, f.From, f.Angle = statics.Side{-1, -1}, statics.Y, tilt
	case turned < 0 && turned > -math.Pi/2:
		f.Points, f.From, f.Angle = statics.Side{1, -1}, statics.Y, opposite(tilt)
	default:
		// From a right angle on, no two sides of the turned axes fit.
		down := &expr.Node{Op: expr.Number, Num: quantity.Exact(270), Unit: "deg"}
		f.Direction = expr.Join(expr.Sub, down, tilt)
	}
}

func opposite(n *expr.Node) *expr.Node {
	if n.Op == expr.Neg {
		return n.Args[0]
	}
	return expr.Minus(n)
}

// angle works out a tree in which every letter is given or follows from givens.
func (d *draft) angle(n *expr.Node) (float64, bool) {
	if n == nil {
		return 0, true
	}
	var env []float64
	slots := map[string]int{}
	put := func(name string, x float64) {
		slots[name] = len(env)
		env = append(env, x)
	}
	compile := func(n *expr.Node) (float64, bool) {
		for _, name := range n.Names() {
			if _, ok := slots[name]; !ok {
				return 0, false
			}
		}
		p := expr.Compile(n, func(name string) (int, bool) { i, ok := slots[name]; return i, ok })
		return p.Run(env), true
	}
	for _, g := range d.System.Givens {
		if !g.Any {
			put(g.Name, g.Value())
		}
	}
	for _, f := range d.System.Formulas {
		if x, ok := compile(f.Tree); ok {
			put(f.Name, x)
		}
	}
	return compile(n)
}

// heavy refuses a weight that does not point straight down.
func (r *reader) heavy(d *draft) {
	for _, f := range d.forces {
		if f.Kind != statics.Weight || f.hangs || r.kept {
			continue
		}
		tilt, known := d.angle(d.tilts[f.On].root())
		along, sure := d.directionOf(f)
		if !known || !sure {
			continue
		}
		up := math.Sin(along + tilt)
		const straight = -1 + 1e-6
		switch {
		case up <= straight:
		case up > 0:
			r.at(f.name, fmt.Sprintf("the weight %s points up", f.Name), "a weight that points straight down: leave out \"points\", or write points: down")
		default:
			r.at(f.name, fmt.Sprintf("the weight %s does not point straight down (if the axes are turned, \"points\" is measured along them)", f.Name), "no \"points\" and no \"angle\" for a weight, because a weight always points straight down")
		}
	}
}

// directionOf works out where a force points in its body's axes, anticlockwise
// from x.
func (d *draft) directionOf(f *forceEntry) (float64, bool) {
	if f.Direction != nil {
		return d.angle(f.Direction)
	}
	x, y := float64(f.Points[statics.X]), float64(f.Points[statics.Y])
	if f.Angle == nil {
		return math.Atan2(y, x), true
	}
	angle, ok := d.angle(f.Angle)
	if f.From == statics.Y {
		angle = math.Pi/2 - angle
	}
	return math.Atan2(y*math.Sin(angle), x*math.Cos(angle)), ok
}
