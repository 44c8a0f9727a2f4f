package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/plain"
	"example.org/standstill/tutor/record"
)

// benchGuide asks for everything that a run needs. A signal to stop ends it as leaving
// does.
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
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	o.Record = kept
	t := tutor.New(o)
	talk := plain.NewTalk(ctx, plain.Options{Tutor: t, In: a.In, Out: a.Out, Kept: kept.Path(), Echo: !isTerminal(a.In)})
	if notice != "" {
		talk.Say(notice)
	}
	g := a.guide(t, talk, m)
	err = g.Run(p)
	if closed := talk.Close(); err == nil || err == plain.End {
		err = closed
	}
	return said(err)
}

// guide wires a guide to the talk, and a lesson for whoever predicts by hand.
func (a *app) guide(t *tutor.Tutor, talk *plain.Talk, m *measured) *bench.Guide {
	return &bench.Guide{
		Tutor: t, Say: talk.Say, Ask: talk.Ask,
		Style: bench.Style{Plain: m.plain || !a.fullTerminal()},
		Save:  func(name, usual string, page []byte) (string, error) { return saveAs(name, usual, page) },
		Practise: func(s record.Student, p *problems.Problem, run string) error {
			desk, err := t.Seat(s)
			if err != nil {
				return err
			}
			lesson, err := desk.OpenCopy(p, run)
			if err != nil {
				return err
			}
			return talk.Lesson(desk, lesson)
		},
	}
}
