// Inside the package: it uses the vocabulary of lines_test.go.

package lines

import "testing"

// BenchmarkOf takes one line, and a text of four, apart.
func BenchmarkOf(b *testing.B) {
	for name, text := range map[string]string{"one": "T1 sin α + T2 sin β − w = 0", "four": "T1x = T1 cos α; T1y = T1 sin α; T2x = T2 cos β => T2y = T2 sin β"} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Of(text, ring)
			}
		})
	}
}
