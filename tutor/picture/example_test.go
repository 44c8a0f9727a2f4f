package picture_test

import (
	"fmt"
	"strings"

	"example.org/standstill/tutor/picture"
)

func ExampleSentences() {
	s := picture.Scene{
		Bodies: []picture.Body{{Shape: picture.Ring}},
		Forces: []picture.Force{
			{Name: "T₁", Kind: picture.Tension, Direction: 145, Colour: 0},
			{Name: "T₂", Kind: picture.Tension, Direction: 50, Colour: 1},
			{Name: "w", Kind: picture.Weight, Direction: -90, Colour: 2},
		},
		Angles: []picture.Angle{{Force: 0, Name: "α"}},
	}
	fmt.Println(strings.Join(picture.Sentences(s), "\n"))
	// Output:
	// T1 pulls up and to the left, alpha (35°) above the x axis.
	// T2 pulls up and to the right, 50° above the x axis.
	// w pulls straight down.
}
