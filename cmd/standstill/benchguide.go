package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"syscall"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/plain"
	"example.org/standstill/tutor/screen"
)

// benchGuide asks for everything that a run needs: on a screen, or in lines of text
// where these are asked for or the terminal can do no more.
func (a *app) benchGuide(args []string, m *measured) error {
	o, err := a.surroundings()
	if err != nil {
		return err
	}
	var p *problems.Problem
	if len(args) == 1 {
		if p, err = a.model(args[0], o); err != nil {
			return err
		}
	}
	kept, notice, err := a.openRecord()
	if err != nil {
		return err
	}
	defer kept.Close()
	o.Record = kept
	// The record is open before: who sits at the table is looked up in it.
	t := tutor.New(o)
	if m.plain || !a.fullTerminal() {
		return a.benchLines(a.guide(t, m), p, notice)
	}
	bye, err := screen.RunBench(t, screen.Bench{Problem: p, Names: m.students, Save: saveAtBench}, a.onScreen(notice))
	if bye.Said != "" {
		fmt.Fprintln(a.Out, bye.Said)
	}
	// A screen can be left for lines of text, as by somebody who starts a screen reader.
	if err != nil || !bye.Plain {
		return said(err)
	}
	g := a.guide(t, m)
	// What was typed on the screen goes on in the lines.
	if g.Begun = bye.Form; bye.Form != nil {
		p = bye.Form.Problem()
	}
	return a.benchLines(g, p, "")
}

// benchLines asks in lines of text. A signal to stop ends it as “quit” does.
func (a *app) benchLines(g *bench.Guide, p *problems.Problem, notice string) error {
	// The default would end the program before the run is saved.
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	talk := plain.NewTalk(ctx, plain.Options{Tutor: g.Tutor, In: a.In, Out: a.Out, SavedIn: g.Tutor.Record.Path(), Echo: !isTerminal(a.In), Cols: columns(a.Out)})
	if notice != "" {
		talk.Say(notice)
	}
	g.Say, g.Ask, g.Practise = talk.Say, talk.Ask, talk.Lesson
	err := g.Run(p)
	// The end of the input is no error, unless what was typed could not be saved.
	if closed := talk.Close(); err == nil || err == plain.End {
		err = closed
	}
	return said(err)
}

// guide is a guide that has yet to be given a voice.
func (a *app) guide(t *tutor.Tutor, m *measured) *bench.Guide {
	return &bench.Guide{Table: bench.Table{Tutor: t, Save: saveAtBench, Names: m.students}, Style: bench.Style{Plain: m.plain || !a.fullTerminal()}}
}
