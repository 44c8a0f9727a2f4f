package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime/debug"

	"github.com/spf13/cobra"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class"
	"example.org/standstill/tutor/class/classfile"
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
		Short:   "Set work for a class, collect hand-ins and print reports",
		Long:    saidClass,
		Example: "  standstill class report --class physics-10b.yaml",
		Args:    noSuchCommand,
		RunE:    func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	c.PersistentFlags().StringVar(&t.file, "class", "", "the class `file`; the default is class.yaml in the program's folder or in the data folder")
	c.SuggestionsMinimumDistance = nearEnough
	c.AddCommand(classNewCommand(t), classAddCommand(t), classPackCommand(t), classCollectCommand(t), classReportCommand(t), classShowCommand(t), classAcceptCommand(t), classWatchCommand(t))
	return c
}

// classFileName is the class file that is found without being named.
const classFileName = "class.yaml"

// openClass reads the class file that is named, or found beside the program or in
// the data folder, with the class's own problems. Without one the class is nil.
func (a *app) openClass(name string) (*classfile.Class, error) {
	if name == "" {
		// On a school's machines the class file lies beside the program, and nobody types a flag.
		name = a.findClass()
	}
	if name == "" {
		return nil, nil
	}
	if !isFile(name) {
		if _, err := os.Stat(name); err != nil {
			return nil, fmt.Errorf(saidNoClassFile, name)
		}
	}
	c, found := classfile.ReadFile(name, a.openBank())
	if len(found) > 0 {
		a.tell(found)
		return nil, errFound
	}
	// A broken problem is told and left out: the rest of the class can still work.
	a.tell(c.Broken)
	return c, nil
}

// classOrBank are the class and its problems, or no class and those of the command
// line.
func (a *app) classOrBank(name string) (tutor.Class, *problems.Bank, error) {
	c, err := a.openClass(name)
	switch {
	case err != nil:
		return tutor.Class{}, nil, err
	case c == nil:
		return tutor.Class{}, a.openBank(), nil
	}
	return c.Class, c.Bank, nil
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
		// A folder of that name is not meant.
		if info, err := os.Stat(name); err == nil && info.Mode().IsRegular() {
			return name
		}
	}
	return ""
}

// needClass opens the class where there must be one.
func (t *teacher) needClass() (*classfile.Class, error) {
	c, err := t.openClass(t.file)
	if c == nil && err == nil {
		err = errors.New(saidNoClass)
	}
	return c, err
}

// Marking a class again makes much that is soon thrown away. Collecting it less often takes
// a fifth off the time; the limit keeps the memory of a large school within bounds.
const (
	garbageShare = 400
	garbageLimit = 400 << 20
)

// open opens the class with its record; done closes it.
func (t *teacher) open() (m *class.Markbook, done func(), err error) {
	debug.SetGCPercent(garbageShare)
	debug.SetMemoryLimit(garbageLimit)
	c, err := t.needClass()
	if err != nil {
		return nil, nil, err
	}
	path, err := t.classRecord(c)
	if err != nil {
		return nil, nil, said(err)
	}
	r, err := t.opened(path, record.Options{Book: c.Code})
	if err != nil {
		return nil, nil, errors.New(record.Sentence(err))
	}
	m, err = class.OpenMarkbook(class.Options{Class: c, Bank: c.Bank, Record: r, Progress: t.progress()})
	if err != nil {
		r.Close()
		return nil, nil, said(err)
	}
	return m, func() { r.Close() }, nil
}

// classRecord is the file into which a class is collected.
func (t *teacher) classRecord(c *classfile.Class) (string, error) {
	if t.recordFile != "" {
		return t.recordFile, nil
	}
	// Not into the teacher's own record, where they may practise themselves.
	own, err := record.DefaultPath()
	return filepath.Join(filepath.Dir(own), "classes", class.RecordName(c.Code)), err
}
