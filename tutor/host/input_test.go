// Inside the package: it drives the input of a visit with a clock of its own.

package host

import (
	"context"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"

	"github.com/charmbracelet/ssh"
	gossh "golang.org/x/crypto/ssh"

	"example.org/standstill/tutor/screen"
)

// endlessKeys never stops typing.
type endlessKeys struct{}

func (endlessKeys) Read(b []byte) (int, error) { return len(b), nil }

// A flood of keys gets through as fast as a pasted text at first, and then no faster than
// the visit's pace.
func TestFloodIsPaced(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		visit, end := context.WithCancel(t.Context())
		in := newInput(visit, endlessKeys{}, burstOfKeys, func() {}).until(nil)
		var read atomic.Int64
		go func() {
			chunk := make([]byte, 4096)
			for {
				n, err := in.Read(chunk)
				if read.Add(int64(n)); err != nil {
					return
				}
			}
		}()
		for seconds, most := range []int{burstOfKeys + 1024, burstOfKeys + 1024 + keysASecond} {
			time.Sleep(time.Duration(seconds) * time.Second)
			synctest.Wait()
			if read := int(read.Load()); read < most-1024 || read > most {
				t.Errorf("after %d s %d bytes were read, want about %d", seconds, read, most)
			}
		}
		end()
	})
}

// However many sizes come, a screen is told of the last, and not of all.
func TestSizesAreGathered(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var w window
		w.begin(ssh.Window{Width: 80, Height: 24})
		told := w.sizes()
		if first := <-told; first != (screen.Size{Cols: 80, Rows: 24}) {
			t.Errorf("the first size is %v", first)
		}
		for n := range 1000 {
			w.change(gossh.Marshal(struct{ Cols, Rows, Width, Height uint32 }{uint32(80 + n), 24, 0, 0}))
		}
		time.Sleep(betweenSizes)
		synctest.Wait()
		if last := <-told; last != (screen.Size{Cols: 1079, Rows: 24}) {
			t.Errorf("the last size is %v", last)
		}
		select {
		case more := <-told:
			t.Errorf("the screen is told of %v once more", more)
		default:
		}
		if w.change([]byte("80")) {
			t.Error("what is no size is taken")
		}
	})
}
