package screen

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/checker"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
	"example.org/standstill/tutor/screen/views"
)

// angles turns what is given in a solved problem, and shows what follows.
type angles struct {
	onLesson
	frame.Still
	turning *tutor.Angles
	at      int
	scene   picture.Scene
	curves  []tutor.Curve
	others  string // what the curves were made for
	remark  string
}

func (m *model) turnAngles() {
	a := &angles{turning: m.lesson.Angles()}
	if a.turning == nil {
		m.say(saidNoAngles)
		return
	}
	for i, k := range a.turning.Sliders() {
		// An angle is what changes most, so it is in hand first.
		if k.Unit.Dim == quantity.Angle {
			a.at = i
			break
		}
	}
	a.follow(m)
	m.sheet = a
}

func (a *angles) question(*model) string { return saidTurn }

func (a *angles) view(m *model) views.Sheet {
	return views.Angles{
		Sliders: a.turning.Sliders(), At: a.at, Readings: a.turning.Readings(),
		Curves: a.curves, Scene: a.scene, Colours: m.colours, Remark: a.remark,
	}
}

func (a *angles) keys(m *model) []frame.Binding {
	return []frame.Binding{m.on.Slider, m.on.Turn, m.on.TurnFar, m.on.Back, m.on.Quit}
}

func (a *angles) press(m *model, k tea.KeyMsg) bool {
	sliders := len(a.turning.Sliders())
	step := 0
	switch k.Type {
	case tea.KeyUp:
		a.at = (a.at + sliders - 1) % sliders
	case tea.KeyDown, tea.KeyTab:
		a.at = (a.at + 1) % sliders
	case tea.KeyLeft:
		step = -1
	case tea.KeyRight:
		step = 1
	case tea.KeyPgUp:
		step = 10
	case tea.KeyPgDown:
		step = -10
	default:
		return false
	}
	if step != 0 {
		m.say(a.turning.Slide(a.at, step))
	}
	a.follow(m)
	return true
}

// follow makes the drawing and the curves of the present setting. Turning a slider
// moves the mark along its own curves, which stay.
func (a *angles) follow(m *model) {
	if ref, err := a.turning.Reference(); err == nil {
		a.scene = picture.OfProblem(ref, picture.View{Stage: checker.Solve, Solved: true})
	}
	sliders := a.turning.Sliders()
	key := fmt.Sprint(a.at)
	for i, k := range sliders {
		if i != a.at {
			key += " " + k.String()
		}
	}
	// The curves only depend on the other sliders; each of them takes many solutions.
	if key != a.others {
		a.curves, a.others = a.turning.Curves(a.at), key
	}
	a.remark = ""
	if sliders[a.at].Unit.Dim != quantity.Angle {
		return
	}
	if a.remark = a.turning.Remark(a.at, a.curves); a.remark == "" {
		a.remark = m.levelToo(a.at)
	}
}

// almostLevel is an angle of a string that is nearly level, in degrees.
const almostLevel = 5

// levelToo says which other angles have to be near level for the curves of a slider
// to get steep; "" where that does not help.
func (m *model) levelToo(at int) string {
	// On a copy: nothing of what is shown moves.
	trial := m.lesson.Angles()
	var others []string
	for i, k := range trial.Sliders() {
		if i != at && k.Unit.Dim == quantity.Angle && trial.Set(i, almostLevel*quantity.Degree/k.Unit.Factor) == "" {
			others = append(others, k.Letter)
		}
	}
	if others == nil || trial.Remark(at, trial.Curves(at)) == "" {
		return ""
	}
	return saidLevelToo(others)
}
