package host

import (
	"context"
	"io"
	"sync"

	"golang.org/x/time/rate"
)

// What a visit may type, in bytes: so much at once, as where a text is pasted or a script
// sent, then so much a second. Nobody types that fast, and a flood of keys takes no more
// of the machine than that.
const (
	burstOfKeys  = 16 << 10
	burstOfLines = 512 << 10
	keysASecond  = 1 << 10
)

// input is what a student types. One goroutine reads it for the whole visit, because a
// reader that waits cannot be woken up, and each part of the visit (a screen, the lines of
// text) reads on where the last one stopped.
type input struct {
	chunks chan []byte
	rest   []byte
	mu     sync.Mutex
	gone   <-chan struct{}
}

// newInput reads until the source ends or the visit does, and no faster than the burst
// allows. pressed is called whenever something was typed.
func newInput(visit context.Context, source io.Reader, burst int, pressed func()) *input {
	in := &input{chunks: make(chan []byte), gone: visit.Done()}
	pace := rate.NewLimiter(keysASecond, burst)
	go func() {
		defer close(in.chunks)
		for {
			chunk := make([]byte, 1024)
			n, err := source.Read(chunk)
			if n > 0 {
				pressed()
				select {
				case in.chunks <- chunk[:n]:
				case <-in.gone:
					return
				}
			}
			// Only after it was passed on: what is typed shows at once, and the
			// connection's own window holds back a client that goes on too fast.
			if err != nil || pace.WaitN(visit, n) != nil {
				return
			}
		}
	}()
	return in
}

// until gives a reader that ends when done is closed, at the latest.
func (in *input) until(done <-chan struct{}) io.Reader { return &part{in, done} }

type part struct {
	*input
	done <-chan struct{}
}

func (p *part) Read(b []byte) (int, error) {
	p.mu.Lock()
	rest := p.rest
	p.mu.Unlock()
	if len(rest) == 0 {
		select {
		case chunk, ok := <-p.chunks:
			if !ok {
				return 0, io.EOF
			}
			rest = chunk
		case <-p.done:
			return 0, io.EOF
		case <-p.gone:
			return 0, io.EOF
		}
	}
	n := copy(b, rest)
	p.mu.Lock()
	p.rest = rest[n:]
	p.mu.Unlock()
	return n, nil
}
