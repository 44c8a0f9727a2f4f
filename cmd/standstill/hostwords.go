package main

// What the host's commands say.
const (
	saidHost = `Lets a whole class practise on this machine: nothing has to be installed or copied on the
students' machines. They connect with the ssh program that Windows, macOS, Linux and
ChromeOS bring along, and prove who they are with the pass phrase on their slip (see
"standstill host slips") or with a key. All answers go into the record of the class on this
machine. On a terminal you see who is where; otherwise one line says where the host listens,
and log lines follow on standard error. Ctrl-C stops the host in order.`

	saidHostReady     = "The host is ready on port %d. Its fingerprint is %s.\nStudents type one of these, with their own id in the place of NAME:"
	saidHostLive      = "Press enter to begin and to see the lab."
	saidOpenHost      = "Anybody who reaches this machine can come in, under any name: what is recorded proves nothing about who did it, and is marked so."
	saidOpenOrClass   = "--open is for a host without a class; leave out --open or --class"
	saidCannotListen  = "the host cannot listen at %s: %w"
	saidOtherClass    = "the database holds another class file for %q than this one, so this host would give other numbers or other problems. Use the same file on every host, or start one with --replace-class to make this one count"
	saidNoSuchStudent = "%q is not in this class"
	saidNoKey         = "%s holds no public key; it should be a file such as id_ed25519.pub"
	saidKeyAdded      = "The key %s now opens the door of %s."
	saidSlip          = "%s\n  In a terminal, type:  ssh %s@%s -p %s\n  Fingerprint shown the first time: %s\n  Pass phrase: %s\n\n"

	saidMigrateWhat = "record migrate is for a database: name it with --record postgres://owner@server/database"
	saidMigrated    = "The tables of %s are ready; steps done: %d."
	saidSameRecord  = "a record cannot be copied into itself"
	saidCopied      = "Copied from %s to %s: %d entries, and %d that were there already."
	saidNotCopied   = "%d entries were not copied, because another entry has their id or they have no valid form."
)
