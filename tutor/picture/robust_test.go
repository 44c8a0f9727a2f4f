// Inside the package: it looks for strokes and labels outside of the grid.

package picture

import (
	"encoding/xml"
	"io"
	"math"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// number draws any number, the hostile ones often.
func number() *rapid.Generator[float64] {
	return rapid.OneOf(
		rapid.Float64Range(-400, 400),
		rapid.Float64(),
		rapid.SampledFrom([]float64{0, 90, -90, 180, 360, math.NaN(), math.Inf(1), math.Inf(-1), 1e300, 1e-300, math.MaxFloat64}),
	)
}

func words() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.SampledFrom([]string{"", "T₁", "α", "w", "T₁ cos α", "箱", "F⃗", "<b>&\"", "a\x00b", "\xff", strings.Repeat("long ", 40)}),
		rapid.StringN(0, 12, -1),
	)
}

func point() *rapid.Generator[Point] {
	return rapid.Custom(func(t *rapid.T) Point { return Point{number().Draw(t, "x"), number().Draw(t, "y")} })
}

func index() *rapid.Generator[int] { return rapid.IntRange(-2, 6) }

func wildBody(t *rapid.T) Body {
	return Body{
		Name: words().Draw(t, "name"), Shape: Shape(index().Draw(t, "shape")), At: point().Draw(t, "at"),
		Size: number().Draw(t, "size"), Tilt: number().Draw(t, "tilt"), Bare: rapid.Bool().Draw(t, "bare"),
		Surfaces: rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Surface {
			return Surface{number().Draw(t, "normal"), words().Draw(t, "angle")}
		}), 0, 6).Draw(t, "surfaces"),
	}
}

func wildForce(t *rapid.T) Force {
	return Force{
		On: index().Draw(t, "on"), Name: words().Draw(t, "name"), Note: words().Draw(t, "note"),
		Kind: Kind(rapid.IntRange(-1, 9).Draw(t, "kind")), Colour: rapid.IntRange(-2, 5000).Draw(t, "colour"),
		Direction: number().Draw(t, "direction"), Sketch: rapid.Bool().Draw(t, "sketch"), Inward: rapid.Bool().Draw(t, "inward"),
		Dashed: rapid.Bool().Draw(t, "dashed"), Size: number().Draw(t, "size"), InHand: rapid.Bool().Draw(t, "hand"),
	}
}

func wildChain(t *rapid.T) *Chain {
	return &Chain{
		Axis: Axis(rapid.IntRange(-1, 3).Draw(t, "axis")), Tilt: number().Draw(t, "tilt"), Body: words().Draw(t, "body"),
		Legs: rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Leg {
			return Leg{words().Draw(t, "label"), index().Draw(t, "colour"), rapid.Bool().Draw(t, "negative"),
				rapid.Bool().Draw(t, "dashed"), number().Draw(t, "size"), rapid.Bool().Draw(t, "hand")}
		}), 0, 8).Draw(t, "legs"),
	}
}

func wildPlot(t *rapid.T) *Plot {
	return &Plot{
		X: Scale{words().Draw(t, "x"), rapid.SampledFrom([]string{"", "°", "kg"}).Draw(t, "unit")}, Y: Scale{words().Draw(t, "y"), "N"},
		Curves: rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Curve {
			return Curve{words().Draw(t, "name"), index().Draw(t, "colour"), rapid.SliceOfN(point(), 0, 20).Draw(t, "points"), rapid.Bool().Draw(t, "hand")}
		}), 0, 4).Draw(t, "curves"),
		Marked: rapid.Bool().Draw(t, "marked"), At: number().Draw(t, "at"),
		Measured: rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Measured {
			return Measured{words().Draw(t, "name"), index().Draw(t, "colour"), point().Draw(t, "at"), point().Draw(t, "u")}
		}), 0, 4).Draw(t, "measured"),
	}
}

// wildScene draws scenes as no caller should build them.
func wildScene(t *rapid.T) Scene {
	s := Scene{
		Title:  words().Draw(t, "title"),
		Bodies: rapid.SliceOfN(rapid.Custom(wildBody), 0, 5).Draw(t, "bodies"),
		Links: rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Link {
			return Link{index().Draw(t, "from"), index().Draw(t, "to"), LinkKind(index().Draw(t, "kind"))}
		}), 0, 5).Draw(t, "links"),
		Forces: rapid.SliceOfN(rapid.Custom(wildForce), 0, 8).Draw(t, "forces"),
		Angles: rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Angle {
			return Angle{index().Draw(t, "force"), Axis(index().Draw(t, "from")), rapid.Bool().Draw(t, "full"), words().Draw(t, "name"), rapid.Bool().Draw(t, "hand")}
		}), 0, 6).Draw(t, "angles"),
	}
	if rapid.Bool().Draw(t, "triangle") {
		s.Triangle = &Triangle{index().Draw(t, "force"), words().Draw(t, "x"), words().Draw(t, "y")}
	}
	if rapid.Bool().Draw(t, "chain") {
		s.Chain = wildChain(t)
	}
	if rapid.Bool().Draw(t, "polygon") {
		s.Polygon = PolygonOf(s, index().Draw(t, "body"))
	}
	if rapid.Bool().Draw(t, "plot") {
		s.Plot = wildPlot(t)
	}
	return s
}

// anyScene is the property that holds for every scene at every size: each form
// is made, within its bounds, twice the same, and the scene stays as it was.
func anyScene(t *rapid.T) {
	s := wildScene(t)
	before := Sentences(s)
	cols, rows := rapid.IntRange(-1, 90).Draw(t, "cols"), rapid.IntRange(-1, 40).Draw(t, "rows")
	for name, draw := range map[string]func(Scene, int, int) Canvas{"braille": Braille, "ascii": ASCII} {
		c := draw(s, cols, rows)
		checkCanvas(t, c, cols, rows)
		if !reflect.DeepEqual(c, draw(s, cols, rows)) {
			t.Fatalf("%s is drawn differently the second time", name)
		}
	}
	for _, line := range ASCII(s, cols, rows).Lines() {
		if !isASCII(line) {
			t.Fatalf("not seven bits: %q", line)
		}
	}
	if faults := crossed(onBraille(s, cols, rows)); len(faults) > 0 {
		t.Fatal(faults)
	}
	checkXML(t, SVG(s, cols*8, rows*16))
	if !reflect.DeepEqual(before, Sentences(s)) {
		t.Fatal("drawing changed the scene")
	}
}

type fataler interface {
	Fatal(...any)
	Fatalf(string, ...any)
}

func checkCanvas(t fataler, c Canvas, cols, rows int) {
	if c.Cols > max(cols, 0) || c.Rows > max(rows, 0) || c.Cols > MaxCols || c.Rows > MaxRows {
		t.Fatalf("canvas of %d × %d for %d × %d", c.Cols, c.Rows, cols, rows)
	}
	for y := range c.Rows {
		for x := range c.Cols {
			if r := c.At(x, y).Rune; r != 0 && r < ' ' {
				t.Fatalf("control character %d in a cell", r)
			}
		}
	}
}

// checkXML reads a drawing with a strict parser.
func checkXML(t fataler, text string) {
	if strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
		t.Fatal("a number that is none:", text)
	}
	d := xml.NewDecoder(strings.NewReader(text))
	for {
		if _, err := d.Token(); err == io.EOF {
			return
		} else if err != nil {
			t.Fatal(err, text)
		}
	}
}

func TestAnyScene(t *testing.T) { rapid.Check(t, anyScene) }

func FuzzAnyScene(f *testing.F) { f.Fuzz(rapid.MakeFuzz(anyScene)) }

// TestAnyDirections draws sane scenes with random directions: at the sizes in
// use every arrow points true and every force keeps its name.
func TestAnyDirections(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Scene{Bodies: []Body{{Shape: Shape(rapid.IntRange(0, 2).Draw(t, "shape")), Tilt: rapid.Float64Range(-60, 60).Draw(t, "tilt")}}}
		for i := range rapid.IntRange(1, 5).Draw(t, "forces") {
			s.Forces = append(s.Forces, Force{Name: "F" + string(rune('₁'+i)), Colour: i, Direction: rapid.Float64Range(0, 360).Draw(t, "direction"), Inward: rapid.Bool().Draw(t, "inward")})
			s.Angles = append(s.Angles, Angle{Force: i, Name: "α"})
		}
		size := sizes[rapid.IntRange(0, 2).Draw(t, "size")]
		d := onBraille(s, size[0], size[1])
		for i, f := range s.Forces {
			arrow := arrowsOf(d, i)[0]
			checkArrow(t, f.Name, arrow, f.Direction, size)
		}
		for i := range d.labels {
			if l := &d.labels[i]; l.rank == rankForce && !l.shown {
				t.Fatalf("%q finds no room", string(l.text))
			}
		}
	})
}

// TestTurnedBlockStaysInItsPanel: a large block on its corner is wider than it is on its
// side; all of it fits beside the arrows of a sum, whose labels know nothing of it.
func TestTurnedBlockStaysInItsPanel(t *testing.T) {
	for tilt := 0.0; tilt < 180; tilt += 15 {
		s := Scene{Bodies: []Body{{Shape: Block, Size: 1, Tilt: tilt}}, Forces: []Force{{Direction: -1, Inward: true}},
			Chain: &Chain{Legs: []Leg{{}, {}, {Label: "A"}}}}
		d := onBraille(s, 65, 12)
		for _, fault := range crossed(d) {
			t.Errorf("turned by %g°: %s", tilt, fault)
		}
		const edge = 57.5 // of 29 columns: half of the width, less the gap between the panels
		for i := range d.strokes {
			if d.strokes[i].tag != TagBody {
				continue
			}
			if low, high := bounds(d.strokes[i].points); low.x < 0 || low.y < 0 || high.x > edge || high.y > 47 {
				t.Errorf("turned by %g°: the block reaches from %v to %v", tilt, low, high)
			}
		}
	}
}

// TestPanelsKeepApart: the last panel has its labels in place when another's surface
// would run through them.
func TestPanelsKeepApart(t *testing.T) {
	s := Scene{Bodies: []Body{{At: Point{1, 0}, Size: 0.125, Tilt: 0.5, Surfaces: []Surface{{Normal: -1, Angle: "α"}, {Normal: 0, Angle: "β"}}}},
		Chain: &Chain{Legs: make([]Leg, 8)}}
	for rows := 20; rows <= 40; rows++ {
		for _, fault := range crossed(onBraille(s, 23, rows)) {
			t.Errorf("23×%d: %s", rows, fault)
		}
	}
}

func TestExtremeSizes(t *testing.T) {
	for _, e := range examples() {
		for _, size := range [][2]int{{0, 0}, {1, 1}, {2, 2}, {1, 40}, {200, 1}, {5, 3}, {-4, 7}, {1000, 1000}} {
			checkCanvas(t, Braille(e.scene, size[0], size[1]), size[0], size[1])
			checkCanvas(t, ASCII(e.scene, size[0], size[1]), size[0], size[1])
			checkXML(t, SVG(e.scene, size[0], size[1]))
		}
	}
}

// TestSVGIsReadable: the drawing carries its sentences, and what a teacher
// types stays text.
func TestSVGIsReadable(t *testing.T) {
	s := twoStrings(35, 50)
	s.Title = `Rings & <script>"cords"</script>`
	text := SVG(s, 480, 320)
	checkXML(t, text)
	for _, want := range []string{"Rings &amp; &lt;script&gt;", "T1 pulls up and to the left, alpha (35°) above the x axis.", ">T₁</text>", `class="force force-1"`} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing", want)
		}
	}
}
