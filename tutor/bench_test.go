package tutor_test

import (
	"testing"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// BenchmarkNextOfABusyStudent seats a student who has worked a dozen lines in every
// problem of the bank, and asks what comes next: the longest wait before a first
// screen.
func BenchmarkNextOfABusyStudent(b *testing.B) {
	r, err := record.OpenMemory(record.Options{})
	if err != nil {
		b.Fatal(err)
	}
	defer r.Close()
	bank := problems.Embedded()
	t := tutor.New(tutor.Options{Bank: bank, Record: r})
	s, _, err := t.Enrol("Nele")
	if err != nil {
		b.Fatal(err)
	}
	d, err := t.Seat(s)
	if err != nil {
		b.Fatal(err)
	}
	for _, h := range bank.List() {
		l, err := d.Open(h.ID)
		if err != nil {
			b.Fatal(err)
		}
		for range 12 {
			if _, err := l.Check("w up left; T down"); err != nil {
				b.Fatal(err)
			}
		}
	}
	for b.Loop() {
		d, err := t.Seat(s)
		if err != nil {
			b.Fatal(err)
		}
		if _, ok := d.Next(); !ok {
			b.Fatal("nothing comes next")
		}
	}
}

func BenchmarkOpenOneProblem(b *testing.B) {
	r, err := record.OpenMemory(record.Options{})
	if err != nil {
		b.Fatal(err)
	}
	defer r.Close()
	t := tutor.New(tutor.Options{Bank: problems.Embedded(), Record: r})
	s, _, err := t.Enrol("Nele")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		d, err := t.Seat(s)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := d.Open("canal-lantern"); err != nil {
			b.Fatal(err)
		}
	}
}
