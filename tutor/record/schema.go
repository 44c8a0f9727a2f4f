package record

import (
	"cmp"
	"context"
	"embed"
	"fmt"
	"io/fs"
	"slices"
)

// The files are numbered from 0001 without gaps and never edited after a
// release. Each is run in a transaction of its own; the number of the last one
// that was run is the version of a record.
//
//go:embed migrations/*.sql
var migrationFiles embed.FS

func migrations() ([]string, error) {
	names, err := fs.Glob(migrationFiles, "migrations/*.sql")
	if err != nil {
		return nil, err
	}
	slices.Sort(names)
	var statements []string
	for _, name := range names {
		text, err := migrationFiles.ReadFile(name)
		if err != nil {
			return nil, err
		}
		statements = append(statements, string(text))
	}
	return statements, nil
}

// applicationID is what migration 0001 writes into the header of the file.
const applicationID = 0x53746e64

// migrate brings an empty file or a record of an older version to today's.
// Several programs may do so at once: each step looks again, under the lock,
// how far the file is.
func (r *Record) migrate() error {
	steps, err := migrations()
	if err != nil {
		return err
	}
	return r.migrateTo(len(steps))
}

// migrateTo brings the file as far as the version, one of those that there are.
func (r *Record) migrateTo(last int) error {
	steps, err := migrations()
	if err != nil {
		return err
	}
	for done := false; !done; {
		err := r.inTransaction(func(tx *tx) error {
			version, err := versionOf(tx)
			if err != nil || version > len(steps) {
				return cmp.Or(err, ErrNewer)
			}
			if done = version >= last; done {
				return nil
			}
			return r.step(tx, version, steps[version])
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// step runs the migration that follows the version.
func (r *Record) step(tx *tx, version int, statements string) error {
	if err := execute(tx, statements); err != nil {
		return err
	}
	// Every record has its id from the moment at which it has tables.
	if version == 0 {
		id, err := randomID(r.options.Random)
		if err != nil {
			return err
		}
		if err := execute(tx, "INSERT INTO record (one, id, last) VALUES (1, ?, 0)", idBytes(id)); err != nil {
			return err
		}
	}
	return execute(tx, fmt.Sprintf("PRAGMA user_version = %d", version+1))
}

// versionOf is the number of migrations that were run on the file, 0 for an
// empty one; ErrNotRecord for a file that is something else.
func versionOf(tx *tx) (int, error) {
	var version, application, objects int
	for query, into := range map[string]*int{
		"PRAGMA user_version":                &version,
		"PRAGMA application_id":              &application,
		"SELECT count(*) FROM sqlite_schema": &objects,
	} {
		if err := tx.row(query, nil, into); err != nil {
			return 0, err
		}
	}
	empty := version == 0 && application == 0 && objects == 0
	if !empty && (application != applicationID || version < 1) {
		return 0, ErrNotRecord
	}
	return version, nil
}

// probe reads from the header of a file, and of nothing else, whether it is a
// record that this program knows: nil, ErrNotRecord, ErrNewer, or what SQLite
// says. It leaves the file and what is beside it as they are, whatever they
// are.
func probe(path string) error {
	r, err := connect(path, immutable, foreignPragmas())
	if err != nil {
		return err
	}
	defer r.Close()
	// In one transaction, so that both come from one reading of the page.
	if _, err := r.conn.ExecContext(context.Background(), "BEGIN DEFERRED"); err != nil {
		return err
	}
	var version, application int
	if err := r.queryRow("PRAGMA user_version", nil, &version); err != nil {
		return err
	}
	if err := r.queryRow("PRAGMA application_id", nil, &application); err != nil {
		return err
	}
	return known(application, version)
}

// known tells from what the header of a file says of itself whether it is a
// record that this program knows.
func known(application, version int) error {
	steps, err := migrations()
	switch {
	case err != nil:
		return err
	case application != applicationID || version < 1:
		return ErrNotRecord
	case version > len(steps):
		return ErrNewer
	}
	return nil
}
