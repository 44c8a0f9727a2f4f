package class

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"

	"example.org/standstill/checker"
	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// sheetForm changes whenever a sheet is computed in another way.
const sheetForm = "4.3"

// basis names everything that a sheet depends on besides the student's entries.
func (m *Markbook) basis() string {
	h := sha256.New()
	c := m.Class
	fmt.Fprintf(h, "%s\x00%s\x00%d\x00%s\x00%+v\x00", sheetForm, checker.Version, problems.DrawRules, c.Code, c.Settings)
	for _, set := range c.Work {
		p, err := m.Bank.Get(set.ID)
		if err == nil {
			fmt.Fprintf(h, "%s\x00%s\x00", set.ID, p.Hash)
		}
	}
	for _, s := range c.Students {
		fmt.Fprintf(h, "%s\x00", s.ID) // whose numbers some are may change with the list
	}
	fmt.Fprintf(h, "%s\x00%s", joined(m.versions), joined(m.mine))
	return hex.EncodeToString(h.Sum(nil)[:16])
}

// remembered is a sheet with what it was computed from.
type remembered struct {
	Basis   string
	Entries int
	Sheet   Sheet
}

func cacheKey(student string) string { return "class sheet " + student }

// recall finds the sheet of a student with that many entries. Entries are only
// added, or all forgotten together with the cache: their number tells them apart.
func (m *Markbook) recall(basis, student string, entries int) (Sheet, bool) {
	value, ok, err := m.Record.Cache(cacheKey(student))
	if err != nil || !ok {
		return Sheet{}, false
	}
	var kept remembered
	// A value that cannot be read was written by another version, and is computed again.
	if json.Unmarshal(value, &kept) != nil || kept.Basis != basis || kept.Entries != entries {
		return Sheet{}, false
	}
	return kept.Sheet, true
}

func remember(basis string, s Sheet, entries int) []byte {
	value, err := json.Marshal(remembered{basis, entries, s})
	// Not remembered; it is computed again each time.
	if err != nil || len(value) > record.LongestSaved {
		return nil
	}
	return value
}
