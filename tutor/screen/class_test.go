// Inside the package: it uses the desk of screen_test.go.

package screen

import (
	"testing"

	"github.com/muesli/termenv"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// A class whose students draw the situation themselves sees no picture of it.
func TestAClassMayDrawTheSceneItself(t *testing.T) {
	shown := map[bool]string{}
	for _, none := range []bool{false, true} {
		r, err := record.OpenMemory(record.Options{})
		if err != nil {
			t.Fatal(err)
		}
		defer r.Close()
		tu := tutor.New(tutor.Options{Bank: problems.Embedded(), Record: r, Class: tutor.Class{Settings: tutor.Settings{NoScenes: none}}})
		d := sitAt(t, tu, Options{}, termenv.Ascii, 120, 40)
		d.enrol("Nele", "canal-lantern")
		shown[none] = d.view
	}
	if shown[true] == shown[false] {
		t.Errorf("with scenes:\n%s\nwithout:\n%s", shown[false], shown[true])
	}
}
