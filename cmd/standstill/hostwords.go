package main

// What the host's commands say.
const (
	saidHost = `This command lets a whole class practise on this machine. You do not have to
install anything on the students' machines. The students connect with ssh, a
program that comes with Windows, macOS, Linux and ChromeOS. They log in with the
pass phrase on their slip (see "standstill host slips") or with a public key.
The program saves all answers in the class record on this machine. In a
terminal, the command shows what each student is working on. Without a terminal,
it prints one line with the address of the host, and writes a log to standard
error. To stop the host, press Ctrl-C. All work is saved.`

	saidHostReady     = "The host is ready on port %d. The fingerprint of its key is %s.\nStudents type one of these commands, with %s instead of NAME:"
	saidOwnID         = "their own id"
	saidAnyName       = "any name"
	saidHostLive      = "Press Enter to see what the students are doing."
	saidOpenHost      = "Anybody who can reach this machine can connect under any name. The record marks these names as unverified."
	saidOpenOrClass   = "the flags --open and --class cannot be used together, because a host with --open has no class"
	saidCannotListen  = "the host cannot use the address %s: %w"
	saidOtherClass    = "the database contains a different class file for %q, so students on this host would get different numbers or problems. Use the same class file on every host, or start one host with --replace-class to put this class file into the database"
	saidNoSuchStudent = "there is no student %q in this class"
	saidNoKey         = "the file %s does not contain a public key; use a file such as id_ed25519.pub"
	saidKeyAdded      = "%[2]s can now connect with the key %[1]s."
	saidSlip          = "%s\n  In a terminal, type:  ssh %s@%s -p %s\n  The first time, ssh shows this fingerprint: %s\n  Pass phrase: %s\n\n"

	saidMigrateWhat   = "standstill record migrate needs the address of a database, as in --record postgres://owner@server/database"
	saidMigrated      = "The tables in %s are ready. Updates made: %d."
	saidSameRecord    = "a record cannot be copied into itself"
	saidCopied        = "Entries copied from %s to %s: %d. Entries that the second record already had: %d."
	saidCopyForgotten = "Entries not copied because they were deleted from the second record (with “standstill record forget”): %d."
	saidNotCopied     = "Entries not copied because they are damaged, or because another entry has the same id: %d."
)
