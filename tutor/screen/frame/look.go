package frame

import (
	"math"
	"strings"

	"github.com/charmbracelet/lipgloss"
)

// Look is how one instance of the program shows things: its paint, its signs and
// whether it may use more than seven bits. Nothing of it is shared between
// instances.
type Look struct {
	Ascii bool
	Signs signs
	paint [FirstForce + hues]brush
}

// brush is what the terminal is sent before and behind a painted text.
type brush struct{ on, off string }

// signs are the marks of the screens. Each stands beside a word that says the
// same.
type signs struct {
	Right, Almost, Wrong, Unclear, Disputed, Hint, Shown string
	HandLeft, HandRight, Done, Nothing                   string
	Taut, Slack, Dotted                                  string // the rope along the stages, rules
	Pick, Cursor, bar, Dash, More                        string
	arrows                                               [8]string // anticlockwise from the right
}

func drawnSigns() signs {
	return signs{
		Right: "✓", Almost: "≈", Wrong: "✗", Unclear: "?", Disputed: "!", Hint: "→", Shown: "=",
		HandLeft: "▸", HandRight: "◂", Done: "✓", Nothing: "·",
		Taut: "━", Slack: "─", Dotted: "┄",
		Pick: "▸", Cursor: "▏", bar: "─", Dash: "–", More: "…",
		arrows: [8]string{"→", "↗", "↑", "↖", "←", "↙", "↓", "↘"},
	}
}

func typedSigns() signs {
	return signs{
		Right: "+", Almost: "~", Wrong: "x", Unclear: "?", Disputed: "!", Hint: ">", Shown: "=",
		HandLeft: "[", HandRight: "]", Done: "+", Nothing: ".",
		Taut: "=", Slack: "-", Dotted: ".",
		Pick: ">", Cursor: "|", bar: "-", Dash: "-", More: "...",
		arrows: [8]string{">", "/", "^", `\`, "<", "/", "v", `\`},
	}
}

// Arrow is the arrow nearest to a direction in degrees.
func (s *signs) Arrow(direction float64) string {
	eighth := int(math.Round(direction/45)) % 8
	return s.arrows[(eighth+8)%8]
}

// NewLook makes the look of an instance; r is the instance's own renderer.
func NewLook(r *lipgloss.Renderer, light, ascii bool) *Look {
	l := &Look{Ascii: ascii, Signs: drawnSigns()}
	if ascii {
		l.Signs = typedSigns()
	}
	c := onDark()
	if light {
		c = onLight()
	}
	l.paint[Bold] = brushOf(r.NewStyle().Bold(true))
	l.paint[Quiet] = brushOf(r.NewStyle().Foreground(c.quiet))
	l.paint[Good] = brushOf(r.NewStyle().Foreground(c.good))
	l.paint[Near] = brushOf(r.NewStyle().Foreground(c.near))
	l.paint[Bad] = brushOf(r.NewStyle().Foreground(c.bad))
	for i := range c.force {
		l.paint[ForceShade(i)] = brushOf(r.NewStyle().Foreground(c.force[i]))
	}
	return l
}

// brushOf takes a style apart, so that painting a screen is joining strings.
func brushOf(s lipgloss.Style) brush {
	on, off, _ := strings.Cut(s.Render("x"), "x")
	return brush{on, off}
}

// Sheet paints rows as one text.
func (l *Look) Sheet(rows []Row) string {
	size := len(rows)
	for _, r := range rows {
		for _, s := range r {
			p := l.paint[s.Shade]
			size += len(p.on) + len(s.Text) + len(p.off)
		}
	}
	var b strings.Builder
	b.Grow(size) // exactly: a screen is kept until the next one
	for i, r := range rows {
		if i > 0 {
			b.WriteByte('\n')
		}
		for _, s := range r {
			p := l.paint[s.Shade]
			b.WriteString(p.on)
			b.WriteString(s.Text)
			b.WriteString(p.off)
		}
	}
	return b.String()
}
