package class

import (
	"crypto/rand"
	"errors"
	"fmt"
	"strings"
	"time"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// Draft is what a new class file is made of. List is a CSV file or a OneRoster
// folder; Work names problems and topics with commas between them, beside Problems
// and Topics.
type Draft struct {
	Name, Code        string
	List, RosterClass string
	Work              string
	Problems, Topics  []string
	Due               string
	Gravity           string
	Tolerance         string
	NoHints           bool
	NoSolution        bool
}

// File makes the class file. The error says what cannot be used.
func (d *Draft) File(bank *problems.Bank) ([]byte, error) {
	c := &Class{Class: tutor.Class{Name: d.Name, Code: d.Code}}
	if err := d.students(c); err != nil {
		return nil, err
	}
	if c.Name == "" {
		return nil, errors.New("a class needs a name")
	}
	if c.Code == "" {
		c.Code = newCode(c.Name)
	}
	if err := d.work(c, bank); err != nil {
		return nil, err
	}
	if err := d.settings(c); err != nil {
		return nil, err
	}
	text := Format(c)
	if _, found := Read("the new class file", text, bank); len(found) > 0 {
		return nil, errors.New(found[0].String())
	}
	return text, nil
}

func (d *Draft) students(c *Class) error {
	if d.List == "" {
		c.Students = []record.Student{{ID: "s01", Name: "Ada Berg"}, {ID: "s02", Name: "Ben Roos"}}
		return nil
	}
	list, err := ReadList(d.List, d.RosterClass)
	if err != nil {
		return fmt.Errorf("the list %s cannot be taken: %w", shown(d.List), err)
	}
	c.Students, c.Roster = list.Students, list.Roster
	if c.Name == "" {
		c.Name = list.Name
	}
	return nil
}

// newCode makes a code that no other class is likely to have.
func newCode(name string) string {
	return plainName(name, "class") + "-" + strings.ToLower(rand.Text()[:4])
}

func (d *Draft) work(c *Class, bank *problems.Bank) error {
	var due time.Time
	if d.Due != "" {
		var err error
		if due, err = readDue(d.Due); err != nil {
			return fmt.Errorf("%q is no date; expected one such as 2026-03-09", shown(d.Due))
		}
	}
	wanted := append(append([]string(nil), d.Problems...), d.Topics...)
	for _, one := range strings.Split(d.Work, ",") {
		if one = strings.TrimSpace(one); one != "" {
			wanted = append(wanted, one)
		}
	}
	for _, one := range wanted {
		before := len(c.Work)
		for _, h := range bank.List() {
			if h.ID == one || h.Topic == one {
				c.Work = append(c.Work, tutor.Set{Heading: h, Due: due})
			}
		}
		if len(c.Work) == before {
			_, err := bank.Get(one)
			return err
		}
	}
	if len(c.Work) == 0 {
		return errors.New("a class needs some work; name problems or topics")
	}
	return nil
}

func (d *Draft) settings(c *Class) error {
	c.Gravity, c.NoHints, c.NoSolution = d.Gravity, d.NoHints, d.NoSolution
	if d.Tolerance == "" {
		return nil
	}
	share, err := readShare(d.Tolerance)
	if err != nil {
		return fmt.Errorf("%q is no tolerance; expected one such as 2 %%", shown(d.Tolerance))
	}
	c.Tolerance = share
	return nil
}
