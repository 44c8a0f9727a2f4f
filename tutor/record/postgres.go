package record

import (
	"context"
	"crypto/sha256"
	"crypto/tls"
	"database/sql"
	"database/sql/driver"
	"embed"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net"
	"net/url"
	"os"
	"slices"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"
	"github.com/jackc/pgx/v5/stdlib"
)

// IsDatabase says whether a record is named by the address of a database server, as in
// postgres://host/database, and not by a file. ?book=NAME chooses one of its books.
func IsDatabase(location string) bool {
	return strings.HasPrefix(location, "postgres://") || strings.HasPrefix(location, "postgresql://")
}

// Shown is how a record may be named on screens and in logs: a file as it is, of the
// address of a database only the server and the database.
func Shown(location string) string {
	if !IsDatabase(location) {
		return location
	}
	u, err := url.Parse(location)
	if err != nil {
		// Nothing of an address that cannot be read: it may hold a password.
		return "postgres://"
	}
	return "postgres://" + u.Hostname() + u.Path
}

// databaseConfig reads the address of a database. A password in it would be seen by
// everybody who lists the programs that run, so it is refused. Where the address does not
// say otherwise, a connection that leaves this machine is encrypted and the server's
// certificate checked.
func databaseConfig(location string) (*pgx.ConnConfig, error) {
	u, err := url.Parse(location)
	if err != nil {
		return nil, errAddress
	}
	if _, secret := u.User.Password(); secret || u.Query().Has("password") {
		return nil, errPassword
	}
	q := u.Query()
	host := u.Hostname()
	if q.Has("host") {
		host = q.Get("host")
	}
	// A service of the user's own configuration may say how to encrypt.
	if !q.Has("sslmode") && !q.Has("service") && os.Getenv("PGSSLMODE") == "" && !staysHere(host) {
		q.Set("sslmode", "verify-full")
		u.RawQuery = q.Encode()
	}
	config, err := pgx.ParseConfig(u.String())
	if err != nil {
		return nil, errAddress
	}
	// A server can be set up to answer before a commit is on its disk, and then “saved” would not be true.
	config.RuntimeParams["synchronous_commit"] = "on"
	config.RuntimeParams["application_name"] = "standstill"
	config.ConnectTimeout = 3 * time.Second
	return config, nil
}

// staysHere reports whether a server is reached without a network.
func staysHere(host string) bool {
	ip := net.ParseIP(host)
	return host == "" || host == "localhost" || strings.HasPrefix(host, "/") || ip != nil && ip.IsLoopback()
}

var (
	errPassword = errors.New("the address contains a password")
	errAddress  = errors.New("the address cannot be read")
)

//go:embed postgres/*.sql
var databaseFiles embed.FS

func databaseSteps() ([]string, error) {
	names, err := fs.Glob(databaseFiles, "postgres/*.sql")
	if err != nil {
		return nil, err
	}
	slices.Sort(names)
	var steps []string
	for _, name := range names {
		text, err := databaseFiles.ReadFile(name)
		if err != nil {
			return nil, err
		}
		steps = append(steps, string(text))
	}
	return steps, nil
}

// openDatabase opens one book of a database. The tables must be there, and be those of
// this version: only [Migrate] makes them.
func openDatabase(location string, o Options) (*Record, error) {
	r, err := connectDatabase(location, o)
	if err != nil {
		return nil, asError(Shown(location), err, kindOf(err))
	}
	if err := r.enter(); err != nil {
		r.Close()
		return nil, asError(r.path, err, kindOf(err))
	}
	return r, nil
}

// bookIn takes the book out of an address, which overrules the usual one: the server knows
// nothing of books.
func bookIn(location, usual string) (address, book string) {
	u, err := url.Parse(location)
	if err != nil || !u.Query().Has("book") {
		return location, usual
	}
	q := u.Query()
	book = q.Get("book")
	q.Del("book")
	u.RawQuery = q.Encode()
	return u.String(), book
}

// mostConnections is how many connections one program keeps: one writes, the others read.
const mostConnections = 8

func connectDatabase(location string, o Options) (*Record, error) {
	location, o.Book = bookIn(location, o.Book)
	config, err := databaseConfig(location)
	if err != nil {
		return nil, &Error{Kind: ErrUnopenable, Path: Shown(location), Cause: err}
	}
	db := stdlib.OpenDB(*config)
	db.SetMaxOpenConns(mostConnections)
	// They stay open: a new encrypted connection takes several round trips.
	db.SetMaxIdleConns(mostConnections)
	r := newRecord(Shown(location), db, nil)
	r.options = o
	r.dialect = dialect{numbered: true, book: o.Book}
	return r, nil
}

// enter looks at the tables and takes a name for this machine in the book. Whoever may
// only read has no name, and nothing to write.
func (r *Record) enter() error {
	if err := r.checkVersion(); err != nil {
		return err
	}
	r.id = r.databaseID()
	err := r.inTransaction(func(t *tx) error {
		return execute(t, "INSERT INTO record ({,} id, last) VALUES ({?} ?, 0) ON CONFLICT DO NOTHING", idBytes(r.id))
	})
	if isKind(err, ErrReadOnly) {
		r.foreign = true
		return nil
	}
	return err
}

// databaseID is the name of this machine's entries in a book: always the same, so that
// its numbers go on. Two programs on one machine take turns at its numbers.
func (r *Record) databaseID() string {
	host := r.options.Host
	if host == "" {
		host, _ = os.Hostname()
	}
	sum := sha256.Sum256([]byte("standstill record\x00" + r.options.Book + "\x00" + host))
	return hex.EncodeToString(sum[:16])
}

func (r *Record) checkVersion() error {
	steps, err := databaseSteps()
	if err != nil {
		return err
	}
	var version int
	err = r.queryRow("SELECT version FROM standstill", nil, &version)
	switch {
	case err != nil:
		return err
	case version < len(steps):
		return ErrOlder
	case version > len(steps):
		return ErrNewer
	}
	return nil
}

// Migrate makes the tables of a database, or brings those of an older version to today's.
// The right to do so is its owner's. It says how many steps were done.
func Migrate(location string, o Options) (done int, err error) {
	r, err := connectDatabase(location, o.withDefaults())
	if err != nil {
		return 0, err
	}
	defer r.Close()
	steps, err := databaseSteps()
	if err != nil {
		return 0, err
	}
	err = r.write(func(t *tx) (err error) {
		done, err = migrateDatabase(t, steps)
		return err
	})
	return done, err
}

func migrateDatabase(t *tx, steps []string) (done int, err error) {
	const table = `CREATE TABLE IF NOT EXISTS standstill (one int PRIMARY KEY CHECK (one = 1), version int NOT NULL);
		INSERT INTO standstill (one, version) VALUES (1, 0) ON CONFLICT DO NOTHING`
	if err := execute(t, table); err != nil {
		return 0, err
	}
	var version int
	// Locked, so that two who migrate at the same time do each step once.
	if err := t.row("SELECT version FROM standstill FOR UPDATE", nil, &version); err != nil {
		return 0, err
	}
	if version > len(steps) {
		return 0, ErrNewer
	}
	for _, step := range steps[version:] {
		if _, err := t.ExecContext(t.ctx, step); err != nil {
			return 0, err
		}
		done++
	}
	return done, execute(t, "UPDATE standstill SET version = "+fmt.Sprint(len(steps)))
}

// commitToDatabase commits those who wait, in this writer's turn. The error says that the
// server did not answer: they wait on, each as long as it likes. Where the answer to a
// commit was lost, the next try finds the entries by their ids and adds nothing.
func (r *Record) commitToDatabase() error {
	// Not the context of the one whose turn it is: the others in the batch may still be there when it has gone.
	ctx, cancel := context.WithTimeout(context.Background(), longestTry)
	defer cancel()
	batch := r.queue.next()
	if len(batch) == 0 {
		return nil
	}
	t, err := r.begin(ctx, r.db)
	if err == nil {
		if err = r.insertBatch(t, batch); err == nil {
			for _, w := range batch {
				// Before the commit, whose answer may get lost.
				w.tried = true
			}
			err = t.Commit()
		} else {
			t.Rollback()
		}
	}
	if passes(err) {
		r.queue.putBack(batch)
		return err
	}
	r.queue.tell(batch, err)
	return nil
}

// insertBatch gives the entries their numbers and times and adds them. The row of this
// machine's record is held until the end, so that a commit of ours that still hangs
// somewhere is over before we look for its entries.
func (r *Record) insertBatch(t *tx, batch []*waiting) error {
	var last, now int64
	err := t.row("SELECT last, (extract(epoch FROM clock_timestamp()) * 1000)::bigint FROM record WHERE {=} id = ? FOR UPDATE",
		[]any{idBytes(r.id)}, &last, &now)
	if errors.Is(err, sql.ErrNoRows) {
		return ErrMoved
	}
	if err != nil {
		return err
	}
	held, err := r.newOnes(t, batch)
	if err != nil || len(held) == 0 {
		return err
	}
	latest, err := latestOf(t, held)
	if err != nil {
		return err
	}
	entries := make([]Entry, len(held))
	for i, w := range held {
		last++
		// Never before the student's last entry, whose time may come from another machine's clock.
		ms := max(now, latest[w.entry.Student])
		w.entry.Number, w.entry.Time = last, toMillisecond(time.UnixMilli(ms))
		entries[i] = w.entry
	}
	if _, err := insertAll(t, entries); err != nil {
		return err
	}
	if err := dropAnswered(t, entries); err != nil {
		return err
	}
	return execute(t, "UPDATE record SET last = ? WHERE {=} id = ?", last, idBytes(r.id))
}

// newOnes leaves out what is there already, and whose visit was taken over.
func (r *Record) newOnes(t *tx, batch []*waiting) ([]*waiting, error) {
	var open, leased []*waiting
	for _, w := range batch {
		// An earlier try may have left its reason here.
		w.err = nil
		if w.tried {
			there, err := findAgain(t, &w.entry)
			if err != nil {
				return nil, err
			}
			if there {
				continue
			}
		}
		if open = append(open, w); w.lease != nil {
			leased = append(leased, w)
		}
	}
	tokens, err := tokensOf(t, leased)
	if err != nil {
		return nil, err
	}
	return slices.DeleteFunc(open, func(w *waiting) bool {
		if w.lease != nil && tokens[w.lease.Student] != w.lease.Token {
			w.err = ErrTaken
		}
		return w.err != nil
	}), nil
}

// findAgain looks for an entry that an earlier try may have added.
func findAgain(t *tx, e *Entry) (bool, error) {
	var ms int64
	err := t.row("SELECT number, time FROM entry WHERE {=} id = ? AND student = ?", []any{idBytes(e.ID), e.Student}, &e.Number, &ms)
	if errors.Is(err, sql.ErrNoRows) {
		return false, nil
	}
	e.Time = toMillisecond(time.UnixMilli(ms))
	return true, err
}

func tokensOf(t *tx, leased []*waiting) (map[string]string, error) {
	tokens := map[string]string{}
	if len(leased) == 0 {
		return tokens, nil
	}
	var students []string
	for _, w := range leased {
		students = append(students, encoded(w.lease.Student))
	}
	// In one order, so that two hosts do not wait for each other.
	err := t.each("SELECT student, token FROM lease WHERE {=} student = ANY(?) ORDER BY student FOR SHARE", []any{students}, func(scan scan) error {
		var student, token string
		err := scan(&student, &token)
		tokens[student] = token
		return err
	})
	return tokens, err
}

// latestOf finds the time of each student's last entry.
func latestOf(t *tx, batch []*waiting) (map[string]int64, error) {
	latest := map[string]int64{}
	var students []string
	for _, w := range batch {
		students = append(students, encoded(w.entry.Student))
	}
	const query = `SELECT s, (SELECT coalesce(max(time), 0) FROM entry WHERE {=} student = s) FROM unnest(?::text[]) AS s`
	err := t.each(query, []any{students}, func(scan scan) error {
		var student string
		var ms int64
		err := scan(&student, &ms)
		latest[student] = ms
		return err
	})
	return latest, err
}

// insertAll adds entries in one statement, and says which of them were not there.
func insertAll(t *tx, entries []Entry) (added []bool, err error) {
	var records, ids [][]byte
	var numbers, times, copies []int64
	texts := make([][]string, len((&Entry{}).texts()))
	at := map[string]int{}
	for i := range entries {
		e := &entries[i]
		records, ids = append(records, idBytes(e.Record)), append(ids, idBytes(e.ID))
		numbers, times, copies = append(numbers, e.Number), append(times, e.Time.UnixMilli()), append(copies, int64(e.Copy))
		for j, text := range e.texts() {
			texts[j] = append(texts[j], encoded(*text))
		}
		// The index plus one, so that 0 means none. Of two with one key, the first is added.
		if key := e.ID + e.Student; at[key] == 0 {
			at[key] = i + 1
		}
	}
	args := []any{records, numbers, ids, times, copies}
	for _, column := range texts {
		args = append(args, column)
	}
	statement := "INSERT INTO entry ({,} " + columns + ") SELECT {?} u.* FROM unnest(?::bytea[], ?::bigint[], ?::bytea[], ?::bigint[], ?::bigint[]" +
		strings.Repeat(", ?::text[]", len(texts)) + ") AS u ON CONFLICT DO NOTHING RETURNING id, student"
	added = make([]bool, len(entries))
	err = t.each(statement, args, func(scan scan) error {
		var id []byte
		var student string
		err := scan(&id, &student)
		if i := at[hex.EncodeToString(id)+student]; i > 0 {
			added[i-1] = true
		}
		return err
	})
	return added, err
}

// dropAnswered deletes the half-typed lines whose places answers take.
func dropAnswered(t *tx, entries []Entry) error {
	columns := make([][]string, 4)
	var copies []int64
	for i := range entries {
		if e := &entries[i]; e.Kind == Answer {
			for j, text := range []string{e.Student, e.Problem, e.Hash, e.Givens} {
				columns[j] = append(columns[j], encoded(text))
			}
			copies = append(copies, int64(e.Copy))
		}
	}
	if copies == nil {
		return nil
	}
	return execute(t, `DELETE FROM draft USING unnest(?::text[], ?::text[], ?::text[], ?::text[], ?::bigint[])
		AS a (student, problem, hash, givens, copy) WHERE draft.{=} draft.student = a.student AND draft.problem = a.problem
		AND draft.hash = a.hash AND draft.givens = a.givens AND draft.copy = a.copy`,
		columns[0], columns[1], columns[2], columns[3], copies)
}

// putBack lets entries wait for another try, before all others.
func (q *queue) putBack(batch []*waiting) {
	q.mu.Lock()
	defer q.mu.Unlock()
	q.all = append(slices.Clone(batch), q.all...)
}

// serverKinds says what PostgreSQL's conditions mean for a record; a class is the first
// two characters of a condition.
func serverKinds() map[string]error {
	return map[string]error{
		"08": ErrAway, "57": ErrAway, "53": ErrAway, "53100": ErrFull, "58": ErrDisk, "XX": ErrDamaged,
		"40": ErrBusy, "55P03": ErrBusy, "42501": ErrReadOnly, "25006": ErrReadOnly,
		"28": ErrUnopenable, "3D": ErrUnopenable, "42P01": ErrOlder, "22": ErrMalformed,
	}
}

// serverKind is what an error of a server or of the way to it means; nil for others.
func serverKind(err error) error {
	if e, ok := errors.AsType[*pgconn.PgError](err); ok {
		kinds := serverKinds()
		if kind, ok := kinds[e.Code]; ok {
			return kind
		}
		return kinds[e.Code[:min(2, len(e.Code))]]
	}
	var connect *pgconn.ConnectError
	var network net.Error
	switch {
	case errors.Is(err, errPassword), errors.Is(err, errAddress), isMistrusted(err), isUnencrypted(err):
		return ErrUnopenable
	case pgconn.SafeToRetry(err), errors.Is(err, pgconn.ErrConnClosed), errors.As(err, &connect), errors.As(err, &network), errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF),
		errors.Is(err, driver.ErrBadConn), errors.Is(err, context.DeadlineExceeded), errors.Is(err, context.Canceled),
		errors.Is(err, net.ErrClosed), errors.Is(err, pgx.ErrTxCommitRollback):
		return ErrAway
	}
	return nil
}

// isMistrusted says whether the server's certificate is what is wrong. To try again would
// not help.
func isMistrusted(err error) bool {
	_, ok := errors.AsType[*tls.CertificateVerificationError](err)
	return ok
}

// isUnencrypted says whether the server cannot encrypt the connection. pgx has no value
// of its own for that.
func isUnencrypted(err error) bool {
	_, ok := errors.AsType[*pgconn.ConnectError](err)
	return ok && strings.Contains(err.Error(), "server refused TLS connection")
}

// serverSays says whether a server's error is of a class of SQLSTATE codes.
func serverSays(err error, class string) bool {
	e, ok := errors.AsType[*pgconn.PgError](err)
	return ok && strings.HasPrefix(e.Code, class)
}
