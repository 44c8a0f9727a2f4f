// Inside the package: it measures the contrast of every colour of the palettes.

package frame

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"github.com/charmbracelet/lipgloss"
)

// backgrounds are the colours that terminals commonly come with.
var backgrounds = map[bool][]string{
	false: {"#000000", "#0c0c0c", "#1e1e1e", "#282c34", "#002b36", "#300a24", "#2e3440"},
	true:  {"#ffffff", "#fdf6e3", "#f5f5f5", "#eee8d5"},
}

// linear is a colour's light: red, green, blue from 0 to 1.
type linear [3]float64

func lightOf(hex string) linear {
	n, err := strconv.ParseUint(hex[1:], 16, 32)
	if err != nil {
		panic(err)
	}
	var l linear
	for i := range l {
		c := float64(n>>(16-8*i)&255) / 255
		// sRGB, as in WCAG 2.2, "relative luminance".
		if l[i] = c / 12.92; c > 0.04045 {
			l[i] = math.Pow((c+0.055)/1.055, 2.4)
		}
	}
	return l
}

func (l linear) luminance() float64 { return 0.2126*l[0] + 0.7152*l[1] + 0.0722*l[2] }

func contrast(a, b string) float64 {
	x, y := lightOf(a).luminance(), lightOf(b).luminance()
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// cube is the colour of an index of the 256: a cube of six steps a side, and
// greys.
func cube(index string) string {
	n, _ := strconv.Atoi(index)
	if n >= 232 {
		grey := 8 + 10*(n-232)
		return fmt.Sprintf("#%02x%02x%02x", grey, grey, grey)
	}
	steps := [...]int{0, 95, 135, 175, 215, 255}
	n -= 16
	return fmt.Sprintf("#%02x%02x%02x", steps[n/36], steps[n/6%6], steps[n%6])
}

func (c tones) all() map[string]lipgloss.CompleteColor {
	all := map[string]lipgloss.CompleteColor{"quiet": c.quiet, "good": c.good, "near": c.near, "bad": c.bad}
	for i, f := range c.force {
		all[fmt.Sprint("force ", i)] = f
	}
	return all
}

func TestEveryToneIsReadable(t *testing.T) {
	if contrast("#000000", "#ffffff") != 21 {
		t.Fatal("the ratio is not that of WCAG")
	}
	for light, tones := range map[bool]tones{false: onDark(), true: onLight()} {
		for name, c := range tones.all() {
			for _, background := range backgrounds[light] {
				for _, colour := range []string{c.TrueColor, cube(c.ANSI256)} {
					if ratio := contrast(colour, background); ratio < 4.5 {
						t.Errorf("%s %s on %s is %.2f : 1", name, colour, background, ratio)
					}
				}
			}
		}
	}
}

// confusions turn light into what readers see who lack one kind of cone, after
// Machado, Oliveira and Fernandes (2009), severity 1.
var confusions = map[string][3]linear{
	"all cones": {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
	"no long":   {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
	"no middle": {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
	"no short":  {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}},
}

// lab is the colour in CIELAB, where distances are differences that are seen.
func (l linear) lab() linear {
	f := func(x float64) float64 {
		if x > 216.0/24389 {
			return math.Cbrt(x)
		}
		return (24389.0/27*x + 16) / 116
	}
	x := f((0.4124564*l[0] + 0.3575761*l[1] + 0.1804375*l[2]) / 0.95047)
	y := f(0.2126729*l[0] + 0.7151522*l[1] + 0.0721750*l[2])
	z := f((0.0193339*l[0] + 0.1191920*l[1] + 0.9503041*l[2]) / 1.08883)
	return linear{116*y - 16, 500 * (x - y), 200 * (y - z)}
}

func seenBy(m [3]linear, l linear) linear {
	var out linear
	for i := range out {
		out[i] = min(max(m[i][0]*l[0]+m[i][1]*l[1]+m[i][2]*l[2], 0), 1)
	}
	return out
}

// TestForcesAreToldApart wants any two of the first five hues, which are all that
// most problems use, to differ clearly for every reader, and the rest to differ.
func TestForcesAreToldApart(t *testing.T) {
	for light, tones := range map[bool]tones{false: onDark(), true: onLight()} {
		for reader, m := range confusions {
			for i := range tones.force {
				for j := range i {
					a := seenBy(m, lightOf(tones.force[i].TrueColor)).lab()
					b := seenBy(m, lightOf(tones.force[j].TrueColor)).lab()
					apart := math.Sqrt((a[0]-b[0])*(a[0]-b[0]) + (a[1]-b[1])*(a[1]-b[1]) + (a[2]-b[2])*(a[2]-b[2]))
					least := 10.0
					if i >= 5 {
						least = 6
					}
					if apart < least {
						t.Errorf("light %v, %s: forces %d and %d are %.1f apart", light, reader, i, j, apart)
					}
				}
			}
		}
	}
}
