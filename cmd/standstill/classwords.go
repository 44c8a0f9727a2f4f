package main

// saidFileExists refuses to write over a file; every command begins so.
const saidFileExists = "the file %s already exists; choose another name"

// What the commands of a class say.
const (
	saidClass = `A class file lists the students of a class and the problems that they have to
solve. When students start the program with the class file, each student gets
different numbers. Each student gives the teacher a hand-in file. The teacher
collects these files and prints a report.`
	saidCollect = `This command collects the work of students from hand-ins and from whole records.
Name the files, or a folder or USB stick that contains them. You can collect the
files in any order and as often as you like, because no entry is counted twice.
The program marks every answer again with the student's own numbers. It reports
everything that looks wrong, such as another student's numbers, impossible times
or changed verdicts.`
	saidClassReport = `This command shows the progress of every student, the students who are stuck,
the most frequent mistakes, the lines that students disputed, and everything
that looks wrong. Text, CSV, JSON and HTML reports contain the students'
names. OneRoster and xAPI files contain ids and no names.`
	saidHandInHelp = `This command writes all entries of one student into one file, in the folder that
you name or in the current folder. The student gives this file to the teacher.
It contains the id and the name of the student and everything that the student
typed, and nothing about other students.`
	saidNoPath          = "the path %s cannot be read: %v"
	saidPacked          = "The file %s contains the class with %d students and %d problems. Copy this file to each machine, into the folder of the program, under the name class.yaml."
	saidAdded           = "%s is now on the class list with the id %s. The list is in %s. Copy this file to the students' machines again."
	saidNoClassFile     = "there is no class file %s; --class needs a class file, and --numbers %s uses a number key"
	saidNoClass         = "there is no class file; give the path of a class file with --class, or make a class file with standstill class new"
	saidNothingToHandIn = "%s has not checked any line yet, so there is nothing to hand in"
	saidNotWritten      = "the file %s cannot be written: %s"
	saidNoFolder        = "there is no folder %s; create the folder first, or name another folder"
	saidHandedIn        = "The file %[1]s contains all entries of %[3]s (number of entries: %[2]d). Give this file to your teacher. Anyone who has the file can read the entries."
	saidWatch           = `This command shows what the students in a lab are doing now: the stage that each
student has reached, the students who have used every hint, and the last five
mistakes. It reads the hand-ins and records in the folders that you name, for
example in a shared folder. It updates the view when something changes, and
saves nothing. Press Ctrl-C to stop.`
	saidMade             = "The class file %s is ready. Give this file to the students. They start the program with standstill --class %s. The program finds the file automatically if it is in the folder of the program and its name is class.yaml."
	saidNoAnswer         = "the input ended before the first answer, so nothing was written"
	saidAskName          = "Name: what is the name of the class?"
	saidAskList          = "Students: which CSV file or OneRoster folder contains the list of students? You can also type the names of the students with commas between them."
	saidAskWork          = "Work: which problems or topics do you want to set? Type their ids with commas between them. The command standstill bank list shows all ids."
	saidAskDue           = "Due: what is the due date, for example 2026-03-09? Press Enter if there is no due date."
	askMend              = "Press Enter to write the file. To change an answer, type its name, which is the text before the colon."
	askMendWrong         = "To change an answer, type its name, which is the text before the colon."
	saidOldAnswer        = "Your answer was: %s"
	saidNoPart           = "There is no answer called %q. The answers are called %s."
	saidTakenUp          = "Your answers from last time are in %s. You continue from there."
	saidDraftKept        = "you stopped before the end; your answers are saved in %s; to continue with the next question, type the same command again"
	saidExported         = "The report is in %s. %s"
	saidLeaves           = "It contains the names and the work of %d students, so be careful whom you give it to."
	saidXAPILeaves       = "It contains the ids of %d students and every line that these students checked, but no names."
	saidRosterLeaves     = "It contains the ids of %d students and a score for each problem, but no names."
	saidRosterRefused    = "these students are left out because OneRoster does not accept their ids: %s"
	saidNotTaken         = "the number of files that could not be read is %d"
	saidNoFile           = "%s is a folder or a device, so nothing was written; choose another name"
	saidKeepsClass       = "the file %s is a class file and was not changed; choose another name"
	saidKeepsRecord      = "the file %s is a record and was not changed; choose another name"
	saidNotOurs          = saidFileExists + ", or add --force to replace the file"
	saidNoRoster         = "the class file has no key oneroster, so the school system would not know the ids in the results; make the class file from a OneRoster folder with standstill class new --students FOLDER"
	saidNotInClass       = "the class has no student %q, or several students have this name"
	saidAcceptedLine     = "From now on, this line of %s in %s counts as right: %s"
	saidTakenBack        = "The verdict of the tutor counts again for this line of %s in %s: %s"
	saidProgress         = "marked %d %% (%d of %d)"
	saidWillForget       = "From %[3]s, this command will delete all entries of %[2]s (number of entries: %[1]d). You cannot undo this. To delete the entries, type yes."
	saidWillForgetOld    = "From %[3]s, this command will delete all entries made before %[2]s (number of entries: %[1]d). You cannot undo this. To delete the entries, type yes."
	saidForgottenOld     = "All entries made before %[1]s have been deleted from %[3]s (number of entries: %[2]d). Older hand-ins, exports and backups still contain these entries."
	saidNoDay            = "%q is not a date; type a date such as 2026-08-01"
	saidNothingForgotten = "nothing was deleted"
	saidNobodyToForget   = "there is no student %q on the class list or in the record, so nothing was deleted"
	saidForgotten        = "All entries of %[1]s have been deleted from %[3]s (number of entries: %[2]d). Older hand-ins and exports still contain these entries."
)
