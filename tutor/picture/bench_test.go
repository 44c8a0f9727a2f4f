// Inside the package: it uses the scenes of scenes_test.go.

package picture

import "testing"

func BenchmarkBraille(b *testing.B) {
	for _, e := range examples() {
		b.Run(e.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Braille(e.scene, 40, 14)
			}
		})
	}
}

func BenchmarkASCII(b *testing.B) {
	s := twoStrings(35, 50)
	for b.Loop() {
		ASCII(s, 40, 14)
	}
}

func BenchmarkSVG(b *testing.B) {
	s := twoStrings(35, 50)
	for b.Loop() {
		SVG(s, 480, 320)
	}
}

func BenchmarkLarge(b *testing.B) {
	s := ramp(22)
	for b.Loop() {
		Braille(s, 1000, 1000)
	}
}
