-- What was forgotten, so that it does not come back with another record: of each entry a
-- hash of its id and its student, with a key that is a setting. Nobody can tell from it
-- who that was.
CREATE TABLE forgotten (
	hash BLOB PRIMARY KEY CHECK (length(hash) = 32)
) STRICT, WITHOUT ROWID;
