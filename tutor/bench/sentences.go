package bench

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/checker/statics"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/bench/measure"
)

// What is said about a field of the form.
const (
	saidNoRing        = "You can enter the mass of a ring only if exactly one given mass hangs from the ring. This problem has no such ring."
	saidScale         = "You can enter one zero reading and one calibration factor for all readings, as in scale zero = 0.1 N div 0.1 N or scale calibration = 1.02 ± 0.01."
	saidNoCalibration = "The calibration factor is the true force divided by the reading, so it must be greater than zero."
	saidWhichRing     = "There are several rings. Type the name of the ring, as in ring A = 12 g."
)

func saidNoRingOn(body string) string {
	return fmt.Sprintf("This problem has no ring called %s whose mass you can enter.", measure.Shorten(body))
}

func saidBelowZero(w measure.Want) string {
	return fmt.Sprintf("%s is below zero. Type its magnitude, which is positive.", w.Name)
}

func saidNoneOfIt(w measure.Want) string {
	return fmt.Sprintf("%s is zero, so there is nothing to predict.", w.Name)
}

func saidBeyondQuarter(w measure.Want) string {
	return fmt.Sprintf("%s is the angle between a force and an axis, so it must be between 0° and 90°.", w.Name)
}

func saidNoEquals(line string) string {
	return fmt.Sprintf("“%s” has no equals sign. Type a measured value with an equals sign, as in m = 0.500 kg ± 1 %%.", measure.Shorten(line))
}

// saidAbout puts the field's name before a sentence that does not begin with it.
func saidAbout(e *Field, why string) string {
	if strings.HasPrefix(why, e.Want.Name+" ") {
		// The sentence begins with the name, and a name such as “the mass of the ring” needs a capital there.
		if rest, found := strings.CutPrefix(why, "the "); found {
			return "The " + rest
		}
		return why
	}
	return e.Name() + ": " + why
}

func (f *Form) saidNoLetter(name string) string {
	measured, predicted := f.letterNames()
	return fmt.Sprintf("This problem has no letter “%s”. You can enter values for %s, and readings for %s.",
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
		return fmt.Sprintf("The equations predict %[1]s. If you have measured %[1]s, enter the value as a reading.", glyph)
	case kind == Hanger:
		return fmt.Sprintf("%s is not a given mass, so you cannot add a hanger to it.", glyph)
	}
	return fmt.Sprintf("The equations do not predict %[1]s. Enter %[1]s as a measured value, not as a reading.", glyph)
}

// What a hanger and a ring may weigh.
const (
	sampleHanger = "50 g div 1 g"
	sampleRing   = "12 g div 1 g"
)

// What is said about the result.

// saidUnphysical makes a sentence of what package statics says of a solution.
func saidUnphysical(why string) string {
	return "With these values, " + why + ". Check the angles, the masses and the directions."
}

// saidUnsolved says in a student's words why there is no prediction.
func saidUnsolved(err error) string {
	switch err {
	case statics.ErrSeveral:
		return "With these values, there is more than one position of equilibrium, so the program cannot predict the forces. Check the directions of the strings."
	case statics.ErrOpen, statics.ErrIllPosed:
		return "With these values, the program cannot find the forces. The strings are almost in one line, so a tiny change in an angle would change the forces very much."
	}
	return "With these values, the forces cannot balance in the directions that the problem gives. Check the angles and the masses."
}

func saidUpset(name string) string {
	return fmt.Sprintf("The equations of this problem have a solution only for values that fit together exactly. If you measure each value separately, the program cannot find the uncertainty of %s.", name)
}

func saidNumberNeeded(given, output string) string {
	return fmt.Sprintf("The problem gives no number for %[1]s, but %[2]s depends on %[1]s. Measure %[1]s.", expr.Set(given), expr.Set(output))
}

func saidNoSum(sum string, missing []string) string {
	return fmt.Sprintf("The program cannot calculate %s from your readings, because you did not read %s.", sum, measure.Listed(missing, "or"))
}

func (r *Result) saidFailed(p *Prediction) string {
	said := fmt.Sprintf("The program left out %s of %s random trials, because ", thousands(r.Failed), thousands(r.Draws))
	switch r.Pushed {
	case 0:
		return said + "the equations have no solution for these trials. The interval comes from the other trials."
	case r.Failed:
		return said + "a string would have to push or a surface would have to pull in these trials. The interval comes from the other trials."
	}
	return said + fmt.Sprintf("a string would have to push or a surface would have to pull in %s of these trials, and the equations have no solution for the others. The interval comes from the trials that are left.", thousands(r.Pushed))
}

// saidBends says that the law of propagation, which takes everything as straight,
// is off.
func (r *Result) saidBends(p *Prediction) string {
	said := fmt.Sprintf("%[2]s does not change linearly within the uncertainty of %[1]s", p.Budget[0].Input.Name(), p.Name)
	if p.U == 0 {
		return said + ": at the measured value, the rate of change is zero. The interval comes from the random trials."
	}
	// The spreads agree, so it is the mean that was moved.
	if math.Abs(p.Spread-p.U) <= measure.Agreement*p.U {
		return said + fmt.Sprintf(": the mean of the random trials is %s. The interval comes from the trials.", p.at(p.Mean, p.Spread))
	}
	return said + fmt.Sprintf(": the law of propagation gives u = %s, but the random trials give %s. The interval comes from the trials.", p.in(p.U), p.in(p.Spread))
}

// What the letters of a result mean, each where it first appears.
const (
	saidUMeans  = "u is the standard uncertainty. U = k·u is the expanded uncertainty: in about 95 % of measurements, the true value is within ± U of the result."
	saidNuMeans = "ν is the number of degrees of freedom. With few readings ν is small, and then k is larger than 2 (Student's t)."
	saidEnMeans = "Eₙ is the difference divided by its expanded uncertainty U. If |Eₙ| ≤ 1, the two values agree. Even if nothing is wrong, about one comparison in twenty fails by chance."
)

func saidAssumedFirst(assumed []string) string {
	return fmt.Sprintf("You did not measure these values, so the program uses the exact values from the problem: %s.", measure.Listed(assumed, "and"))
}

func saidRepeat(names []string) string {
	return fmt.Sprintf("You read %s only once. Take two or three more readings before you look for the cause of the difference.", measure.Listed(names, "and"))
}

func saidManyLoads(names []string) string {
	is := "is"
	if len(names) > 1 {
		is = "are"
	}
	return fmt.Sprintf("%s %s predicted to be more than %d times the load, because nearly horizontal strings carry very large forces. Show this to your teacher before you hang anything.", measure.Listed(names, "and"), is, manyLoads)
}

func saidUnrated(names []string) string {
	// Behind the letter stands its size in brackets.
	first, _, _ := strings.Cut(names[0], " ")
	is, question := "is", "What is the rated load? Type it"
	if len(names) > 1 {
		is, question = "are", "What are the rated loads? Type each one"
	}
	return fmt.Sprintf("%s %s predicted to be over %d N. %s, as in %s = 100 N max, and never exceed it.", measure.Listed(names, "and"), is, unratedPull, question, first)
}

func saidExceedsEarly(name, rating string) string {
	return fmt.Sprintf("%s is predicted to be more than the rated load of %s. Use a smaller load.", name, rating)
}

func saidExceeds(name, what, size, rating string) string {
	return fmt.Sprintf("%s %s %s, which is more than the rated load of %s. Use a smaller load.", name, what, size, rating)
}

// Systematic lists what repeated readings do not show, the commonest first.
func Systematic() []string {
	return []string{
		"These uncertainties do not include errors that are the same in every reading. Check your apparatus for such errors in this order.",
		"Spring scale: hang a known mass from the scale to check the calibration. Check the zero and the friction in the scale. Check that the scale points along the string.",
		"Angles: check that the protractor is horizontal, that its centre is at the ring, and that its zero line is along the correct axis. Look straight at the protractor when you read it.",
		"Masses: check that you included the hanger, the hook and the ring. If a spring scale hangs from the string, include the mass of the scale.",
		"Strings: check that all strings point at the centre of the ring, that the pulleys turn freely, and that nothing stretches while you read the scale.",
	}
}

// What is said of a sum of measured forces in a table.
const (
	saidZeroWithin  = "consistent with zero"
	saidZeroOutside = "not zero within the uncertainties"
)

// saidLook stands for Systematic where there is a next question.
const saidLook = "These uncertainties do not include systematic errors. Type “look” for a list of common systematic errors. First check the calibration of the spring scale."

// Cautions are shown before the first measurement and stand on every sheet. What
// they hold was read in school and maker's sheets on hanging masses, spring
// scales and force tables, but for clamping stands, adding masses gently, taking
// masses off first, letting go of a scale slowly and the school's own rules, which are
// common practice.
func Cautions() []string {
	return []string{
		"Masses can fall. Keep your feet and fingers away, and put a tray or something soft under the masses. Add masses gently, and hang them low.",
		"Take the masses off before you move a string. Let go of a stretched spring scale slowly.",
		"Strings and springs can snap. Wear eye protection, and keep your face out of line with the strings.",
		"Never exceed the rated load of strings, spring scales and pulleys. Clamp every stand, or put a weight on its base, before you hang anything from the stand.",
		"The forces in nearly horizontal strings are very large. Keep every string at least 10° from the horizontal, unless your teacher is with you.",
		"Use this program only for apparatus in lessons. Never use it to plan lifting, rigging, or anything that supports people. Your school's risk assessment and the local rules come first. Leave real structures to licensed professionals.",
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
	saidNothingToPlot = "There is nothing to plot yet, because no run has a result."
	saidTwoRuns       = "To compare runs, type the numbers of at least two runs, as in “compare 1 2”."
	saidShortSeries   = "For a series or a line, you need at least two runs with results."
)

func saidOffCurve(run int, values string, last int) string {
	return fmt.Sprintf("Run %[1]d was made with %[2]s. The curve was calculated for run %[3]d, so the points of run %[1]d may not be on the curve.", run, values, last, run)
}

func saidOtherApparatus(a int, idA string, b int, idB string) string {
	return fmt.Sprintf("Run %d belongs to %s, but run %d belongs to %s. You can only compare runs with the same apparatus.", a, idA, b, idB)
}

func saidMoved(a, b int, name, read, u, predicted string) string {
	return fmt.Sprintf("From run %d to run %d, the reading of %s changed by %s (U = %s), and the prediction changed by %s.", a, b, name, read, u, predicted)
}

// What is said about a series and a line through it.
const (
	saidNoBias         = "No quantity has readings that are clearly too high in every run or clearly too low in every run."
	saidLookAtScale    = "Check the calibration and the zero of the spring scale."
	saidLookAtBoth     = "These runs cannot show whether the zero or the calibration of the spring scale is wrong. Check both: read the scale with a known mass on it, and then with nothing on it."
	saidLookAtZeroLine = "Check the centre and the zero line of the protractor."
	saidSharedExplains = "Another possible cause is a wrong value that all runs share, such as the mass. Measure the shared values again."
	saidNothingLeft    = "There are just enough points to draw the line, so you cannot see how well the line fits."
	saidLineSample     = "Line: type the two axes, as in “line T against 1/(2 sin theta)”. For a line through the origin, add “through 0” at the end."
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
	return "These values are the same in all runs: " + measure.Listed(names, "and") + "."
}

func saidBias(name, by, direction string, runs int) string {
	return fmt.Sprintf("The readings of %s were too %s in all %s runs, by %s on average.", name, direction, inWords(runs), by)
}

func saidLookAtZero(name string) string {
	return fmt.Sprintf("The difference does not grow with %s. Check the zero of the spring scale.", name)
}

func saidLookAtCalibration(name string) string {
	return fmt.Sprintf("The difference grows with %s. Check the calibration of the spring scale.", name)
}

func saidNoAxis(text string, f *Form) string {
	measured, predicted := f.letterNames()
	return fmt.Sprintf("“%s” is not an expression in the letters of this problem (%s). Type an expression such as 1/(2 sin θ).", measure.Shorten(strings.TrimSpace(text)), strings.Join(append(measured, predicted...), ", "))
}

func saidFewPoints(n, least int) string {
	return fmt.Sprintf("To fit a line, you need at least %d runs with readings for both axes. You have only %d.", least, n)
}

func saidNoLine(x string) string {
	return fmt.Sprintf("%s is the same in all runs, so the program cannot fit a line.", x)
}

func saidUnreadRuns(n int) string {
	if n == 1 {
		return "One run is left out because a reading is missing from it."
	}
	return fmt.Sprintf("%d runs are left out because a reading is missing from each of them.", n)
}

func saidScatter(s string, nu int) string {
	return fmt.Sprintf("You gave no uncertainties, so all points have the same weight. The standard deviation about the line is s = %s, with ν = %d.", s, nu)
}

func saidChiSquare(ratio string, nu int) string {
	return fmt.Sprintf("χ²/ν = %s with ν = %d. A value near 1 is normal. If the value is much larger, the points scatter more than their uncertainties suggest.", ratio, nu)
}

// Notation is how measured values are typed, as a table.
func Notation() Block {
	return Block{Title: "How to write a measured value", Head: []string{"typed", "meaning"}, Rows: [][]string{
		{"0.500 kg ± 0.005 kg", "a half-width with its unit or in %, as in 500 g ± 1 %; you can also type +-; u = half-width/√3"},
		{"35; 34.5; 35.5 deg div 1 deg", "repeated readings, and the smallest division of the scale"},
		{"20.4 N div 0.2 N", "one reading, and the smallest division of the scale; the half-width is half a division"},
		{"20.4 N div 0.2 N zero 0.1 N", "one reading, and a zero reading of 0.1 N, which is subtracted"},
		{"20.4 N u 0.1 N", "a standard uncertainty"},
		{"20.4 N U 0.2 N", "an expanded uncertainty (k = 2); you can also type (20.4 ± 0.2) N, k = 2"},
		{"0.48 to 0.52 kg", "a range of masses for which the ring stays at rest; the value is the middle of the range"},
		{"20 N max", "the rated load of a string, a spring scale or a pulley"},
		{"0.500 kg exact", "a value without uncertainty"},
	}}
}

// Titles of what is shown.
const (
	titleNames      = "Who is in the group"
	titleRuns       = "Runs"
	titleEarlier    = "Earlier runs"
	titleSystematic = "Systematic errors"
	titleApparatus  = "The apparatus"
	titleSeries     = "Series"
	titleNotes      = "Notes"
	titleConclusion = "Conclusion"
)

// What can be chosen.
const (
	choiceNewRun     = "A new run"
	choiceGoOn       = "Go on"
	choiceSetting    = "1. a new setting (this starts a new run without readings)"
	choiceCorrection = "2. a correction (the readings stay the same)"
	sampleNames      = "Ana, Ben"
)

// What is asked and said, in the order of a run.
const (
	saidChooseTopic   = "Problem: which problem matches your apparatus? Type the number of a topic, or the id of a problem."
	saidChooseProblem = "Problem: which problem do you want? Type its number, or press Enter to go back to the topics."
	saidReadCautions  = "Have you all read the safety rules? Press Enter to go on."
	saidWho           = "Who is in the group? Type all the names, separated by commas. If you do not want to save your work, press Enter."
	saidReopen        = "There are saved runs for this apparatus. Which run do you want? Press Enter for a new run, or type the number of a saved run."
	saidByHand        = "Who wants to calculate the prediction by hand? Each of you can do this before the program shows its own prediction. Your calculation counts as practice. Type a name, or press Enter to go on."
	saidByHandLate    = "Who wants to calculate the prediction by hand? Your calculation still counts as practice. Type a name, or press Enter to go on."
	saidJoining       = "Who wants to join the group? Type the names, or press Enter to go back."
	saidWhichRun      = "Which run do you want to open? Type its number. To compare runs, type several numbers, as in 1 2."
	saidOthersRuns    = "Type “runs all” to list the runs of other groups, too."
	saidCorrectValues = "Type the letter and its value, as in alpha = 35 deg ± 0.5 deg. All other values stay the same."
	saidThen          = "What next? To change a value, type the letter and the new value. Or type one of these words: result, budget, plot, series, line, again, runs, predict, note, report, help, quit."
	saidNoRuns        = "There are no saved runs yet."
	saidAgain         = "This is a new run with the same values, but without readings. First type the values that are different, as in alpha = 40 deg ± 0.5 deg. Then type the new readings."
	saidNobodyThere   = "There are no names yet. To save the run, type “students” and the names, as in “students Ana, Ben”."
	saidNoPractice    = "You cannot calculate the prediction by hand here."
	saidNoFiles       = "The program cannot write files here."
	saidNoSuchRun     = "There is no run with this number. Type “runs” for a list."
	saidNothingRead   = "There are no readings yet."
	saidNoted         = "Your note is saved with the run."
	saidConcluded     = "Your conclusion is saved with the run."
	saidNoNotes       = "There are no notes yet. Type “note” and your text, as in “note the ring stuck once”."
	saidNoWarnings    = "There are no warnings about these values."
	saidIfMeant       = "If the value is right, press Enter. If not, type the value again."
	saidEmptyTable    = "The first row of the table must contain letters and units, as in m / kg. Each row below it must contain one run."
	saidTableTooLarge = "The table is too large. A table can have at most 1000 rows and 200 columns."
)

func saidSample(sample string) string { return "Example: " + sample }

func saidNoTable(err error) string { return fmt.Sprintf("The program cannot read the table: %v.", err) }

func saidInRow(row int, why string) string { return fmt.Sprintf("Row %d: %s", row, why) }

func saidApparatus(heading string) string { return "Bench: " + heading }

func saidLetters(measured, predicted []string) string {
	return fmt.Sprintf("You measure %s. The equations predict %s.", measure.Listed(measured, "and"), measure.Listed(predicted, "and"))
}

func saidWhoSees(kept string) []string {
	if kept == "" {
		return []string{"You all share one run. Each of you can calculate the prediction by hand.", "The program cannot save anything here."}
	}
	readable := fmt.Sprintf("Runs are saved in %s. Anyone who can open this account's files can read the runs.", kept)
	if kept == tutor.AtHost {
		readable = fmt.Sprintf("Runs are saved in %s, and your teacher can read them.", kept)
	}
	return []string{"You all share one run, which is saved with all your names. Each of you can calculate the prediction by hand.", readable}
}

func saidSeated(names []string, kept string) string {
	switch {
	case len(names) == 0:
		return "You typed no names, so this run is not saved."
	case kept == "":
		return fmt.Sprintf("Names: %s. The program cannot save anything here.", measure.Listed(names, "and"))
	case len(names) == 1:
		return fmt.Sprintf("Names: %s. This run is saved in %s.", names[0], kept)
	}
	return fmt.Sprintf("Names: %s share this run, which is saved in %s.", measure.Listed(names, "and"), kept)
}

func saidNotInClass(name string) string {
	return fmt.Sprintf("Names: %s is not on the class list. Type all the names again.", measure.Shorten(strings.TrimSpace(name)))
}

func saidCannotOpen(run int) string {
	return fmt.Sprintf("Run %d has no result, because the program can no longer read its problem or its values.", run)
}

func saidOpened(run int) string { return fmt.Sprintf("Open: this is run %d as you typed it.", run) }

func saidOpenedOthers(run int, group string) string {
	if group == "" {
		group = "another group"
	}
	return fmt.Sprintf("Open: this is run %d, which %s made. If you change anything, your version is saved as a new run, and this run does not change.", run, group)
}

func saidCorrection(name string) string {
	return fmt.Sprintf("You took the readings with a different value of %s. Is the new value a new setting of the apparatus, or a correction? Press Enter for a new setting.", name)
}

func saidFarFromFile(name string, v measure.Value, file string) string {
	return fmt.Sprintf("Is %s = %s right? The problem gives %s.", name, v.Short(), file)
}

func saidFarFromPredicted(name string, v measure.Value) string {
	return fmt.Sprintf("Is %s = %s right? This reading is far from the prediction.", name, v.Short())
}

func saidVeryUnsure(name string, v measure.Value) string {
	share := measure.Figured(100*v.U()/math.Abs(v.Estimate), 2)
	return fmt.Sprintf("The uncertainty of %s is %s %% of its value. Did you mean a percentage or another unit?", name, share)
}

// Question asks for a field, and says what an empty line does.
func (f *Form) Question(i int) string {
	e := &f.Fields[i]
	empty := "Press Enter if you did not measure this value."
	switch {
	case e.Typed != "":
		empty = "Press Enter to keep " + measure.Shorten(e.Typed) + "."
	case f.File(e) != "":
		empty = fmt.Sprintf("Press Enter to use %s from the problem.", f.File(e))
	case e.Kind == Measure:
		empty = fmt.Sprintf("The problem gives no number for %s.", e.Name())
	case e.Kind == Hanger:
		empty = fmt.Sprintf("Press Enter if %s already includes this mass.", expr.Set(e.Letter))
	case e.Kind == Reading:
		empty = fmt.Sprintf("Press Enter if you did not read %s.", e.Name())
	}
	return f.asks(e) + " " + empty
}

func (f *Form) asks(e *Field) string {
	switch {
	case e.Kind == Reading && e.Want.Dim == quantity.Force:
		return fmt.Sprintf("What does the spring scale show for %s?", e.Name())
	case e.Kind == Reading:
		return fmt.Sprintf("What is your reading for %s (%s)?", e.Name(), e.Want.Dim)
	case e.Kind == Measure:
		return fmt.Sprintf("What value did you measure for %s (%s)?", e.Name(), e.Want.Dim)
	case e.Kind == Scale && e.Letter == scaleZero:
		return "What does the spring scale show with nothing on it? The program subtracts this zero reading from all readings."
	case e.Kind == Scale:
		return "What is the calibration factor of the spring scale? To find the factor, divide a known force by its reading."
	}
	return fmt.Sprintf("What is %s?", e.Want.Name)
}

// saidLeft says what counts where a field was left empty or as it was.
func (f *Form) saidLeft(e *Field) string {
	switch {
	case e.Typed != "":
		return saidTaken(e)
	case f.File(e) != "":
		return fmt.Sprintf("Assumed: %s = %s, exact, %s.", e.Name(), f.File(e), f.origin(e))
	case e.Kind == Measure:
		return fmt.Sprintf("Empty: %s has no value.", e.Name())
	}
	return fmt.Sprintf("Empty: %s.", e.Name())
}

// origin says where the number of a given comes from that was not measured.
func (f *Form) origin(e *Field) string {
	if e.Letter == "g" && f.problem.AssumedG {
		return "the standard value"
	}
	return "from the problem"
}

func saidTaken(e *Field) string { return fmt.Sprintf("Accepted: %s = %s.", e.Name(), e.Taken) }

func saidRefused(why string) string { return "Not accepted: " + why }

func saidAskDivision(e *Field) string {
	return fmt.Sprintf("What is the smallest division of the scale? Press Enter if it is %s. If not, type the division, or ± and a half-width.", e.division())
}

// saidExtras asks for what comes on top of the values of a step; "" for nothing.
func (f *Form) saidExtras(kinds []Kind) string {
	if !slices.Contains(kinds, Hanger) {
		return ""
	}
	var examples []string
	for i := range f.Fields {
		switch e := &f.Fields[i]; e.Kind {
		case Hanger, Ring, Scale:
			examples = append(examples, e.Name()+" = "+f.Sample(i))
		}
	}
	examples = append(examples, f.ratings()...)
	if examples == nil {
		return ""
	}
	return fmt.Sprintf("What else do you know? You can enter the mass of a hanger or ring that is not included yet, the zero reading and the calibration factor of the spring scale, or the rated load of a string, as in %s. Press Enter to go on.", measure.Listed(examples, "or"))
}

// ratings are samples of how the rating of a string is typed.
func (f *Form) ratings() []string {
	for i := range f.Fields {
		if e := &f.Fields[i]; e.Kind == Reading && e.Want.Dim == quantity.Force {
			return []string{e.Name() + " = 20 N max"}
		}
	}
	return nil
}

func saidBackFrom(status string) string { return "Back: " + status + "." }

func saidStatus(status string) string {
	if status == "" {
		return ""
	}
	return ", by hand: " + status
}

func saidNobodyCalled(name string, names []string) string {
	if len(names) == 0 {
		return saidNobodyThere
	}
	return fmt.Sprintf("There is no %s in the group. Names in the group: %s.", measure.Shorten(name), measure.Listed(names, "and"))
}

func saidSaved(where string) string {
	return fmt.Sprintf("Saved: %s.", where)
}

func saidNotKnown(line string) string {
	return fmt.Sprintf("The program does not know “%s”. Type “help” for a list of commands.", measure.Shorten(line))
}

func saidNotSaved(err error) string { return fmt.Sprintf("Not saved: %v.", err) }

// saidPooled says that the scatter of all repeated readings counts for a reading.
func saidPooled(name string) string {
	return name + ": these readings are closer together than the other readings. This may be by chance, so the program used the scatter of all readings."
}

// The list of commands.
const (
	titleWords   = "Commands"
	saidHelpDoes = "Show this list"
	saidQuitDoes = "Quit; all your work is saved"
)

func headWords() []string { return []string{"command", ""} }
