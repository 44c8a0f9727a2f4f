package bench

import (
	"time"

	"example.org/standstill/tutor/picture"
)

// Saver writes a file of that name, or of the usual one where name is "", and returns
// where it is.
type Saver func(name, usual string, content []byte) (where string, err error)

// Report keeps the run and writes its page for the lab book, with all runs of this
// apparatus in the plot. said tells where it is, or why there is none; times are those
// of zone. The error is that of the record.
func (t *Table) Report(save Saver, name string, zone *time.Location) (said []string, err error) {
	if err := t.Keep(); err != nil {
		return nil, err
	}
	trials, err := t.Trials()
	if err != nil {
		return nil, err
	}
	if n := len(trials); n == 0 || trials[n-1].form != t.Form {
		_, why := t.Form.Result()
		return why, nil
	}
	page, err := Report(trials, About{Students: t.Standings(), When: t.when(zone)})
	if err != nil {
		return nil, err
	}
	return []string{saved(save, name, t.Form.problem.ID+"-report.html", page)}, nil
}

// when is the time of the run in hand, "" before it is kept.
func (t *Table) when(zone *time.Location) string {
	runs, err := Runs(t.Tutor.Record, t.Form.problem.ID)
	if err != nil {
		return ""
	}
	for _, run := range runs {
		if run.ID == t.run {
			return run.when(zone)
		}
	}
	return ""
}

// Sheet writes the sheet to fill in, and says where it is.
func (t *Table) Sheet(save Saver, name string) (said string, err error) {
	page, err := Sheet(t.Form)
	if err != nil {
		return "", err
	}
	return saved(save, name, t.Form.problem.ID+"-sheet.html", page), nil
}

func saved(save Saver, name, usual string, page []byte) string {
	if save == nil {
		return saidNoFiles
	}
	where, err := save(name, usual, page)
	if err != nil {
		return saidNotSaved(err)
	}
	return saidSaved(where)
}

// Plot keeps the run and draws what is predicted against a letter, with the points of
// every run of this apparatus; by is as for Plot. The error is that of the record.
func (t *Table) Plot(by string) (scene picture.Scene, notes []string, why string, err error) {
	if err = t.Keep(); err != nil {
		return scene, nil, "", err
	}
	trials, err := t.Trials()
	if err != nil {
		return scene, nil, "", err
	}
	scene, notes, why = Plot(trials, by)
	return scene, notes, why, nil
}
