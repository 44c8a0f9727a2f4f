package host

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"strings"
	"text/tabwriter"
	"time"

	"github.com/charmbracelet/ssh"

	"example.org/standstill/checker/expr"
)

// Frame shows the lab as it is now, in lines. Names are left out on demand, so that the
// view may be shown to the class.
func (h *Host) Frame(names bool) string {
	var b strings.Builder
	all := h.places.all()
	fmt.Fprintf(&b, "%s  %d connected\n\n", h.Now().Local().Format("15:04:05"), len(all))
	w := tabwriter.NewWriter(&b, 0, 8, 2, ' ', 0)
	fmt.Fprintln(w, "student\tproblem\tstage\tlines\twrong\thints\tlast\tidle")
	for i, v := range all {
		s := v.look()
		who := expr.Clean(v.student.Name)
		if !names {
			who = fmt.Sprint("student ", i+1)
		}
		still := h.Now().Sub(time.Unix(0, v.typed.Load())).Truncate(time.Second)
		fmt.Fprintf(w, "%s\t%s\t%s\t%d\t%d\t%d\t%s\t%s\n", clip(who, 24), clip(s.title, 28), s.stage, s.lines, s.refused, s.hints, s.verdict, still)
	}
	w.Flush()
	b.WriteString("\n" + saidLiveKeys + "\n")
	return b.String()
}

func clip(text string, most int) string {
	if runes := []rune(text); len(runes) > most {
		return string(runes[:most-1]) + "…"
	}
	return text
}

// Live shows the lab once a second until a key or the context ends it. The output is a
// terminal in raw mode, whose lines end with a carriage return. One read of the input may
// still wait when it returns, and would take the next key: the program, or the visit whose
// input it is, ends then.
func (h *Host) Live(ctx context.Context, in io.Reader, out io.Writer) error {
	keys := make(chan byte)
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	go func() {
		one := make([]byte, 1)
		for {
			if _, err := in.Read(one); err != nil {
				stop()
				return
			}
			select {
			case keys <- one[0]:
			case <-ctx.Done():
				return
			}
		}
	}()
	tick := time.NewTicker(time.Second)
	defer tick.Stop()
	names, report := true, ""
	for {
		text := report
		if text == "" {
			text = h.Frame(names)
		}
		if _, err := io.WriteString(out, "\x1b[H\x1b[2J"+strings.ReplaceAll(text, "\n", "\r\n")); err != nil {
			return err
		}
		select {
		case <-ctx.Done():
			return nil
		case <-tick.C:
		case key := <-keys:
			switch key {
			// From a terminal in raw mode, Ctrl-C and Ctrl-D come as 3 and 4.
			case 'q', 'Q', 3, 4:
				return nil
			case 'n', 'N':
				names = !names
			case 'r', 'R':
				report = h.report(ctx)
			default:
				report = ""
			}
		}
	}
}

// report is the class's report as it is now.
func (h *Host) report(ctx context.Context) string {
	if h.Report == nil {
		return ""
	}
	var b bytes.Buffer
	if err := h.Report(ctx, &b); err != nil {
		return fmt.Sprintf(saidReport, sentenceOf(err)) + "\n\n" + saidAnyKey + "\n"
	}
	return b.String() + "\n" + saidAnyKey + "\n"
}

// lookOn shows the lab to the teacher, and no student's line.
func (h *Host) lookOn(s ssh.Session, v *visit) {
	defer h.fenced("live view", v.number, func() { fmt.Fprintln(s, saidFault) })
	if err := h.places.lookOn(v); err != nil {
		fmt.Fprintln(s, sentenceOf(err))
		return
	}
	defer h.places.leave(v)
	stop := context.AfterFunc(s.Context(), func() { v.cancel(nil) })
	defer stop()
	if _, _, ok := s.Pty(); ok {
		h.Live(v.ctx, s, s)
		return
	}
	io.WriteString(s, h.Frame(true))
}
