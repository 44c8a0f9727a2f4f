package host

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"slices"
	"strings"
	"text/tabwriter"
	"time"
	"unicode/utf8"

	"github.com/charmbracelet/ssh"

	"example.org/standstill/checker/expr"
)

// frame shows the lab as it is now, in lines of at most so many columns; 0 for no limit.
// Names are left out on demand, so that the view may be shown to the class.
func (h *Host) frame(names bool, cols int) (head string, rows []string) {
	all := h.places.all()
	table := [][]string{{"student", "problem", "stage", "lines", "wrong", "hints", "last", "idle"}}
	for i, v := range all {
		s := v.look()
		who := expr.Clean(v.student.Name)
		if !names {
			who = fmt.Sprint("student ", i+1)
		}
		still := h.Now().Sub(time.Unix(0, v.typed.Load())).Truncate(time.Second)
		table = append(table, []string{who, s.title, s.stage, fmt.Sprint(s.lines), fmt.Sprint(s.refused), fmt.Sprint(s.hints), s.verdict, still.String()})
	}
	return fmt.Sprintf("%s  %d connected", h.Now().Local().Format("15:04:05"), len(all)), fitted(table, cols)
}

// Between two columns are so many spaces. Where a table is too wide, the titles are cut first, then
// the names, but not below so many letters.
const (
	betweenColumns = 2
	mostName       = 24
	mostTitle      = 28
	leastName      = 12
	leastTitle     = 12
)

// fitted sets a table in columns, of which the first two are a name and a title; 0 for no limit.
func fitted(table [][]string, cols int) (rows []string) {
	widths := make([]int, len(table[0]))
	for _, row := range table {
		for i, cell := range row {
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	name, title := min(widths[0], mostName), min(widths[1], mostTitle)
	if cols > 0 {
		over := name + title - cols + (len(widths)-1)*betweenColumns
		for _, width := range widths[2:] {
			over += width
		}
		cut := min(max(over, 0), max(title-leastTitle, 0))
		title -= cut
		name -= min(max(over-cut, 0), max(name-leastName, 0))
	}
	var b strings.Builder
	w := tabwriter.NewWriter(&b, 0, 8, betweenColumns, ' ', 0)
	for _, row := range table {
		fmt.Fprintln(w, strings.Join(append([]string{clip(row[0], name), clip(row[1], title)}, row[2:]...), "\t"))
	}
	w.Flush()
	return strings.Split(strings.TrimSuffix(b.String(), "\n"), "\n")
}

// window takes one page of rows under a head that stays, and says which page it is where there
// are several. lines is the height of the terminal; 0 for no limit.
func (v *view) window(head string, heading, rows []string, keys string, lines int) string {
	// What else is there: the head, the keys, two empty lines, and the line where the cursor stays.
	room := max(lines-len(heading)-5, 1)
	v.pages = 1
	if lines > 0 {
		v.pages = max((len(rows)+room-1)/room, 1)
	}
	v.page %= v.pages
	if v.pages > 1 {
		rows = rows[v.page*room : min((v.page+1)*room, len(rows))]
		head += fmt.Sprintf(saidPage, v.page+1, v.pages)
		keys += saidNextPage
	}
	return strings.Join(slices.Concat([]string{strings.TrimSpace(head), ""}, heading, rows, []string{"", keys, ""}), "\n")
}

// view is what somebody who watches the lab has chosen.
type view struct {
	names  bool
	report []string // the rows of a report, shown in place of the lab
	page   int
	pages  int // how many there were when it was last shown
}

// show gives the text for a terminal of a size, 0 for no limit.
func (v *view) show(h *Host, cols, lines int) string {
	if v.report != nil {
		return v.window("", nil, v.report, saidAnyKey, lines)
	}
	head, rows := h.frame(v.names, cols)
	keys := saidLiveKeys
	if h.Report != nil {
		keys += saidReportKey
	}
	return v.window(head, rows[:1], rows[1:], keys, lines)
}

// press takes a key; false for one that ends the view.
func (v *view) press(ctx context.Context, h *Host, key byte) bool {
	switch {
	// From a terminal in raw mode, Ctrl-C and Ctrl-D come as 3 and 4.
	case slices.Contains([]byte{'q', 'Q', 3, 4}, key):
		return false
	case key == ' ' && v.pages > 1:
		v.page++
		return true
	case key == 'n' || key == 'N':
		v.names = !v.names
	case key == 'r' || key == 'R':
		v.report, v.page = h.report(ctx), 0
		return true
	}
	if v.report != nil {
		v.report, v.page = nil, 0
	}
	return true
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
// input it is, ends then. size gives the columns and lines of the terminal, 0 where they are
// not known.
func (h *Host) Live(ctx context.Context, in io.Reader, out io.Writer, size func() (cols, lines int)) error {
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
	v := view{names: true}
	for {
		cols, lines := size()
		text := v.show(h, cols, lines)
		if _, err := io.WriteString(out, "\x1b[H\x1b[2J"+strings.ReplaceAll(text, "\n", "\r\n")); err != nil {
			return err
		}
		select {
		case <-ctx.Done():
			return nil
		case <-tick.C:
		case key := <-keys:
			if !v.press(ctx, h, key) {
				return nil
			}
		}
	}
}

// report is the class's report as it is now, nil where there is none.
func (h *Host) report(ctx context.Context) []string {
	if h.Report == nil {
		return nil
	}
	var b bytes.Buffer
	if err := h.Report(ctx, &b); err != nil {
		return []string{fmt.Sprintf(saidReport, sentenceOf(err))}
	}
	return strings.Split(strings.TrimSuffix(b.String(), "\n"), "\n")
}

// lookOn shows the lab to the teacher, and no student's line.
func (h *Host) lookOn(s ssh.Session, v *visit, w *window) {
	defer h.fenced("live view", v.number, func() { fmt.Fprintln(s, saidFault) })
	if err := h.places.lookOn(v); err != nil {
		fmt.Fprintln(s, sentenceOf(err))
		return
	}
	defer h.places.leave(v)
	stop := context.AfterFunc(s.Context(), func() { v.cancel(nil) })
	defer stop()
	if pty, _, ok := s.Pty(); ok {
		w.begin(pty.Window)
		h.Live(v.ctx, s, s, w.size)
		return
	}
	everything := view{names: true}
	io.WriteString(s, everything.show(h, 0, 0))
}
