package class

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"maps"
	"strconv"
	"strings"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// settingForgotten remembers what was forgotten, so that the same hand-in does not
// bring it back: for each record and student a hash of both and the last running
// number, without a name.
const settingForgotten = "class forgotten"

func (m *Markbook) loadForgotten() error {
	text, err := m.Record.Setting(settingForgotten)
	for _, line := range lines(text) {
		key, number, _ := strings.Cut(line, " ")
		if n, err := strconv.ParseInt(number, 10, 64); err == nil {
			m.forgotten[key] = n
		}
	}
	return err
}

func forgottenKey(e record.Entry) string {
	sum := sha256.Sum256([]byte(e.Record + "\x00" + problems.Fold(e.Student)))
	return hex.EncodeToString(sum[:12])
}

func (m *Markbook) wasForgotten(e record.Entry) bool { return e.Number <= m.forgotten[forgottenKey(e)] }

func (m *Markbook) keepForgotten() error {
	all := map[string]bool{}
	for key, n := range m.forgotten {
		all[fmt.Sprintf("%s %d", key, n)] = true
	}
	return m.Record.SetSetting(settingForgotten, joined(all))
}

// Forget deletes everything of a student from the class's record, however the id
// is written there, what was given to the student among it, and gives the number of
// entries deleted. The same hand-in does not bring them back, unless it is collected
// with Again. Somebody who is not on the list is forgotten by the name that the
// entries have. Known is false where nobody has that name, and nothing was there.
func (m *Markbook) Forget(id string) (deleted int, known bool, err error) {
	folded := problems.Fold(id)
	all, err := m.Record.Counts()
	if err != nil {
		return 0, false, err
	}
	known = m.listed[folded]
	for name := range all {
		own := problems.Fold(name) == folded
		for g := range m.gifts {
			own = own || g.To == folded && g.Name == problems.Fold(name) && !m.listed[g.Name]
		}
		if !own {
			continue
		}
		known = true
		n, err := m.forgetName(name)
		deleted += n
		if err != nil {
			return deleted, known, err
		}
	}
	if known {
		maps.DeleteFunc(m.gifts, func(g gift, _ bool) bool { return g.To == folded || g.Name == folded })
		err = m.keepGifts()
	}
	if err == nil && deleted > 0 {
		err = m.Record.NoteDeleted(record.OfOneStudent, deleted)
	}
	return deleted, known, err
}

func (m *Markbook) forgetName(name string) (deleted int, err error) {
	for e, err := range m.Record.Entries(record.Filter{Student: name}) {
		if err != nil {
			return 0, err
		}
		if e.Kind != record.Noted {
			// Up to the last number: what the student does later in the same record may be collected.
			m.forgotten[forgottenKey(e)] = max(m.forgotten[forgottenKey(e)], e.Number)
		}
	}
	// Before the entries go. Broken off in between, it would otherwise be possible to collect them again.
	if err := m.keepForgotten(); err != nil {
		return 0, err
	}
	return m.Record.Forget(name)
}

// Count says how many entries Forget would delete.
func (m *Markbook) Count(id string) (int, error) {
	h, err := m.holdings()
	if err != nil {
		return 0, err
	}
	folded, n := problems.Fold(id), 0
	names := h.names[folded]
	if !m.listed[folded] {
		for _, one := range h.aside {
			if problems.Fold(one.Student) == folded {
				names = append(names, one.Student)
			}
		}
	}
	all, err := m.Record.Counts()
	for _, name := range names {
		n += all[name]
	}
	return n, err
}
