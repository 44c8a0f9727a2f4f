package classfile

import (
	"cmp"
	"crypto/rand"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
	"unicode"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// Draft is what a new class file is made of. List is a CSV file or a OneRoster
// folder, or the students' names with commas between them; Work names problems and
// topics with commas between them, beside Set and Topics. From are folders of own
// problems, Beside the folder in which the class file will lie.
type Draft struct {
	Name, Code        string
	List, RosterClass string
	Work              string
	Set, Topics       []string
	From              []string
	Beside            string
	Due               string
	Gravity           string
	Tolerance         string
	NoHints           bool
	NoSolution        bool
	Choices           map[string]*string // by the key of a Choice; "" for the usual word
}

// Problems lays the draft's own problems over a bank.
func (d *Draft) Problems(bank *problems.Bank) (*problems.Bank, error) {
	for _, name := range d.From {
		folder, found := problems.OpenFolder(name)
		// One problem with a mistake does not keep the others from being set.
		if err := found.Err(); err != nil && len(folder.List()) == 0 {
			return nil, err
		}
		bank = bank.With(folder)
	}
	return bank, nil
}

// CheckName says what is wrong with the name of a class, "" for nothing.
func CheckName(name string) string {
	switch {
	case name == "":
		return "A class needs a name."
	case len([]rune(name)) > longestName:
		return fmt.Sprintf("A name can have at most %d characters.", longestName)
	}
	return ""
}

// CheckStudents says why a list cannot be taken, "" where it can.
func (d *Draft) CheckStudents(list string) string {
	_, err := studentsOf(list, d.RosterClass)
	return sentenceOf(err)
}

// CheckWork says which problem or topic there is not, "" where there are all.
func CheckWork(work string, bank *problems.Bank) string {
	_, err := workOf(strings.Split(work, ","), bank, time.Time{})
	return sentenceOf(err)
}

// CheckDue says what is wrong with a date, "" for nothing; an empty one is no date.
func CheckDue(due string) string {
	_, err := dueOf(due)
	return sentenceOf(err)
}

func sentenceOf(err error) string {
	if err == nil {
		return ""
	}
	text := []rune(err.Error())
	text[0] = unicode.ToUpper(text[0])
	return strings.TrimSuffix(string(text), ".") + "."
}

// File makes the class file. The error says what cannot be used.
func (d *Draft) File(bank *problems.Bank) ([]byte, error) {
	list, err := studentsOf(d.List, d.RosterClass)
	if err != nil {
		return nil, err
	}
	c := &Class{Class: tutor.Class{Name: cmp.Or(d.Name, list.Name), Code: d.Code, Students: list.Students}, Roster: list.Roster}
	if said := CheckName(c.Name); said != "" {
		return nil, errors.New(said)
	}
	if c.Code == "" {
		c.Code = newCode(c.Name)
	}
	due, err := dueOf(d.Due)
	if err != nil {
		return nil, err
	}
	if c.Work, err = workOf(slices.Concat(d.Set, d.Topics, strings.Split(d.Work, ",")), bank, due); err != nil {
		return nil, err
	}
	if err := d.settings(c); err != nil {
		return nil, err
	}
	if c.From, err = d.fromBeside(); err != nil {
		return nil, err
	}
	text := Format(c)
	// What is written must read back: Read knows limits that are not asked for here.
	if _, found := Read(filepath.Join(d.Beside, "the new class file"), text, bank); len(found) > 0 {
		return nil, errors.New(found[0].String())
	}
	return text, nil
}

// fromBeside names the folders as they are seen from the class file.
func (d *Draft) fromBeside() (from []string, err error) {
	for _, name := range d.From {
		here, err := filepath.Abs(d.Beside)
		if err != nil {
			return nil, err
		}
		there, err := filepath.Abs(name)
		if err != nil {
			return nil, err
		}
		seen, err := filepath.Rel(here, there)
		if err != nil {
			// On Windows the two may be on different drives.
			seen = there
		}
		from = append(from, filepath.ToSlash(seen))
	}
	return from, nil
}

// studentsOf reads a list, or takes names with commas between them, who get the ids
// s01, s02 and so on.
func studentsOf(text, rosterClass string) (*List, error) {
	if text == "" {
		return nil, errors.New("a class needs students: a CSV file, a OneRoster folder, or names separated by commas")
	}
	// A file may have a comma in its name; one word without a comma is a file that is not there.
	if _, err := os.Stat(text); err == nil || !strings.Contains(text, ",") {
		list, err := ReadList(text, rosterClass)
		if err != nil {
			return nil, fmt.Errorf("the list %s cannot be used: %w", Shown(text), err)
		}
		return list, nil
	}
	list := &List{}
	for _, name := range strings.Split(text, ",") {
		if name = Shown(name); name != "" {
			list.Students = append(list.Students, record.Student{ID: fmt.Sprintf("s%02d", len(list.Students)+1), Name: name})
		}
	}
	return list, nil
}

func dueOf(text string) (due time.Time, err error) {
	if text == "" {
		return due, nil
	}
	if due, err = readDue(text); err != nil {
		return due, fmt.Errorf("%q is not a date; type a date such as 2026-03-09", Shown(text))
	}
	return due, nil
}

// workOf finds the problems and topics that are named.
func workOf(wanted []string, bank *problems.Bank, due time.Time) ([]tutor.Set, error) {
	var work []tutor.Set
	for _, one := range wanted {
		if one = strings.TrimSpace(one); one == "" {
			continue
		}
		before := len(work)
		for _, h := range bank.List() {
			if h.ID == one || h.Topic == one {
				work = append(work, tutor.Set{Heading: h, Due: due})
			}
		}
		if len(work) == before {
			_, err := bank.Get(one)
			return nil, err
		}
	}
	if len(work) == 0 {
		return nil, errors.New("a class needs set work; choose problems or topics")
	}
	return work, nil
}

// newCode makes a code that no other class is likely to have.
func newCode(name string) string {
	return PlainName(name, "class") + "-" + strings.ToLower(rand.Text()[:4])
}

func (d *Draft) settings(c *Class) error {
	c.Gravity, c.NoHints, c.NoSolution = d.Gravity, d.NoHints, d.NoSolution
	for _, one := range choices {
		word := d.Choices[one.key]
		if word == nil || *word == "" {
			continue
		}
		at := slices.Index(one.words, *word)
		if at < 0 {
			return fmt.Errorf("%s cannot be %q; type one of these: %s", one.key, Shown(*word), strings.Join(one.words, ", "))
		}
		one.set(&c.Settings, at)
	}
	if d.Tolerance == "" {
		return nil
	}
	share, err := readShare(d.Tolerance)
	if err != nil {
		return fmt.Errorf("%q is not a tolerance; type a tolerance such as 2 %%", Shown(d.Tolerance))
	}
	c.Tolerance = share
	return nil
}
