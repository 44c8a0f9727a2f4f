package tutor

import (
	"slices"
	"time"

	"example.org/standstill/checker"
	"example.org/standstill/checker/statics"
)

// Idea is one thing that a student of forces at rest has to understand.
type Idea string

// The ideas, in the order in which they are met.
const (
	FindingForces  Idea = "forces"
	Direction      Idea = "direction"
	FromHorizontal Idea = "from-horizontal"
	FromVertical   Idea = "from-vertical"
	AlongAxis      Idea = "along-axis"
	Signs          Idea = "signs"
	WeightAndMass  Idea = "weight"
	NormalForce    Idea = "normal"
	FrictionForce  Idea = "friction"
	Tensions       Idea = "tensions"
	TwoBodies      Idea = "bodies"
	Solving        Idea = "solving"
	Units          Idea = "units"
)

// idea is a row of the table: what an idea is called, and which items exercise it.
type idea struct {
	Idea
	title string
	in    func(*exercise) bool
}

// ideas is the table. Solving and units are what every value asked for exercises,
// and no item has nothing but them.
var ideas = []idea{
	{FindingForces, "Finding the forces", func(e *exercise) bool { return e.stage != checker.Components }},
	{Direction, "Direction of a force", func(e *exercise) bool { return e.stage == checker.Diagram }},
	{FromHorizontal, "Angles from the horizontal", func(e *exercise) bool { return e.resolves && e.has(fromX) }},
	{FromVertical, "Angles from the vertical", func(e *exercise) bool { return e.resolves && e.has(fromY) }},
	{AlongAxis, "A force along an axis", func(e *exercise) bool { return e.resolves && e.has(isStraight) }},
	{Signs, "Signs", func(e *exercise) bool { return e.resolves && !e.acrossOnly() }},
	{WeightAndMass, "Weight and mass", func(e *exercise) bool { return e.hasKind(statics.Weight) }},
	{NormalForce, "The normal force", func(e *exercise) bool { return e.hasKind(statics.Normal) }},
	{FrictionForce, "Friction", func(e *exercise) bool { return e.hasKind(statics.Friction) }},
	{Tensions, "Equal and unequal tensions", func(e *exercise) bool { return e.severalTensions && e.hasKind(statics.Tension) }},
	{TwoBodies, "Two bodies", func(e *exercise) bool { return e.severalBodies }},
	{Solving, "Solving the equations", func(e *exercise) bool { return e.stage == checker.Solve }},
	{Units, "Units and significant figures", func(e *exercise) bool { return e.stage == checker.Solve }},
}

// Ideas lists every idea in order.
func Ideas() []Idea {
	all := make([]Idea, len(ideas))
	for i, row := range ideas {
		all[i] = row.Idea
	}
	return all
}

// Title is what a student reads for the idea; the idea's own word for one that is
// not known.
func (i Idea) Title() string {
	for _, row := range ideas {
		if row.Idea == i {
			return row.title
		}
	}
	return string(i)
}

// exercise is what an item is made of: the forces that have a component in it, and
// what the whole problem has.
type exercise struct {
	stage           checker.Stage
	forces          []*statics.Force
	across          bool // the item is a component that is zero
	resolves        bool // components stand in it
	severalTensions bool
	severalBodies   bool
}

func (e *exercise) has(is func(*statics.Force) bool) bool { return slices.ContainsFunc(e.forces, is) }

func (e *exercise) hasKind(kind statics.Kind) bool {
	return e.has(func(f *statics.Force) bool { return f.Kind == kind })
}

// acrossOnly reports whether the item is a component that is zero: it has no sign.
func (e *exercise) acrossOnly() bool { return e.across }

func fromX(f *statics.Force) bool { return f.Slanted() && (f.Direction != nil || f.From == statics.X) }
func fromY(f *statics.Force) bool { return f.Slanted() && f.Direction == nil && f.From == statics.Y }

func isStraight(f *statics.Force) bool { return !f.Slanted() }

// exerciseOf finds out what an item of a system is made of.
func exerciseOf(s *statics.System, stage checker.Stage, item string) *exercise {
	e := &exercise{stage: stage, severalTensions: tensions(s) > 1, severalBodies: len(s.Bodies) > 1, resolves: stage != checker.Diagram}
	switch stage {
	case checker.Diagram:
		if body, ok := s.Body(item); ok {
			e.add(body, func(*statics.Force) bool { return true })
		}
	case checker.Components:
		if f, axis, ok := componentOf(s, item); ok {
			// A component that is zero is an item, too: to see that it is zero is an idea.
			e.forces, e.across = []*statics.Force{f}, f.Factor(axis).Sign == 0
		}
	case checker.XSum, checker.YSum:
		axis := axisOf(stage)
		if body, ok := s.Body(item); ok {
			e.add(body, func(f *statics.Force) bool { return f.Factor(axis).Sign != 0 })
		}
	default:
		for i := range s.Bodies {
			e.add(&s.Bodies[i], func(*statics.Force) bool { return true })
		}
	}
	return e
}

func (e *exercise) add(body *statics.Body, which func(*statics.Force) bool) {
	for i := range body.Forces {
		if which(&body.Forces[i]) {
			e.forces = append(e.forces, &body.Forces[i])
		}
	}
}

// tensions counts the pulls of strings.
func tensions(s *statics.System) (n int) {
	for _, b := range s.Bodies {
		for _, f := range b.Forces {
			if f.Kind == statics.Tension {
				n++
			}
		}
	}
	return n
}

func axisOf(stage checker.Stage) statics.Axis {
	if stage == checker.YSum {
		return statics.Y
	}
	return statics.X
}

// Exercised lists the ideas that an item of a problem exercises, in order.
func Exercised(s *statics.System, stage checker.Stage, item string) []Idea {
	e := exerciseOf(s, stage, item)
	var all []Idea
	for _, row := range ideas {
		if row.in(e) {
			all = append(all, row.Idea)
		}
	}
	return all
}

// components stands in the table of spoils for the idea of the force concerned:
// from the horizontal or from the vertical.
const components Idea = "components"

// spoils says for each code which ideas a mistake may be about, the likeliest first;
// of these, the first that the item exercises is spoiled.
var spoils = map[checker.Code][]Idea{
	checker.Sign:               {Signs},
	checker.SineCosine:         {components},
	checker.Tangent:            {components},
	checker.NotResolved:        {components, AlongAxis},
	"over-resolved":            {AlongAxis, components},
	checker.MissingForce:       {FindingForces, AlongAxis},
	checker.ExtraForce:         {AlongAxis, FindingForces},
	checker.WrongAxis:          {components, AlongAxis},
	checker.OtherAngle:         {components, AlongAxis},
	checker.NormalEqualsWeight: {NormalForce, FrictionForce},
	checker.MassForWeight:      {WeightAndMass, FrictionForce, NormalForce},
	"weight-for-mass":          {WeightAndMass},
	checker.EqualTensions:      {Tensions},
	checker.SharedWeight:       {Tensions, WeightAndMass},
	checker.WholeFactor:        {Tensions, FindingForces, AlongAxis, components},
	checker.Inverted:           {Solving, components, AlongAxis},
	checker.Radians:            {Units, components},
	checker.OtherG:             {WeightAndMass},
	checker.WrongSide:          {Direction},
	checker.OtherBody:          {TwoBodies, WeightAndMass},
	checker.OtherUnknown:       {Solving, components, AlongAxis},
	checker.Pythagoras:         {components, AlongAxis},
	checker.TwiceCounted:       {components, FindingForces},
	"unbalanced":               {FindingForces, AlongAxis},
	"limit-assumed":            {FrictionForce},
	"link":                     {Solving, Signs},
	checker.Slip:               {Units},
	checker.PowerOfTen:         {Units},
	checker.NoUnit:             {Units},
	checker.WrongUnit:          {Units},
	checker.Coarse:             {Units},
}

// spoilNone are the codes that say nothing of what a student has understood: what
// is not explained, a mistake that only its author can place, and what is about the
// form of a line alone.
var spoilNone = []checker.Code{
	checker.Unexplained, checker.DoesNotFollow, "own",
	checker.NoEquation, checker.HoldsAlways, checker.StillUnknown, checker.NoWorking, checker.TrueNotAsked,
	checker.UnknownName, checker.Unreadable,
}

// Spoiled returns the idea that a mistake at an item is about, "" for none. about is
// the force concerned, "" where the mistake names none.
func Spoiled(s *statics.System, stage checker.Stage, item string, code checker.Code, about string) Idea {
	exercised := Exercised(s, stage, item)
	for _, one := range likeliest(code, stage) {
		if one == components {
			one = componentIdea(exerciseOf(s, stage, item), about)
		}
		if slices.Contains(exercised, one) {
			return one
		}
	}
	return ""
}

// likeliest is the row of a code. In Forces a force too many is one that was not
// found by asking what touches the body.
func likeliest(code checker.Code, stage checker.Stage) []Idea {
	if code.IsOtherInList() && stage == checker.Diagram {
		return []Idea{FindingForces}
	}
	return spoils[code]
}

// componentIdea tells from the force that a mistake is about where its angle is
// measured from. Where none is named the vertical is likelier: it is what students
// find hard.
func componentIdea(e *exercise, about string) Idea {
	for _, f := range e.forces {
		if f.Name == about || about == "" {
			if fromY(f) {
				return FromVertical
			}
			// Without a name the search goes on: another force may be measured from the vertical.
			if fromX(f) && f.Name == about {
				return FromHorizontal
			}
		}
	}
	if e.has(fromX) {
		return FromHorizontal
	}
	return FromVertical
}

// ExercisedBy lists the ideas that a problem exercises anywhere.
func ExercisedBy(s *statics.System) []Idea {
	found := map[Idea]bool{}
	note := func(stage checker.Stage, item string) {
		for _, i := range Exercised(s, stage, item) {
			found[i] = true
		}
	}
	for i := range s.Bodies {
		for _, stage := range []checker.Stage{checker.Diagram, checker.XSum, checker.YSum} {
			note(stage, s.Bodies[i].Name)
		}
	}
	note(checker.Solve, "")
	return slices.DeleteFunc(Ideas(), func(i Idea) bool { return !found[i] })
}

// Chance is one page's word on one idea: whether every item that exercises it was
// right first time. Stage, Item and Code say where it was spoiled; Shown that
// this was by looking at the solution.
type Chance struct {
	Idea    Idea
	Problem string
	Right   bool
	Stage   checker.Stage
	Item    string
	Code    checker.Code
	Shown   bool
	Time    time.Time
}

// Chances lists what the page says of each idea so far, in the order of the ideas.
// A page that is not over says nothing of an idea that an open item exercises,
// unless it is spoiled already.
func (g *Page) Chances() []Chance {
	goes := g.goes()
	exercised := make([][]Idea, len(goes))
	for i, one := range goes {
		exercised[i] = Exercised(g.Problem.System, one.Stage, one.Item)
	}
	var all []Chance
	for _, row := range ideas {
		c := chance{Chance: Chance{Idea: row.Idea, Problem: g.Problem.ID, Right: true}, page: g}
		for i := range goes {
			if slices.Contains(exercised[i], row.Idea) {
				c.take(&goes[i])
			}
		}
		if c.counts() {
			all = append(all, c.Chance)
		}
	}
	return all
}

// chance is a Chance while it is found out.
type chance struct {
	Chance
	page           *Page
	answered, open bool
}

func (c *chance) counts() bool { return !c.Right || c.answered && !c.open }

// take looks at one item that exercises the idea.
func (c *chance) take(one *itemGo) {
	if code, at, spoiled := c.page.spoiledBy(one, c.Idea); spoiled {
		c.spoil(one, code, false, at)
		return
	}
	switch {
	// This says nothing either way: the rule had been given, or a magnitude shows no sign.
	case one.hinted >= ruleLevel, c.Idea == Signs && one.unsigned:
	case one.answered:
		c.answered = true
		// The chance is as old as its last answer, or as its first mistake.
		if c.Right && one.at.After(c.Time) {
			c.Time = one.at
		}
	case c.page.revealed:
		c.spoil(one, "", true, c.page.shownAt)
	default:
		c.open = true
	}
}

// spoil notes the first place where the idea went wrong.
func (c *chance) spoil(one *itemGo, code checker.Code, shown bool, at time.Time) {
	// Items stand in the order of the page, which need not be the order in which they were typed.
	if c.Right || at.Before(c.Time) {
		c.Right, c.Stage, c.Item, c.Code, c.Shown, c.Time = false, one.Stage, one.Item, code, shown, at
	}
}

// ruleLevel is the hint that gives the rule: what is answered after it shows no
// idea of the student's own.
const ruleLevel = 2

// spoiledBy reports whether the first answer to an item was a mistake about an idea, and
// when it was made.
func (g *Page) spoiledBy(one *itemGo, idea Idea) (code checker.Code, at time.Time, spoiled bool) {
	is := func(code checker.Code, about string) bool {
		return Spoiled(g.Problem.System, one.Stage, one.Item, code, about) == idea
	}
	// A wrong unit does not count against the item, but against the idea of units.
	for _, f := range one.formal {
		if is(f.code, "") {
			return f.code, f.at, true
		}
	}
	if one.answered && !one.first && one.hinted < ruleLevel && is(one.code, one.about) {
		return one.code, one.at, true
	}
	return "", at, false
}
