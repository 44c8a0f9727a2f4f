package record

import (
	"context"
	"database/sql"
	"net/url"
	"path/filepath"
	"strconv"
	"strings"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

// ownPragmas are for files that this program writes. The busy timeout comes
// first, because the others may have to wait.
//
// The journal is rolled back, not written ahead: a write-ahead log needs memory
// shared between programs, which network folders do not have. With a truncated
// journal, full synchronisation makes the end of each commit reach the disk;
// with a deleted one it would leave the folder entry out.
func ownPragmas() []string {
	return []string{
		"busy_timeout(" + strconv.FormatInt(pause.Milliseconds(), 10) + ")",
		"journal_mode(TRUNCATE)",
		"synchronous(FULL)",
		"fullfsync(ON)",
		// What is deleted must not be found in the file any more.
		"secure_delete(ON)",
		"temp_store(MEMORY)",
		"trusted_schema(OFF)",
	}
}

// foreignPragmas are for files that somebody else may have made to do harm.
// None of them makes SQLite read the schema before the limits are set.
func foreignPragmas() []string {
	return []string{"busy_timeout(2000)", "trusted_schema(OFF)", "cell_size_check(ON)", "query_only(ON)"}
}

// foreignLimits are far above what our own schema needs, and far below what
// takes long or much memory.
func foreignLimits() map[int]int {
	return map[int]int{
		sqlite3.SQLITE_LIMIT_LENGTH:          2 * LongestSaved,
		sqlite3.SQLITE_LIMIT_SQL_LENGTH:      64 << 10,
		sqlite3.SQLITE_LIMIT_COLUMN:          64,
		sqlite3.SQLITE_LIMIT_EXPR_DEPTH:      32,
		sqlite3.SQLITE_LIMIT_COMPOUND_SELECT: 4,
		sqlite3.SQLITE_LIMIT_VDBE_OP:         20_000,
		sqlite3.SQLITE_LIMIT_FUNCTION_ARG:    8,
		sqlite3.SQLITE_LIMIT_ATTACHED:        0,
		sqlite3.SQLITE_LIMIT_TRIGGER_DEPTH:   1,
		sqlite3.SQLITE_LIMIT_WORKER_THREADS:  0,
	}
}

// sourceName is the name under which SQLite opens the file. Every character
// that means something in such a name is escaped.
func sourceName(path, mode string, pragmas []string) string {
	q := url.Values{"mode": {mode}, "_txlock": {"immediate"}, "_defensive": {"1"}, "_dqs": {"0"}, "_error_rc": {"1"}}
	if mode == immutable {
		// SQLite has no mode of that name; it is one of reading, with another flag.
		q.Set("mode", readOnly)
		q.Set("immutable", "1")
	}
	for _, pragma := range pragmas {
		q.Add("_pragma", pragma)
	}
	u := url.URL{Scheme: "file", Path: addressPath(path, filepath.VolumeName(path), filepath.Separator), RawQuery: q.Encode()}
	return u.String()
}

// addressPath is a path as SQLite's addresses have it. Behind "file://" a drive of Windows
// needs one more slash; a folder of the network brings its own two.
func addressPath(path, volume string, separator rune) string {
	path = strings.ReplaceAll(path, string(separator), "/")
	if volume != "" && !strings.HasPrefix(path, "/") {
		path = "/" + path
	}
	return path
}

// Ways of opening a file.
const (
	readWrite = "rw"
	readOnly  = "ro"
	inMemory  = "memory"
	// immutable reads what is in the file and nothing else: no lock is taken,
	// no journal beside it looked at, nothing written.
	immutable = "immutable"
)

// connect opens the one connection of a record. Nothing is written yet.
func connect(path, mode string, pragmas []string) (*Record, error) {
	name := path
	if mode == inMemory {
		name = "/memory"
	}
	db, err := sql.Open("sqlite", sourceName(name, mode, pragmas))
	if err != nil {
		return nil, err
	}
	// Pragmas, limits and transactions belong to a connection, so there must be no second one.
	db.SetMaxOpenConns(1)
	conn, err := db.Conn(context.Background())
	if err != nil {
		db.Close()
		return nil, err
	}
	return newRecord(path, db, conn), nil
}

func (r *Record) setLimits(limits map[int]int) error {
	for limit, value := range limits {
		if _, err := sqlite.Limit(r.conn, limit, value); err != nil {
			return err
		}
	}
	return nil
}

// checkWhole reads the whole file and says whether it is sound. The size is
// looked at under the same lock: SQLite takes a last page that was cut short
// as if the rest of it were zeros.
func (r *Record) checkWhole() error {
	ctx := context.Background()
	if _, err := r.conn.ExecContext(ctx, "BEGIN DEFERRED"); err != nil {
		return err
	}
	defer r.conn.ExecContext(ctx, "ROLLBACK")
	var said string
	if err := r.queryRow("PRAGMA quick_check(1)", nil, &said); err != nil {
		return err
	}
	var pageSize int64
	if err := r.queryRow("PRAGMA page_size", nil, &pageSize); err != nil {
		return err
	}
	size, err := regularSize(r.path, nil)
	if err != nil {
		return err
	}
	if said != "ok" || size%pageSize != 0 {
		return ErrDamaged
	}
	return nil
}
