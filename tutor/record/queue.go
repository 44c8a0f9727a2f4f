package record

import (
	"context"
	"database/sql"
	"errors"
	"slices"
	"sync"
	"time"
)

// A queue holds what waits for a commit: entries, and in a file everything else that is
// to be written. One synchronised write costs the same for one entry as for a hundred:
// whoever gets the turn to write takes all that wait along, in their order.
type queue struct {
	mu  sync.Mutex
	all []*waiting
}

// waiting is an entry on its way, or something else to be done in a transaction. What
// came of it may be read once done is closed.
type waiting struct {
	do    func(*tx) error // nil for an entry
	entry Entry
	lease *Lease // that must still stand; nil for none
	tried bool   // a commit with it may have come through
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
		if err != nil {
			r.rest(ctx, err) // in its turn, so that few ask a server that does not answer
		}
		r.give()
		if err != nil && (!passes(err) || !time.Now().Before(until)) {
			return r.giveUp(w, err)
		}
	}
}

// giveUp says why an entry is not kept, unless it is by now. While a try with the entry
// goes on, nobody knows.
func (r *Record) giveUp(w *waiting, why error) error {
	for {
		if r.queue.withdraw(w) {
			return why
		}
		select {
		case <-w.done:
			return w.err
		// Nothing tells when putBack returns an entry to the queue, so the queue is asked again.
		case <-time.After(20 * time.Millisecond):
		}
	}
}

// commitWaiting begins a transaction and commits those who wait then. The error is that
// of the beginning: none of them was touched.
func (r *Record) commitWaiting(ctx context.Context, until time.Time) error {
	if r.isDatabase() {
		return r.commitToDatabase()
	}
	t, err := r.begin(context.Background(), r.conn)
	if err != nil {
		return err
	}
	// Only now, with the lock held: whoever came while it was waited for is taken along.
	batch := r.queue.next()
	// The commit of many is not broken off because the one who leads it has left.
	if len(batch) > 1 {
		ctx = context.Background()
	}
	r.queue.tell(batch, r.finish(ctx, until, t, r.insert(t, batch)))
	return nil
}

// tell lets everybody know what came of a commit. Whoever had a reason of their own not
// to be kept has it already.
func (q *queue) tell(batch []*waiting, err error) {
	for _, w := range batch {
		if w.err == nil {
			w.err = err
		}
		close(w.done)
	}
}

// insert does what waits, in its order.
func (r *Record) insert(t *tx, batch []*waiting) error {
	held, err := whoHold(t, batch)
	if err == nil {
		err = r.number(t, held)
	}
	if err != nil {
		return err
	}
	for _, w := range held {
		if w.do != nil {
			err = apart(t, w)
		} else {
			err = insertOne(t, &w.entry)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// number numbers the entries. The clock is read under the lock, so that times follow
// numbers when several programs write. The id holds that the file is still this record:
// another may have been copied over it.
func (r *Record) number(t *tx, held []*waiting) error {
	n := 0
	for _, w := range held {
		if w.do == nil {
			n++
		}
	}
	if n == 0 {
		return nil
	}
	var last int64
	err := t.row("UPDATE record SET last = last + ? WHERE id = ? RETURNING last", []any{n, idBytes(r.id)}, &last)
	if errors.Is(err, sql.ErrNoRows) {
		return ErrMoved
	}
	now, next := toMillisecond(r.options.Now()), last-int64(n)
	for _, w := range held {
		if w.do == nil {
			next++
			w.entry.Number, w.entry.Time = next, now
		}
	}
	return err
}

// apart does something of one's own in the transaction of many: where it goes wrong, the
// others' work stands.
func apart(t *tx, w *waiting) error {
	if err := execute(t, "SAVEPOINT own"); err != nil {
		return err
	}
	w.err = w.do(t)
	if w.err == nil {
		return execute(t, "RELEASE own")
	}
	if execute(t, "ROLLBACK TO own") != nil {
		return w.err // it has taken the whole transaction back
	}
	return execute(t, "RELEASE own")
}

func insertOne(t *tx, e *Entry) error {
	if err := execute(t, insertEntry, e.values()...); err != nil {
		return err
	}
	if e.Kind != Answer {
		return nil
	}
	return execute(t, dropDrafts, draftOf(e).copyKey()...)
}

// whoHold leaves out those whose visit was taken over by another. They get no number, so
// that numbers have no gaps.
func whoHold(t *tx, batch []*waiting) (held []*waiting, err error) {
	for _, w := range batch {
		if w.lease == nil {
			held = append(held, w)
			continue
		}
		switch ok, err := w.lease.holds(t); {
		case err != nil:
			return nil, err
		case ok:
			held = append(held, w)
		default:
			w.err = ErrTaken
		}
	}
	return held, nil
}
