package bench

import (
	"fmt"
	"math"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
	"example.org/standstill/tutor/bench/measure"
)

// What is said about a field of the form.
const (
	saidNoRing        = "No mass hangs on the ring in this problem, so the ring's own mass is not needed."
	saidScale         = "Readings can share a zero and a calibration: scale zero = 0.1 N div 0.1 N, scale calibration = 1.02 ± 0.01."
	saidNoCalibration = "The calibration is the true force divided by the reading, so it must be above zero."
	saidWhichRing     = "There are several rings. Say which one, as in ring A = 12 g."
)

func saidNoRingOn(body string) string {
	return fmt.Sprintf("No mass hangs on a ring %s in this problem.", measure.Shorten(body))
}

func saidBelowZero(w measure.Want) string {
	return fmt.Sprintf("%s is below zero. Give its size, which is positive.", w.Name)
}

func saidNoneOfIt(w measure.Want) string {
	return fmt.Sprintf("%s is zero, so there is nothing to predict.", w.Name)
}

func saidBeyondQuarter(w measure.Want) string {
	return fmt.Sprintf("%s is the angle between a string and an axis, so it must be between 0° and 90°.", w.Name)
}

func saidNoEquals(line string) string {
	return fmt.Sprintf("“%s” has no equals sign. Write a measured value as in m = 0.500 kg ± 1 %%.", measure.Shorten(line))
}

// saidAbout puts the field's name before a sentence that does not begin with it.
func saidAbout(e *Field, why string) string {
	if strings.HasPrefix(why, e.Want.Name+" ") {
		if rest, found := strings.CutPrefix(why, "the "); found {
			return "The " + rest
		}
		return why
	}
	return e.Name() + ": " + why
}

func (f *Form) saidNoLetter(name string) string {
	measured, predicted := f.letterNames()
	return fmt.Sprintf("This problem has no letter “%s”. You can set %s, and read %s.",
		measure.Shorten(strings.TrimSpace(name)), measure.Listed(measured, "and"), measure.Listed(predicted, "and"))
}

// letterNames are what can be set and what can be read.
func (f *Form) letterNames() (measured, predicted []string) {
	for i := range f.Fields {
		switch e := &f.Fields[i]; e.Kind {
		case Measure:
			measured = append(measured, e.Name())
		case Reading:
			predicted = append(predicted, e.Name())
		}
	}
	return measured, predicted
}

func (f *Form) saidOtherKind(kind Kind, letter string) string {
	glyph := expr.Set(letter)
	switch {
	case kind == Measure:
		return fmt.Sprintf("%s is what the equations predict. What a scale or protractor shows for it is a reading.", glyph)
	case kind == Hanger:
		return fmt.Sprintf("%s is not a given mass, so it has no hanger.", glyph)
	}
	return fmt.Sprintf("%s goes into the equations and is not predicted. Set its measured value instead of reading it.", glyph)
}

// What a hanger and a ring may weigh.
const (
	sampleHanger = "50 g div 1 g"
	sampleRing   = "12 g div 1 g"
)

// What is said about the result.

// saidUnphysical makes a sentence of what package statics says of a solution.
func saidUnphysical(why string) string {
	return "With these values " + why + ". Check the angles, the masses and the directions."
}

// saidUnsolved says in a student's words why there is no prediction.
func saidUnsolved(err error) string {
	switch err {
	case statics.ErrSeveral:
		return "With these values there is more than one position of equilibrium, so nothing can be predicted. Check the directions of the strings."
	case statics.ErrOpen, statics.ErrIllPosed:
		return "With these values the forces cannot be found: the strings are so nearly in one line that a tiny change of an angle changes them enormously."
	}
	return "With these values the forces cannot balance in the directions that the problem names. Check the angles and the masses."
}

func saidUpset(name string) string {
	return fmt.Sprintf("The equations of this problem only hold for values that fit each other exactly, so the uncertainty of %s cannot be found from values that were measured separately.", name)
}

func saidNumberNeeded(given, output string) string {
	return fmt.Sprintf("The problem gives no number for %s, and %s depends on it. Measure %s.", expr.Set(given), expr.Set(output), expr.Set(given))
}

func saidNoSum(sum string, missing []string) string {
	return sum + " cannot be calculated from readings, because " + strings.Join(missing, " and ") + " was not read."
}

func (r *Result) saidFailed(p *Prediction) string {
	said := fmt.Sprintf("%s of %s random trials were left out", thousands(r.Failed), thousands(r.Draws))
	switch r.Pushed {
	case 0:
		return said + " because the equations have no solution there. The interval comes from the other trials."
	case r.Failed:
		return said + " because a string would have to push. The interval comes from the other trials."
	}
	return said + fmt.Sprintf(": in %s a string would have to push, in the others the equations have no solution. The interval comes from the rest.", thousands(r.Pushed))
}

// saidBends says that the law of propagation, which takes everything as straight,
// is off.
func (r *Result) saidBends(p *Prediction) string {
	said := fmt.Sprintf("Within the uncertainty of %s, %s does not change along a straight line", p.Budget[0].Input.Name(), p.Name)
	if p.U == 0 {
		return said + ": its slope is zero there. The interval is that of the random trials."
	}
	if math.Abs(p.Spread-p.U) <= measure.Agreement*p.U {
		return said + fmt.Sprintf(": the mean of the random trials is %s. The interval is that of the trials.", p.at(p.Mean, p.Spread))
	}
	return said + fmt.Sprintf(": the law of propagation gives u = %s, the random trials %s. The interval is that of the trials.", p.in(p.U), p.in(p.Spread))
}

// What the letters of a result mean, each where it first appears.
const (
	saidUMeans  = "u is the standard uncertainty. U = k·u is the expanded uncertainty: about 95 % of such intervals hold the value."
	saidNuMeans = "ν is the degrees of freedom. Few readings give a small ν, and k is then larger than 2 (Student's t)."
	saidEnMeans = "E_n is the difference divided by its expanded uncertainty U. |E_n| ≤ 1 means that the two values agree. About one comparison in twenty differs by chance."
)

func saidAssumedFirst(assumed []string) string {
	return fmt.Sprintf("Not measured, so taken from the problem as exact: %s.", measure.Listed(assumed, "and"))
}

func saidRepeat(names []string) string {
	was := "was"
	if len(names) > 1 {
		was = "were"
	}
	return fmt.Sprintf("%s %s read only once. Before you look for a cause, take two or three more readings.", measure.Listed(names, "and"), was)
}

func saidManyLoads(names []string) string {
	is := "is"
	if len(names) > 1 {
		is = "are"
	}
	return fmt.Sprintf("%s %s predicted to be more than %d times the load: nearly horizontal strings carry very large forces. Let the teacher see it before you hang anything.", measure.Listed(names, "and"), is, manyLoads)
}

func saidUnrated(names []string) string {
	first, _, _ := strings.Cut(names[0], " ")
	is, its := "is", "is it"
	if len(names) > 1 {
		is, its = "are", "is each"
	}
	return fmt.Sprintf("%s %s predicted to be over %d N. What load %s rated for? Type the rating, as in %s = 100 N max, and hang nothing above it.", measure.Listed(names, "and"), is, unratedPull, its, first)
}

func saidExceedsEarly(name, rating string) string {
	return fmt.Sprintf("%s is predicted to be above its rating of %s. Use a smaller load.", name, rating)
}

func saidExceeds(name, what, size, rating string) string {
	return fmt.Sprintf("%s %s %s, above its rating of %s. Use a smaller load.", name, what, size, rating)
}

// Systematic lists what repeated readings do not show, the commonest first.
func Systematic() []string {
	return []string{
		"Errors that are the same every time are in none of these uncertainties. Check them in this order.",
		"The scale: its calibration (hang a known mass on it), its zero, friction inside it, its axis along the string.",
		"The angles: the protractor centred on the ring and level, no parallax, the right line of reference.",
		"The masses: hanger, hook and ring counted, the mass of the scale itself where it hangs in the string.",
		"The strings: pointing at the centre of the ring, no friction in the pulleys, no stretching while you read.",
	}
}

// saidLook stands for Systematic where there is a next question.
const saidLook = "A systematic error is in none of these uncertainties. The word look lists the usual ones, the calibration of the scale first."

// Cautions are shown before the first measurement and stand on every sheet. What
// they hold was read in school and maker's sheets on hanging masses, spring
// scales and force tables, but for clamping stands, adding masses gently, taking
// masses off first, letting go of a scale slowly and the school's own rules, which are
// common practice.
func Cautions() []string {
	return []string{
		"Masses fall: keep feet and fingers clear, and put a tray or a soft landing under them. Add masses gently and keep them low.",
		"Take the masses off before you move a string. Let go of a stretched spring scale slowly.",
		"Strings and springs snap: wear eye protection, and keep your face out of the line of a string.",
		"Stay below the rated load of strings, scales and pulleys. Clamp or weight every stand before anything hangs on it.",
		"Nearly horizontal strings carry very large forces: stay 10° or more from horizontal unless the teacher is with you.",
		"This is for a teaching apparatus only, not for lifting, rigging or supporting people. The school's own risk assessment and local rules come first; real structures are for licensed practice.",
	}
}

// thousands writes a whole number with its thousands apart: "100 000".
func thousands(n int) string {
	s := fmt.Sprint(n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + " " + s[i:]
	}
	return s
}

// What is said about several runs.
const (
	saidNothingToPlot = "There is nothing to plot yet: no run has a result."
	saidTwoRuns       = "Comparing needs two runs or more. Give their numbers, as in compare 1 2."
)

func saidOffCurve(run int, values string, last int) string {
	return fmt.Sprintf("Run %d had %s. The curve is for run %d, so the points of run %d may be off the curve.", run, values, last, run)
}

func saidOtherApparatus(a int, idA string, b int, idB string) string {
	return fmt.Sprintf("Run %d is of %s and run %d of %s. Only runs of the same apparatus can be compared.", a, idA, b, idB)
}

func saidMoved(a, b int, name, read, u, predicted string) string {
	return fmt.Sprintf("From run %d to run %d the reading of %s changed by %s (U = %s); the prediction changed by %s.", a, b, name, read, u, predicted)
}

// What is said about a series and a line through it.
const (
	saidNoBias         = "No reading is high in all runs or low in all runs."
	saidLookAtScale    = "Look at the calibration and the zero of the scale."
	saidLookAtBoth     = "These runs do not tell a wrong zero from a wrong calibration. Look at both: hang a known mass on the scale, then nothing."
	saidLookAtZeroLine = "Look at the protractor: its centre, and the line that it counts from."
	saidSharedExplains = "The values that all runs share, such as the mass, may explain it. Measure them again too."
	saidNothingLeft    = "There are only as many points as the line needs, so nothing tells how well it fits."
	saidLineSample     = "Line: give two axes, as in line T against 1/(2 sin theta), and through 0 after it for a line through the origin."
)

// inWords are the small numbers as words.
func inWords(n int) string {
	words := []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"}
	if n < len(words) {
		return words[n]
	}
	return fmt.Sprint(n)
}

func saidSame(names []string) string {
	return "The same in all runs: " + measure.Listed(names, "and") + "."
}

func saidBias(name, by, direction string, runs int) string {
	return fmt.Sprintf("%s is read %s %s in all %s runs.", name, by, direction, inWords(runs))
}

func saidLookAtZero(name string) string {
	return fmt.Sprintf("The difference does not grow with %s. Look at the zero of the scale.", name)
}

func saidLookAtCalibration(name string) string {
	return fmt.Sprintf("The difference grows with %s. Look at the calibration of the scale.", name)
}

func saidNoAxis(text string, f *Form) string {
	measured, predicted := f.letterNames()
	return fmt.Sprintf("“%s” is not an expression in the letters of this problem (%s), such as 1/(2 sin θ).", measure.Shorten(strings.TrimSpace(text)), strings.Join(append(measured, predicted...), ", "))
}

func saidFewPoints(n int) string {
	return fmt.Sprintf("A line needs at least %d runs in which everything on its axes was read; there are %d.", leastLine, n)
}

func saidNoLine(x string) string {
	return fmt.Sprintf("%s is the same in all runs, so no line goes through them.", x)
}

func saidUnreadRuns(n int) string {
	if n == 1 {
		return "One run is left out, because a reading is missing in it."
	}
	return fmt.Sprintf("%d runs are left out, because a reading is missing in them.", n)
}

func saidScatter(s string, nu int) string {
	return fmt.Sprintf("No uncertainties were given, so all points count the same: s = %s about the line, ν = %d.", s, nu)
}

func saidChiSquare(ratio string, nu int) string {
	return fmt.Sprintf("χ²/ν = %s with ν = %d. About 1 is usual; far more means that the points scatter more than their uncertainties say.", ratio, nu)
}

// Notation is how measured values are typed, as a table.
func Notation() Block {
	return Block{Title: "How to write a measured value", Head: []string{"typed", "meaning"}, Rows: [][]string{
		{"0.500 kg ± 0.005 kg", "a half-width, in a unit or in %: 500 g ± 1 %; +- works too; u = half-width/√3"},
		{"35; 34.5; 35.5 deg div 1 deg", "repeated readings and the smallest division of the scale; both count"},
		{"20.4 N div 0.2 N", "one reading and the smallest division: half a division to each side"},
		{"20.4 N div 0.2 N zero 0.1 N", "the scale shows 0.1 N with nothing on it; this is subtracted"},
		{"20.4 N u 0.1 N", "a standard uncertainty"},
		{"20.4 N U 0.2 N", "an expanded uncertainty (k = 2); so is (20.4 ± 0.2) N, k = 2"},
		{"0.48 to 0.52 kg", "the ring stays still for all masses in this band: its middle and half-width"},
		{"20 N max", "what a string, scale or pulley is rated for"},
		{"0.500 kg exact", "a value without uncertainty"},
	}}
}

// What the guide says, in the order of a run.
const (
	saidChooseTopic   = "Problem: which is built like your apparatus? Type the number of a topic, or a problem's id."
	saidChooseProblem = "Problem: type a number; an empty line goes back to the topics."
	saidReadCautions  = "Enter: go on when everybody at the table has read this."
	saidWho           = "Names: who is at the table? Put commas between names, as in Ana, Ben. An empty line is nobody, and nothing is kept then."
	saidEarlier       = "Runs: this apparatus has been measured before."
	saidReopen        = "Type a run's number to open it again, or Enter for a new run."
	saidByHandAgain   = "Predict: the next name, or Enter to go on."
	saidMendValues    = "Mend: type the letter and its value, as in alpha = 35 deg ± 0.5 deg. Everything else stays as it is."
	saidThen          = "Then: a letter and its value change it (m = 0.52 kg ± 1 %), with nothing behind the sign it is emptied. Words: result, budget, values, plot, drawing, again, runs, open 1, compare 1 2, predict, students, look, report, sheet, cautions, text, help, leave."
	saidNoRuns        = "Runs: none is kept yet."
	saidAgain         = "Again: a new run with the same values; the readings are empty. Type what has changed, as in alpha = 40 deg ± 0.5 deg, then the readings."
	saidNobodyThere   = "Names: nobody is named. Type students and the names, as in students Ana, Ben; then the run is kept."
	saidNoPractice    = "Predict: nobody can be led through the stages here."
	saidNoFiles       = "Files: none can be written here."
	saidNoSuchRun     = "Runs: type the number of a run; the word runs lists them."
)

func saidApparatus(heading string) string { return "Bench: " + heading }

func saidLetters(measured, predicted []string) string {
	return fmt.Sprintf("Put into the sums: %s. Predicted: %s.", measure.Listed(measured, "and"), measure.Listed(predicted, "and"))
}

func saidSeated(names []string, kept string) string {
	switch {
	case len(names) == 0:
		return "Names: nobody; this run is not kept."
	case kept == "":
		return fmt.Sprintf("Names: %s. Nothing can be kept here.", measure.Listed(names, "and"))
	}
	if len(names) == 1 {
		return fmt.Sprintf("Names: %s. This run is kept in %s, where whoever uses this account can read it.", names[0], kept)
	}
	return fmt.Sprintf("Names: %s share this run. It is kept in %s, where whoever uses this account can read it.", measure.Listed(names, "and"), kept)
}

func saidNotInClass(name string) string {
	return fmt.Sprintf("Names: %s is not on the list of the class. Type all names again.", measure.Shorten(strings.TrimSpace(name)))
}

func saidCannotOpen(run int) string {
	return fmt.Sprintf("Run %d has no result: its problem or its values cannot be read any more.", run)
}

func saidOpened(run int) string {
	return fmt.Sprintf("Open: run %d as it was typed. Enter keeps what stands there.", run)
}

// saidAsk asks for one field.
func (f *Form) saidAsk(e *Field) string {
	if e.Kind == Reading {
		what := "what a scale in it shows"
		if e.Want.Dim != quantity.Force {
			what = "what is measured for it"
		}
		return fmt.Sprintf("Reading %s: %s, such as %s. %s", e.Name(), what, e.Want.Sample(), f.saidEnter(e, "if nothing is read"))
	}
	return fmt.Sprintf("Value %s, %s: what was measured, such as %s. %s", e.Name(), e.Want.Dim, e.Want.Sample(), f.saidEnter(e, ""))
}

// saidEnter says what an empty line does.
func (f *Form) saidEnter(e *Field, nothing string) string {
	switch {
	case e.Typed != "":
		return "Enter keeps " + measure.Shorten(e.Typed) + "."
	case f.File(e) != "":
		return "Enter keeps the file's " + f.File(e) + "."
	case nothing != "":
		return "Enter " + nothing + "."
	}
	return "The file has no number for it."
}

// saidLeft says what counts where a field was left empty or as it was.
func (f *Form) saidLeft(e *Field) string {
	switch {
	case e.Typed != "":
		return saidTaken(e)
	case f.File(e) != "":
		return fmt.Sprintf("Assumed: %s = %s, exact, %s.", e.Name(), f.File(e), f.origin(e))
	case e.Kind == Measure:
		return fmt.Sprintf("Left: %s has no number.", e.Name())
	}
	return fmt.Sprintf("Left: %s is empty.", e.Name())
}

// origin says where the number of a given comes from that was not measured.
func (f *Form) origin(e *Field) string {
	if e.Letter == "g" && f.problem.AssumedG {
		return "the usual one"
	}
	return "from the problem file"
}

func saidTaken(e *Field) string { return fmt.Sprintf("Taken: %s = %s.", e.Name(), e.Taken) }

func saidMend(e *Field) string { return saidRefused(saidAbout(e, e.Why)) }

func saidRefused(why string) string { return "Not taken: " + why }

func saidAskDivision(e *Field) string {
	division := measure.WithUnit(measure.Plain(e.Value.AssumedSize()/e.Value.Unit.Factor), e.Value.Unit)
	return fmt.Sprintf("Division: what is the smallest division of the scale? Press Enter if it is %s, or type another, or ± and a half-width.", division)
}

// saidExtras asks for own masses; "" where none has a place in the sums.
func (f *Form) saidExtras() string {
	var examples []string
	for i := range f.Fields {
		switch e := &f.Fields[i]; e.Kind {
		case Hanger:
			examples = append(examples, e.Name()+" = "+sampleHanger)
		case Ring:
			examples = append(examples, e.Name()+" = "+sampleRing)
		}
	}
	if examples == nil {
		return ""
	}
	return fmt.Sprintf("Own masses: what a hanger or ring weighs by itself, where it is not in these values yet: %s. An empty line goes on.", measure.Listed(examples, "or"))
}

func saidByHand(names []string) string {
	return fmt.Sprintf("Predict: before the sums are shown, each can work them out on these numbers, stage by stage, and is credited. Type a name (%s), or Enter to go on.", strings.Join(names, ", "))
}

func saidBackFrom(standing string) string { return "Back: " + standing + "." }

func saidStanding(standing string) string {
	if standing == "" {
		return ""
	}
	return ", by hand: " + standing
}

func saidNobodyCalled(name string, names []string) string {
	if len(names) == 0 {
		return saidNobodyThere
	}
	return fmt.Sprintf("Predict: nobody at the table is called %s; there are %s.", measure.Shorten(name), measure.Listed(names, "and"))
}

func saidSaved(where string) string {
	return fmt.Sprintf("Saved: %s; open it in a browser to read or print it.", where)
}

func saidNotSaved(err error) string { return fmt.Sprintf("Not saved: %v.", err) }

// wordsHelp lists the words.
func wordsHelp() Block {
	return Block{Title: "Words", Lines: []string{
		wordResult + ": predictions, comparison, what is left over",
		wordBudget + ": where the uncertainty comes from, the correlation, the check by draws",
		wordValues + ": everything that was typed",
		wordPlot + ", " + wordPlot + " alpha: prediction and readings of all runs against a letter",
		wordDrawing + ": the apparatus with the measured angles",
		wordAgain + ": another run with the same values and new readings",
		wordRuns + ", " + wordOpen + " 1, " + wordCompare + " 1 2: earlier runs",
		wordPredict + " NAME: work the sums out by hand on the measured numbers",
		wordStudents + ", " + wordStudents + " Ana, Ben: who is at the table; others join",
		wordReport + ", " + wordSheet + ": a page for the lab book, a sheet to fill in",
		wordLook + ": what may be off by the same amount every time",
		wordCautions + ", " + wordText + ", " + wordHelp + ", " + wordLeave,
	}}
}
