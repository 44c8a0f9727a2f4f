package plain

import (
	"bufio"
	"context"
	"io"
	"strings"
)

// longestLine is how many bytes of a line are looked at; the rest of it is
// dropped, so that an endless line takes no room.
const longestLine = 16 << 10

// read sends the lines of the input and closes the channel at its end. A last line
// without a line end counts. The reader is left waiting when the context ends: an
// input cannot be woken up.
func read(ctx context.Context, in io.Reader) <-chan string {
	lines := make(chan string)
	go func() {
		defer close(lines)
		r := bufio.NewReaderSize(in, longestLine)
		for {
			line, err := readLine(r)
			if err != nil && line == "" {
				return
			}
			select {
			case lines <- line:
			case <-ctx.Done():
				return
			}
			if err != nil {
				return
			}
		}
	}()
	return lines
}

func readLine(r *bufio.Reader) (string, error) {
	head, more, err := r.ReadLine()
	// Where a long line is cut, a character may be cut, too.
	line := strings.ToValidUTF8(string(head), "\uFFFD")
	for more && err == nil {
		_, more, err = r.ReadLine()
	}
	return line, err
}
