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
most frequent, which lines were kept against the tutor's judgement, and what to look at.
Text, CSV, JSON and the page hold names; OneRoster and xAPI files hold ids and no names.`
	saidHandInHelp = `Writes everything that one student did into one file, as typed, one entry on a line, in
the folder named or this one. The teacher collects it. The file holds the student's id
and name and what was typed, and nothing of anybody else.`
	saidNoPath          = "what lies at %s cannot be read: %v"
	saidPacked          = "%s holds the class with %d students and %d problems that are set, and everything that they need. Copy it to each machine as class.yaml, beside the program."
	saidAdded           = "%s is on the list now, with the id %s, in %s. Copy the file to the machines again."
	saidNoClassFile     = "there is no class file %s; --class takes a class file, and --numbers %s the numbers of a key"
	saidNoClass         = "there is no class file; name one with --class, or make one with standstill class new"
	saidNothingToHandIn = "%s has nothing to hand in so far"
	saidNotWritten      = "the file %s cannot be written: %s"
	saidNoFolder        = "there is no folder %s; make it first, or name another one"
	saidHandedIn        = "%s holds all %d entries of %s. Whoever has the file can read them; give it to your teacher."
	saidWatch           = `Follows hand-ins and records in folders, such as a shared one into which students
practise: who is at which stage, who has asked for every hint, the last five mistakes.
The view is written again when something changes. Nothing is kept; Ctrl-C ends it.`
	saidIsThere          = "the file %s is there already; choose another name, or change it with an editor"
	saidMade             = "%s is made. Give it to the students: they start with standstill --class %s, or find it as class.yaml beside the program."
	saidNoAnswer         = "the answers end before the class file is made; nothing is written"
	saidAskName          = "Name: what is the class called?"
	saidAskList          = "Students: which CSV file or OneRoster folder lists them? Or type their names with commas between them."
	saidAskWork          = "Work: which problems or topics are set? Ids with commas between them, as bank list shows them."
	saidAskDue           = "Due: until when, as in 2026-03-09? Leave it empty for no date."
	askMend              = "Press Enter to write the file, or type a part to change it: %s."
	saidNoPart           = "There is no part %q; the parts are %s."
	saidTakenUp          = "Your answers from last time are taken from %s."
	saidDraftKept        = "the answers end before the file is made; they are kept in %s, and the same command goes on from there"
	saidExported         = "%s is written. %s"
	saidLeaves           = "It holds the names of %d students and what they did; mind who gets it."
	saidXAPILeaves       = "It holds the ids of %d students and every line that they handed in, and no names."
	saidRosterLeaves     = "It holds the ids of %d students and a score for each problem, and no names."
	saidRosterRefused    = "these students are left out because OneRoster does not take their ids: %s"
	saidNotTaken         = "files that could not be read: %d"
	saidNoFile           = "the path %s leads to a folder or a device, and nothing is written to it; name a file"
	saidKeepsClass       = "the file %s is a class file and stays as it is; name another file"
	saidKeepsRecord      = "the file %s is a record and stays as it is; name another file"
	saidNotOurs          = "the file %s is there already and was not written by this command; name another file, or add --force to write over it"
	saidNoRoster         = "the class file does not come from OneRoster, so results would name ids that no school system knows; it needs the key oneroster"
	saidNotInClass       = "there is no one student %q in the class"
	saidAcceptedLine     = "The line of %s in %s counts as right from now on: %s"
	saidTakenBack        = "The line of %s in %s is judged by the tutor again: %s"
	saidProgress         = "marked %d %% (%d of %d)"
	saidWillForget       = "This deletes %d entries of %s from %s for good. Type yes to delete them."
	saidNothingForgotten = "nothing is deleted"
	saidNobodyToForget   = "nobody here is called %q, on the list or beside it; nothing is deleted"
	saidForgotten        = "%s is forgotten: %d entries are deleted from %s. Files that were handed in or exported before are not touched."
)
