-- What a file must say of itself to be a Standstill record: "Stnd".
PRAGMA application_id = 0x53746e64;

-- The record's own name, and the last running number it gave out. Numbers are
-- never given twice, so that a gap shows that something was deleted.
CREATE TABLE record (
	one  INTEGER PRIMARY KEY CHECK (one = 1),
	id   BLOB    NOT NULL CHECK (length(id) = 16),
	last INTEGER NOT NULL CHECK (last >= 0)
) STRICT;

-- Entries of this record and of others that were merged into it. A record file
-- that was copied to two machines gives the same number twice; the id tells
-- such entries apart. Time is in milliseconds since 1970, UTC.
CREATE TABLE entry (
	record  BLOB    NOT NULL CHECK (length(record) = 16),
	number  INTEGER NOT NULL CHECK (number > 0),
	id      BLOB    NOT NULL UNIQUE CHECK (length(id) = 16),
	time    INTEGER NOT NULL,
	student TEXT    NOT NULL,
	kind    TEXT    NOT NULL,
	problem TEXT    NOT NULL,
	hash    TEXT    NOT NULL,
	copy    INTEGER NOT NULL CHECK (copy >= 0),
	givens  TEXT    NOT NULL,
	stage   TEXT    NOT NULL,
	item    TEXT    NOT NULL,
	text    TEXT    NOT NULL,
	ref     TEXT    NOT NULL,
	detail  TEXT    NOT NULL,
	PRIMARY KEY (record, number, id)
) STRICT, WITHOUT ROWID;

-- The primary key follows the student in this index, so that one student's
-- entries come in order without sorting.
CREATE INDEX entry_student ON entry (student);

CREATE TABLE student (
	place INTEGER PRIMARY KEY,
	id    TEXT NOT NULL UNIQUE,
	name  TEXT NOT NULL
) STRICT;

-- The text of every problem file that was seen, so that a later edit of the
-- file changes nothing about yesterday's answers.
CREATE TABLE problem (
	hash TEXT PRIMARY KEY,
	id   TEXT NOT NULL,
	text TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE setting (
	key   TEXT PRIMARY KEY,
	value TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- What can be computed again at any time.
CREATE TABLE cache (
	key   TEXT PRIMARY KEY,
	value BLOB NOT NULL
) STRICT, WITHOUT ROWID;
