package class

import (
	"bytes"
	"fmt"
	"os"
	"time"

	"go.yaml.in/yaml/v4"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/record"
)

// ReadFile reads a class file.
func ReadFile(name string, bank *problems.Bank) (*Class, error) {
	data, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	var f struct {
		Name, Code string
		Students   []struct{ ID, Name string }
		Problems   []struct {
			Problem, Topic, Due string
		}
	}
	l, err := yaml.NewLoader(bytes.NewReader(data), yaml.WithKnownFields())
	if err != nil {
		return nil, err
	}
	if err := l.Load(&f); err != nil {
		return nil, err
	}
	c := &Class{Name: f.Name, Code: f.Code}
	for _, s := range f.Students {
		c.Students = append(c.Students, record.Student{ID: s.ID, Name: s.Name})
	}
	for _, one := range f.Problems {
		due, _ := time.ParseInLocation("2006-01-02", one.Due, time.Local)
		found := false
		for _, h := range bank.List() {
			if h.ID == one.Problem || h.Topic == one.Topic {
				c.Work, found = append(c.Work, Set{h, due}), true
			}
		}
		if !found {
			return nil, fmt.Errorf("no problem %s", one.Problem)
		}
	}
	return c, nil
}
