package classfile

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
	"time"

	"example.org/standstill/tutor"
)

// Format writes the class as a class file, which Read reads back.
func Format(c *Class) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "name: %s\n%s: %s\n", scalar(c.Name), keyNumbers, scalar(c.Code))
	formatFrom(&b, c.From)
	if r := c.Roster; r.Version != "" {
		fmt.Fprintf(&b, "oneroster: {version: %s, class: %s", scalar(r.Version), scalar(r.Class))
		for _, one := range []struct{ key, value string }{{"school", r.School}, {"term", r.Term}} {
			if one.value != "" {
				fmt.Fprintf(&b, ", %s: %s", one.key, scalar(one.value))
			}
		}
		b.WriteString("}\n")
	}
	b.WriteString("students:\n")
	for _, s := range c.Students {
		fmt.Fprintf(&b, "  - {id: %s, name: %s}\n", scalar(s.ID), scalar(s.Name))
	}
	b.WriteString("problems:\n")
	for _, s := range c.Work {
		fmt.Fprintf(&b, "  - {problem: %s%s%s}\n", s.ID, dueKey(s.Due), weightKey(s.Weight))
	}
	b.WriteString(formatSettings(c.Settings))
	formatPacked(&b, c.Packed)
	return b.Bytes()
}

func weightKey(weight float64) string {
	if weight == 0 || weight == 1 {
		return ""
	}
	return ", weight: " + Number(weight)
}

// Number writes a number as short as it can be read back.
func Number(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

func dueKey(due time.Time) string {
	switch {
	case due.IsZero():
		return ""
	// readDue makes this of a date alone.
	case due.Local().Format("15:04:05") == "23:59:59":
		return ", due: " + due.Local().Format(DateForm)
	}
	return ", due: " + due.Local().Format(hourForm)
}

func formatSettings(s tutor.Settings) string {
	if s == (tutor.Settings{}) {
		return ""
	}
	var b strings.Builder
	b.WriteString("settings:\n")
	if s.Gravity != "" {
		fmt.Fprintf(&b, "  g: %s\n", s.Gravity)
	}
	if s.Tolerance > 0 {
		fmt.Fprintf(&b, "  tolerance: %s %%\n", strconv.FormatFloat(100*s.Tolerance, 'g', 6, 64))
	}
	var read tutor.Settings // what whoever reads on has by now
	for _, c := range choices {
		if at := c.get(&s); at != c.get(&read) {
			fmt.Fprintf(&b, "  %s: %s\n", c.key, c.words[at])
			c.set(&read, at)
		}
	}
	return b.String()
}

// scalar quotes a text: what stands in single quotes is never anything but text.
func scalar(text string) string { return "'" + strings.ReplaceAll(Shown(text), "'", "''") + "'" }
