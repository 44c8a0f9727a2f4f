package main

// What is said about sheets and new problem files.
const (
	saidStudentsNeedClass = "--student needs --class with a class file, or --numbers with the key that numbers come from"
	saidClassOrNumbers    = "--class and --numbers cannot be used together: a class file has its own number key"
	saidOneStudent        = "name one student; a worked solution is for one set of numbers"
	saidSheetOfWhat       = "name a problem, or give --class and a class file to print the set work"
	saidSheetWritten      = "%s is written. Open it in a browser and print it.\n"
	saidFileIsThere       = "the file %s exists already and was not changed; choose another name"
)

// What a new problem is asked for.
const (
	askID          = "Id: a short name for the file, of lower-case letters, digits and hyphens?"
	askTitle       = "Title: by what do students choose it?"
	askTopic       = "Topic: one of %s?"
	askLevel       = "Level: 1 easy, 2 medium or 3 hard?"
	askText        = "Text: what does the problem say? Letters of givens stand in braces, as in {m}."
	askGiven       = "Given: a letter and its value, as in alpha = 35 deg; empty when all are there."
	askTilt        = "Axes: by which angle is the x axis turned, as in alpha? Empty for level axes."
	askBodies      = "Bodies: their names with commas, as in A, B; empty where there is only one."
	askForceOn     = "On: on which body does it act?"
	askForceName   = "Force: its letter, as in T1; empty when all are there."
	askForceKind   = "Kind: tension, weight, normal, friction, spring, push, pull or strut?"
	askForcePoints = "Points: up, down, left, right, two of them, or full-circle as in 130 deg?"
	askForceAngle  = "Angle: which, as in alpha or 90 deg - beta?"
	askForceFrom   = "From: is it measured from x or from y?"
	askForceSize   = "Size: as in m*g or mu*N; empty where it is to be found."
	askFind        = "Find: which unknowns are asked for, with commas?"
	askVary        = "Vary: what is drawn, as in m = 1.5 to 5.0 step 0.1; empty when all are there."
	askAgain       = "Again: which part: text, topic, given, tilt, forces, find or vary?"
)

// What is said about the answers.
const (
	saidNeeded         = "Something must stand here."
	saidIDForm         = "An id has lower-case letters, digits and hyphens, as in quay-lantern."
	saidTopicForm      = "Type one of the topics as it is written, as in two-strings."
	saidLevelForm      = "Type 1, 2 or 3."
	saidPairForm       = "Type a letter, an equals sign and its value, as in m = 3.2 kg."
	saidKindForm       = "Type one of the kinds as it is written, as in tension."
	saidBodyForm       = "Type one of the bodies' names as it is written."
	saidFromForm       = "Type x or y."
	saidPartForm       = "Type the name of a part as it is written, as in forces."
	saidNoPair         = "%q is not a letter with a value, as in m=3.2_kg"
	saidNoForcePart    = "%q is no part of a force; expected name, kind, points, angle, from, direction, size or on, each with = and a value"
	saidAnswersEnd     = "the answers end before the problem is made; nothing is written"
	saidProblemWritten = "%s is written and solved.\n\n"
)
