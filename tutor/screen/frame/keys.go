package frame

import (
	"sync"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// Binding is a key with what it does, in the words of the key line.
type Binding = key.Binding

// Bind makes a binding.
func Bind(shown, does string, keys ...string) Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(shown, does))
}

// Keys are the keys of the sheets, with what the key line says of them.
type Keys struct {
	Check, Compare, Empty, Earlier, NextComponent, ToForces, NextForce, Point             Binding
	Scroll, ScrollHere, Stages, UpDown, Topic, Choose, Open                               Binding
	GoOn, ShowIt, NextProblem, Angles, Slider, Turn, TurnFar                              Binding
	Back, MyPage, Menu, Quit, Plain                                                       Binding
	TakeIt, NextField, ToResult, NextPage, Letter, Mark, ToBench, ToForm, Seat, LayBeside Binding
}

// SharedKeys is the table of them. All instances in a process share it, and only read it.
var SharedKeys = sync.OnceValue(func() *Keys { all := allKeys(); return &all })

func allKeys() Keys {
	return Keys{
		Check:         Bind("enter", "check", "enter"),
		Compare:       Bind("enter", "worked solution", "enter"),
		Empty:         Bind("ctrl+u", "clear line", "ctrl+u"),
		Earlier:       Bind("↑", "earlier line", "up"),
		NextComponent: Bind("tab", "next", "tab"),
		ToForces:      Bind("tab", "to the forces", "tab"),
		NextForce:     Bind("tab", "next", "tab"),
		Point:         Bind("↑ ↓ ← →", "direction", "up"),
		Scroll:        Bind("pgup", "scroll", "pgup"),
		ScrollHere:    Bind("↑ ↓", "scroll", "up"),
		Stages:        Bind("← →", "stage", "left"),
		UpDown:        Bind("↑ ↓", "move", "up"),
		Topic:         Bind("tab", "next topic", "tab"),
		Choose:        Bind("enter", "choose", "enter"),
		Open:          Bind("enter", "open", "enter"),
		GoOn:          Bind("enter", "go on", "enter"),
		ShowIt:        Bind("enter", "show it", "enter"),
		NextProblem:   Bind("enter", "next problem", "enter"),
		Angles:        Bind("tab", "other angles", "tab"),
		Slider:        Bind("↑ ↓", "choose", "up"),
		Turn:          Bind("← →", "change", "left"),
		TurnFar:       Bind("pgup pgdn", "big steps", "pgup"),
		TakeIt:        Bind("enter", "save value", "enter"),
		NextField:     Bind("enter", "next", "enter"),
		ToResult:      Bind("enter", "result", "enter"),
		NextPage:      Bind("tab", "next page", "tab"),
		Letter:        Bind("↑ ↓", "other letter", "up"),
		Mark:          Bind("tab", "mark to compare", "tab"),
		ToBench:       Bind("enter", "to the bench", "enter"),
		ToForm:        Bind("enter", "to the values", "enter"),
		LayBeside:     Bind("enter", "compare", "enter"),
		Seat:          Bind("enter", "begin", "enter"),
		Back:          Bind("esc", "back", "esc"),
		MyPage:        Bind("esc", "my page", "esc"),
		Menu:          Bind("esc", "menu", "esc"),
		Quit:          Bind("ctrl+c", "quit", "ctrl+c"),
		Plain:         Bind("enter", "lines of text", "enter"),
	}
}

// Types reports whether a key is a letter, or several that arrived together.
func Types(k tea.KeyMsg) bool {
	return k.Type == tea.KeyRunes || k.Type == tea.KeySpace
}

// Picked is the place in a list of n after an arrow key; false for any other key.
func Picked(at, n int, k tea.KeyMsg) (int, bool) {
	switch k.Type {
	case tea.KeyUp:
		return max(at-1, 0), true
	case tea.KeyDown:
		return max(min(at+1, n-1), 0), true
	}
	return at, false
}

// PickedInTurn is the same in a list that goes on at its other end, with tab as well.
func PickedInTurn(at, n int, k tea.KeyMsg) (int, bool) {
	switch k.Type {
	case tea.KeyUp, tea.KeyShiftTab:
		return (at + n - 1) % n, true
	case tea.KeyDown, tea.KeyTab:
		return (at + 1) % n, true
	}
	return at, false
}
