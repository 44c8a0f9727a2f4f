package main

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"os"
	"os/signal"
	"path/filepath"
	"runtime/debug"
	"syscall"
	"time"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/class"
	"example.org/standstill/tutor/class/classfile"
	"example.org/standstill/tutor/class/summary"
	"example.org/standstill/tutor/door"
	"example.org/standstill/tutor/host"
	"example.org/standstill/tutor/record"
)

// hosting are the flags of a host.
type hosting struct {
	teacher
	listen, key    string
	idle           time.Duration
	perAddress     int
	open, logNames bool
	replaceClass   bool
	log            *heldLog
}

func hostCommand(a *app) *cobra.Command {
	h := &hosting{teacher: teacher{app: a}, log: &heldLog{out: a.Err}}
	c := &cobra.Command{
		Use:     "host",
		Short:   "Let a whole class practise on this machine over the local network",
		Long:    saidHost,
		Example: "  standstill host --class physics-10b.yaml\n  standstill host slips --class physics-10b.yaml --address 192.168.1.20",
		Args:    noSuchCommand,
		RunE:    func(c *cobra.Command, _ []string) error { return h.run(c.Context()) },

		// For the test that runs every command: it knows by this that the command does not end by itself.
		Annotations: map[string]string{serves: "listening "},
	}
	c.PersistentFlags().StringVar(&h.file, "class", "", "the class `file`; the default is class.yaml in the program's folder or in the data folder")
	c.PersistentFlags().StringVar(&h.key, "host-key", "", "the `file` with the private key of this host; use the same file for all hosts of a school")
	f := c.Flags()
	f.StringVar(&h.listen, "listen", ":2222", "wait for connections on this `address`")
	f.DurationVar(&h.idle, "idle", time.Hour, "close a connection after this `time` without a key press")
	f.IntVar(&h.perAddress, "per-address", 64, "allow at most this number of `connections` from one address")
	f.BoolVar(&h.open, "open", false, "start the host without a class: anybody can connect under any name")
	f.BoolVar(&h.logNames, "log-names", false, "write the students' ids into the log")
	f.BoolVar(&h.replaceClass, "replace-class", false, "replace the class file in the database with this class file")
	c.SuggestionsMinimumDistance = nearEnough
	c.AddCommand(hostSlipsCommand(h), hostKeyCommand(h))
	return c
}

// serves marks a command that goes on until it is stopped, by what it prints once it serves.
const serves = "serves"

// keyFile is where the host's own key lies.
func (h *hosting) keyFile() (string, error) {
	if h.key != "" {
		return h.key, nil
	}
	own, err := record.DefaultPath()
	return filepath.Join(filepath.Dir(own), "host_key"), err
}

// openRoom opens the class, if there is to be one, and its record.
func (h *hosting) openRoom() (c *classfile.Class, r *record.Record, err error) {
	path, o := h.recordFile, record.Options{Wait: longestOpening, Host: hostName(h.listen)}
	if h.open {
		// Without a class there is no list, so anybody may connect.
		c = &classfile.Class{Bank: h.openBank()}
		if path == "" {
			path, err = record.DefaultPath()
		}
	} else if c, err = h.needClass(); err == nil {
		o.Book = c.Code
		path, err = h.classRecord(c)
	}
	if err != nil {
		return nil, nil, said(err)
	}
	if r, err = record.Open(path, o); err != nil {
		return nil, nil, said(err)
	}
	return c, r, nil
}

// hostName tells the hosts on one machine apart.
func hostName(listen string) string {
	name, _ := os.Hostname()
	return name + " " + listen
}

func (h *hosting) run(ctx context.Context) error {
	if h.open && h.file != "" {
		return misuse{errors.New(saidOpenOrClass)}
	}
	c, r, err := h.openRoom()
	if err != nil {
		return err
	}
	defer r.Close()
	// Before anybody can connect and is given numbers.
	if err := h.sameClass(c, r); err != nil {
		return err
	}
	options, err := h.options(c, r)
	if err != nil {
		return err
	}
	// The key is read before the port is taken, so that a fault in it leaves no open port behind.
	server, err := host.New(options)
	if err != nil {
		return err
	}
	l, err := net.Listen("tcp", h.listen)
	if err != nil {
		return fmt.Errorf(saidCannotListen, h.listen, err)
	}
	debug.SetGCPercent(host.GarbageShare)
	ctx, stop := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM)
	defer stop()
	signal.Ignore(syscall.SIGHUP) // a host goes on when its terminal is gone
	return h.serve(ctx, stop, server, l)
}

// sameClass holds the class file against the one that other hosts of the book use, so that
// two rooms do not give one student different numbers.
func (h *hosting) sameClass(c *classfile.Class, r *record.Record) error {
	// A file of records belongs to one host; only a database is shared.
	if h.open || !record.IsDatabase(h.recordFile) {
		return nil
	}
	name := h.file
	if name == "" {
		name = h.findClass()
	}
	text, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	// Of the text and not of what it says: a changed comment is asked about too, but nothing is missed.
	sum := sha256.Sum256(text)
	own := hex.EncodeToString(sum[:])
	there, err := r.Setting(classSetting)
	switch {
	case err != nil:
		return said(err)
	case there == own:
		return nil
	case there != "" && !h.replaceClass:
		return fmt.Errorf(saidOtherClass, c.Code)
	}
	// The text is kept under its hash like a problem's: a record has one place for such texts.
	return said(errors.Join(r.SaveProblem(own, c.Code, string(text)), r.SetSetting(classSetting, own)))
}

// classSetting holds the hash of the class file that the hosts of a book use.
const classSetting = "class file"

func (h *hosting) options(c *classfile.Class, r *record.Record) (o host.Options, err error) {
	if o.HostKey, err = h.keyFile(); err != nil {
		return o, err
	}
	o.Tutor = tutor.Options{Bank: c.Bank, Record: r, Class: c.Class}
	o.Teacher, o.Open, o.Idle, o.PerAddress, o.LogNames = c.Teacher, h.open, h.idle, h.perAddress, h.logNames
	o.Name = hostName(h.listen)
	o.Log = slog.New(slog.NewTextHandler(h.log, nil))
	// The report is about a class.
	if !h.open {
		o.Report = func(ctx context.Context, w io.Writer) error {
			m, err := class.OpenMarkbook(class.Options{Class: c, Bank: c.Bank, Record: r})
			if err != nil {
				return err
			}
			report, err := m.Report(ctx)
			if err != nil {
				return err
			}
			return report.WriteText(w, summary.Layout{})
		}
	}
	return o, nil
}

// serve serves until a signal comes, or the teacher leaves the live view.
func (h *hosting) serve(ctx context.Context, stop func(), server *host.Host, l net.Listener) error {
	terminal, shown := door.Behind(h.Out).(*os.File)
	if !shown || !isTerminal(terminal) || !isTerminal(h.In) {
		fmt.Fprintf(h.Out, "listening %s %s\n", l.Addr(), server.Fingerprint())
		return server.Serve(ctx, l)
	}
	// Log lines would tear the view; in a file they go on.
	if isTerminal(h.Err) {
		h.log.hold()
		defer h.log.release()
	}
	served := make(chan error, 1)
	go func() {
		served <- server.Serve(ctx, l)
		stop()
	}()
	h.showWay(server, l)
	if h.enter(ctx) {
		// Keys must arrive one by one, and not be printed into the view.
		if before, err := term.MakeRaw(int(h.In.Fd())); err == nil {
			defer term.Restore(int(h.In.Fd()), before)
		}
		err := server.Live(ctx, h.In, terminal, func() (cols, lines int) {
			cols, lines, _ = term.GetSize(int(terminal.Fd()))
			return cols, lines
		})
		stop()
		// Waited for: the server says goodbye to everybody before the record is closed.
		return errors.Join(err, <-served)
	}
	return <-served
}

// showWay says how students reach the host.
func (h *hosting) showWay(server *host.Host, l net.Listener) {
	port := l.Addr().(*net.TCPAddr).Port
	name := saidOwnID
	if h.open {
		name = saidAnyName
	}
	fmt.Fprintf(h.Out, saidHostReady+"\n", port, server.Fingerprint(), name)
	for _, address := range addresses() {
		fmt.Fprintf(h.Out, "    ssh NAME@%s -p %d\n", address, port)
	}
	if h.open {
		fmt.Fprintln(h.Out, saidOpenHost)
	}
	fmt.Fprintln(h.Out, saidHostLive)
}

// enter waits for the first key; false where the host is stopped before.
func (h *hosting) enter(ctx context.Context) bool {
	pressed := make(chan bool, 1)
	go func() {
		// A whole line at once, or its rest would be taken for keys of the live view.
		_, err := h.In.Read(make([]byte, 80))
		pressed <- err == nil
	}()
	select {
	case yes := <-pressed:
		return yes
	case <-ctx.Done():
		return false
	}
}

// addresses are those of this machine in local networks.
func addresses() []string {
	var all []string
	found, _ := net.InterfaceAddrs()
	for _, a := range found {
		if ip, ok := a.(*net.IPNet); ok && ip.IP.To4() != nil && !ip.IP.IsLoopback() && !ip.IP.IsLinkLocalUnicast() {
			all = append(all, ip.IP.String())
		}
	}
	// A machine without a network can still be tried out alone.
	if all == nil {
		return []string{"127.0.0.1"}
	}
	return all
}

func hostSlipsCommand(h *hosting) *cobra.Command {
	var address string
	var asJSON bool
	c := &cobra.Command{
		Use:   "slips [STUDENT]...",
		Short: "Make new pass phrases and print a slip for each student",
		Long: `This command makes a new pass phrase for every student of the class, or only for
the students whom you name, and prints a slip for each student. The program
cannot show a pass phrase again, so print the slips at once. If a slip is lost,
make a new one. A new pass phrase replaces the old pass phrase and the keys of
the student, and closes the student's open connections.`,
		Example: "  standstill host slips --class physics-10b.yaml --address 192.168.1.20",
		RunE:    func(_ *cobra.Command, args []string) error { return h.slips(args, address, asJSON) },
	}
	c.Flags().StringVar(&address, "address", "", "the `address` of the host, as students type it; add :PORT if the port is not 2222")
	c.Flags().BoolVar(&asJSON, "json", false, "print a JSON array")
	return c
}

func (h *hosting) slips(who []string, address string, asJSON bool) error {
	c, r, err := h.openRoom()
	if err != nil {
		return err
	}
	defer r.Close()
	students := c.Students
	if len(who) > 0 {
		students = nil
		for _, name := range who {
			s, ok := c.Student(name)
			if !ok {
				return fmt.Errorf(saidNoSuchStudent, name)
			}
			students = append(students, s)
		}
	}
	slips, err := host.Slips(r, students, nil)
	if err != nil {
		return said(err)
	}
	if asJSON {
		out := json.NewEncoder(h.Out)
		// The phrases are read by people: & must not come out as \u0026.
		out.SetEscapeHTML(false)
		out.SetIndent("", "  ")
		return out.Encode(slips)
	}
	return h.printSlips(slips, address)
}

func (h *hosting) printSlips(slips []host.Slip, address string) error {
	key, err := h.keyFile()
	if err != nil {
		return err
	}
	fingerprint, err := host.FingerprintOf(key)
	if err != nil {
		return err
	}
	if address == "" {
		address = addresses()[0]
	}
	name, port, err := net.SplitHostPort(address)
	if err != nil {
		name, port = address, "2222"
	}
	for _, s := range slips {
		if _, err := fmt.Fprintf(h.Out, saidSlip, s.Name, s.ID, name, port, fingerprint, s.Phrase); err != nil {
			return err
		}
	}
	return nil
}

const exampleKey = "  standstill host key add s01 id_ed25519.pub --class physics-10b.yaml"

func hostKeyCommand(h *hosting) *cobra.Command {
	c := &cobra.Command{
		Use:     "key",
		Short:   "Let a student or the teacher connect with a public key",
		Example: exampleKey,
		Args:    noSuchCommand,
		RunE:    func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	c.AddCommand(&cobra.Command{
		Use:     "add STUDENT FILE",
		Short:   "Add a public key from a .pub file",
		Example: exampleKey,
		Args:    exactly(2, "a student's id and a file with a public key"),
		RunE:    func(_ *cobra.Command, args []string) error { return h.addKey(args[0], args[1]) },
	})
	return c
}

func (h *hosting) addKey(who, file string) error {
	c, r, err := h.openRoom()
	if err != nil {
		return err
	}
	defer r.Close()
	id := c.Teacher
	// A class need not name its teacher, and then no name is the teacher's.
	if who != id || id == "" {
		s, ok := c.Student(who)
		if !ok {
			return fmt.Errorf(saidNoSuchStudent, who)
		}
		id = s.ID
	}
	// A key is short, and a wrong file may be endless.
	line, err := readStart(file, 16<<10)
	if err != nil {
		return err
	}
	fingerprint, err := host.AddKey(r, id, line)
	if errors.Is(err, host.ErrKey) {
		return fmt.Errorf(saidNoKey, file)
	}
	if err != nil {
		return said(err)
	}
	_, err = fmt.Fprintf(h.Out, saidKeyAdded+"\n", fingerprint, id)
	return err
}

// readStart reads a small file.
func readStart(name string, most int64) (string, error) {
	file, err := os.Open(name)
	if err != nil {
		return "", plainly(err)
	}
	defer file.Close()
	text, err := io.ReadAll(io.LimitReader(file, most))
	return string(text), plainly(err)
}
