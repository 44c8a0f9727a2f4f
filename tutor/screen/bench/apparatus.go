package bench

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// apparatus is the list of problems, one of which is built like what stands on the
// table.
type apparatus struct {
	frame.Scroller
	shown views.List
}

func newApparatus(b *Bench) *apparatus {
	all := views.List{Sections: tutor.SectionsOf(b.Table.Tutor.Bank, nil), IsNobody: true}
	return &apparatus{shown: all.Narrowed(b.line.Text())}
}

func (*apparatus) place(*Bench) int { return -1 }

func (*apparatus) question(*Bench) string { return saidWhichApparatus }

func (a *apparatus) view(*Bench) views.Sheet {
	v := a.shown
	v.Top = a.Seen.Top
	return v
}

func (a *apparatus) typed(b *Bench) { a.shown = a.shown.Narrowed(b.line.Text()) }

func (*apparatus) keys(b *Bench) []frame.Binding {
	return []frame.Binding{b.on.UpDown, b.on.Topic, b.on.Choose, b.on.Menu, b.on.Quit}
}

func (a *apparatus) press(_ *Bench, k tea.KeyMsg) (ok bool) {
	a.shown, ok = a.shown.Moved(k, a.Seen)
	return ok
}

// enter puts the picked one on the table, with the class's g.
func (a *apparatus) enter(b *Bench, _ string) {
	picked, ok := a.shown.Picked()
	if !ok {
		b.Say(a.shown.None())
		return
	}
	t := b.Table.Tutor
	p, err := t.Bank.Get(picked.ID)
	if err == nil {
		p, err = t.Class.WithGravity(p)
	}
	if err != nil {
		b.Say(views.SaidTrouble(picked.ID, err))
		return
	}
	b.take(p)
}
