package tutor

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"
)

// Title names a stage.
func Title(stage checker.Stage) string {
	return map[checker.Stage]string{
		checker.Diagram:    "Forces",
		checker.Components: "Components",
		checker.XSum:       "Sum along x",
		checker.YSum:       "Sum along y",
		checker.Solve:      "Solve",
	}[stage]
}

// String says a status in words, for lists.
func (s Status) String() string {
	return [...]string{"not started", "in progress", "solution shown", "disputed", "with steps shown", "by trial and error", "worked out", "right first time"}[s]
}

// Key is the name of a status in files for other programs. It never changes.
func (s Status) Key() string {
	// Other programs read these, so they stay although the screens have had other words since.
	return [...]string{"not begun", "begun", "solution shown", "disputed", "with steps shown", "by trying", "worked out", "at first go"}[s]
}

// Goes says how many items were right first time: "7 of 9 right first time"; "" before
// anything was answered.
func (p Progress) Goes() string {
	if p.Items == 0 {
		return ""
	}
	return fmt.Sprintf("%d of %d right first time", p.RightFirst, p.Items)
}

// Result says what a problem came to: "Solved (worked out). You got 7 of 9 answers right
// first time." title is put after the first word, "" for none.
func (p Progress) Result(title string) string {
	if !p.Status.Done() {
		said := p.String()
		return strings.ToUpper(said[:1]) + said[1:] + "."
	}
	said := "Solved"
	if title != "" {
		said += ": " + title
	}
	// The numbers after it say “right first time” already.
	if p.Status != RightFirst {
		said += " (" + p.Status.String() + ")"
	}
	return said + fmt.Sprintf(". You got %d of %d answers right first time.", p.RightFirst, p.Items)
}

// String says how a student stands with a problem, in words.
func (p Progress) String() string {
	if p.Stage == "" {
		return p.Status.String()
	}
	at := "in progress, at " + strings.ToLower(Title(p.Stage)[:1]) + Title(p.Stage)[1:]
	if p.Status <= Begun {
		return at
	}
	return p.Status.String() + "; again " + at
}

// SaidWhoSees says who can see what is recorded, and that quitting loses nothing.
// path is the record's file, AtHost, or "" for a record that is not saved.
func SaidWhoSees(path string) string {
	if path == "" {
		return "Your work is not saved, and nobody else can see it."
	}
	if path == AtHost {
		return "Your work is saved on your teacher's machine, and your teacher can see it. You can quit with Ctrl-C at any time: nothing is lost."
	}
	return "Your work is saved in " + path + ". Anyone who can open your files can read it; your teacher sees it only if you give them the hand-in file. " +
		"You can quit with Ctrl-C at any time: nothing is lost."
}

// SaidNotSaved is said where the record cannot be used and the student goes on
// without it.
const SaidNotSaved = "From now on, nothing is saved, and your work will be lost when you quit."

func (g *Page) question(stage checker.Stage, item string) string {
	switch stage {
	case checker.Diagram:
		on := "the body"
		if item != "" {
			on = item
		}
		return fmt.Sprintf("Which forces act on %s, and which way does each force point?%s", on, g.whichIsWhich(item))
	case checker.Components:
		force, axis := item[:len(item)-1], item[len(item)-1:]
		body, letter, found := strings.Cut(force, ".")
		if !found {
			letter = force
		}
		question := fmt.Sprintf("What is %s%s, the %s component of %s", expr.Set(letter), axis, axis, expr.Set(letter))
		if found {
			question += " on " + body
		}
		// Elsewhere a magnitude is right, too, and the question must not ask for more than counts.
		if g.class.SignsRequired {
			question += ", with its sign"
		}
		return question + "?"
	case checker.XSum, checker.YSum:
		axis := string(stage[0])
		if item == "" {
			return fmt.Sprintf("The components along %s add up to zero. Write ΣF%s = 0 for the forces in this problem.", axis, axis)
		}
		return fmt.Sprintf("The components along %s of the forces on %s add up to zero. Write ΣF%s = 0 for %s.", axis, item, axis, item)
	}
	var open []string
	for _, u := range g.open(checker.Solve) {
		open = append(open, g.wanted(u))
	}
	return fmt.Sprintf("Find %s. You can write lines of working first, in any order.", listed(open))
}

// sample is a line of the kind that a stage asks for. It shows how to type, not which
// function goes with which axis.
func (g *Page) sample(stage checker.Stage) string {
	f := g.stranger("")
	p := g.stranger(f)
	switch stage {
	case checker.Diagram:
		return fmt.Sprintf("%s up right; %s left", f, p)
	case checker.Components:
		return fmt.Sprintf("%sx = −%s/2; %sy = 0.87 %s", f, f, f, f)
	case checker.XSum:
		return fmt.Sprintf("%s/2 − %s = 0", f, p)
	case checker.YSum:
		return fmt.Sprintf("0.87 %s − %s = 0", f, p)
	}
	return fmt.Sprintf("%s = %s/cos 20°, then %s = 12.5 N", f, p, f)
}

// saidUnits are units whose symbol may be a letter of the problem.
var saidUnits = map[string]string{"N": "newtons", "m": "metres", "g": "grams"}

func saidWhichIsWhich(left string) string { return fmt.Sprintf(" %s is the force on the left.", left) }

func saidPositive(axis, on, way string) string {
	if on != "" {
		return fmt.Sprintf("on %s, positive %s: %s", on, axis, way)
	}
	return fmt.Sprintf("positive %s: %s", axis, way)
}

func saidTypeGreek(glyph, name string) string { return glyph + ": type " + name }

func saidLetters(names, greek []string) string {
	said := "Letters: " + strings.Join(names, ", ")
	if greek != nil {
		said += " (" + strings.Join(greek, ", ") + ")"
	}
	return said + "."
}

// listed joins words with commas and an "and" before the last.
func listed(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

const saidAllDone = "You have done all the problems. You did this one longest ago."

func saidReturn(d dueIdea, title string) string {
	when := "a few problems ago"
	switch {
	case d.days == 1:
		when = "yesterday"
	case d.days > 1:
		when = fmt.Sprintf("%d days ago", d.days)
	}
	where := ""
	if title != "" {
		where = " in " + quote(title)
	}
	if d.slip.Shown {
		return fmt.Sprintf("This problem gives you more practice with %s, because you looked at the solution%s %s.", quote(d.Title()), strings.Replace(where, " in ", " to ", 1), when)
	}
	return fmt.Sprintf("This problem gives you more practice with %s, because you made a mistake%s %s.", quote(d.Title()), where, when)
}

// saidPlace names an item with its stage: "Components, T₁ₓ".
func saidPlace(p Place) string {
	if p.Item == "" {
		return Title(p.Stage)
	}
	return Title(p.Stage) + ", " + saidItem(p)
}

// saidItem prints an item as on paper: "T₁x", "T₁x on A".
func saidItem(p Place) string {
	body, letter, dotted := strings.Cut(p.Item, ".")
	if !dotted {
		body, letter = "", p.Item
	}
	if p.Stage == checker.Components && letter != "" {
		letter = expr.Set(letter[:len(letter)-1]) + letter[len(letter)-1:]
	} else {
		letter = expr.Set(letter)
	}
	return letter + on(body)
}

// saidSameAgain says where a mistake was made before, and the rule.
func saidSameAgain(first, now Place, rule string) string {
	as := "This is the same mistake as " + saidWhere(first)
	if first == now {
		as = "This is the same mistake as before"
	}
	if rule == "" {
		return as + "."
	}
	return as + ". " + rule
}

// saidWhere is a place of the page in the middle of a sentence.
func saidWhere(p Place) string {
	switch {
	case p.Stage == checker.Diagram:
		return "at the stage Forces" + on(p.Item)
	case p.Stage == checker.XSum, p.Stage == checker.YSum:
		return "in the equation ΣF" + string(p.Stage[0]) + " = 0" + forBody(p.Item)
	case p.Item == "":
		return "in a line at the stage Solve"
	}
	return "with " + saidItem(p)
}

func on(body string) string {
	if body == "" {
		return ""
	}
	return " on " + body
}

func forBody(body string) string {
	if body == "" {
		return ""
	}
	return " for " + body
}

// saidSize is said once on a page, of a component that was taken as a size.
func (g *Page) saidSize(p Place) string {
	f, axis, ok := componentOf(g.Problem.System, p.Item)
	if !ok {
		return ""
	}
	return fmt.Sprintf("Your answer counts as the magnitude of %[1]s, without the sign. %[1]s points in the negative %[2]s direction, so you must subtract its magnitude in ΣF%[2]s.", expr.Set(f.Name)+axis.String(), axis)
}

// saidDoubt asks about a value beside a known force.
func saidDoubt(f *statics.Force, size string) string {
	if f.Kind == statics.Weight {
		return fmt.Sprintf("Is this value possible? The weight %s is %s.", expr.Set(f.Name), size)
	}
	return fmt.Sprintf("Is this value possible? %s is %s.", expr.Set(f.Name), size)
}

// saidLeft is for whoever leaves a problem in the middle.
const saidLeft = "Your lines for “%s” are saved. If you want to go back to them, type “problems”."

// What somebody hears who does not know what to do.
const saidLostDone = "This problem is done. Type “next” for another problem, or “again” for the same problem with other numbers."

func saidLostForces(item string) string {
	body := "the body"
	if item != "" {
		body = item
	}
	return fmt.Sprintf("Which forces act on %[1]s? Think of its weight and of everything that touches it. For each force, write its letter and its direction. Put semicolons between the forces.", body)
}

// saidLostComponent does not tell how the force lies.
func saidLostComponent(item, force, axis string) string {
	return fmt.Sprintf("%[1]s tells you how much of %[2]s acts along the %[3]s axis. You can answer with letters or with a number. "+
		"Look at the drawing. If %[2]s is at an angle to the axis, it is the hypotenuse of a right-angled triangle. If %[2]s acts along the axis, the component is the whole force. If %[2]s is at right angles to the axis, the component is 0.", item, force, axis)
}

func saidLostSum(axis, item string) string {
	body := "the body"
	if item != "" {
		body = item
	}
	return fmt.Sprintf("The forces on %s balance, so the components along %s add up to zero. Write one equation: the components in one direction, minus the components in the opposite direction, equal 0.", body, axis)
}

// saidLostAxes answers whoever says or asks which way is positive.
func saidLostAxes(directions []string) string {
	return " Axes: " + strings.Join(directions, "; ") + "."
}

func saidLostSolve(open string) string {
	return fmt.Sprintf("Use your equations to find %s. Write a line that follows from the equations, or a result with its unit.", open)
}

// saidIdea says how far an idea has come: "Signs: steady, ✗✓✓✓; it last went wrong in …".
func saidIdea(h HeldIdea, slipped string) string {
	said := fmt.Sprintf("%s: %s, %s", h.Title(), h.State, h.Marks())
	if slipped != "" {
		said += "; your last mistake was in " + slipped
	}
	return said
}

const saidNext = "This is the next new problem."

func saidBegins(topic string, i Idea) string {
	return fmt.Sprintf("This is the first problem in the topic %s. It gives you practice with %s.", quote(topic), quote(i.Title()))
}

func saidHarder(level int, i Idea) string {
	return fmt.Sprintf("You know the ideas in the %s problems well, so this is a %s problem. It uses %s.", problems.LevelWord(level-1), problems.LevelWord(level), quote(i.Title()))
}

func saidPractises(i Idea, s IdeaState) string {
	switch s {
	case Slipping:
		return fmt.Sprintf("This problem gives you practice with %s, because you made a mistake last time.", quote(i.Title()))
	case NewIdea:
		return fmt.Sprintf("This problem gives you practice with %s, which is still new to you.", quote(i.Title()))
	}
	return fmt.Sprintf("This problem gives you more practice with %s, because you are still learning it.", quote(i.Title()))
}

func saidSteady(i Idea) string {
	return fmt.Sprintf("This is a new problem. It uses %s, which you know well.", quote(i.Title()))
}

func saidLeftBehind(stage checker.Stage) string {
	return fmt.Sprintf("You started this problem and stopped at the stage %s.", quote(Title(stage)))
}

func quote(title string) string { return "“" + title + "”" }

const (
	saidNoSlider = "You cannot change this letter in this problem."
	saidNoRest   = "At that value, equilibrium is impossible, so the value was not changed."
	saidCannotBe = "At that value, a string would have to push or a surface would have to pull, so the value was not changed."
)

func saidEndOfSlider(k Slider) string {
	return fmt.Sprintf("You can give %s any value from %s to %s.", k.Letter, setting(k.Unit, k.Low), setting(k.Unit, k.High))
}

func saidSteep(k Slider, c Curve, end Dot) string {
	return fmt.Sprintf("As %s gets close to %s, %s grows to %s.", k.Letter, setting(k.Unit, end.X), c.Letter, inUnit(c.Unit, end.Y, 3))
}

// String prints the slider's setting: "α = 35°".
func (k Slider) String() string { return k.Letter + " = " + setting(k.Unit, k.Value) }

// setting prints a value that was chosen, with the figures that it needs.
func setting(u quantity.Unit, value float64) string {
	figures := 1
	// Steps of a slider add up with dust in the last places.
	for figures < 5 && math.Abs(roundTo(value, figures)-value) > 1e-9*math.Abs(value) {
		figures++
	}
	// Five figures alone would take the last digit from 123456.
	whole := 1 + int(math.Log10(max(math.Abs(value), 1)))
	return inUnit(u, value, max(figures, whole))
}

func roundTo(x float64, figures int) float64 {
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'e', figures-1, 64), 64)
	return rounded
}

func inUnit(u quantity.Unit, value float64, figures int) string { return u.In(value*u.Factor, figures) }

// What is said where the fault is ours.
const (
	saidFault     = "This line could not be checked because of an error in Standstill. The line is saved. Go on with another line, or type “dispute” to go on with this line, and tell your teacher."
	saidFaultHint = "There is no hint because of an error in Standstill. Go on with another line."
)

// What givens are.
const (
	saidSlope           = "angle of the slope"
	saidMass            = "mass"
	saidWeight          = "weight"
	saidStiffness       = "stiffness of the spring"
	saidFriction        = "coefficient of friction"
	saidFromX           = ", anticlockwise from the x axis"
	saidToSlope         = ", from the slope"
	saidFromVertical    = ", from the vertical"
	saidAboveHorizontal = ", above the horizontal"
	saidBelowHorizontal = ", below the horizontal"
	saidToHorizontal    = ", from the horizontal"
)

// holderNouns names what exerts a force of a kind.
var holderNouns = map[statics.Kind]string{
	statics.Tension: "rope", statics.Spring: "spring", statics.Strut: "strut", statics.Push: "push", statics.Pull: "pull",
	statics.Normal: "surface", statics.Friction: "friction", statics.Weight: "weight",
}

func saidForceOf(what string) string { return "force of the " + what }

const (
	saidMayPass = "You know components well. Type “sums” to skip the components and go straight to the equations."

	saidClassWorking = "In your class, you have to show a line of working for every value."
	saidClassFigures = "In your class, you have to give every value to at least %d significant figures."
	saidClassBoth    = "In your class, you have to show a line of working for every value, and give every value to at least %d significant figures."

	saidNoComponents = "You can only skip questions about components. This question is about something else."
	saidNotSteady    = "You can skip the components after you have got all the components in three problems right first time."
)

// Questions before and after the numbers.

func saidWhichLarger(a, b string) string {
	return fmt.Sprintf("Before you calculate: which is larger, %s or %s?", expr.Set(a), expr.Set(b))
}

func saidIsLarger(a, b string) string {
	return fmt.Sprintf("%s is larger than %s", expr.Set(a), expr.Set(b))
}

func saidAreEqual(a, b string) string {
	return fmt.Sprintf("%s and %s are equal", expr.Set(a), expr.Set(b))
}

func saidBesideWeight(name, weight string) string {
	return fmt.Sprintf("Before you calculate: is %[1]s more than the weight %[2]s, less than %[2]s, or the same as %[2]s?", expr.Set(name), expr.Set(weight))
}

func saidMore(name, weight string) string {
	return fmt.Sprintf("%s is more than %s", expr.Set(name), expr.Set(weight))
}

func saidLess(name, weight string) string {
	return fmt.Sprintf("%s is less than %s", expr.Set(name), expr.Set(weight))
}

func saidAsMuch(name, weight string) string {
	return fmt.Sprintf("%s is equal to %s", expr.Set(name), expr.Set(weight))
}

func saidIfSmaller(name, angle string) string {
	return fmt.Sprintf("Before you calculate: if %s were smaller, would %s be larger, smaller or the same?", expr.Set(angle), expr.Set(name))
}

func saidGetsLarger(name, angle string) string {
	return fmt.Sprintf("%s gets larger when %s gets smaller", expr.Set(name), expr.Set(angle))
}

func saidGetsSmaller(name, angle string) string {
	return fmt.Sprintf("%s gets smaller when %s gets smaller", expr.Set(name), expr.Set(angle))
}

func saidStaysTheSame(name, angle string) string {
	return fmt.Sprintf("%s stays the same when %s gets smaller", expr.Set(name), expr.Set(angle))
}

// saidOffered lists the choices with the numbers that stand for them.
func saidOffered(choices []Choice, required bool) string {
	var offered []string
	for i, c := range choices {
		word := c.Word
		if alsoSaid[word] == nil {
			word = expr.Set(word)
		}
		offered = append(offered, fmt.Sprintf("%d for %s", i+1, word))
	}
	said := "Type " + strings.Join(offered, ", ")
	if required {
		return said + "."
	}
	return said + ", or go on with the equation."
}

func saidYouPredict(said string) string { return "You predict that " + said + "." }

const (
	saidNoted       = "Your prediction is saved. After the stage Solve, you will see whether it was right."
	saidMustPredict = "In your class, you have to make a prediction first: type the number of your choice."
)

func saidPredicted(chosen, right string, values []string, as bool) string {
	came := right
	if len(values) > 0 {
		came = strings.Join(values, " and ") + ", so " + right
	}
	if as {
		return fmt.Sprintf("You predicted that %s, and you were right.", chosen)
	}
	return fmt.Sprintf("You predicted that %s. The result is different: %s.", chosen, came)
}

func saidLimit(name, angle string, degrees float64) string {
	return fmt.Sprintf("One more question: what does %s approach as %s gets close to %g°? Type a formula, a value, “0” or “infinite”.", expr.Set(name), expr.Set(angle), degrees)
}

const saidLimitUnread = "Your answer was not understood. Type a formula, a value with its unit, “0” or “infinite”; or type “next” to go on."

// saidLimitIs says what an unknown comes to at the limit.
func (g *Page) saidLimitIs(l Limit, right bool) string {
	word := "Not quite"
	if right {
		word = "Right"
	}
	when := fmt.Sprintf("as %s gets close to %g°", expr.Set(l.angle), l.degrees)
	said := ""
	switch {
	case l.Endless:
		said = fmt.Sprintf("%s grows without limit %s", expr.Set(l.name), when)
	case l.Nothing:
		said = fmt.Sprintf("%s approaches 0 %s", expr.Set(l.name), when)
	default:
		said = fmt.Sprintf("%s approaches %s %s", expr.Set(l.name), g.Ref.Unit(l.name).In(l.Value, 3), when)
	}
	return word + ": " + said + ". Type “angles” to change the angle and see what happens."
}

// saidCredited says that a true line counts for a later stage.
func saidCredited(stage checker.Stage) string {
	return fmt.Sprintf("This line also counts for the stage %s.", quote(Title(stage)))
}

// What is said of the rules of a class.
const (
	saidSetWork    = "Set work"
	saidNoHints    = "Your teacher has switched off hints for your class."
	saidNoSolution = "In your class, you can see the solution only after you have solved the problem."
)
