package class

import (
	"cmp"
	"context"
	"slices"
	"sync"
	"sync/atomic"
	"time"

	"golang.org/x/sync/errgroup"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/class/classfile"
	"example.org/standstill/tutor/class/summary"
	"example.org/standstill/tutor/record"
)

// Report marks what was not marked before and sums up. Students come in the order
// of the class file. An error is that of the record, or the context's.
func (m *Markbook) Report(ctx context.Context) (*summary.Report, error) {
	r := &reporting{markbook: m, Report: &summary.Report{Name: m.Class.Name, Code: m.Class.Code, At: m.Now(), Roster: m.Class.Roster}}
	for _, set := range m.Class.Work {
		r.Work = append(r.Work, summary.Column{Heading: set.Heading, Due: set.Due, Weight: cmp.Or(set.Weight, 1)})
	}
	r.Students = make([]summary.Row, len(m.Class.Students))
	r.rest = make([]partial, len(m.Class.Students))
	h, err := m.holdings()
	if err != nil {
		return nil, err
	}
	if err := m.eachSheet(ctx, h, r.student); err != nil {
		return nil, err
	}
	r.Remarks = h.aside
	r.close()
	return r.Report, nil
}

// eachSheet gives every student's sheet to take, which several goroutines call.
func (m *Markbook) eachSheet(ctx context.Context, h *holdings, take func(i int, s record.Student, sheet Sheet)) error {
	basis := m.basis()
	keeping := &keeper{record: m.Record}
	var done atomic.Int64
	group, ctx := errgroup.WithContext(ctx)
	group.SetLimit(m.Workers)
	for i, s := range m.Class.Students {
		group.Go(func() error {
			if err := ctx.Err(); err != nil {
				return err
			}
			key := problems.Fold(s.ID)
			from := basis + m.traceOf(h, key)
			sheet, known := m.recall(from, key, h.counts[key])
			// Nobody without entries needs a sheet, and in a new class that is everybody.
			if !known && h.counts[key] > 0 {
				own, lost, err := m.entriesOf(h, s.ID)
				if err != nil {
					return err
				}
				if sheet = m.fencedSheet(s.ID, own, lost, h.lost[key]); !sheet.faulty() {
					keeping.keep(cacheKey(key), remember(from, sheet, h.counts[key]))
				}
			}
			take(i, s, sheet)
			if m.Progress != nil {
				m.Progress(int(done.Add(1)), len(m.Class.Students))
			}
			return nil
		})
	}
	if err := group.Wait(); err != nil {
		return err
	}
	keeping.flush()
	return nil
}

// keeper writes what is to be remembered, many at a time. What cannot be written
// is computed again the next time.
type keeper struct {
	record *record.Record
	mu     sync.Mutex
	wait   map[string][]byte
}

const keptAtOnce = 100

func (k *keeper) keep(key string, value []byte) {
	if value == nil {
		return
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.wait == nil {
		k.wait = map[string][]byte{}
	}
	if k.wait[key] = value; len(k.wait) >= keptAtOnce {
		_ = k.record.SetCaches(k.wait)
		k.wait = nil
	}
}

func (k *keeper) flush() {
	if len(k.wait) > 0 {
		_ = k.record.SetCaches(k.wait)
	}
}

// reporting is a report while it is made. Students are summed up as they come, in
// places of their own, and put together in order at the end.
type reporting struct {
	*summary.Report
	markbook *Markbook
	rest     []partial

	mu        sync.Mutex
	byStage   tallies
	byProblem tallies
}

// partial is what one student adds to the lists of the report.
type partial struct {
	stuck    []summary.StuckRow
	disputed []summary.DisputedRow
	remarks  []summary.Remark
}

func (r *reporting) student(i int, s record.Student, sheet Sheet) {
	row := summary.Row{ID: s.ID, Name: s.Name, Cells: make([]summary.Cell, len(r.Work)), Entries: sheet.Entries, Beside: sheet.Beside, Ideas: sheet.Ideas}
	for at := range row.Cells {
		overdue(&row.Cells[at], r.Work[at].Due, r.At)
	}
	rest := partial{remarks: sheet.Remarks}
	for _, w := range sheet.Works {
		at := r.markbook.set(w.Problem)
		if at < 0 {
			continue
		}
		row.Cells[at] = w.cell(r.Work[at].Due)
		overdue(&row.Cells[at], r.Work[at].Due, r.At)
		row.Spent += w.Spent
		if w.gotStuck() {
			rest.stuck = append(rest.stuck, summary.StuckRow{Student: s.ID, Name: s.Name, Problem: w.Problem, Stage: w.Stage, Item: w.Item, Last: w.Last, Stuck: *w.Stuck})
		}
		for _, k := range w.Disputed {
			rest.disputed = append(rest.disputed, summary.DisputedRow{Student: s.ID, Name: s.Name, DisputedLine: k})
		}
	}
	r.Students[i], r.rest[i] = row, rest
	// Only the tallies are shared; each student has a place of their own in the rows.
	r.mu.Lock()
	defer r.mu.Unlock()
	for _, w := range sheet.Works {
		r.byStage.addAll(i, w, func(one Mistake) tallyKey { return tallyKey{one.Stage, "", one.Code} })
		r.byProblem.addAll(i, w, func(one Mistake) tallyKey { return tallyKey{"", w.Problem, one.Code} })
	}
}

func (w *Work) cell(due time.Time) summary.Cell {
	c := summary.Cell{Status: w.Status, Attempts: w.Attempts, Items: w.Items, RightFirst: w.RightFirst, Lines: w.Lines, Refused: w.Refused, Hints: w.Hints, Shown: w.Shown,
		Spent: w.Spent, Begun: w.Begun, Last: w.Last, Done: w.Done, Stage: w.Stage, Item: w.Item}
	if c.Late = !due.IsZero() && w.Done.After(due); c.Late {
		c.Days = daysAfter(due, w.Done)
	}
	return c
}

// overdue marks what is not done after its date; looking at the solution is no end.
func overdue(c *summary.Cell, due, now time.Time) {
	if c.Overdue = !due.IsZero() && now.After(due) && !c.Status.Done(); c.Overdue {
		c.Days = daysAfter(due, now)
	}
}

// daysAfter counts the days since a date, begun ones too.
func daysAfter(due, at time.Time) int { return int((at.Sub(due)-1)/(24*time.Hour)) + 1 }

// stuckLines is how many refused lines in a row make a teacher look.
const stuckLines = 3

// gotStuck reports whether the student gets no further by himself.
func (w *Work) gotStuck() bool {
	return w.Stuck != nil && (w.Stuck.Refused >= stuckLines || w.Stuck.AllHints)
}

func (r *reporting) close() {
	for i := range r.Students {
		r.Entries += r.Students[i].Entries
		r.Students[i].Share = r.shareOf(&r.Students[i])
		r.Stuck = append(r.Stuck, r.rest[i].stuck...)
		r.Disputed = append(r.Disputed, r.rest[i].disputed...)
		r.Remarks = append(r.Remarks, r.rest[i].remarks...)
	}
	slices.SortStableFunc(r.Stuck, func(a, b summary.StuckRow) int {
		return cmp.Or(cmp.Compare(b.Refused+b.Hints, a.Refused+a.Hints), b.Last.Compare(a.Last))
	})
	r.ByStage, r.ByProblem = r.byStage.list(r.Students), r.byProblem.list(r.Students)
	r.Ideas = ideasOf(r.Students)
	for at := range r.Work {
		sumUp(&r.Work[at], r.Students, at)
	}
}

// shareOf is how much of the work a student has done, each problem by its weight.
func (r *reporting) shareOf(row *summary.Row) float64 {
	done, all := 0.0, 0.0
	for at, c := range row.Cells {
		all += r.Work[at].Weight
		if c.Status.Done() {
			done += r.Work[at].Weight
		}
	}
	return done / max(all, classfile.LeastWeight)
}

// sumUp counts a column's cells.
func sumUp(c *summary.Column, rows []summary.Row, at int) {
	var spent []time.Duration
	for _, row := range rows {
		cell := row.Cells[at]
		c.Students[cell.Status]++
		if cell.Status.Done() {
			spent = append(spent, cell.Spent)
		}
	}
	if len(spent) > 0 {
		slices.Sort(spent)
		// The median: one student who left the program open overnight does not move it.
		c.Spent = spent[len(spent)/2]
	}
}
