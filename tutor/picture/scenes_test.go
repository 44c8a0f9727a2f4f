// Inside the package: robust_test.go uses them.

package picture

import "math"

// The scenes of the golden pictures: one for each thing that a problem can hold.

type example struct {
	name  string
	scene Scene
}

func examples() []example {
	return []example{
		{"two-strings", twoStrings(35, 50)},
		{"equal-strings", twoStrings(28, 28)},
		{"level-string", levelString()},
		{"near-level", nearLevel()},
		{"near-level-to-scale", nearLevelToScale()},
		{"ramp-friction", ramp(22)},
		{"steep-ramp-left", rampLeft(38)},
		{"level-push", levelPush()},
		{"two-knots", twoKnots()},
		{"pulley", pulleys()},
		{"ramp-pulley", rampPulley()},
		{"movable-pulley", movablePulley()},
		{"hung-spring", hungSpring()},
		{"no-forces-yet", Scene{Bodies: []Body{{Shape: Ring}}}},
		{"spring", spring()},
		{"strut", strut()},
		{"force-table", forceTable()},
		{"near-together", nearTogether()},
		{"groove", groove()},
		{"triangle", triangle()},
		{"x-sum", xSum()},
		{"y-sum", ySum()},
		{"slope-sum", slopeSum()},
		{"polygon", closedPolygon()},
		{"plot", plotted2()},
		{"measured", measuredPlot()},
		{"far-above-zero", farAboveZero()},
	}
}

func twoStrings(a, b float64) Scene {
	return Scene{
		Title:  "Two strings hold a ring",
		Bodies: []Body{{Shape: Ring}},
		Forces: []Force{
			{Name: "T₁", Kind: Tension, Direction: 180 - a, Colour: 0},
			{Name: "T₂", Kind: Tension, Direction: b, Colour: 1},
			{Name: "w", Kind: Weight, Direction: -90, Colour: 2},
		},
		Angles: []Angle{{Force: 0, Name: "α"}, {Force: 1, Name: "β"}},
	}
}

func levelString() Scene {
	return Scene{
		Bodies: []Body{{Shape: Knot}},
		Forces: []Force{
			{Name: "T₁", Kind: Tension, Direction: 180, Colour: 0},
			{Name: "T₂", Kind: Tension, Direction: 65, Colour: 1, InHand: true},
			{Name: "w", Kind: Weight, Direction: -90, Colour: 2},
		},
		Angles: []Angle{{Force: 1, From: AxisY, Name: "φ"}},
	}
}

func nearLevel() Scene {
	s := twoStrings(5, 5)
	s.Title = "Two strings near level"
	return s
}

func nearLevelToScale() Scene {
	s := nearLevel()
	t := 4.9 / (2 * math.Sin(5*math.Pi/180))
	s.Forces[0].Size, s.Forces[1].Size, s.Forces[2].Size = t, t, 4.9
	s.Forces[0].Note, s.Forces[1].Note, s.Forces[2].Note = "= 28.1 N", "= 28.1 N", "= 4.90 N"
	return s
}

func ramp(deg float64) Scene {
	return Scene{
		Title:  "A block on a slope",
		Bodies: []Body{{Shape: Block, Tilt: deg, Surfaces: []Surface{{Normal: 90 + deg, Angle: "α"}}}},
		Forces: []Force{
			{Name: "T", Kind: Tension, Direction: deg, Colour: 0},
			{Name: "N", Kind: Normal, Direction: deg + 90, Colour: 1},
			{Name: "f", Kind: Friction, Direction: deg + 180, Colour: 3},
			{Name: "w", Kind: Weight, Direction: -90, Colour: 2},
		},
		Angles: []Angle{{Force: 3, From: AxisY, Name: "α"}},
	}
}

func rampLeft(deg float64) Scene {
	return Scene{
		Bodies: []Body{{Shape: Block, Tilt: -deg, Surfaces: []Surface{{Normal: 90 - deg, Angle: "θ"}}}},
		Forces: []Force{
			{Name: "N", Kind: Normal, Direction: 90 - deg, Colour: 1},
			{Name: "P", Kind: Push, Direction: 0, Colour: 0, Inward: true},
			{Name: "f", Kind: Friction, Direction: 180 - deg, Colour: 3},
			{Name: "w", Kind: Weight, Direction: -90, Colour: 2},
		},
		Angles: []Angle{{Force: 3, From: AxisY, Name: "θ"}, {Force: 1, Name: "θ"}},
	}
}

func levelPush() Scene {
	return Scene{
		Bodies: []Body{{Shape: Block, Surfaces: []Surface{{Normal: 90}}}},
		Forces: []Force{
			{Name: "P", Kind: Push, Direction: -30, Colour: 0, Inward: true},
			{Name: "f", Kind: Friction, Direction: 180, Colour: 3},
			{Name: "N", Kind: Normal, Direction: 90, Colour: 1},
			{Name: "w", Kind: Weight, Direction: -90, Colour: 2},
		},
		Angles: []Angle{{Force: 0, Name: "φ"}},
	}
}

func twoKnots() Scene {
	return Scene{
		Title:  "Two pots on one line",
		Bodies: []Body{{Name: "A"}, {Name: "B"}},
		Forces: []Force{
			{On: 0, Name: "T₁", Kind: Tension, Direction: 140, Colour: 0},
			{On: 0, Name: "T₂", Kind: Tension, Direction: 0, Colour: 1},
			{On: 0, Name: "w₁", Kind: Weight, Direction: -90, Colour: 3},
			{On: 1, Name: "T₂", Kind: Tension, Direction: 180, Colour: 1},
			{On: 1, Name: "T₃", Kind: Tension, Direction: 55, Colour: 2},
			{On: 1, Name: "w₂", Kind: Weight, Direction: -90, Colour: 4},
		},
		Angles: []Angle{{Force: 0, Name: "α"}, {Force: 4, Name: "β"}},
	}
}

func pulleys() Scene {
	return Scene{
		Bodies: []Body{{Name: "A", Shape: Block}, {Name: "B", Shape: Block}},
		Forces: []Force{
			{On: 0, Name: "T", Kind: Tension, Direction: 90, Colour: 0},
			{On: 0, Name: "w₁", Kind: Weight, Direction: -90, Colour: 2},
			{On: 1, Name: "T", Kind: Tension, Direction: 90, Colour: 0},
			{On: 1, Name: "w₂", Kind: Weight, Direction: -90, Colour: 3},
		},
	}
}

func rampPulley() Scene {
	return Scene{
		Bodies: []Body{
			{Name: "A", Shape: Block, Tilt: 30, Surfaces: []Surface{{Normal: 120, Angle: "θ"}}},
			{Name: "B", Shape: Block},
		},
		Forces: []Force{
			{On: 0, Name: "T", Kind: Tension, Direction: 30, Colour: 0},
			{On: 0, Name: "N", Kind: Normal, Direction: 120, Colour: 1},
			{On: 0, Name: "w₁", Kind: Weight, Direction: -90, Colour: 2},
			{On: 1, Name: "T", Kind: Tension, Direction: 90, Colour: 0},
			{On: 1, Name: "w₂", Kind: Weight, Direction: -90, Colour: 3},
		},
	}
}

func movablePulley() Scene {
	return Scene{
		Bodies: []Body{{Shape: Pulley}},
		Forces: []Force{
			{Name: "T₁", Kind: Tension, Direction: 90, Colour: 0},
			{Name: "T₂", Kind: Tension, Direction: 90, Colour: 1},
			{Name: "w", Kind: Weight, Direction: -90, Colour: 2},
		},
	}
}

// hungSpring shows what holds the ring: a spring from the ceiling, a strut from
// the wall.
func hungSpring() Scene {
	return Scene{
		Bodies: []Body{
			{Shape: Ring},
			{Shape: Anchor, At: Point{-1.2, 1.5}},
			{Shape: Anchor, At: Point{-2.2, -0.6}},
		},
		Links: []Link{{1, 0, Coil}, {0, 2, Rod}},
		Forces: []Force{
			{Name: "F", Kind: Spring, Direction: 128.66, Colour: 0},
			{Name: "S", Kind: Strut, Direction: 15.26, Colour: 1, Inward: true},
			{Name: "w", Kind: Weight, Direction: -90, Colour: 2},
		},
	}
}

func spring() Scene {
	return Scene{
		Bodies: []Body{{Shape: Ring}},
		Forces: []Force{
			{Name: "S", Kind: Spring, Direction: 130, Colour: 0},
			{Name: "T", Kind: Tension, Direction: 0, Colour: 1},
			{Name: "w", Kind: Weight, Direction: -90, Colour: 2},
		},
		Angles: []Angle{{Force: 0, From: AxisY, Name: "40°"}},
	}
}

func strut() Scene {
	return Scene{
		Bodies: []Body{{Shape: Knot}},
		Forces: []Force{
			{Name: "S", Kind: Strut, Direction: 33, Colour: 0, Inward: true},
			{Name: "T", Kind: Tension, Direction: 180, Colour: 1},
			{Name: "w", Kind: Weight, Direction: -90, Colour: 2},
		},
		Angles: []Angle{{Force: 0, Name: "γ"}},
	}
}

func forceTable() Scene {
	return Scene{
		Bodies: []Body{{Shape: Ring}},
		Forces: []Force{
			{Name: "A", Kind: Tension, Direction: 17, Colour: 0},
			{Name: "B", Kind: Tension, Direction: 131, Colour: 1},
			{Name: "E", Kind: Tension, Direction: 248, Colour: 2, Sketch: true},
		},
		Angles: []Angle{{Force: 0, Full: true, Name: "α"}, {Force: 1, Full: true, Name: "β"}, {Force: 2, Full: true, Name: "φ"}},
	}
}

func nearTogether() Scene {
	return Scene{
		Bodies: []Body{{Shape: Ring}},
		Forces: []Force{
			{Name: "T₁", Kind: Tension, Direction: 41, Colour: 0},
			{Name: "T₂", Kind: Tension, Direction: 44, Colour: 1},
			{Name: "T₃", Kind: Tension, Direction: 180, Colour: 2},
			{Name: "w", Kind: Weight, Direction: -90, Colour: 3},
		},
	}
}

func groove() Scene {
	return Scene{
		Bodies: []Body{{Shape: Ring, Size: 0.35, Surfaces: []Surface{{Normal: 55, Angle: "β"}, {Normal: 130, Angle: "α"}}}},
		Forces: []Force{
			{Name: "N₁", Kind: Normal, Direction: 55, Colour: 0},
			{Name: "N₂", Kind: Normal, Direction: 130, Colour: 1},
			{Name: "w", Kind: Weight, Direction: -90, Colour: 2},
		},
	}
}

func triangle() Scene {
	s := twoStrings(35, 50)
	s.Forces[0].InHand = true
	s.Triangle = &Triangle{Force: 0, X: "T₁ cos α", Y: "T₁ sin α"}
	return s
}

func xSum() Scene {
	s := twoStrings(35, 50)
	s.Chain = &Chain{Axis: AxisX, Legs: []Leg{
		{Label: "T₂ cos β", Colour: 1, Dashed: true}, {Label: "T₁ cos α", Colour: 0, Negative: true, Dashed: true},
	}}
	return s
}

func ySum() Scene {
	s := twoStrings(35, 50)
	s.Chain = &Chain{Axis: AxisY, Legs: []Leg{
		{Label: "T₁ sin α", Colour: 0, Dashed: true}, {Label: "T₂ sin β", Colour: 1, Dashed: true, InHand: true},
		{Label: "w", Colour: 2, Negative: true},
	}}
	return s
}

func slopeSum() Scene {
	return Scene{Chain: &Chain{Axis: AxisX, Tilt: 22, Legs: []Leg{
		{Label: "T", Colour: 0}, {Label: "f", Colour: 3, Negative: true}, {Label: "w sin α", Colour: 2, Negative: true, Dashed: true},
	}}}
}

// solved gives the two strings at 35° and 50° their true sizes.
func solved() Scene {
	s := twoStrings(35, 50)
	rad := math.Pi / 180
	w := 31.36
	s.Forces[0].Size = w * math.Cos(50*rad) / math.Sin(85*rad)
	s.Forces[1].Size = w * math.Cos(35*rad) / math.Sin(85*rad)
	s.Forces[2].Size = w
	return s
}

func closedPolygon() Scene {
	s := solved()
	s.Polygon = PolygonOf(s, 0)
	return s
}

// tensions are the curves of two strings over the angle of the first.
func tensions(beta float64) []Curve {
	rad := math.Pi / 180
	curves := []Curve{{Name: "T₁", Colour: 0}, {Name: "T₂", Colour: 1}}
	for a := 2.0; a <= 80; a++ {
		sum := math.Sin((a + beta) * rad)
		curves[0].Points = append(curves[0].Points, Point{a, 31.36 * math.Cos(beta*rad) / sum})
		curves[1].Points = append(curves[1].Points, Point{a, 31.36 * math.Cos(a*rad) / sum})
	}
	return curves
}

func plotted2() Scene {
	return Scene{Plot: &Plot{X: Scale{"α", "°"}, Y: Scale{"T", "N"}, Curves: tensions(50), Marked: true, At: 35}}
}

// farAboveZero has two curves that are one, and a third, all far above zero for what they
// vary by.
func farAboveZero() Scene {
	up, down := Curve{Name: "T₁"}, Curve{Name: "N", Colour: 2}
	for x := 10.0; x <= 60; x++ {
		up.Points, down.Points = append(up.Points, Point{x, 90 + x/10}), append(down.Points, Point{x, 94 - x/20})
	}
	same := Curve{Name: "T₂", Colour: 1, Points: up.Points}
	return Scene{Plot: &Plot{X: Scale{"α", "°"}, Y: Scale{"T", "N"}, Curves: []Curve{up, same, down}, Marked: true, At: 35}}
}

func measuredPlot() Scene {
	rad := math.Pi / 180
	c := Curve{Name: "T₁", Colour: 0}
	for a := 3.0; a <= 75; a++ {
		c.Points = append(c.Points, Point{a, 4.9 / (2 * math.Sin(a*rad))})
	}
	return Scene{Plot: &Plot{X: Scale{"α", "°"}, Y: Scale{"T₁", "N"}, Curves: []Curve{c}, Measured: []Measured{
		{Name: "T₁", At: Point{20, 7.3}, U: Point{1, 0.3}}, {Name: "T₁", At: Point{30, 4.8}, U: Point{1, 0.3}},
		{Name: "T₁", At: Point{45, 3.6}, U: Point{1, 0.3}}, {Name: "T₁", At: Point{60, 2.7}, U: Point{1, 0.3}},
	}}}
}
