package frame

import "github.com/charmbracelet/lipgloss"

// Shade says what a piece of text is; the look of an instance says how that is
// painted.
type Shade uint8

// The shades. Those of the forces follow them: forces lie next to each other in
// drawings, so they alone have hues that differ from all the others.
const (
	Plain Shade = iota
	Quiet       // what is read once
	Bold        // what is in hand
	Good
	Near
	Bad
	FirstForce
)

// ForceShade is the shade of everything that shows the force with this colour
// index; the shades begin again where a problem has more forces than hues.
func ForceShade(colour int) Shade { return FirstForce + Shade(max(colour, 0)%hues) }

const hues = 7

// tones are the colours of one background. The hues were searched for so that
// any two of them stay apart for readers who lack one kind of cone, and each tone
// is at least 4.5 : 1 against every common background of its kind. The third
// value is for terminals of sixteen colours, whose shades their owner has chosen:
// there the letters have to do.
type tones struct {
	quiet, good, near, bad lipgloss.CompleteColor
	force                  [hues]lipgloss.CompleteColor
}

func onDark() tones {
	return tones{
		quiet: lipgloss.CompleteColor{TrueColor: "#b4b0a8", ANSI256: "249", ANSI: "7"},
		good:  lipgloss.CompleteColor{TrueColor: "#86e08a", ANSI256: "114", ANSI: "10"},
		near:  lipgloss.CompleteColor{TrueColor: "#f2d16b", ANSI256: "221", ANSI: "11"},
		bad:   lipgloss.CompleteColor{TrueColor: "#ff9d8c", ANSI256: "216", ANSI: "9"},
		force: [hues]lipgloss.CompleteColor{
			{TrueColor: "#e8955a", ANSI256: "215", ANSI: "11"}, // copper
			{TrueColor: "#6bb7ff", ANSI256: "75", ANSI: "14"},  // sky
			{TrueColor: "#c8f451", ANSI256: "191", ANSI: "10"}, // lime
			{TrueColor: "#ff62bb", ANSI256: "212", ANSI: "13"}, // pink
			{TrueColor: "#8ce8c0", ANSI256: "115", ANSI: "15"}, // mint
			{TrueColor: "#dc77df", ANSI256: "176", ANSI: "7"},  // orchid
			{TrueColor: "#d8c000", ANSI256: "178", ANSI: "9"},  // mustard
		},
	}
}

func onLight() tones {
	return tones{
		quiet: lipgloss.CompleteColor{TrueColor: "#57534c", ANSI256: "240", ANSI: "0"},
		good:  lipgloss.CompleteColor{TrueColor: "#0a632c", ANSI256: "22", ANSI: "0"},
		near:  lipgloss.CompleteColor{TrueColor: "#6e4a00", ANSI256: "58", ANSI: "0"},
		bad:   lipgloss.CompleteColor{TrueColor: "#a51d12", ANSI256: "124", ANSI: "1"},
		force: [hues]lipgloss.CompleteColor{
			{TrueColor: "#b03301", ANSI256: "124", ANSI: "1"}, // rust
			{TrueColor: "#0857b4", ANSI256: "25", ANSI: "4"},  // blue
			{TrueColor: "#456c0a", ANSI256: "22", ANSI: "0"},  // moss
			{TrueColor: "#a8007c", ANSI256: "126", ANSI: "5"}, // plum
			{TrueColor: "#006a5a", ANSI256: "23", ANSI: "0"},  // pine
			{TrueColor: "#5728af", ANSI256: "55", ANSI: "4"},  // violet
			{TrueColor: "#594100", ANSI256: "94", ANSI: "0"},  // umber
		},
	}
}
