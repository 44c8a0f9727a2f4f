// Inside the package: it arranges figures before they are drawn.

package picture

import (
	"math"
	"testing"
)

// TestBodiesFollowTheirForces: without places of their own, bodies stand where
// their common strings say.
func TestBodiesFollowTheirForces(t *testing.T) {
	s := sanitise(twoKnots())
	a, b := s.Bodies[0].At, s.Bodies[1].At
	if b.X-a.X < 2 || math.Abs(b.Y-a.Y) > 1e-9 {
		t.Errorf("the string is level, B stands at %v from A at %v", b, a)
	}
	if len(s.Links) != 1 || s.Links[0].Kind != Rope {
		t.Errorf("A and B are joined by %v", s.Links)
	}
}

func TestStringOverPulley(t *testing.T) {
	s := sanitise(rampPulley())
	if len(s.Bodies) != 3 || s.Bodies[2].Shape != Pulley || len(s.Links) != 2 {
		t.Fatalf("no pulley: %+v, %v", s.Bodies, s.Links)
	}
	a, b, wheel := s.Bodies[0].At, s.Bodies[1].At, s.Bodies[2]
	// the string leaves A along the slope and touches the wheel, so that the axle
	// lies one radius to the right of that line
	along := heading(30)
	way := vec{wheel.At.X - a.X, a.Y - wheel.At.Y}
	if off := way.dot(along.left()); math.Abs(off+wheel.Size) > 1e-9 {
		t.Errorf("the axle is %.3f from the string along the slope, want %.3f", -off, wheel.Size)
	}
	if math.Abs(b.X-wheel.At.X-wheel.Size) > 1e-9 || b.Y >= wheel.At.Y {
		t.Errorf("B at %v does not hang from the rim of the wheel at %v", b, wheel.At)
	}
}

// TestPlacesAreKept: bodies that were given places stay there.
func TestPlacesAreKept(t *testing.T) {
	s := twoKnots()
	s.Bodies = append([]Body(nil), s.Bodies...)
	s.Bodies[1].At = Point{1, -2}
	if got := sanitise(s); got.Bodies[1].At != s.Bodies[1].At || len(got.Links) != 0 {
		t.Errorf("B is moved to %v", got.Bodies[1].At)
	}
}

func TestStrangersStandApart(t *testing.T) {
	s := sanitise(Scene{Bodies: []Body{{}, {}, {}}})
	for i := 1; i < 3; i++ {
		if s.Bodies[i].At.X-s.Bodies[i-1].At.X < 2 {
			t.Errorf("body %d stands on body %d", i, i-1)
		}
	}
}
