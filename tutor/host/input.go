package host

import (
	"io"
	"sync"
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

// newInput reads until the source ends. pressed is called whenever something was typed.
func newInput(source io.Reader, gone <-chan struct{}, pressed func()) *input {
	in := &input{chunks: make(chan []byte), gone: gone}
	go func() {
		defer close(in.chunks)
		for {
			chunk := make([]byte, 1024)
			n, err := source.Read(chunk)
			if n > 0 {
				pressed()
				select {
				case in.chunks <- chunk[:n]:
				case <-gone:
					return
				}
			}
			if err != nil {
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
