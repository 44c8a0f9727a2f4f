package class

import (
	"errors"
	"fmt"
	"runtime"
	"slices"
	"sync"
	"time"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/classfile"
	"example.org/standstill/tutor/record"
)

// Options are what a Markbook works with; Class, Bank and Record are needed.
// Record is the class's own, into which is collected. Now is the clock, time.Now
// if nil. Workers is how many students are marked at once, as many as the machine
// has cores if zero. Progress is told how many students are done, if it is not
// nil; it may be called by several goroutines.
type Options struct {
	Class    *classfile.Class
	Bank     *problems.Bank
	Record   *record.Record
	Now      func() time.Time
	Workers  int
	Progress func(done, of int)
}

// Markbook is a class with all that was handed in.
type Markbook struct {
	Options
	versions  map[string]bool // hashes of problem files that are the teacher's
	mine      map[string]bool // records whose acceptances count
	gifts     map[gift]bool
	forgotten map[string]int64
	listed    map[string]bool // the folded ids of the list

	mu    sync.Mutex
	read  map[string]*problems.Problem // by hash; nil for one that is of no use
	drawn map[drawnKey]string

	marking func(record.Entry) // told of every entry that is marked, for tests; nil for nobody
}

// OpenMarkbook makes a markbook, and remembers the problem files that are set now
// as the teacher's: what was done on them counts, however they are edited later.
func OpenMarkbook(o Options) (*Markbook, error) {
	if o.Now == nil {
		o.Now = time.Now
	}
	if o.Workers == 0 {
		o.Workers = runtime.GOMAXPROCS(0)
	}
	m := &Markbook{Options: o, versions: map[string]bool{}, mine: map[string]bool{}, gifts: map[gift]bool{}, forgotten: map[string]int64{},
		listed: map[string]bool{}, read: map[string]*problems.Problem{}, drawn: map[drawnKey]string{}}
	for _, s := range o.Class.Students {
		m.listed[problems.Fold(s.ID)] = true
	}
	for _, load := range []func() error{m.loadKnown, m.loadGifts, m.loadForgotten, m.knowSet} {
		if err := load(); err != nil {
			return nil, err
		}
	}
	return m, nil
}

// What a markbook remembers in the settings of its record: one text for each.
const (
	settingVersions = "class versions" // hashes, one on a line
	settingMine     = "class records"  // ids of records, one on a line
	settingGifts    = "class gifts"    // what was given to whom, one on a line
)

func (m *Markbook) loadKnown() error {
	// Acceptances made on this machine count.
	m.mine[m.Record.ID()] = true
	for key, into := range map[string]map[string]bool{settingVersions: m.versions, settingMine: m.mine} {
		text, err := m.Record.Setting(key)
		if err != nil {
			return err
		}
		for _, one := range lines(text) {
			into[one] = true
		}
	}
	return nil
}

// knowSet adds the versions of today.
func (m *Markbook) knowSet() error {
	var added []string
	for _, set := range m.Class.Work {
		p, err := m.Bank.Get(set.ID)
		if err != nil {
			return fmt.Errorf("problem %s: %w", set.ID, err)
		}
		if m.versions[p.Hash] {
			continue
		}
		if !m.Record.MayWrite() {
			m.versions[p.Hash] = true // for as long as this markbook is open
			continue
		}
		added = append(added, p.Hash)
		if err := m.Record.SaveProblem(p.Hash, p.ID, string(p.Raw)); err != nil {
			return err
		}
	}
	return m.know(settingVersions, m.versions, added)
}

// know adds to what is remembered under a setting.
func (m *Markbook) know(setting string, known map[string]bool, added []string) error {
	fresh := false
	for _, one := range added {
		fresh = fresh || !known[one]
		known[one] = true
	}
	if !fresh {
		return nil
	}
	return m.Record.SetSetting(setting, joined(known))
}

var errOtherVersion = errors.New("the problem file does not belong to this class")

// problem finds the problem that an entry was made on, with the numbers of its
// file: the one of today, where the entry's file gives the same numbers in whatever
// words; else an older one of this class. A file that came with what was handed in
// counts for itself only where strange ones may be looked at.
func (m *Markbook) problem(e record.Entry, strange bool) (*problems.Problem, error) {
	today, err := m.Bank.Get(e.Problem)
	if err == nil && today.Hash == e.Hash {
		return today, nil
	}
	kept, why := m.savedProblem(e.Hash)
	switch {
	case why != nil:
		return nil, why
	case kept.ID != e.Problem:
		return nil, errOtherVersion
	case strange || m.versions[e.Hash]:
		return kept, nil
	// Only words were changed, so the file of today gives the same numbers.
	case err == nil && kept.Numbers == today.Numbers:
		return today, nil
	}
	return nil, errOtherVersion
}

// savedProblem reads a problem file from the record, once.
func (m *Markbook) savedProblem(hash string) (*problems.Problem, error) {
	m.mu.Lock()
	p, known := m.read[hash]
	m.mu.Unlock()
	if !known {
		// A file that is of no use is remembered too, or it would be read for every entry.
		p, _ = tutor.SavedProblem(hash, m.Record)
		m.mu.Lock()
		m.read[hash] = p
		m.mu.Unlock()
	}
	if p == nil {
		return nil, errOtherVersion
	}
	return p, nil
}

// set finds a set problem's place; −1 for one that is not set.
func (m *Markbook) set(id string) int {
	return slices.IndexFunc(m.Class.Work, func(s tutor.Set) bool { return s.ID == id })
}
