package main

// What is said about sheets and problem files.
const (
	saidStudentsNeedClass = "--student needs --class with a class file, or --numbers with a number key"
	saidClassOrNumbers    = "--class and --numbers cannot be used together: a class file has its own number key"
	saidOneStudent        = "name one student; a worked solution is for one set of numbers"
	saidSheetOfWhat       = "name a problem, or give --class and a class file to print the set work"
	saidSheetWritten      = "%s has been written. Open it in a browser and print it.\n"
	saidReplaces          = " (replaces another problem with this id)"
	saidSameID            = "  warning: the built-in bank also has a problem %s, %q; with --bank this file replaces it. Choose another id to keep both."
	saidFileIsThere       = "the file %s exists already and was not changed; choose another name"
)

// What a new problem is asked for.
const (
	askID           = "Id: what is the short name of the problem, for example quay-lantern?"
	askTitle        = "Title: what do students see in the list?"
	askTopic        = "Topic: which topic does it belong to? One of %s."
	askLevel        = "Level: 1 (easy), 2 (medium) or 3 (hard)?"
	askText         = "Text: what does the problem say? Type it on one line, and write a letter in braces where its number belongs: A lantern of mass {m} hangs from two cords."
	askGiven        = "Given: what is %s? A number and a unit, as in 3.2 kg or 35 deg."
	askFurther      = "Is anything else given that the text does not show, for example h = 0.9 m? Press Enter if not."
	askMeaning      = "Meaning: what is %s, for example height of the hook above the ring?"
	askBody         = "Body: what do the forces act on, for example lantern? If there are several bodies, put commas between them, as in crate, pail. Press Enter to leave it out."
	askTilt         = "Axes: by what angle is the x axis turned, for example alpha on a slope? For a different angle for each body, type crate = alpha, pail = -beta. If positive x is to the left, type left. Press Enter if x is horizontal and points to the right."
	askForceName    = "Force %d: what is its letter, for example T1? Press Enter if there are no more forces."
	askForceKind    = "%s: what kind of force is it? One of %s."
	askForceOn      = "%s: on which body does it act? One of %s."
	askForceBy      = "%s: what exerts it, for example left cord? Press Enter to leave it out."
	askForcePoints  = "%s: which way does it point? Type up, down, left or right, or two of them as in up left; or type an angle counter-clockwise from the x axis, as in 130 deg."
	saidTurnedSides = "The axes are turned: right and left are along the slope, up and down at right angles to it."
	askForceAngle   = "%s: at what angle, for example alpha or 90 deg - beta?"
	askForceFrom    = "From which axis is this angle measured: x or y?"
	askForceSize    = "%s: what is its size, for example mu*N? Press Enter if the size is unknown."
	askWeightSize   = "%s: what is its size, for example m*g? Press Enter if the size is unknown."
	askEqual        = "Do two forces have the same size, for example T = T1, T2? Press Enter if not."
	askFind         = "Find: what is asked for, for example T1, T2?"
	askVary         = "Each student can get different numbers. What is the range for %s, for example 1.5 to 5.0 step 0.1? Press Enter if all students get the same number."
	askMore         = "Anything else? If a given is not needed, type surplus; to say more about the drawing, type figure; for a mistake that you expect, type watch. Press Enter if not."
	askSurplus      = "Surplus: which givens does the solution not need, for example h?"
	askFigure       = "Figure: what does the drawing show, for example T1 = post or body = round? For a view from above, type above; for no drawing, type none."
	askWatchStage   = "Watch: at which stage is the mistake made? diagram, components, x-sum, y-sum or solve."
	askWatchItem    = "Which body is the line about? One of %s. Press Enter if the line itself shows this."
	askWatchTyped   = "What does the student type, for example N = w?"
	askWatchSay     = "What should the program say? For example: The rope pulls up here, too."
	askNotes        = "Notes: what should other teachers know about the problem? Press Enter to leave this out."
)

// What is said about the answers.
const (
	saidNeeded         = "An answer is needed here."
	saidIDForm         = "An id consists of lower-case letters, digits and hyphens, as in quay-lantern."
	saidIDTaken        = "The bank already has a problem %s, %q; choose another id."
	saidMoreForm       = "Type surplus, figure or watch, or press Enter to go on."
	saidWatchStage     = "Type one of %s."
	saidLevelForm      = "Type 1, 2 or 3."
	saidPairForm       = "Type a letter, an equals sign and its value, as in m = 3.2 kg."
	saidEqualForm      = "Type a letter, an equals sign and the forces, as in T = T1, T2."
	saidNoPair         = "%q is not a letter with a value, as in m=3.2_kg"
	saidNoForcePart    = "%q is not a part of a force; expected name, kind, points, angle, from, direction, size or on, each with = and a value"
	saidProblemWritten = "%s has been written, and the problem is solved.\n\n"
)
