-- Many books in one database, one for each class: every key begins with the book. Texts
-- are compared byte by byte, as everywhere in a record. Times are milliseconds since 1970,
-- UTC.
CREATE TABLE record (
	book text   COLLATE "C" NOT NULL,
	id   bytea  NOT NULL CHECK (length(id) = 16),
	last bigint NOT NULL CHECK (last >= 0),
	PRIMARY KEY (book, id)
);

CREATE TABLE entry (
	book    text    COLLATE "C" NOT NULL,
	record  bytea   NOT NULL CHECK (length(record) = 16),
	number  bigint  NOT NULL CHECK (number > 0),
	id      bytea   NOT NULL CHECK (length(id) = 16),
	time    bigint  NOT NULL,
	student text    COLLATE "C" NOT NULL,
	kind    text    COLLATE "C" NOT NULL,
	problem text    COLLATE "C" NOT NULL,
	hash    text    COLLATE "C" NOT NULL,
	copy    bigint  NOT NULL CHECK (copy >= 0),
	givens  text    COLLATE "C" NOT NULL,
	stage   text    COLLATE "C" NOT NULL,
	item    text    COLLATE "C" NOT NULL,
	text    text    COLLATE "C" NOT NULL,
	ref     text    COLLATE "C" NOT NULL,
	detail  text    COLLATE "C" NOT NULL,
	PRIMARY KEY (book, record, number, id, student)
);
CREATE UNIQUE INDEX entry_named ON entry (book, id, student);
CREATE INDEX entry_student ON entry (book, student, time);

CREATE TABLE student (
	book  text   COLLATE "C" NOT NULL,
	place bigint GENERATED ALWAYS AS IDENTITY,
	id    text   COLLATE "C" NOT NULL,
	name  text   COLLATE "C" NOT NULL,
	PRIMARY KEY (book, id)
);

CREATE TABLE problem (
	book text COLLATE "C" NOT NULL,
	hash text COLLATE "C" NOT NULL,
	id   text COLLATE "C" NOT NULL,
	text text COLLATE "C" NOT NULL,
	PRIMARY KEY (book, hash)
);

CREATE TABLE setting (
	book  text COLLATE "C" NOT NULL,
	key   text COLLATE "C" NOT NULL,
	value text COLLATE "C" NOT NULL,
	PRIMARY KEY (book, key)
);

CREATE TABLE cache (
	book  text  COLLATE "C" NOT NULL,
	key   text  COLLATE "C" NOT NULL,
	value bytea NOT NULL,
	PRIMARY KEY (book, key)
);

CREATE TABLE draft (
	book    text   COLLATE "C" NOT NULL,
	student text   COLLATE "C" NOT NULL,
	problem text   COLLATE "C" NOT NULL,
	hash    text   COLLATE "C" NOT NULL,
	givens  text   COLLATE "C" NOT NULL,
	copy    bigint NOT NULL,
	stage   text   COLLATE "C" NOT NULL,
	item    text   COLLATE "C" NOT NULL,
	text    text   COLLATE "C" NOT NULL,
	time    bigint NOT NULL,
	PRIMARY KEY (book, student, problem, hash, givens, copy, stage, item)
);

CREATE TABLE lease (
	book    text   COLLATE "C" NOT NULL,
	student text   COLLATE "C" NOT NULL,
	token   text   NOT NULL,
	host    text   NOT NULL,
	since   bigint NOT NULL,
	PRIMARY KEY (book, student)
);

-- Pass phrases (hashed) and public keys. Whoever may only read the rest has no right to
-- read these.
CREATE TABLE door (
	book    text COLLATE "C" NOT NULL,
	student text COLLATE "C" NOT NULL,
	hash    text NOT NULL,
	keys    text NOT NULL,
	PRIMARY KEY (book, student)
);
