package main

// What the host's commands say.
const (
	saidHost = `This command lets a whole class practise on this machine. You do not have to
install or copy anything to the students' machines. The students connect with
ssh, a program that comes with Windows, macOS, Linux and ChromeOS. They identify
themselves with the pass phrase on their slip (see "standstill host slips") or
with a key. The program saves all answers in the record of the class on this
machine. On a terminal, the command shows what each student is working on.
Without a terminal, it prints one line with the address of the host, and writes
a log to standard error. To stop the host, press Ctrl-C. All work is saved.`

	saidHostReady     = "The host is ready on port %d. The fingerprint of its key is %s.\nStudents type one of these commands, with their own id instead of NAME:"
	saidHostLive      = "Press Enter to see what the students are doing."
	saidOpenHost      = "Anybody who can reach this machine can connect under any name. The record marks these names as unverified."
	saidOpenOrClass   = "a host with --open has no class; remove either --open or --class"
	saidCannotListen  = "the host cannot use the address %s: %w"
	saidOtherClass    = "the class file for %q in the database differs from this class file, so this host would give different numbers or problems. Use the same class file on every host, or start one host with --replace-class to put this class file into the database"
	saidNoSuchStudent = "%q is not in this class"
	saidNoKey         = "the file %s does not contain a public key; use a file such as id_ed25519.pub"
	saidKeyAdded      = "%[2]s can now connect with the key %[1]s."
	saidSlip          = "%s\n  In a terminal, type:  ssh %s@%s -p %s\n  The first time, ssh shows this fingerprint: %s\n  Pass phrase: %s\n\n"

	saidMigrateWhat   = "standstill record migrate needs the address of a database, as in --record postgres://owner@server/database"
	saidMigrated      = "The tables of %s are ready. Number of update steps: %d."
	saidSameRecord    = "a record cannot be copied into itself"
	saidCopied        = "Entries copied from %s to %s: %d. The second record already had %d of the entries."
	saidCopyForgotten = "Entries not copied because you deleted them from the second record with record forget: %d."
	saidNotCopied     = "Entries not copied because they are damaged, or because another entry has the same id: %d."
)
