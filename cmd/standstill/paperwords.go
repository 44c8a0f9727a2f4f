package main

// What is said about sheets and problem files.
const (
	saidStudentsNeedClass = "to use --student, add either --class with a class file, or --numbers with a number key"
	saidClassOrNumbers    = "you cannot use --class and --numbers together, because a class file has its own number key"
	saidOneStudent        = "use --student only once, because this command needs the numbers of one student"
	saidSheetOfWhat       = "give the id of a problem, or print the set work of a class with --class and a class file"
	saidSheetWritten      = "The sheet is in %s. Open this file in a browser and print it.\n"
	saidReplaces          = " (replaces another problem with the same id)"
	saidSameID            = "  warning: the built-in bank also has a problem with the id %s (%q). With --bank, this file replaces the built-in problem. To use both problems, choose another id."
)

// What a new problem is asked for.
const (
	askID           = "Id: what is the short name of the problem, for example quay-lantern?"
	askTitle        = "Title: what is the title of the problem?"
	askTopic        = "Topic: which topic does the problem belong to? Type one of these: %s."
	askLevel        = "Level: 1 (easy), 2 (medium) or 3 (hard)?"
	askText         = "Text: what is the text of the problem? Type the whole text on one line. Instead of each number and its unit, type a letter in braces, as in: A lantern of mass {m} hangs from two cords."
	askGiven        = "Given: what is the value of %s? Type a number and a unit, as in 3.2 kg or 35 deg. A coefficient has no unit, as in 0.30."
	askFurther      = "Given: which other quantities are given, for example h = 0.9 m? Type one quantity, or press Enter if there are no more."
	askMeaning      = "Meaning: what does %s mean, for example height of the hook above the ring?"
	askBody         = "Body: which body do the forces act on, for example lantern? If there are several bodies, separate their names with commas, as in crate, pail. Press Enter if the body does not need a name."
	askTilt         = "Axes: by what angle is the x axis turned, for example alpha on a slope? If each body has a different angle, type the angles as in crate = alpha, pail = -beta. If the x axis points to the left, type left. Press Enter if the x axis points horizontally to the right."
	askForceName    = "Force %d: which letter do you use for this force, for example T1? Press Enter if there are no more forces."
	askForceKind    = "%s: what kind of force is this? Type one of these: %s."
	askForceOn      = "%s: on which body does this force act? Type one of these: %s."
	askForceBy      = "%s: what exerts this force, for example left cord? Press Enter to skip this question."
	askForcePoints  = "%s: which way does this force point? Type up, down, left or right, or two of these words, as in up left. You can also type an angle, measured anticlockwise from the x axis, as in 130 deg."
	saidTurnedSides = "The axes are turned, so right and left mean along the slope, and up and down mean at right angles to the slope."
	askForceAngle   = "%s: what is the angle of this force, for example alpha or 90 deg - beta?"
	askForceFrom    = "From which axis is this angle measured: x or y?"
	askForceSize    = "%s: what is the size of this force, for example mu*N? Press Enter if the size is unknown."
	askWeightSize   = "%s: what is the size of this force, for example m*g? Press Enter if the size is unknown."
	askEqual        = "Equal: which forces have the same size, for example T = T1, T2? Press Enter if all sizes can be different."
	askFind         = "Find: which unknowns must students find, for example T1, T2?"
	askVary         = "Vary: each student can get different numbers. What is the range of %s, for example 1.5 to 5.0 step 0.1? Press Enter if all students get the same value."
	askMore         = "What do you want to add? Type surplus to list given quantities that the solution does not need, figure to change the drawing, or watch to describe a mistake that you expect. Press Enter if the problem is complete."
	askSurplus      = "Surplus: which given quantities does the solution not need, for example h?"
	askFigure       = "Figure: what should the drawing show, for example T1 = post or body = round? For a view from above, type above. If there should be no drawing, type none."
	askWatchStage   = "Watch: at which stage do students make the mistake? Type diagram, components, x-sum, y-sum or solve."
	askWatchItem    = "Which body is the students' wrong line about? Type one of these: %s. Press Enter if the line itself shows which body is meant."
	askWatchTyped   = "What do students type when they make this mistake, for example N = w?"
	askWatchSay     = "What should the program say about the mistake? Example: The rope pulls up here, too."
	askNotes        = "Notes: what should other teachers know about this problem? Press Enter if there is nothing to add."
)

// What is said about the answers.
const (
	saidNeeded         = "This question needs an answer."
	saidIDForm         = "An id consists of lower-case letters, digits and hyphens, as in quay-lantern."
	saidIDTaken        = "The bank already has a problem with the id %s (%q). Choose another id."
	saidMoreForm       = "Type surplus, figure or watch, or press Enter to continue."
	saidWatchStage     = "Type one of these: %s."
	saidLevelForm      = "Type 1, 2 or 3."
	saidPairForm       = "Type a letter, an equals sign and a value, as in m = 3.2 kg."
	saidEqualForm      = "Type a letter, an equals sign and the names of the forces, as in T = T1, T2."
	saidNoPair         = "%q has no equals sign; type a letter, an equals sign and a value, as in m=3.2_kg"
	saidNoForcePart    = "%q cannot be used in --force; use the keys name, kind, points, angle, from, direction, size, by and on, each followed by = and a value"
	saidProblemWritten = "The problem file %s is ready. The program has solved the problem:\n\n"
)
