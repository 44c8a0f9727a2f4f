package class

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/class/classfile"
	"example.org/standstill/tutor/class/summary"
	"example.org/standstill/tutor/record"
)

// Watch follows what lies in folders during a lab: hand-ins, and records that
// students are writing to. It keeps nothing: the class's record stays as it is.
type Watch struct {
	Class *classfile.Class
	Bank  *problems.Bank
	Paths []string
	Now   func() time.Time // time.Now if nil

	book    *Markbook
	seen    map[string]version
	trouble map[string]string // why a file cannot be read
}

// version tells one state of a file from another.
type version struct {
	size int64
	time time.Time
}

// pause is the time between two looks at the folders.
const pause = 2 * time.Second

// Run writes the view whenever something has changed, until the context is done;
// clear is called before each but the first, to empty a terminal. A
// folder that cannot be read for a while, such as a stick that is pulled out, is
// looked for again.
func (w *Watch) Run(ctx context.Context, out io.Writer, clear func()) error {
	last := ""
	for {
		view, err := w.View(ctx)
		// A stick that is pulled out for a moment is no reason to end the view.
		if err != nil && (ctx.Err() != nil || !errors.Is(err, fs.ErrNotExist)) {
			return ctxError(ctx, err)
		}
		if errors.Is(err, fs.ErrNotExist) {
			view = saidNoFolder + "\n"
		}
		// The screen only moves when something has happened, and a log has no repeats.
		if view != last {
			if last != "" {
				clear()
			}
			last = view
			if _, err := io.WriteString(out, w.stamp()+view); err != nil {
				return err
			}
		}
		select {
		case <-ctx.Done():
			return nil
		case <-time.After(pause):
		}
	}
}

func ctxError(ctx context.Context, err error) error {
	if ctx.Err() != nil {
		return nil
	}
	return err
}

func (w *Watch) stamp() string { return "\n" + w.now().Local().Format("15:04:05") + "\n" }

func (w *Watch) now() time.Time {
	if w.Now == nil {
		return time.Now()
	}
	return w.Now()
}

// Close lets go of what was read.
func (w *Watch) Close() error {
	if w.book == nil {
		return nil
	}
	return w.book.Record.Close()
}

// View looks at the folders and says who is where.
func (w *Watch) View(ctx context.Context) (string, error) {
	if err := w.look(ctx); err != nil {
		return "", err
	}
	live := make([]Sheet, len(w.Class.Students))
	var mu sync.Mutex
	h, err := w.book.holdings()
	if err != nil {
		return "", err
	}
	err = w.book.eachSheet(ctx, h, func(i int, _ record.Student, s Sheet) {
		mu.Lock()
		defer mu.Unlock()
		live[i] = s
	})
	if err != nil {
		return "", err
	}
	return w.view(live), nil
}

// look takes in the files that have changed.
func (w *Watch) look(ctx context.Context) error {
	if w.book == nil {
		// The view leaves nothing behind: what is collected for good is collected by “class collect”.
		r, err := record.OpenMemory(record.Options{})
		if err != nil {
			return err
		}
		if w.book, err = OpenMarkbook(Options{Class: w.Class, Bank: w.Bank, Record: r, Now: w.Now}); err != nil {
			return err
		}
		w.seen, w.trouble = map[string]version{}, map[string]string{}
	}
	files, err := filesIn(w.Paths)
	if err != nil {
		return err
	}
	var changed []string
	for _, file := range files {
		info, err := os.Stat(file)
		if err != nil {
			continue
		}
		// The whole lab is looked at every few seconds, and most files are as they were.
		if now := (version{info.Size(), info.ModTime()}); w.seen[file] != now {
			w.seen[file] = now
			changed = append(changed, file)
		}
	}
	sum, err := w.book.Collect(ctx, changed, CollectOptions{found: true})
	for _, one := range sum.Files {
		delete(w.trouble, one.File)
		if one.Trouble != "" {
			// Looked at again the next time: a stick may have been slow, a copy half done.
			w.trouble[one.File] = one.Trouble
			delete(w.seen, one.File)
		}
	}
	return err
}

// view writes who is where: those who get no further first, then who did something
// last; who has begun nothing stands on one line. Who asked for every hint, the last
// mistakes and files that cannot be read follow.
func (w *Watch) view(sheets []Sheet) string {
	t := &summary.Text{}
	var recent []liveMistake
	var hints, idle []string
	var live []liveStudent
	for i, sheet := range sheets {
		name := classfile.Shown(w.Class.Students[i].Name)
		work := sheet.now()
		if work == nil {
			idle = append(idle, name)
			continue
		}
		live = append(live, liveStudent{name, work})
		if work.Stuck != nil && work.Stuck.AllHints {
			hints = append(hints, fmt.Sprintf("%s (%s, %s)", name, work.Problem, summary.Place(work.Stage, work.Item)))
		}
		for _, one := range sheet.Recent {
			recent = append(recent, liveMistake{name, one})
		}
	}
	slices.SortStableFunc(live, compareLive)
	for _, one := range live {
		t.Line("%s: %s", one.name, one.live())
	}
	if idle != nil {
		t.Line(saidIdle, strings.Join(idle, ", "))
	}
	if hints != nil {
		t.Line(saidAllHints, strings.Join(hints, "; "))
	}
	slices.SortStableFunc(recent, func(a, b liveMistake) int { return b.Time.Compare(a.Time) })
	if len(recent) > 0 {
		t.Line("%s", headRecent)
	}
	for _, one := range recent[:min(len(recent), mostRecent)] {
		t.Line("  %s  %s, %s, %s: %s (%s)", one.Time.Local().Format("15:04"), one.name, one.Problem, summary.Place(one.Stage, ""), summary.Quoted(one.Line), one.Code.Meaning())
	}
	for _, file := range slices.Sorted(maps.Keys(w.trouble)) {
		t.Line("%s: %s", classfile.Shown(filepath.Base(file)), w.trouble[file])
	}
	return t.String()
}

type liveStudent struct {
	name string
	*Work
}

// compareLive puts those who get no further first, longest first, then whoever did
// something last.
func compareLive(a, b liveStudent) int {
	stuck := func(s liveStudent) int {
		if s.Work.gotStuck() {
			return s.Stuck.Refused + s.Stuck.Hints
		}
		return 0
	}
	return cmp.Or(cmp.Compare(stuck(b), stuck(a)), b.Last.Compare(a.Last))
}

type liveMistake struct {
	name string
	Mistake
}

// now is the work that the student touched last; nil for none.
func (s *Sheet) now() *Work {
	var last *Work
	for i := range s.Works {
		if w := &s.Works[i]; last == nil || w.Last.After(last.Last) {
			last = w
		}
	}
	return last
}

// live says where a student is.
func (w *Work) live() string {
	where := w.Status.String()
	if w.Stage != "" {
		where = summary.Place(w.Stage, w.Item)
	}
	said := fmt.Sprintf("%s, %s, %s, last at %s", w.Problem, where, summary.Times(w.Lines, "line"), w.Last.Local().Format("15:04"))
	if w.Stuck != nil && w.Stuck.Refused > 0 {
		said += fmt.Sprintf(saidInARow, w.Stuck.Refused)
	}
	return said
}
