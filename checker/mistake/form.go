package mistake

// What is said of lines that nothing explains, that are right but for their form, or that are
// not understood, and of a stage in which nothing was typed yet.
var form = []Row{
	{
		Code: Unexplained, Meaning: "not explained", Cost: 9, Open: true, Passing: true, OfAxis: true,
		Said: Said{
			Component: "This is not {component}. {unitcheck|Check the magnitude first, and then the sign.}",
			Line:      "This is not {sum}. {unitcheck|Compare your line with the drawing, term by term.}",
			Lines:     "This is not {sum}. {unitcheck|Compare your line with the drawing, term by term.}",
			Value:     "{putback}",
			List:      "This list does not match the forces on {body}.",
		},
		Hints: []Hint{
			{At: OnComponent, OfUnit: true,
				Ask:  "What is the unit of your answer, and what is the unit of a force?",
				Rule: "A component of a force is measured {unit}, like the force itself. {law}"},
			{At: OnSum, OfUnit: true,
				Ask:  "What is the unit of each term in your line?",
				Rule: "Every term in the equation is a component of a force and is measured {unit}. {law}"},
			{At: OnComponent, Ask: "{look}", Rule: "{lie}"},
			{At: OnSum,
				Ask:  "Which of the forces {names} have a component {along}? Does each of these forces appear exactly once in your line?",
				Rule: "When a body is at rest, the components that point {positive} balance those that point {negative}: the sum of all the components, with their signs, is zero."},
			{At: OnLine,
				Ask:  "Which equation or earlier line does this line come from?",
				Rule: "An equation stays true if you do the same thing to both sides. Take one step at a time."},
			{At: OnValue,
				Ask:  "Which line of your working does this value come from, and what does that line give if you work it out again?",
				Rule: "{start}"},
			{At: OnList,
				Ask:  "What touches {body}, and what pulls on it without touching it?",
				Rule: "{kinds}"},
		},
	},
	{
		Code: DoesNotFollow, Meaning: "a line that does not follow from the equations", Cost: 9, Open: true, Passing: true,
		Said: Said{
			Lines: "This line does not follow from the equations and the given values. {unitcheck}",
			Line:  "This line does not follow from the equations and the given values. {unitcheck}",
			Value: "{putback}",
		},
	},
	{
		Code: Own, Meaning: "a mistake that the teacher expected", Cost: 9,
	},
	{
		Code: NoAttempt,
		Hints: []Hint{
			{At: OnComponent, Ask: "{look}", Rule: "{lie}"},
			{At: OnSum,
				Ask:  "Which of the forces {names} have a component {along}, and which way does each of these components point?",
				Rule: "When a body is at rest, the components that point {positive} balance those that point {negative}: the sum of all the components, with their signs, is zero."},
			{At: OnLine | OnValue, Ask: "How many unknowns are there in each of your equations?", Rule: "{start}"},
			{At: OnList, Ask: "What touches {body}, and what pulls on it without touching it?", Rule: "{kinds}"},
		},
	},
	{
		Code: NoUnit, Meaning: "no unit", Cost: 9, UnitOnly: true,
		Said: Said{Value: "This is the right number for {unknown} {unit}, but you did not write the unit."},
		Hints: []Hint{{At: Anywhere,
			Ask:  "What kind of quantity is {unknown|this value}?",
			Rule: "A value is a number with a unit. Give {unknown|this value} {unit}.",
			Step: "Write {symbol} after the number."}},
	},
	{
		Code: WrongUnit, Meaning: "the unit of a different quantity", Cost: 9, UnitOnly: true,
		Said: Said{
			Component: "The number for {component} is right, but its unit is not a unit of force.",
			Line:      "The numbers are right, but one of the units is not a unit of force.",
			Value:     "The number for {unknown} is right. Check its unit.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Which quantity does the unit in your line measure, and which quantity are you asked for?",
			Rule: "The unit must match the quantity that you are asked for. Give {unknown|this value} {unit}.",
			Step: "Write {symbol} after the number."}},
	},
	{
		Code: Coarse, Meaning: "only one significant figure", Cost: 9,
		Said: Said{
			Component: "This value of {component} is right, but it has only one significant figure. Give two or three significant figures.",
			Value:     "This value of {unknown} is right, but it has only one significant figure. Give two or three significant figures.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "How many significant figures do the values in the problem have?",
			Rule: "A result should have about as many significant figures as the given values: here, two or three.",
			Step: "Keep four significant figures during the calculation. Round only the result, to three significant figures."}},
	},
	{
		Code: NoEquation, Meaning: "terms that are not set equal to zero", Cost: 9, OfValue: true,
		Said: Said{
			Line:  "These are the right terms, but the line does not yet say what they add up to.",
			Value: "This line does not yet say which letter has this value.",
		},
		Hints: []Hint{
			{At: OnComponent | OnSum,
				Ask:  "What do all the components {along} add up to when {body} is at rest?",
				Rule: "When a body is at rest, the net force along each axis is zero."},
			{At: OnLine | OnValue,
				Ask:  "Which letter has this value?",
				Rule: "A line of working is an equation, for example with a letter on one side and its value on the other."},
		},
	},
	{
		Code: HoldsAlways, Meaning: "a line that is true for any forces", Cost: 9,
		Said: Said{
			Component: "This line is true for any force, so it says nothing about {force}.",
			Line:      "This line is true for any forces, so it says nothing about the forces in this problem.",
			List:      "This list is right, but it is not in the form that you are asked for.",
			Value:     "This line is true for any forces, so it says nothing about the forces in this problem.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Are there any forces for which your line would be false?",
			Rule: "A line that is true for any forces says nothing about the forces in this problem. Use what the problem says about these forces."}},
	},
	{
		Code: StillUnknown, Meaning: "an answer that contains an unknown", Cost: 9, OfValue: true,
		Said: Said{
			Component: "This line is true, but you do not know {open|the value of one of its letters} yet.",
			Line:      "This line is true, but you do not know {open|the value of one of its letters} yet.",
			Value:     "This line is true, but you do not know {open|the value of one of its letters} yet.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Which letter in your line has no value yet?",
			Rule: "First find {open|that letter} from another equation, and then substitute the result into this line."}},
	},
	{
		Code: NoWorking, Meaning: "a value without its working", Cost: 9,
		Said: Said{Value: "This value is right, but in your class you also have to show your working. Write the line that gives this value, and then write the value."},
		Hints: []Hint{{At: OnLine | OnValue,
			Ask:  "Which of your equations did this value come from?",
			Rule: "A line of working contains letters or several numbers, so that a reader can see how you found the value.",
			Step: "Solve one of the equations for {unknown|the letter}, and end that line with the number and its unit."}},
	},
	{
		Code: TrueNotAsked, Meaning: "a true line that was not asked for", Cost: 9, Elsewhere: true,
		Said: Said{
			Component: "This line is true, but it is not {component}. The line will count in a later step.",
			Line:      "This line is true, but it is not {sum}. The line will count in a later step.",
			Value:     "This line is true, but it does not answer the question.",
		},
	},
	{
		Code: UnknownName, Meaning: "an unknown letter", Cost: 9,
		Hints: []Hint{{At: Anywhere,
			Ask:  "Which letter in your line is not in the problem?",
			Rule: "You can use these letters: {letters}."}},
	},
	{
		Code: Unreadable, Meaning: "not understood", Cost: 9,
		Hints: []Hint{
			{At: OnComponent | OnSum | OnLine | OnValue,
				Ask:  "If you read your line aloud, symbol by symbol, where does it stop making sense?",
				Rule: "Every opening bracket needs a closing bracket, an equals sign needs something on both sides, and a sine or cosine needs an angle."},
			{At: OnList,
				Ask:  "Does every entry in your list name one force and its direction?",
				Rule: "Write the letter of each force and its direction: up, down, left, right, or two of these. Put a semicolon between two forces."},
		},
	},
}
