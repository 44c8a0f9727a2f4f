package main

// What the commands of a class say.
const (
	saidClass = `A class file names the students and sets the work. Students start the program with it
and get numbers of their own. They give the teacher a hand-in file; the teacher collects
these files and prints a report.`
	saidCollect = `Takes hand-ins and whole records from files, or from a folder or USB stick with
everything in it. You can collect in any order and as often as you like: an entry is never
counted twice. Every answer is marked again with the student's own numbers. Anything that
does not fit is reported: another student's numbers, impossible times, changed verdicts.`
	saidClassReport = `Shows the progress of every student, who is stuck now, the most frequent mistakes, the
lines that students disputed, and what you should look at. Text, CSV, JSON and HTML
reports contain names; OneRoster and xAPI files contain ids and no names.`
	saidHandInHelp = `Writes everything that one student did into one file, as typed, one entry per line, in
the folder that you name or in the current one. The teacher collects the file. It contains the
student's id and name and what was typed, and nothing about anybody else.`
	saidNoPath          = "the path %s cannot be read: %v"
	saidPacked          = "%s contains the class, its %d students and its %d problems. Copy it to each machine as class.yaml, into the folder of the program."
	saidAdded           = "%s is now on the list, with the id %s, in %s. Copy the file to the students' machines again."
	saidNoClassFile     = "there is no class file %s; --class needs a class file, and --numbers %s uses a number key"
	saidNoClass         = "there is no class file; name one with --class, or make one with standstill class new"
	saidNothingToHandIn = "%s has not checked any line yet, so there is nothing to hand in"
	saidNotWritten      = "the file %s cannot be written: %s"
	saidNoFolder        = "there is no folder %s; create it first, or name another one"
	saidHandedIn        = "%s contains all %d entries of %s. Give it to your teacher; anyone who has the file can read the entries."
	saidWatch           = `Shows what is happening in a lab, from the hand-ins and records in folders, such as a shared
folder: the stage of each student, who has used every hint, and the last five mistakes. The
view is updated when something changes. Nothing is saved; press Ctrl-C to stop.`
	saidIsThere          = "the file %s exists already; choose another name, or change it with an editor"
	saidMade             = "%s is ready. Give it to the students: they start with standstill --class %s. If it is called class.yaml and is in the folder of the program, it is found automatically."
	saidNoAnswer         = "the input ended before the first answer, so nothing was written"
	saidAskName          = "Name: what is the class called?"
	saidAskList          = "Students: which CSV file or OneRoster folder lists them? Or type their names with commas between them."
	saidAskWork          = "Work: which problems or topics do you want to set? Type their ids with commas between them; standstill bank list shows them."
	saidAskDue           = "Due: what is the due date, for example 2026-03-09? Leave it empty for none."
	askMend              = "Press Enter to write the file, or type the name of a part to change it."
	askMendWrong         = "Type the name of a part to change it."
	saidOldAnswer        = "Your answer was: %s"
	saidNoPart           = "There is no part %q; the parts are %s."
	saidTakenUp          = "Your answers from last time were read from %s."
	saidDraftKept        = "you stopped before the end; your answers are saved in %s, and the same command continues from there"
	saidExported         = "%s has been written. %s"
	saidLeaves           = "It contains the names of %d students and what they did; be careful whom you give it to."
	saidXAPILeaves       = "It contains the ids of %d students and every line that they checked, but no names."
	saidRosterLeaves     = "It contains the ids of %d students and a score for each problem, but no names."
	saidRosterRefused    = "these students are left out because OneRoster does not accept their ids: %s"
	saidNotTaken         = "files that could not be read: %d"
	saidNoFile           = "%s is a folder or a device, so nothing was written; name a file"
	saidKeepsClass       = "the file %s is a class file, so it was not changed; name another file"
	saidKeepsRecord      = "the file %s is a record, so it was not changed; name another file"
	saidNotOurs          = "the file %s exists already and was not written by this command; name another file, or add --force to replace it"
	saidNoRoster         = "the class file has no key oneroster, so the school system would not know the ids in the results; make the class from a OneRoster folder with class new --students FOLDER"
	saidNotInClass       = "there is no student %q in the class, or several students match"
	saidAcceptedLine     = "The line of %s in %s counts as right from now on: %s"
	saidTakenBack        = "The tutor's own judgement counts again for the line of %s in %s: %s"
	saidProgress         = "marked %d %% (%d of %d)"
	saidWillForget       = "This deletes %d entries of %s from %s. It cannot be undone. To delete them, type yes."
	saidWillForgetOld    = "This deletes the %[1]d entries in %[3]s that were made before %[2]s. It cannot be undone. To delete them, type yes."
	saidForgottenOld     = "All entries that were made before %s are deleted: %d from %s. Hand-ins, exports and backups that were made earlier still exist."
	saidNoDay            = "%q is not a date; write a date such as 2026-08-01"
	saidNothingForgotten = "nothing was deleted"
	saidNobodyToForget   = "there is no student %q, in the class list or in the record; nothing was deleted"
	saidForgotten        = "All entries of %s are deleted: %d from %s. Hand-ins and exports that were made earlier still exist."
)
