package main

// What the commands of a class say.
const (
	saidClass = `A class file names the students and sets the work. Students start the program with it
and get numbers of their own; they hand in; the teacher collects and reports.`
	saidCollect = `Takes hand-ins and whole records from files, or from everything below a folder, such as
a stick. In any order, any number of times: what is there already is not taken twice.
Every answer is marked again against the student's own numbers. What does not fit is
told: numbers of another copy, times that cannot be, verdicts that were changed.`
	saidClassReport = `Says for every student and problem how far it is, who is stuck now, which mistakes are
most frequent, which lines were kept against the tutor's judgement, and what to look at.`
	saidHandInHelp = `Writes everything that one student did into one file, as typed, one entry on a line, in
the folder named or this one. The teacher collects it. The file holds the student's id
and name and what was typed, and nothing of anybody else.`
	saidNoClass         = "there is no class file; name one with --class, or make one with standstill class new"
	saidNothingToHandIn = "%s has nothing to hand in so far"
	saidNotWritten      = "the file %s cannot be written: %s"
	saidHandedIn        = "%s holds all %d entries of %s. Whoever has the file can read them; give it to your teacher."
)
