package main

import (
	"errors"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class"
	"example.org/standstill/tutor/record"
)

// teacher is what the flags of the class commands come to.
type teacher struct {
	*app
	file string
}

func classCommand(a *app) *cobra.Command {
	t := &teacher{app: a}
	c := &cobra.Command{
		Use:     "class",
		Short:   "Set work for a class, take in what was done, report",
		Long:    saidClass,
		Example: "  standstill class report --class physics-10b.yaml",
		Args:    noSuchCommand,
		RunE:    func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	c.PersistentFlags().StringVar(&t.file, "class", "", "the class `file`; else class.yaml beside the program or in the data folder")
	c.SuggestionsMinimumDistance = nearEnough
	c.AddCommand(classNewCommand(t), classCollectCommand(t), classReportCommand(t), classShowCommand(t), classAcceptCommand(t), classWatchCommand(t))
	return c
}

// classFileName is the class file that is found without being named.
const classFileName = "class.yaml"

// openClass reads the class file that is named, or found beside the program or in
// the data folder. Without one the class is nil.
func (a *app) openClass(name string, bank *problems.Bank) (*class.Class, error) {
	if name == "" {
		name = a.findClass()
	}
	if name == "" {
		return nil, nil
	}
	c, found := class.ReadFile(name, bank)
	if len(found) > 0 {
		a.tell(found)
		return nil, errFound
	}
	return c, nil
}

// rules are what the class sets for those who practise.
func (a *app) rules(bank *problems.Bank) (rules tutor.Class, err error) {
	c, err := a.openClass(a.classFile, bank)
	if c == nil || err != nil {
		return rules, err
	}
	return c.Class, nil
}

// findClass looks where a class file may lie, "" for none.
func (a *app) findClass() string {
	var folders []string
	if program, err := os.Executable(); err == nil {
		folders = append(folders, filepath.Dir(program))
	}
	if kept, err := record.DefaultPath(); err == nil {
		folders = append(folders, filepath.Dir(kept))
	}
	for _, folder := range folders {
		name := filepath.Join(folder, classFileName)
		if info, err := os.Stat(name); err == nil && info.Mode().IsRegular() {
			return name
		}
	}
	return ""
}

// open opens the class with its record; done closes it.
func (t *teacher) open() (m *class.Markbook, done func(), err error) {
	bank := t.openBank()
	c, err := t.openClass(t.file, bank)
	if err != nil {
		return nil, nil, err
	}
	if c == nil {
		return nil, nil, errors.New(saidNoClass)
	}
	path, err := t.classRecord(c)
	if err != nil {
		return nil, nil, err
	}
	r, err := record.Open(path, record.Options{})
	if err != nil {
		return nil, nil, errors.New(record.Sentence(err))
	}
	m, err = class.OpenMarkbook(class.Options{Class: c, Bank: bank, Record: r, Progress: t.progress()})
	if err != nil {
		r.Close()
		return nil, nil, said(err)
	}
	return m, func() { r.Close() }, nil
}

// classRecord is the file into which a class is collected.
func (t *teacher) classRecord(c *class.Class) (string, error) {
	if t.recordFile != "" {
		return t.recordFile, nil
	}
	own, err := record.DefaultPath()
	return filepath.Join(filepath.Dir(own), "classes", class.RecordName(c.Code)), err
}
