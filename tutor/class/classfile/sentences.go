package classfile

// What keeps a student from being added to a list.
const (
	saidNoListToAdd = "the class file does not have one student on each line; use a text editor to add the student"
	saidRosterToAdd = "the list of students comes from OneRoster files, and the next export from the school system will replace these files; add the student in the school system"
	saidNoIDsToAdd  = "the list has no column for ids; use a text editor to add the student"
)
