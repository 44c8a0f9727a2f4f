package views

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/screen/frame"
)

// Action is something that can be done from everywhere in a state, a lesson or a run at the
// bench: by typing a word, by choosing it from the menu, and some of them by a key.
type Action[State any] struct {
	Word tutor.Word
	Key  frame.Binding
	Menu string // what the menu says of it; "" for what it does not list
	Can  func(State) bool
	Do   func(State)
}

// Actions is a table of everything that can be done, in the order of the menu.
type Actions[State any] []Action[State]

// Press does what a key stands for; false where that is nothing now.
func (all Actions[State]) Press(s State, k tea.KeyMsg) bool {
	for _, a := range all {
		if key.Matches(k, a.Key) && a.Can(s) {
			a.Do(s)
			return true
		}
	}
	return false
}

// Offered are those that the menu lists now.
func (all Actions[State]) Offered(s State) Actions[State] {
	var can Actions[State]
	for _, a := range all {
		// What cannot be done now is not listed: there is no grey item to wonder about.
		if a.Menu != "" && a.Can(s) {
			can = append(can, a)
		}
	}
	return can
}

// Items are the rows of the menu.
func (all Actions[State]) Items() []MenuItem {
	var items []MenuItem
	for _, a := range all {
		item := MenuItem{Does: a.Menu, Word: string(a.Word)}
		if a.Key.Enabled() {
			item.Key = a.Key.Help().Key
		}
		items = append(items, item)
	}
	return items
}
