// Package sheet knows problems on paper: one page of work for each problem and
// student, and the key on pages of its own.
//
// Write makes one HTML file that needs nothing beside it and no scripts: sheet.go lays the
// papers, answers.go the results of a class, page.go holds the layout and words.go what is asked.
package sheet

import (
	"html/template"
	"io"

	"example.org/standstill/checker"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/picture"
)

// Paper is one problem for one student. Student is a name to print, "" for a line
// to write it on.
type Paper struct {
	Student string
	Page    *tutor.Page
}

// space is how many ruled rows each stage gets; those of the last stage that go over
// the page are cut off.
var space = map[checker.Stage]int{
	checker.Diagram: 0, checker.Components: 3, checker.XSum: 2, checker.YSum: 2, checker.Solve: 20,
}

// drawings is how many drawings a paper and its key have.
const drawings = 4

// drawn is the size of a drawing on paper, in CSS pixels.
const (
	drawnWide = 304
	drawnHigh = 180
)

// stage is one part of the work to be done.
type stage struct {
	Title string
	Asks  string
	Rows  []struct{}
	Last  bool // takes what the page has left
}

// side is one paper ready to be set.
type side struct {
	Student, Title, Text string
	Wanted               []wanted
	Givens               []tutor.Given
	Setup                template.HTML // what the problem is about; empty where the file wants none
	Figure, Answer       template.HTML
	SetupAgain           template.HTML // the same, on the page of the key
	Stages               []stage
	Steps                []tutor.Step
}

// Write writes the papers, each on a page, and where key is set their worked
// solutions on pages behind.
func Write(w io.Writer, papers []Paper, key bool) error {
	sides := make([]side, len(papers))
	for i, p := range papers {
		sides[i] = lay(p)
		for j, drawn := range []*template.HTML{&sides[i].Setup, &sides[i].Figure, &sides[i].Answer, &sides[i].SetupAgain} {
			// All drawings are in one file, in which their ids must not meet.
			*drawn = template.HTML(picture.Numbered(string(*drawn), drawings*i+j+1))
		}
	}
	return page().Execute(w, struct {
		Title string
		Sides []side
		Key   bool
	}{titles(papers), sides, key})
}

func lay(p Paper) side {
	s := side{
		Student: p.Student, Title: p.Page.Problem.Title, Text: p.Page.Statement(),
		Wanted: wantedOf(p.Page), Steps: p.Page.Worked(),
		Givens: p.Page.Givens(), Setup: setup(p.Page),
		// Drawn a second time for the key, because each drawing in the file has ids of its own.
		Figure: figure(p.Page, picture.View{Stage: checker.Diagram}), SetupAgain: setup(p.Page),
		Answer: figure(p.Page, picture.View{Solved: true}),
	}
	for _, st := range checker.Stages {
		s.Stages = append(s.Stages, stage{Title: tutor.Title(st), Asks: asks[st], Rows: make([]struct{}, space[st]), Last: st == checker.Solve})
	}
	return s
}

// wanted is what is asked for, and which force it is where that can be said.
type wanted struct{ Text, Meaning string }

func wantedOf(page *tutor.Page) (all []wanted) {
	texts := page.Wanted()
	for i, name := range page.Problem.System.Find {
		all = append(all, wanted{texts[i], page.Meaning(name)})
	}
	return all
}

// setup draws what the problem is about.
func setup(page *tutor.Page) template.HTML {
	s := picture.NewSetup(page.Ref, page.Problem.Figure)
	if s == nil || !page.ShowsScene() {
		return ""
	}
	return template.HTML(picture.SVG(picture.Scene{Title: page.Problem.Title, Setup: s}, drawnWide, drawnHigh))
}

// figure draws a page's scene. The drawing of a diagram that the student has to
// make shows the axes and the body, and no force.
func figure(page *tutor.Page, view picture.View) template.HTML {
	scene := picture.OfProblem(page.Ref, view)
	if view.Stage == checker.Diagram {
		scene.Forces, scene.Angles = nil, nil
	}
	// The package picture escapes every text that it puts into a drawing.
	return template.HTML(picture.SVG(scene, drawnWide, drawnHigh))
}
