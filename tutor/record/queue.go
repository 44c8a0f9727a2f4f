package record

import (
	"context"
	"database/sql"
	"slices"
	"sync"
	"time"
)

// A queue holds the entries that wait for a commit. One synchronised write costs the
// same for one entry as for a hundred: whoever gets the turn to write takes all that
// wait along.
type queue struct {
	mu  sync.Mutex
	all []*waiting
}

// waiting is an entry on its way. What came of it may be read once done is closed.
type waiting struct {
	entry Entry
	err   error
	done  chan struct{}
}

// mostTogether is how many entries share one commit at most.
const mostTogether = 500

func (q *queue) add(w *waiting) {
	q.mu.Lock()
	defer q.mu.Unlock()
	q.all = append(q.all, w)
}

// next takes out those that have waited longest.
func (q *queue) next() []*waiting {
	q.mu.Lock()
	defer q.mu.Unlock()
	n := min(len(q.all), mostTogether)
	batch := slices.Clone(q.all[:n])
	q.all = slices.Delete(q.all, 0, n)
	return batch
}

// withdraw takes out an entry that nobody waits for any more. It is false where the
// entry is in somebody's commit already.
func (q *queue) withdraw(w *waiting) bool {
	q.mu.Lock()
	defer q.mu.Unlock()
	at := slices.Index(q.all, w)
	if at >= 0 {
		q.all = slices.Delete(q.all, at, at+1)
	}
	return at >= 0
}

// settle waits until an entry is on disk: in the commit of somebody else, or in one's
// own, which takes along all who wait.
func (r *Record) settle(w *waiting) error {
	ctx := r.current()
	for until := time.Now().Add(r.options.Wait); ; {
		select {
		case <-w.done:
			return w.err
		case r.turn <- struct{}{}:
		case <-ctx.Done():
			return r.giveUp(w, ErrStopped)
		}
		err := r.commitWaiting(ctx, until)
		r.give()
		if err != nil && (!isKind(err, ErrBusy) || !time.Now().Before(until)) {
			return r.giveUp(w, err)
		}
	}
}

// giveUp says why an entry is not kept, unless it is by now.
func (r *Record) giveUp(w *waiting, why error) error {
	if r.queue.withdraw(w) {
		return why
	}
	<-w.done
	return w.err
}

// commitWaiting begins a transaction and commits those who wait then. The error is that
// of the beginning: none of them was touched.
func (r *Record) commitWaiting(ctx context.Context, until time.Time) error {
	tx, err := r.conn.BeginTx(context.Background(), nil)
	if err != nil {
		return err
	}
	batch := r.queue.next()
	// The commit of many is not broken off because the one who leads it has left.
	if len(batch) > 1 {
		ctx = context.Background()
	}
	err = r.finish(ctx, until, tx, r.insert(tx, batch))
	for _, w := range batch {
		w.err = err
		close(w.done)
	}
	return nil
}

// insert numbers the entries and adds them. The clock is read under the lock, so that
// times follow numbers when several programs write. The id holds that the file is still
// this record: another may have been copied over it.
func (r *Record) insert(tx *sql.Tx, batch []*waiting) error {
	if len(batch) == 0 {
		return nil
	}
	var last int64
	row := tx.QueryRow("UPDATE record SET last = last + ? WHERE id = ? RETURNING last", len(batch), idBytes(r.id))
	if err := row.Scan(&last); err != nil {
		if err == sql.ErrNoRows {
			return ErrMoved
		}
		return err
	}
	now := toMillisecond(r.options.Now())
	for i, w := range batch {
		w.entry.Number, w.entry.Time = last-int64(len(batch)-1-i), now
		if err := r.insertOne(tx, &w.entry); err != nil {
			return err
		}
	}
	return nil
}

func (r *Record) insertOne(tx *sql.Tx, e *Entry) error {
	if err := execute(tx, insertEntry, e.values()...); err != nil {
		return err
	}
	if e.Kind != Answer {
		return nil
	}
	return execute(tx, dropDrafts, draftOf(e).copyKey()...)
}
