package mistake

// What is said of lines that nothing explains, that are right but for their form, or that are
// not understood, and of a stage in which nothing was typed yet.
var form = []Row{
	{
		Code: Unexplained, Meaning: "not explained", Cost: 9, Open: true, Passing: true, OfAxis: true,
		Said: Said{
			Component: "This is not {component}. {unitcheck|Check its size first, and then its sign.}",
			Line:      "This is not {sum}. {unitcheck|Compare it with the drawing, term by term.}",
			Lines:     "This is not {sum}. {unitcheck|Compare it with the drawing, term by term.}",
			Value:     "This value of {unknown} does not come out of the equations.",
			List:      "This list does not fit the forces on {body}.",
		},
		Hints: []Hint{
			{At: OnComponent, OfUnit: true,
				Ask:  "What is the unit of what you wrote, and what is the unit of a force?",
				Rule: "A component of a force is measured in newtons, as the force is. {law}"},
			{At: OnSum, OfUnit: true,
				Ask:  "What is the unit of each term of your line?",
				Rule: "Every term of the equation is a component of a force and is measured in newtons. {law}"},
			{At: OnComponent, Ask: "{look}", Rule: "{lie}"},
			{At: OnSum,
				Ask:  "Which of {names} have a component {along}, and is each of these in your line once?",
				Rule: "At rest the components that point {positive} and those that point {negative} balance: taken with their signs, they add up to zero."},
			{At: OnLine,
				Ask:  "From which equation, or from which earlier line, does this line come?",
				Rule: "An equation stays true if you do the same on both sides, one step at a time."},
			{At: OnValue,
				Ask:  "If you put this value into the equations, do they add up to zero?",
				Rule: "{start}"},
			{At: OnList,
				Ask:  "What touches {body}, and what pulls on it without touching it?",
				Rule: "{kinds}"},
		},
	},
	{
		Code: DoesNotFollow, Meaning: "a line that does not follow", Cost: 9, Open: true, Passing: true,
		Said: Said{
			Lines: "This line does not follow from the two equations and the given values. {unitcheck}",
			Line:  "This line does not follow from the two equations and the given values. {unitcheck}",
			Value: "This value of {unknown} does not come out of the equations.",
		},
	},
	{
		Code: Own, Meaning: "a mistake that the teacher watches for", Cost: 9,
	},
	{
		Code: NoAttempt,
		Hints: []Hint{
			{At: OnComponent, Ask: "How does {force} lie to {axis}: along it, at right angles to it, or at an angle?", Rule: "{lie}"},
			{At: OnSum,
				Ask:  "Which of {names} have a component {along}, and which way does each of these point?",
				Rule: "At rest the components that point {positive} and those that point {negative} balance: taken with their signs, they add up to zero."},
			{At: OnLine | OnValue, Ask: "How many unknowns does each of your equations have?", Rule: "{start}"},
			{At: OnList, Ask: "What touches {body}, and what pulls on it without touching it?", Rule: "{kinds}"},
		},
	},
	{
		Code: NoUnit, Meaning: "no unit", Cost: 9, UnitOnly: true,
		Said: Said{Value: "This is the right number for {unknown}. It needs its unit."},
		Hints: []Hint{{At: Anywhere,
			Ask:  "What does {unknown|this number} measure?",
			Rule: "A value is a number and a unit. Here it is asked in {unit}.",
			Step: "Write {symbol} after the number."}},
	},
	{
		Code: WrongUnit, Meaning: "a unit of something else", Cost: 9, UnitOnly: true,
		Said: Said{
			Component: "The number for {component} is right, but its unit is not the unit of a force.",
			Line:      "The numbers fit, but one of the units is not the unit of a force.",
			Value:     "This is the right number for {unknown}. Look at its unit.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "What does the unit in your line measure, and what is asked?",
			Rule: "A unit must measure what is asked: here {unit}.",
			Step: "Write {symbol} after the number."}},
	},
	{
		Code: Coarse, Meaning: "only one figure", Cost: 9,
		Said: Said{
			Component: "This value of {component} is right, but only to one figure. Two or three are needed.",
			Value:     "This value of {unknown} is right, but only to one figure. Two or three are needed.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "How many figures do the values in the problem have?",
			Rule: "A result has about as many figures as the values that it comes from: two or three here.",
			Step: "Keep four figures on the way, round once at the end, and give three."}},
	},
	{
		Code: NoEquation, Meaning: "not set equal to zero", Cost: 9, OfValue: true,
		Said: Said{
			Line:  "These are the right terms, but the line does not say yet what they add up to.",
			Value: "This line does not say yet which letter has this value.",
		},
		Hints: []Hint{
			{At: OnComponent | OnSum,
				Ask:  "What do all the components {along} add up to while {body} is at rest?",
				Rule: "When a body is at rest, nothing is left over along any axis."},
			{At: OnLine | OnValue,
				Ask:  "Which letter has this value?",
				Rule: "A line of working says that two things are equal: a letter on one side, its value on the other."},
		},
	},
	{
		Code: HoldsAlways, Meaning: "true whatever the forces are", Cost: 9,
		Said: Said{
			Component: "This is true of any force, so it says nothing about {force}.",
			Line:      "This is true whatever the forces are, so it says nothing about them.",
			List:      "This list is right, but not in a form that counts.",
			Value:     "This is true whatever the forces are, so it says nothing about them.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Could your line ever be false, whatever the forces are?",
			Rule: "A line that is true of any force says nothing about these. Use what the problem says about them."}},
	},
	{
		Code: StillUnknown, Meaning: "an unknown left in the answer", Cost: 9, OfValue: true,
		Said: Said{
			Component: "This is true, but {open|a letter in it} is not known yet.",
			Line:      "This is true, but {open|a letter in it} is not known yet.",
			Value:     "This is true, but {open|a letter in it} is not known yet.",
		},
		Hints: []Hint{{At: Anywhere,
			Ask:  "Which letter on the right side has no value yet?",
			Rule: "Find {open|that letter} first, from another equation, and then put it in."}},
	},
	{
		Code: NoWorking, Meaning: "a value without its working", Cost: 9,
		Said: Said{Value: "This is the right value, but your class shows the working, too. Write the line that it comes from, then the value."},
		Hints: []Hint{{At: OnLine | OnValue,
			Ask:  "Which of your equations did this value come from?",
			Rule: "A line of working has letters or several numbers in it, so that a reader can follow how the value was found.",
			Step: "Solve one of the sums for {unknown|the letter}, and end that line with the number and its unit."}},
	},
	{
		Code: TrueNotAsked, Meaning: "true, but not what was asked", Cost: 9, Elsewhere: true,
		Said: Said{
			Component: "This is true, but it is not {component}. It is saved for later steps.",
			Line:      "This is true, but it is not {sum}. It is saved for later steps.",
			Value:     "This is true, but it is not what is asked here.",
		},
	},
	{
		Code: UnknownName, Meaning: "an unknown letter", Cost: 9,
		Hints: []Hint{{At: Anywhere,
			Ask:  "Which letter of your line is not in the problem?",
			Rule: "The letters here are {letters}."}},
	},
	{
		Code: Unreadable, Meaning: "not understood", Cost: 9,
		Hints: []Hint{
			{At: OnComponent | OnSum | OnLine | OnValue,
				Ask:  "If you read your line aloud, sign by sign, where does it stop making sense?",
				Rule: "Every bracket needs its partner, every sign something on both sides, and every function its angle."},
			{At: OnList,
				Ask:  "Does every entry of your list name one force and its direction?",
				Rule: "Write the letter of a force and then its direction in words, such as up, down, left or right. Put a semicolon between two forces."},
		},
	},
}
