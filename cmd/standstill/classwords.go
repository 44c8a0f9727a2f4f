package main

// saidFileExists refuses to write over a file; every command begins so.
const saidFileExists = "the file %s already exists; choose another name"

// What the commands of a class say.
const (
	saidClass = `A class file lists the students of a class and the problems that they have to
solve. When students start the program with the class file, each student gets
different numbers. Each student gives the teacher a hand-in file. The teacher
collects these files and prints a report.`
	saidCollect = `This command collects students' work from hand-ins and from record files. Type
the names of the files, or the name of a folder or USB stick that contains them.
You can collect the files in any order and as often as you like, because no
entry is counted twice. The program marks every answer again with the student's
own numbers. It reports everything that looks wrong, such as the numbers of
another student, impossible times or changed verdicts.`
	saidClassReport = `This command shows the progress of every student, the students who are stuck,
the most frequent mistakes, the lines that students disputed, and everything
that looks wrong. Text, CSV, JSON and HTML reports contain the students'
names. OneRoster and xAPI files contain ids but no names.`
	saidHandInHelp = `This command writes all entries of one student into one file, in the folder that
you name or in the current folder. The student gives this file to the teacher.
It contains the id and the name of the student and everything that the student
typed, but nothing about other students.`
	saidNoPath          = "the path %s cannot be read: %v"
	saidPacked          = "The file %s contains the class, with %s and %s. Copy this file into the program's folder on each machine, and name it class.yaml."
	saidAdded           = "%s is now on the class list with the id %s. The list is in the file %s. Copy this file to the students' machines again."
	saidNoClassFile     = "there is no class file %s; if %[1]s is a number key, use --numbers instead of --class"
	saidNoClass         = "no class file was found; give the path of a class file with --class, or create one with standstill class new"
	saidNothingToHandIn = "%s has not checked any lines yet, so there is nothing to hand in"
	saidNotWritten      = "the file %s cannot be written: %s"
	saidNoFolder        = "there is no folder %s; create it first, or choose another folder"
	saidHandedIn        = "The file %[1]s contains all the work of %[3]s (%[2]s). Give this file to your teacher. Anyone who has the file can read this work."
	saidWatch           = `This command shows what the students in a lab are doing now: the stage that each
student has reached, the students who have used every hint, and the last five
mistakes. It reads the hand-ins and records in the folders that you name, for
example in a shared folder. It updates the view when something changes, and
saves nothing. Press Ctrl-C to stop.`
	saidMade             = "The class file %s is ready. Give this file to the students. They start the program with standstill --class %s. If the file is in the program's folder and is called class.yaml, the program finds it automatically."
	saidNoAnswer         = "the input ended before the first answer, so nothing was written"
	saidAskName          = "Name: what is the name of the class?"
	saidAskList          = "Students: which CSV file or OneRoster folder contains the list of students? You can also type the names of the students, separated by commas."
	saidAskWork          = "Work: which problems or topics do you want to set? Type their ids, separated by commas. The command standstill bank list shows all ids."
	saidAskDue           = "Due: what is the due date, for example 2026-03-09? Press Enter if there is no due date."
	askMend              = "Press Enter to save the file. To change an answer, type its name, which is the text before the colon."
	askMendWrong         = "To change an answer, type its name, which is the text before the colon."
	saidOldAnswer        = "Your answer was: %s"
	saidNoPart           = "There is no answer called %q. You can change these answers: %s."
	saidTakenUp          = "Your answers from last time were saved in %s, so you can continue where you stopped."
	saidDraftKept        = "you stopped before the end. Your answers are saved in %s. To continue with the next question, type the same command again"
	saidExported         = "The report is in %s. %s"
	saidLeaves           = "It contains the names and the work of %s, so be careful who sees it."
	saidXAPILeaves       = "It contains every line that %s checked, with ids instead of names."
	saidRosterLeaves     = "It contains the scores of %s in each problem, with ids instead of names."
	saidRosterRefused    = "some students are missing from the files, because OneRoster does not accept their ids: %s"
	saidNotTaken         = "%s could not be read"
	saidNoFile           = "%s is a folder or a device, so nothing was written; choose another name"
	saidKeepsClass       = "the file %s is a class file and was not changed; choose another name"
	saidKeepsRecord      = "the file %s is a record and was not changed; choose another name"
	saidNotOurs          = saidFileExists + ", or add --force to replace the file"
	saidNoRoster         = "the class file has no oneroster key, so the school system would not recognise the ids in the results; to create a class file from a OneRoster folder, use standstill class new with --students FOLDER"
	saidNotInClass       = "there is no student %q in the class, or several students have this name"
	saidAcceptedLine     = "From now on, this line by %s in %s counts as right: %s"
	saidTakenBack        = "The tutor's verdict counts again for this line by %s in %s: %s"
	saidProgress         = "marked %d %% (%d of %d)"
	saidWillForget       = "This command will delete all entries of %[2]s (%[1]s) from %[3]s. You cannot undo this. To delete the entries, type yes."
	saidWillForgetOld    = "This command will delete all entries made before %[2]s (%[1]s) from %[3]s. You cannot undo this. To delete the entries, type yes."
	saidForgottenOld     = "All entries made before %[1]s have been deleted from %[3]s (%[2]s). Earlier hand-ins, exports and backups still contain these entries."
	saidNoDay            = "%q is not a date; type a date such as 2026-08-01"
	saidNothingForgotten = "nothing was deleted"
	saidNobodyToForget   = "there is no student %q on the class list or in the record, so nothing was deleted"
	saidForgotten        = "All entries of %[1]s have been deleted from %[3]s (%[2]s). Earlier hand-ins and exports still contain these entries."
)
