package screen

import (
	"math"
	"strings"

	"github.com/charmbracelet/lipgloss"
)

// look is how one instance of the program shows things: its paint, its signs and
// whether it may use more than seven bits. Nothing of it is shared between
// instances.
type look struct {
	ascii bool
	signs signs
	paint [firstForce + hues]brush
}

// brush is what the terminal is sent before and behind a painted text.
type brush struct{ on, off string }

// signs are the marks of the screens. Each stands beside a word that says the
// same.
type signs struct {
	right, almost, wrong, unread, kept, hint, shown string
	handLeft, handRight, done, nothing              string
	taut, slack, dotted                             string // the rope along the stages, rules
	pick, cursor, bar, dash, more                   string
	arrows                                          [8]string // counter-clockwise from the right
}

func drawnSigns() signs {
	return signs{
		right: "✓", almost: "≈", wrong: "✗", unread: "?", kept: "!", hint: "→", shown: "=",
		handLeft: "▸", handRight: "◂", done: "✓", nothing: "·",
		taut: "━", slack: "─", dotted: "┄",
		pick: "▸", cursor: "▏", bar: "─", dash: "–", more: "…",
		arrows: [8]string{"→", "↗", "↑", "↖", "←", "↙", "↓", "↘"},
	}
}

func typedSigns() signs {
	return signs{
		right: "+", almost: "~", wrong: "x", unread: "?", kept: "!", hint: ">", shown: "=",
		handLeft: "[", handRight: "]", done: "+", nothing: ".",
		taut: "=", slack: "-", dotted: ".",
		pick: ">", cursor: "|", bar: "-", dash: "-", more: "...",
		arrows: [8]string{">", "/", "^", `\`, "<", "/", "v", `\`},
	}
}

// arrow is the arrow nearest to a direction in degrees.
func (s *signs) arrow(direction float64) string {
	eighth := int(math.Round(direction/45)) % 8
	return s.arrows[(eighth+8)%8]
}

// newLook makes the look of an instance; r is the instance's own renderer.
func newLook(r *lipgloss.Renderer, light, ascii bool) *look {
	l := &look{ascii: ascii, signs: drawnSigns()}
	if ascii {
		l.signs = typedSigns()
	}
	c := onDark()
	if light {
		c = onLight()
	}
	l.paint[bold] = brushOf(r.NewStyle().Bold(true))
	l.paint[quiet] = brushOf(r.NewStyle().Foreground(c.quiet))
	l.paint[good] = brushOf(r.NewStyle().Foreground(c.good))
	l.paint[near] = brushOf(r.NewStyle().Foreground(c.near))
	l.paint[bad] = brushOf(r.NewStyle().Foreground(c.bad))
	for i := range c.force {
		l.paint[forceShade(i)] = brushOf(r.NewStyle().Foreground(c.force[i]))
	}
	return l
}

// brushOf takes a style apart, so that painting a screen is joining strings.
func brushOf(s lipgloss.Style) brush {
	on, off, _ := strings.Cut(s.Render("x"), "x")
	return brush{on, off}
}

// sheet paints rows as one text.
func (l *look) sheet(rows []row) string {
	var b strings.Builder
	for i, r := range rows {
		if i > 0 {
			b.WriteByte('\n')
		}
		for _, s := range r {
			p := l.paint[s.shade]
			b.WriteString(p.on)
			b.WriteString(s.text)
			b.WriteString(p.off)
		}
	}
	return b.String()
}
