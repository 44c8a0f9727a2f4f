-- Half-typed lines: one for a student and an item, overwritten. They are no entries,
-- because what was not checked did not happen. Time is in milliseconds since 1970, UTC.
CREATE TABLE draft (
	student TEXT    NOT NULL,
	problem TEXT    NOT NULL,
	hash    TEXT    NOT NULL,
	givens  TEXT    NOT NULL,
	copy    INTEGER NOT NULL,
	stage   TEXT    NOT NULL,
	item    TEXT    NOT NULL,
	text    TEXT    NOT NULL,
	time    INTEGER NOT NULL,
	PRIMARY KEY (student, problem, hash, givens, copy, stage, item)
) STRICT, WITHOUT ROWID;
