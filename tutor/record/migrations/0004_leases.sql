-- Which visit of a student is the one that counts, where many come to one host.
CREATE TABLE lease (
	student TEXT    PRIMARY KEY,
	token   TEXT    NOT NULL,
	host    TEXT    NOT NULL,
	since   INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
