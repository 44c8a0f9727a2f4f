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
	saidNoRing    = "Nothing hangs on the ring in this problem's sums, so its own mass has no place in them."
	saidWhichRing = "There are several rings; say which, as in ring A = 12 g."
)

func saidNoRingOn(body string) string {
	return fmt.Sprintf("There is no ring %s on which a mass hangs.", measure.Shorten(body))
}

func saidBelowZero(w measure.Want) string {
	return fmt.Sprintf("%s comes out below zero, and its size is what is measured.", w.Name)
}

func saidNoneOfIt(w measure.Want) string {
	return fmt.Sprintf("%s is nothing, and then there is nothing to predict.", w.Name)
}

func saidBeyondQuarter(w measure.Want) string {
	return fmt.Sprintf("%s is measured from an axis to a string on one side of it, so it lies between 0° and 90°.", w.Name)
}

func saidNoEquals(line string) string {
	return fmt.Sprintf("“%s” has no equals sign; a measured value goes like m = 0.500 kg ± 1 %%.", measure.Shorten(line))
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
	var measured, predicted []string
	for i := range f.Fields {
		switch e := &f.Fields[i]; e.Kind {
		case Measure:
			measured = append(measured, e.Name())
		case Reading:
			predicted = append(predicted, e.Name())
		}
	}
	return fmt.Sprintf("This problem has no letter “%s”. Put into the sums are %s; predicted and read are %s.",
		measure.Shorten(strings.TrimSpace(name)), measure.Listed(measured, "and"), measure.Listed(predicted, "and"))
}

func (f *Form) saidOtherKind(kind Kind, letter string) string {
	glyph := expr.Glyph(letter)
	switch {
	case kind == Measure:
		return fmt.Sprintf("%s is what the sums predict; what a scale or protractor shows for it is a reading.", glyph)
	case kind == Hanger:
		return fmt.Sprintf("%s is no mass that is given, so no hanger adds to it.", glyph)
	}
	return fmt.Sprintf("%s is put into the sums and not predicted; its measured value is set, not read.", glyph)
}

// What a hanger and a ring may weigh.
const (
	sampleHanger = "50 g div 1 g"
	sampleRing   = "12 g div 1 g"
)

// What is said about the result.

// saidUnphysical makes a sentence of what package statics says of a solution.
func saidUnphysical(why string) string {
	return "With these values " + why + "; look at the angles, the masses and the sides again."
}

// saidUnsolved says in a student's words why there is no prediction.
func saidUnsolved(err error) string {
	switch err {
	case statics.ErrSeveral:
		return "More than one position of rest fits these values, so nothing can be predicted; the sides of the strings must settle which is meant."
	case statics.ErrOpen, statics.ErrIllPosed:
		return "With these values the sums hardly settle the forces: the strings lie so nearly in one line that a tiny change of an angle would change them beyond measure."
	}
	return "With these values no forces on the sides that the problem names can balance; look at the angles and the masses again."
}

func saidUpset(name string) string {
	return fmt.Sprintf("The sums of this problem balance only for values that fit one another exactly, so no uncertainty of %s can be told from values that were measured separately.", name)
}

func saidNumberNeeded(given, output string) string {
	return fmt.Sprintf("The problem gives no number for %s, and %s depends on it; measure %s.", expr.Glyph(given), expr.Glyph(output), expr.Glyph(given))
}

func saidNoSum(sum string, missing []string) string {
	return sum + " cannot be added up from readings, because " + strings.Join(missing, " and ") + " was not read."
}

func (r *Result) saidFailed(p *Prediction) string {
	return fmt.Sprintf("In %d of %d draws the sums have no solution, so near are the values to where %s is settled no more; the interval is that of the other draws.",
		r.Failed, r.Draws, p.Name)
}

// saidBends says that the law of propagation, which takes everything as straight,
// is off.
func (r *Result) saidBends(p *Prediction) string {
	said := fmt.Sprintf("Over the uncertainty of %s, %s does not follow in a straight line", p.Budget[0].Input.Name(), p.Name)
	if p.U == 0 {
		return said + ": to first order it does not move at all. The interval is that of the draws."
	}
	if math.Abs(p.Spread-p.U) <= measure.Agreement*p.U {
		return said + fmt.Sprintf(": the draws lie about %s. The interval is that of the draws.", measure.WithUnit(measure.Round(p.Mean/p.Unit.Factor, measure.TwoFigures(p.Spread/p.Unit.Factor)), p.Unit))
	}
	return said + fmt.Sprintf(": the law of propagation gives u = %s and the draws %s. The interval is that of the draws.",
		measure.WithUnit(measure.QuoteU(p.U/p.Unit.Factor), p.Unit), measure.WithUnit(measure.QuoteU(p.Spread/p.Unit.Factor), p.Unit))
}

func saidNearlyLevel(name string, degrees float64, size string) string {
	if size != "" {
		size = ": " + size + " here"
	}
	return fmt.Sprintf("%s runs only %s° from level, and nearly level strings carry huge tensions%s. Hang nothing on it before the teacher has seen it.",
		name, measure.Figured(degrees, 2), size)
}

func saidExceedsEarly(name, rating string) string {
	return fmt.Sprintf("%s is predicted to be above its rating of %s: take load off.", name, rating)
}

func saidExceeds(name, what, size, rating string) string {
	return fmt.Sprintf("%s %s %s, above its rating of %s: take load off.", name, what, size, rating)
}

// saidSystematic lists what repeated readings do not show.
const saidSystematic = "What is off by the same amount every time is in no uncertainty here: a scale's zero, its axis not along the string, " +
	"parallax, a protractor not centred on the ring or not level, a string that does not point at the ring's centre, friction in a pulley, " +
	"the mass of a hanger, hook or ring left out, an angle measured from the other line."

// Systematic says what repeated readings do not show.
func Systematic() string { return saidSystematic }

// saidLook stands for saidSystematic where there is a next question.
const saidLook = "What is off by the same amount every time is in no uncertainty here; the word look lists it."

// Cautions are shown before the first measurement and stand on every sheet. What
// they hold was read in school and maker's sheets on hanging masses, spring
// scales and force tables, but for clamping stands, adding masses gently and the
// school's own rules, which are common practice.
func Cautions() []string {
	return []string{
		"Masses fall: keep feet and fingers clear, and put a tray or a soft landing under them. Add masses gently and keep them low.",
		"Strings and springs snap: wear eye protection, and keep faces out of the line of a string.",
		"Stay below the rated load of strings, scales and pulleys. A stand is clamped or weighted before anything hangs on it.",
		"Nearly level strings carry huge tensions: stay 10° from level or more unless the teacher is with you.",
		"This is for a teaching apparatus only, not for lifting, rigging or supporting people. The school's own risk assessment and local rules come first, and real structures are for licensed practice.",
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
	saidNothingToPlot = "There is nothing to plot yet: a run has to have a result first."
	saidTwoRuns       = "Two runs or more are laid side by side; give their numbers, as in compare 1 2."
)

func saidOffCurve(run int, values string, last int) string {
	return fmt.Sprintf("Run %d had %s, and the curve is that of run %d, so its points need not lie on it.", run, values, last)
}

func saidOtherApparatus(a int, idA string, b int, idB string) string {
	return fmt.Sprintf("Run %d is of %s and run %d of %s; only runs of one apparatus can be compared.", a, idA, b, idB)
}

func saidMoved(a, b int, name, read, u, predicted string) string {
	return fmt.Sprintf("From run %d to run %d the reading of %s moved by %s (U = %s), and the sums say %s.", a, b, name, read, u, predicted)
}

// Notation is how measured values are typed, as a table.
func Notation() Block {
	return Block{Title: "How a measured value is written", Head: []string{"typed", "meaning"}, Rows: [][]string{
		{"0.500 kg ± 0.005 kg", "a half-width, in a unit or in %: 500 g ± 1 %; +- does as well; u = half-width/√3"},
		{"35; 34.5; 35.5 deg div 1 deg", "repeated readings; their spread counts, and the division of the scale too"},
		{"20.4 N div 0.2 N", "the smallest division of the scale: half of it to both sides"},
		{"20.4 N div 0.2 N zero 0.1 N", "what the scale shows with nothing on is taken off"},
		{"20.4 N u 0.1 N", "a standard uncertainty"},
		{"0.48 to 0.52 kg", "the band of masses within which pulleys hold the ring still: its middle and half-width"},
		{"20 N max", "what a string, scale or pulley is rated for"},
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
	return fmt.Sprintf("Division: repeated readings alone do not tell how fine the scale is. What is its smallest division, such as 1 %s? Enter leaves it.", measure.Symbol(e.Value.Unit))
}

func saidAskQuality(e *Field) string {
	unit := measure.Symbol(e.Value.Unit)
	return strings.TrimSpace(fmt.Sprintf("Quality: how sure is it? Type ± and a half-width, or div and the smallest division, as in ± 0.5 %s or div 1 %s. Enter takes it as exact.", unit, unit))
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
