package bench

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/bench"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// over is what sheets have in common that lie over another: the line still belongs to that.
type over struct{ frame.Scroller }

func (over) question(b *Bench) string { return b.base.question(b) }

func (over) typed(b *Bench) { b.base.typed(b) }

// enter goes back, and hands in there what was typed.
func (over) enter(b *Bench, _ string) {
	// Asked before home, which fills the line with what the field has.
	isEmpty := b.line.IsEmpty()
	b.home()
	if !isEmpty {
		b.sheet.enter(b, b.line.Text())
	}
}

// reader is a sheet of rows to be read.
type reader struct {
	over
	title   string
	content views.Content
}

func (r *reader) view(b *Bench) views.Sheet {
	return views.Reader{Title: r.title, Content: r.content, Top: r.Seen.Top, Beneath: b.base.view(b)}
}

func (*reader) keys(b *Bench) []frame.Binding {
	return []frame.Binding{b.on.ScrollHere, b.on.Back, b.on.Quit}
}

func (r *reader) press(_ *Bench, k tea.KeyMsg) bool { return r.Scroll(k) }

// lay puts a sheet to be read over the form, which has the line.
func (b *Bench) lay(title string, content views.Content) {
	b.home()
	b.sheet = &reader{title: title, content: content}
}

func (b *Bench) showNotation() { b.lay(bench.Notation().Title, notation) }

func (b *Bench) showWords() {
	scene := picture.OfProblem(b.ref, picture.View{})
	b.sheet = &reader{title: views.WordInWords, content: views.Sentences(picture.Sentences(scene))}
}

// menu lists everything that can be done now.
type menu struct {
	over
	at int
}

func (n *menu) press(b *Bench, k tea.KeyMsg) (ok bool) {
	can := b.actions.Offered(b)
	if k.Type == tea.KeyEnter {
		b.home()
		// After home, because it may lay a sheet of its own.
		can[n.at].Do(b)
		return true
	}
	n.at, ok = frame.PickedInTurn(n.at, len(can), k)
	return ok
}

// typed closes the menu: what is typed belongs to the sheet under it.
func (*menu) typed(b *Bench) {
	b.home()
	b.sheet.typed(b)
}

func (*menu) keys(b *Bench) []frame.Binding {
	return []frame.Binding{b.on.UpDown, b.on.Choose, b.on.Back, b.on.Quit}
}

func (n *menu) view(b *Bench) views.Sheet {
	return views.Menu{Items: b.actions.Offered(b).Items(), At: n.at, Top: n.Seen.Top, Beneath: b.base.view(b)}
}

// agree asks whether to go on without a record.
type agree struct{ frame.Still }

func (agree) question(*Bench) string { return views.SaidAgree }

func (agree) typed(*Bench) {}

func (agree) keys(b *Bench) []frame.Binding { return []frame.Binding{b.on.GoOn, b.on.Quit} }

func (agree) press(*Bench, tea.KeyMsg) bool { return false }

func (agree) enter(b *Bench, _ string) {
	b.notice = ""
	b.line.Set("")
	b.begin()
	b.Say(tutor.SaidNotSaved)
}

func (agree) view(b *Bench) views.Sheet { return views.Agree{Notice: b.notice} }
