package tutor_test

import (
	"testing"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// A copy with measured numbers is worked and credited like any other, but the student
// comes back to the problem that was left for the bench.
func TestMeasuredCopyIsCreditedAndNoPlaceToComeBackTo(t *testing.T) {
	r, err := record.OpenMemory(record.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	teacher := tutor.New(tutor.Options{Bank: problems.Embedded(), Record: r})
	student, _, err := teacher.Enrol("Ana")
	if err != nil {
		t.Fatal(err)
	}
	desk, err := teacher.Seat(student)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := desk.Open("banner-ring"); err != nil {
		t.Fatal(err)
	}
	inFile, err := problems.Embedded().Get("canal-lantern")
	if err != nil {
		t.Fatal(err)
	}
	p, err := inFile.WithValues(map[string]string{"m": "0.350 kg", "alpha": "30 deg", "beta": "45 deg"})
	if err != nil {
		t.Fatal(err)
	}
	run, err := r.Append(record.Entry{Kind: record.Bench, Student: student.ID, Problem: p.ID, Hash: p.Hash})
	if err != nil {
		t.Fatal(err)
	}
	lesson, err := desk.OpenCopy(p, run.ID)
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{"T1 up left; T2 up right; w down",
		"T1x = -T1 cos 30; T1y = T1 sin 30; T2x = T2 cos 45; T2y = T2 sin 45; wx = 0; wy = -0.350 kg * 9.8 m/s^2",
		"T2 cos 45 - T1 cos 30 = 0", "T1 sin 30 + T2 sin 45 = 3.43 N", "T1 = 2.51 N; T2 = 3.08 N"} {
		if result, err := lesson.Check(line); err != nil {
			t.Fatal(err)
		} else if result.Line.Verdict != "right" {
			t.Fatalf("%s: %+v", line, result.Line.Report)
		}
	}
	// From the record alone, as at the next start.
	if desk, err = teacher.Seat(student); err != nil {
		t.Fatal(err)
	}
	if got := desk.ProgressOf(p); got.Status != tutor.RightFirst {
		t.Errorf("status %v", got)
	}
	if got := desk.Progress("canal-lantern"); got.Status != tutor.RightFirst {
		t.Errorf("the problem is not credited: %v", got)
	}
	if id, ok := desk.Unfinished(); id != "banner-ring" || !ok {
		t.Errorf("comes back to %s, %v", id, ok)
	}
	if lesson, err = desk.Open("canal-lantern"); err != nil || lesson.Problem.Copy != "" || len(lesson.Lines()) > 0 {
		t.Errorf("opened copy %q with %d lines, %v", lesson.Problem.Copy, len(lesson.Lines()), err)
	}
	if lesson, err = desk.OpenCopy(p, run.ID); err != nil || !lesson.Over() {
		t.Errorf("the measured copy does not come back: %v", err)
	}
}
