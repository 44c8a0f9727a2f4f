package summary

import (
	"io"
	"math"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class/classfile"
)

// The report as one JSON object.
type jsonReport struct {
	Name     string         `json:"name"`
	Code     string         `json:"code"`
	Time     string         `json:"time"`
	Marking  string         `json:"marking"`
	Entries  int            `json:"entries"`
	Problems []jsonProblem  `json:"problems"`
	Students []jsonStudent  `json:"students"`
	Stuck    []jsonStuck    `json:"stuck"`
	ByStage  []jsonTally    `json:"mistakesByStage"`
	ByWork   []jsonTally    `json:"mistakesByProblem"`
	Disputed []jsonDisputed `json:"kept"`
	Remarks  []jsonRemark   `json:"remarks"`
	Ideas    []jsonIdea     `json:"ideas"`
	TimeRule string         `json:"timeRule"`
}

// jsonIdea is one idea with the ids of those who have come so far with it.
type jsonIdea struct {
	Idea     tutor.Idea `json:"idea"`
	Title    string     `json:"title"`
	Steady   []string   `json:"steady"`
	Learning []string   `json:"learning"`
	Slipping []string   `json:"slipping"`
	New      []string   `json:"new"`
}

type jsonProblem struct {
	ID       string         `json:"id"`
	Title    string         `json:"title"`
	Topic    string         `json:"topic"`
	Level    int            `json:"level"`
	Due      string         `json:"due,omitempty"`
	Students map[string]int `json:"students"`
	Minutes  float64        `json:"minutes"`
	Weight   float64        `json:"weight"`
}

type jsonStudent struct {
	ID      string     `json:"id"`
	Name    string     `json:"name"`
	Minutes float64    `json:"minutes"`
	Entries int        `json:"entries"`
	Share   float64    `json:"share"`
	Work    []jsonCell `json:"work"`

	Ideas []Understanding `json:"ideas,omitempty"`
}

type jsonCell struct {
	Problem    string        `json:"problem"`
	Status     string        `json:"standing"`
	Late       bool          `json:"late,omitempty"`
	Overdue    bool          `json:"overdue,omitempty"`
	Days       int           `json:"days,omitempty"`
	Stage      checker.Stage `json:"stage,omitempty"`
	Item       string        `json:"item,omitempty"`
	Attempts   int           `json:"attempts"`
	Items      int           `json:"items"`
	RightFirst int           `json:"firstGo"`
	Lines      int           `json:"lines"`
	Refused    int           `json:"refused"`
	Hints      int           `json:"hints"`
	StepsShown int           `json:"stepsShown"`
	Minutes    float64       `json:"minutes"`
	Begun      string        `json:"begun,omitempty"`
	Done       string        `json:"done,omitempty"`
}

type jsonStuck struct {
	Student string        `json:"student"`
	Problem string        `json:"problem"`
	Stage   checker.Stage `json:"stage"`
	Item    string        `json:"item,omitempty"`
	Stuck
}

type jsonTally struct {
	Stage    checker.Stage `json:"stage,omitempty"`
	Problem  string        `json:"problem,omitempty"`
	Code     checker.Code  `json:"code"`
	Students int           `json:"students"`
	Times    int           `json:"times"`
	Who      []string      `json:"who"`
	Line     string        `json:"line"`
}

type jsonDisputed struct {
	Student string `json:"student"`
	DisputedLine
}

type jsonRemark struct {
	Remark
	Said string `json:"said"`
}

// WriteJSON writes everything that the report holds.
func (r *Report) WriteJSON(w io.Writer) error {
	out := jsonReport{Name: r.Name, Code: r.Code, Time: stamp(r.At), Marking: checker.Version, Entries: r.Entries,
		Problems: []jsonProblem{}, Students: []jsonStudent{}, Stuck: []jsonStuck{}, Disputed: []jsonDisputed{}, Remarks: []jsonRemark{}, Ideas: []jsonIdea{}, TimeRule: saidTimeRule,
		ByStage: jsonTallies(r.ByStage), ByWork: jsonTallies(r.ByProblem)}
	for _, c := range r.Work {
		out.Problems = append(out.Problems, c.json())
	}
	for _, row := range r.Students {
		out.Students = append(out.Students, r.jsonStudent(row))
	}
	for _, s := range r.Stuck {
		out.Stuck = append(out.Stuck, jsonStuck{s.Student, s.Problem, s.Stage, s.Item, s.Stuck})
	}
	for _, k := range r.Disputed {
		out.Disputed = append(out.Disputed, jsonDisputed{k.Student, k.DisputedLine})
	}
	for _, one := range r.Remarks {
		out.Remarks = append(out.Remarks, jsonRemark{one, r.Say(one)})
	}
	for _, c := range r.Ideas {
		out.Ideas = append(out.Ideas, jsonIdea{c.Idea, c.Title(), some(c.Steady), some(c.Learning), some(c.Slipping), some(c.New)})
	}
	return classfile.WriteJSON(w, out, "  ")
}

func (c *Column) json() jsonProblem {
	p := jsonProblem{c.ID, c.Title, c.Topic, c.Level, stamp(c.Due), map[string]int{}, tenths(c.Spent.Minutes()), c.Weight}
	for status, n := range c.Students {
		// By word and not by number: a number would change with the next status.
		p.Students[statusWord(status)] = n
	}
	return p
}

func (r *Report) jsonStudent(row Row) jsonStudent {
	// An empty list and not null, so that a program can go through it.
	s := jsonStudent{row.ID, row.Name, tenths(row.Spent.Minutes()), row.Entries, math.Round(1000*row.Share) / 1000, []jsonCell{}, row.Ideas}
	for i, c := range row.Cells {
		s.Work = append(s.Work, jsonCell{r.Work[i].ID, c.Status.Key(), c.Late, c.Overdue, c.Days, c.Stage, c.Item, c.Attempts, c.Items, c.RightFirst, c.Lines, c.Refused,
			c.Hints, c.Shown, tenths(c.Spent.Minutes()), stamp(c.Begun), stamp(c.Done)})
	}
	return s
}

func jsonTallies(list []Tally) []jsonTally {
	out := []jsonTally{}
	for _, t := range list {
		out = append(out, jsonTally{t.Stage, t.Problem, t.Code, t.Students, t.Count, t.Who, t.Line})
	}
	return out
}

func tenths(x float64) float64 { return float64(int(x*10+0.5)) / 10 }

// some is a list that is never null.
func some(ids []string) []string { return append([]string{}, ids...) }
