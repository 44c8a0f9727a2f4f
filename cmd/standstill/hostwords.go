package main

// What the host's commands say.
const (
	saidHost = `Lets a whole class practise on this machine: nothing has to be installed on or copied to
the students' machines. They connect with the ssh program that Windows, macOS, Linux and
ChromeOS already have, and prove who they are with the pass phrase on their slip (see
"standstill host slips") or with a key. All answers go into the record of the class on this
machine. On a terminal you see what each student is working on; otherwise one line gives the
address of the host, and log lines are written to standard error. Ctrl-C stops the host, and
nothing is lost.`

	saidHostReady     = "The host is ready on port %d. Its fingerprint is %s.\nStudents type one of these, with their own id instead of NAME:"
	saidHostLive      = "Press Enter to see the lab."
	saidOpenHost      = "Anybody who can reach this machine can connect under any name. The record marks these entries as unverified."
	saidOpenOrClass   = "--open is for a host without a class; leave out --open or --class"
	saidCannotListen  = "the host cannot use the address %s: %w"
	saidOtherClass    = "the class file for %q in the database differs from this one, so this host would give different numbers or problems. Use the same file on every host, or start one host with --replace-class to use this file instead"
	saidNoSuchStudent = "%q is not in this class"
	saidNoKey         = "%s is not a public key; it should be a file such as id_ed25519.pub"
	saidKeyAdded      = "The key %s can now be used by %s."
	saidSlip          = "%s\n  In a terminal, type:  ssh %s@%s -p %s\n  Fingerprint that ssh shows the first time: %s\n  Pass phrase: %s\n\n"

	saidMigrateWhat   = "record migrate is for a database: name it with --record postgres://owner@server/database"
	saidMigrated      = "The tables of %s are ready; steps done: %d."
	saidSameRecord    = "a record cannot be copied into itself"
	saidCopied        = "Copied from %s to %s: %d entries; %d were already there."
	saidCopyForgotten = "%d entries were not copied, because record forget deleted them from the second record."
	saidNotCopied     = "%d entries were not copied: another entry has the same id, or the entry is damaged."
)
