package bench

import (
	"slices"
	"strings"
	"sync"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// Words of the screen, and commands that write files.
const (
	goToLesson tutor.Word = "lesson"
	askReport  tutor.Word = "report"
	askSheet   tutor.Word = "sheet"
	askExport  tutor.Word = "export"
)

// action is something that can be done at the bench.
type action = views.Action[*Bench]

func always(*Bench) bool { return true }

// commandKeys are the keys of commands. A key does what comes nearest to what it does in a
// lesson.
func commandKeys() map[string]frame.Binding {
	return map[string]frame.Binding{
		"result": frame.Bind("ctrl+o", "result", "ctrl+o"), "runs": frame.Bind("ctrl+l", "runs", "ctrl+l"), "text": frame.Bind("ctrl+r", "problem", "ctrl+r"),
	}
}

// actions is the table of everything that can be done at the bench: its commands, and
// what belongs to the screen alone.
func actions() views.Actions[*Bench] {
	all := views.Actions[*Bench]{{
		Key: frame.Bind("ctrl+y", "previous value", "ctrl+y"), Menu: menuRestore,
		Can: func(b *Bench) bool { return b.form.canRestore(b) }, Do: func(b *Bench) { b.form.restore(b) },
	}}
	for _, c := range bench.Commands() {
		all = append(all, action{Word: tutor.Word(c.Word), Key: commandKeys()[c.Word], Menu: c.Does, Can: (*Bench).isMeasuring, Do: func(b *Bench) { b.obeyCommand(c) }})
	}
	return append(all,
		action{Word: tutor.AskHelp, Key: frame.Bind("ctrl+g", "how to write values", "ctrl+g"), Menu: menuNotation, Can: (*Bench).isMeasuring, Do: (*Bench).showNotation},
		action{Menu: views.MenuBackground, Can: always, Do: func(b *Bench) { b.wish.OtherBackground = true }},
		action{Word: tutor.Quit, Key: frame.Bind("ctrl+c", "quit", "ctrl+c"), Menu: views.MenuQuit, Can: always, Do: func(b *Bench) { b.wish.Quit = true }})
}

// What all instances in a process have in common, made once and only read.
var (
	ownActions     = sync.OnceValue(actions)
	visitorActions = sync.OnceValue(func() views.Actions[*Bench] { return visitActions(actions()) })
)

// obeyCommand obeys a command of the bench. The pages of the result have a sheet of their own,
// and the drawing is told in words: it is on the screen already.
func (b *Bench) obeyCommand(c bench.Command) {
	switch page := bench.Page(c.Word); {
	case slices.Contains(pages, page):
		b.showOutcome(page)
	case tutor.Word(c.Word) == tutor.AskDrawing:
		b.showWords()
	case b.hasLine() && !b.form.commit(b):
	default:
		answer := b.Table.Do(c, b.rest)
		// With several students it is asked who; that is a step of the run, with its own sheet.
		if c.Word == "predict" && answer.Then != nil {
			b.put(b.Table.Named(bench.StepByHand), answer.Then, (*Bench).home)
			return
		}
		b.answered(answer, nil)
		b.changed()
	}
}

// visitActions are what a visitor can do: no file of the machine can be written, and the way
// back to the problems is here, because there is no command line.
func visitActions(all views.Actions[*Bench]) views.Actions[*Bench] {
	// These would write files on the host.
	all = slices.DeleteFunc(all, func(a action) bool { return a.Word == askReport || a.Word == askSheet || a.Word == askExport })
	way := action{Word: goToLesson, Menu: menuVisitLesson, Can: always, Do: func(b *Bench) { b.wish.ToLesson = true }}
	// In front of the colours and of the end, which close every menu.
	return slices.Insert(all, len(all)-2, way)
}

// isMeasuring reports whether an apparatus is on the table and the form is in hand.
func (b *Bench) isMeasuring() bool {
	return b.Table.Form != nil && b.at >= b.Table.Named(bench.StepValues)
}

// wordOf finds the word that a line begins with, and what stands behind it.
func (b *Bench) wordOf(text string) (word tutor.Word, rest string, ok bool) {
	if b.hasLine() {
		return b.wordIn(b.form.meant(b, text))
	}
	return b.wordIn(b.anew(text, b.refused))
}

// wordIn finds a word among those that can be obeyed now: anything else may be a name or
// a value.
func (b *Bench) wordIn(text string) (word tutor.Word, rest string, ok bool) {
	if c, rest, ok := bench.CommandOf(text); c.Word != "" {
		known := slices.ContainsFunc(b.actions, func(a action) bool { return a.Word == tutor.Word(c.Word) })
		// Before that a word may be somebody's name.
		return tutor.Word(c.Word), rest, ok && known && b.isMeasuring()
	}
	first, rest, _ := strings.Cut(strings.TrimSpace(text), " ")
	for _, a := range b.actions {
		if a.Word != "" && strings.EqualFold(string(a.Word), first) && a.Can(b) {
			return a.Word, "", strings.TrimSpace(rest) == ""
		}
	}
	return "", "", false
}
