package screen

import (
	"fmt"
	"math"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.org/standstill/checker"
	"example.org/standstill/checker/quantity"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/picture"
	"example.org/standstill/tutor/screen/frame"
)

// angles turns what is given in a solved problem, and shows what follows.
type angles struct {
	onLesson
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
		if k.Unit.Dim == quantity.Angle {
			a.at = i
			break
		}
	}
	a.follow(m)
	m.sheet = a
}

func (a *angles) question(*model) string { return saidTurn }

func (a *angles) under(m *model, cols, rows int) []frame.Row {
	if a.remark == "" {
		return nil
	}
	return m.labelledText(wordSteep, a.remark, cols)
}

func (a *angles) keys(m *model) []binding {
	return []binding{m.on.slider, m.on.turn, m.on.turnFar, m.on.back, m.on.leave}
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

// plot shows the sizes of forces over the slider in hand; where none is asked for,
// whatever is asked in the first unit.
func (a *angles) plot(colours map[string]int) picture.Scene {
	slider := a.turning.Sliders()[a.at]
	p := &picture.Plot{X: picture.Scale{Name: slider.Letter, Unit: unitSign(slider.Unit)}, Marked: true, At: slider.Value}
	var unit quantity.Unit
	for _, c := range a.forcesFirst() {
		if p.Curves != nil && c.Unit != unit {
			continue
		}
		unit = c.Unit
		curve := picture.Curve{Name: frame.OnPaper(c.Name), Colour: colours[c.Name]}
		for _, d := range c.Dots {
			curve.Points = append(curve.Points, picture.Point{X: d.X, Y: d.Y})
		}
		p.Curves = append(p.Curves, curve)
	}
	var names []string
	for _, c := range p.Curves {
		names = append(names, c.Name)
	}
	p.Y = picture.Scale{Name: strings.Join(names, ", "), Unit: unitSign(unit)}
	return picture.Scene{Plot: p}
}

func (a *angles) forcesFirst() []tutor.Curve {
	curves := slices.Clone(a.curves)
	slices.SortStableFunc(curves, func(x, y tutor.Curve) int {
		return rankOfUnit(x.Unit) - rankOfUnit(y.Unit)
	})
	return curves
}

func rankOfUnit(u quantity.Unit) int {
	if u.Dim == quantity.Force {
		return 0
	}
	return 1
}

func unitSign(u quantity.Unit) string {
	switch u.Symbol {
	case "deg":
		return "°"
	case "none":
		return ""
	}
	return u.Symbol
}

func (a *angles) body(m *model, cols, rows int) []frame.Row {
	if m.rows < lowRows {
		return a.lowBody(m, cols, rows)
	}
	left := cols * 45 / 100
	table := a.table(m, cols-left-2)
	right := append(table, nil)
	right = append(right, m.paint(a.plot(m.now.colours), cols-left-2, rows-len(right))...)
	return frame.Columns(m.paint(a.figure(m), left, rows), left+1, frame.Indented(right))
}

// figure is the scene to scale. On a narrow screen the polygon gives way: the
// figure in its own scale tells more than both of them small.
func (a *angles) figure(m *model) picture.Scene {
	scene := a.scene
	if m.cols < wideCols {
		scene.Polygon = nil
	}
	return scene
}

// lowBody puts the figure, the plot and the table side by side.
func (a *angles) lowBody(m *model, cols, rows int) []frame.Row {
	third := (cols - 20) / 2
	both := frame.Columns(m.paint(a.figure(m), third-2, rows), third-1, m.paint(a.plot(m.now.colours), third+1, rows))
	return frame.Columns(both, 2*third, frame.Indented(a.oneColumn(m)))
}

// oneColumn is the table in one column.
func (a *angles) oneColumn(m *model) []frame.Row {
	rows := a.turned(m)
	for _, r := range a.found(m) {
		rows = append(rows, append(frame.Row{frame.Gap(3)}, r...))
	}
	return rows
}

// table lists what can be turned and what comes out.
func (a *angles) table(m *model, cols int) []frame.Row {
	left := cols / 2
	heads := []frame.Row{append(m.look.Row(frame.Quiet, " "+wordTurn).Padded(left), m.look.Text(frame.Quiet, wordFollows))}
	return append(heads, frame.Columns(a.turned(m), left, a.found(m))...)
}

func (a *angles) turned(m *model) []frame.Row {
	var rows []frame.Row
	for i, k := range a.turning.Sliders() {
		rows = append(rows, m.pickRow(i == a.at, m.tint(frame.Plain, k.String(), false)))
	}
	return rows
}

func (a *angles) found(m *model) []frame.Row {
	var rows []frame.Row
	for _, r := range a.turning.Readings() {
		text := frame.SetNames(m.now.tints, r.String())
		if math.IsNaN(r.Value) {
			text = frame.OnPaper(r.Name) + ": " + saidNoRest
		}
		rows = append(rows, m.tint(frame.Bold, text, false))
	}
	return rows
}
