-- An entry is told apart by its id and by the student whom it names: a file in
-- which somebody put another name on entries adds entries, and takes no place
-- of the entries that it was copied from. An older program did not let both in.
DROP INDEX entry_student;
ALTER TABLE entry RENAME TO entry_0001;

CREATE TABLE entry (
	record  BLOB    NOT NULL CHECK (length(record) = 16),
	number  INTEGER NOT NULL CHECK (number > 0),
	id      BLOB    NOT NULL CHECK (length(id) = 16),
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
	PRIMARY KEY (record, number, id, student)
) STRICT, WITHOUT ROWID;

INSERT INTO entry (record, number, id, time, copy, student, kind, problem, hash, givens, stage, item, text, ref, detail)
SELECT record, number, id, time, copy, student, kind, problem, hash, givens, stage, item, text, ref, detail FROM entry_0001;

DROP TABLE entry_0001;

CREATE UNIQUE INDEX entry_named ON entry (id, student);

-- The primary key follows the student in this index, so that one student's
-- entries come in order without sorting.
CREATE INDEX entry_student ON entry (student);
