package class

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/class/summary"
	"example.org/standstill/tutor/record"
)

// gift is a teacher's word: what a record holds under a name is a student's of the
// class. Name and To are folded ids.
type gift struct{ Record, Name, To string }

func (m *Markbook) loadGifts() error {
	text, err := m.Record.Setting(settingGifts)
	for _, line := range lines(text) {
		var g gift
		if json.Unmarshal([]byte(line), &g) == nil {
			m.gifts[g] = true
		}
	}
	return err
}

// give remembers a gift; an older one of the same entries is taken back.
func (m *Markbook) give(g gift) error {
	maps.DeleteFunc(m.gifts, func(old gift, _ bool) bool { return old.Record == g.Record && old.Name == g.Name })
	m.gifts[g] = true
	return m.keepGifts()
}

func (m *Markbook) keepGifts() error {
	all := map[string]bool{}
	for g := range m.gifts {
		line, err := json.Marshal(g)
		if err != nil {
			return err
		}
		all[string(line)] = true
	}
	return m.Record.SetSetting(settingGifts, joined(all))
}

// ownerOf is the student of the class whose entry it is, folded: whom the teacher
// gave it to, else whom it names; "" for nobody of the class.
func (m *Markbook) ownerOf(e record.Entry) (owner string, given bool) {
	name := problems.Fold(e.Student)
	for g := range m.gifts {
		if g.Record == e.Record && g.Name == name {
			return g.To, true
		}
	}
	if m.listed[name] {
		return name, false
	}
	return "", false
}

// holdings says at one moment who has which entries of the class's record. Students
// are folded ids.
type holdings struct {
	names  map[string][]string          // as what the entries of a student may be kept
	counts map[string]int               // of entries under these names
	lost   map[string]map[string]string // by student and entry: whose it is instead, "" for nobody's
	aside  []summary.Remark             // entries of names that are not on the list
}

// holdings reads who has what. It depends on what is there, not on the order in
// which it came.
func (m *Markbook) holdings() (*holdings, error) {
	h := &holdings{names: map[string][]string{}, counts: map[string]int{}, lost: map[string]map[string]string{}}
	all, err := m.Record.Counts()
	if err != nil {
		return nil, err
	}
	for _, name := range slices.Sorted(maps.Keys(all)) {
		owners := map[string]bool{}
		if folded := problems.Fold(name); m.listed[folded] {
			owners[folded] = true
		} else if err := m.setAside(h, name); err != nil {
			return nil, err
		}
		for g := range m.gifts {
			if g.Name == problems.Fold(name) {
				owners[g.To] = true
			}
		}
		for owner := range owners {
			// One name may belong to several students, if the teacher gave records under it to different ones.
			h.names[owner] = append(h.names[owner], name)
			h.counts[owner] += all[name]
		}
	}
	return h, m.settleDisputes(h)
}

// setAside tells of entries under a name that is not on the list.
func (m *Markbook) setAside(h *holdings, name string) error {
	n := 0
	for e, err := range m.Record.Entries(record.Filter{Student: name}) {
		if err != nil {
			return err
		}
		if owner, _ := m.ownerOf(e); owner == "" && e.Kind != record.Noted {
			n++
		}
	}
	if n > 0 {
		h.aside = append(h.aside, summary.Remark{Notice: summary.NotOnList, Student: name, Count: n})
	}
	return nil
}

// entriesOf gives a student's entries, and those that were taken from the student
// because they are also under another's name.
func (m *Markbook) entriesOf(h *holdings, student string) (own, lost []record.Entry, err error) {
	student = problems.Fold(student)
	for _, name := range h.names[student] {
		for e, err := range m.Record.Entries(record.Filter{Student: name}) {
			if err != nil {
				return nil, nil, err
			}
			if owner, _ := m.ownerOf(e); owner != student {
				continue
			}
			if _, gone := h.lost[student][e.ID]; gone {
				lost = append(lost, e)
				continue
			}
			own = append(own, e)
		}
	}
	return own, lost, nil
}

// settleDisputes decides for whom an entry counts that is under several students'
// names: for the one to whom the teacher gave it; else for the one whose numbers it
// has; else for the one whose numbers other such entries of its record have. Where
// nothing speaks for one of them alone it counts for nobody until the teacher says.
func (m *Markbook) settleDisputes(h *holdings) error {
	shared, err := m.Record.Shared()
	if err != nil {
		return err
	}
	var all []dispute
	for rest := shared; len(rest) > 0; {
		n := 1
		// Shared gives them by id, so those of one id are beside each other.
		for n < len(rest) && rest[n].ID == rest[0].ID {
			n++
		}
		if d := m.disputeOf(rest[:n]); len(d.owners) > 1 {
			all = append(all, d)
		}
		rest = rest[n:]
	}
	votes := map[string]map[string]int{} // by record and student
	for _, d := range all {
		if d.winner != "" {
			if votes[d.record] == nil {
				votes[d.record] = map[string]int{}
			}
			votes[d.record][d.winner]++
		}
	}
	for _, d := range all {
		winner := d.winner
		if winner == "" {
			winner = d.outvoted(votes[d.record])
		}
		for _, owner := range d.owners {
			if owner == winner {
				continue
			}
			if h.lost[owner] == nil {
				h.lost[owner] = map[string]string{}
			}
			h.lost[owner][d.id] = winner
		}
	}
	return nil
}

// dispute is an entry under the names of several students of the class.
type dispute struct {
	id, record string
	owners     []string
	winner     string // for whom the entry itself speaks, "" for nobody alone
}

func (m *Markbook) disputeOf(entries []record.Entry) dispute {
	d := dispute{id: entries[0].ID, record: entries[0].Record}
	var given, numbers []string
	for _, e := range entries {
		owner, byTeacher := m.ownerOf(e)
		if owner == "" || slices.Contains(d.owners, owner) || e.Kind == record.Noted {
			continue
		}
		d.owners = append(d.owners, owner)
		if byTeacher {
			given = append(given, owner)
		}
		if m.hasNumbers(owner, e) {
			numbers = append(numbers, owner)
		}
	}
	switch {
	case len(given) == 1:
		d.winner = given[0]
	case len(numbers) == 1:
		d.winner = numbers[0]
	}
	return d
}

// outvoted is the only one of the owners for whom other entries of the record speak.
func (d *dispute) outvoted(votes map[string]int) (winner string) {
	for _, owner := range d.owners {
		if votes[owner] == 0 {
			continue
		}
		if winner != "" {
			return ""
		}
		winner = owner
	}
	return winner
}

// hasNumbers reports whether an entry has the numbers that are drawn for a student.
func (m *Markbook) hasNumbers(student string, e record.Entry) bool {
	p, err := m.problem(e, false)
	return err == nil && len(p.Vary) > 0 && m.copyOf(p, student, e.Copy) == e.Givens
}

// copyOf gives the numbers of a student's copy as entries have them; what no entry
// has where they cannot be drawn. They are remembered.
func (m *Markbook) copyOf(p *problems.Problem, student string, repeat int) string {
	key := drawnKey{p.Hash, problems.Fold(student), repeat}
	m.mu.Lock()
	text, ok := m.drawn[key]
	m.mu.Unlock()
	if ok {
		return text
	}
	text = "\x00"
	if own, err := m.Class.Copy(p, student, repeat); err == nil {
		text = own.Copy
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	// Drawing them again is slow but right.
	if len(m.drawn) >= mostDrawn {
		clear(m.drawn)
	}
	m.drawn[key] = text
	return text
}

type drawnKey struct {
	hash, student string
	repeat        int
}

// mostDrawn bounds how many students' numbers are remembered.
const mostDrawn = 200_000

// traceOf is a mark of what the holdings of a student are, besides how many entries there are.
func (m *Markbook) traceOf(h *holdings, student string) string {
	trace := sha256.New()
	for _, id := range slices.Sorted(maps.Keys(h.lost[student])) {
		fmt.Fprintf(trace, "%s\x00%s\x00", id, h.lost[student][id])
	}
	var gifts []string
	for g := range m.gifts {
		if g.To == student || slices.ContainsFunc(h.names[student], func(name string) bool { return problems.Fold(name) == g.Name }) {
			gifts = append(gifts, g.Record+"\x00"+g.Name+"\x00"+g.To)
		}
	}
	slices.Sort(gifts)
	fmt.Fprint(trace, strings.Join(gifts, "\x00"))
	return hex.EncodeToString(trace.Sum(nil)[:8])
}
