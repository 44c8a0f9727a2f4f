package main

import (
	"fmt"
	"io"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/picture"
)

func bankNewCommand(a *app) *cobra.Command {
	var n newProblem
	c := &cobra.Command{
		Use:   "new [FILE]",
		Short: "Create a problem file, question by question",
		Long: "Asks for what a problem needs, writes a commented file, solves it at once and shows the\n" +
			"drawing and the solution. What the flags say is not asked. A force is a list of parts:\n" +
			"name, kind, points or direction, angle and from, size, and on where there are bodies.",
		Example: "  standstill bank new my-lantern.yaml --topic one-line --title Lantern --text {m}_hangs --given m=2_kg --force name=T,kind=tension,points=up --force name=w,kind=weight,points=down,size=m*g --find T",
		Args:    cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			file := n.draft.ID + ".yaml"
			if len(args) > 0 {
				file = args[0]
				if n.draft.ID == "" {
					n.draft.ID = strings.TrimSuffix(filepath.Base(file), filepath.Ext(file))
				}
			}
			n.app, n.questions = a, newQuestions(a.In, a.Out)
			return n.make(file, len(args) > 0)
		},
	}
	f := c.Flags()
	f.StringVar(&n.draft.ID, "id", "", "the problem's `id`; else the file's name")
	f.StringVar(&n.draft.Title, "title", "", "its `title`")
	f.StringVar(&n.draft.Topic, "topic", "", "its `topic`")
	f.StringVar(&n.draft.Level, "level", "", "its `level`: 1, 2 or 3")
	f.StringVar(&n.draft.Text, "text", "", "the `text`, with letters in braces; _ counts as a space")
	f.StringArrayVar(&n.given, "given", nil, "a `given`, as in m=3.2_kg; you can repeat this flag")
	f.StringVar(&n.draft.Tilt, "tilt", "", "the `angle` by which the x axis is turned")
	f.StringArrayVar(&n.draft.Bodies, "body", nil, "a `body`, where there are several")
	f.StringArrayVar(&n.forces, "force", nil, "a `force`, as in name=T1,kind=tension,points=up_left,angle=alpha,from=x")
	f.StringArrayVar(&n.equal, "equal", nil, "a letter for `equal` sizes, as in T=T1,T2")
	f.StringSliceVar(&n.draft.Find, "find", nil, "what is asked for, with commas")
	f.StringArrayVar(&n.vary, "vary", nil, "what is `drawn`, as in m=1.5_to_5.0_step_0.1")
	f.StringVar(&n.draft.Notes, "notes", "", "a line for the `teacher`")
	return c
}

// newProblem is a problem in the making.
type newProblem struct {
	*app
	*questions
	draft                      problems.Draft
	given, forces, equal, vary []string
}

// make asks for what is missing until the file reads, then writes and shows it.
func (n *newProblem) make(file string, named bool) error {
	if err := n.fromFlags(); err != nil {
		return err
	}
	if err := n.askMissing(); err != nil {
		return err
	}
	if !named {
		file = n.draft.ID + ".yaml"
	}
	for {
		data := problems.Write(n.draft)
		p, findings := problems.Read(file, data)
		if len(findings) == 0 {
			return n.finish(file, data, p)
		}
		for _, f := range findings {
			fmt.Fprintf(n.Out, "%s\n%s\n", f, f.Excerpt())
		}
		if err := n.askAgain(); err != nil {
			return err
		}
	}
}

// finish writes the file, which must not be there yet, and shows the problem as
// bank show does.
func (n *newProblem) finish(file string, data []byte, p *problems.Problem) error {
	if err := writeNew(file, data); err != nil {
		return fmt.Errorf("the file %s cannot be written: %w", file, err)
	}
	page, err := tutor.NewPage(p)
	if err != nil {
		return err
	}
	fmt.Fprintf(n.Out, saidProblemWritten, file)
	scene := picture.OfProblem(page.Ref, picture.View{Solved: true})
	if n.plain || !isTerminal(n.Out) {
		for _, sentence := range picture.Sentences(scene) {
			fmt.Fprintln(n.Out, sentence)
		}
	} else {
		fmt.Fprintln(n.Out, picture.Braille(scene, 60, 16))
	}
	return writeWorked(n.Out, page)
}

// spaced lets _ stand for a space in a flag, so that a shell needs no quotes.
func spaced(text string) string { return strings.ReplaceAll(text, "_", " ") }

func (n *newProblem) fromFlags() error {
	n.draft.Title, n.draft.Text, n.draft.Notes = spaced(n.draft.Title), spaced(n.draft.Text), spaced(n.draft.Notes)
	for _, f := range n.forces {
		force, err := forceOf(f)
		if err != nil {
			return misuse{err}
		}
		n.draft.Forces = append(n.draft.Forces, force)
	}
	for _, list := range []struct {
		typed []string
		into  *[]problems.Pair
	}{{n.given, &n.draft.Given}, {n.equal, &n.draft.Equal}, {n.vary, &n.draft.Vary}} {
		for _, text := range list.typed {
			key, value, ok := strings.Cut(text, "=")
			if !ok {
				return misuse{fmt.Errorf(saidNoPair, text)}
			}
			*list.into = append(*list.into, problems.Pair{Key: strings.TrimSpace(key), Value: strings.TrimSpace(spaced(value))})
		}
	}
	return nil
}

// forceOf reads "name=T1,kind=tension,points=up_left,angle=alpha,from=x".
func forceOf(text string) (problems.DraftForce, error) {
	var f problems.DraftForce
	parts := map[string]*string{"on": &f.On, "name": &f.Name, "kind": &f.Kind, "points": &f.Points, "angle": &f.Angle,
		"from": &f.From, "direction": &f.Direction, "size": &f.Size}
	for _, part := range strings.Split(text, ",") {
		key, value, ok := strings.Cut(part, "=")
		into := parts[strings.TrimSpace(key)]
		if !ok || into == nil {
			return f, fmt.Errorf(saidNoForcePart, strings.TrimSpace(part))
		}
		*into = strings.TrimSpace(spaced(value))
	}
	return f, nil
}

var idForm = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// askMissing asks for every part that no flag gave.
func (n *newProblem) askMissing() error {
	d := &n.draft
	var topics []string
	for _, t := range problems.Topics() {
		topics = append(topics, t.ID)
	}
	for _, q := range []struct {
		into  *string
		ask   string
		check func(string) string
	}{
		{&d.ID, askID, func(s string) string { return unless(idForm.MatchString(s), saidIDForm) }},
		{&d.Title, askTitle, func(s string) string { return unless(s != "", saidNeeded) }},
		{&d.Topic, fmt.Sprintf(askTopic, strings.Join(topics, ", ")), func(s string) string { return unless(slices.Contains(topics, s), saidTopicForm) }},
		{&d.Level, askLevel, func(s string) string { return unless(s == "1" || s == "2" || s == "3", saidLevelForm) }},
		{&d.Text, askText, func(s string) string { return unless(s != "", saidNeeded) }},
	} {
		if *q.into != "" {
			continue
		}
		if q.into == &d.Level && len(n.forces) > 0 {
			d.Level = "1"
			continue
		}
		var err error
		if *q.into, err = n.ask(q.ask, q.check); err != nil {
			return err
		}
	}
	return n.askParts()
}

func (n *newProblem) askParts() error {
	d := &n.draft
	flagged := len(d.Forces) > 0
	if len(d.Given) == 0 && !flagged {
		if err := n.askPairs(&d.Given, askGiven); err != nil {
			return err
		}
	}
	if !flagged {
		tilt, err := n.ask(askTilt, func(s string) string { return sentenceOf(n.draft.WrongTilt(s)) })
		if err != nil {
			return err
		}
		d.Tilt = tilt
		bodies, err := n.ask(askBodies, nil)
		if err != nil {
			return err
		}
		d.Bodies = namesIn(bodies)
		if err := n.askForces(); err != nil {
			return err
		}
	}
	if len(d.Find) == 0 {
		if err := n.askFind(); err != nil {
			return err
		}
	}
	if len(d.Vary) == 0 && !flagged {
		return n.askPairs(&d.Vary, askVary)
	}
	return nil
}

// askPairs asks for lines "letter = value" until an empty one.
func (n *newProblem) askPairs(into *[]problems.Pair, ask string) error {
	*into = nil
	for {
		text, err := n.ask(ask, func(s string) string {
			switch {
			case s == "":
				return ""
			case !strings.Contains(s, "="):
				return saidPairForm
			case into == &n.draft.Given:
				return sentenceOf(n.draft.WrongGiven(pairOf(s)))
			}
			return ""
		})
		if err != nil || text == "" {
			return err
		}
		*into = append(*into, pairOf(text))
	}
}

func pairOf(text string) problems.Pair {
	key, value, _ := strings.Cut(text, "=")
	return problems.Pair{Key: strings.TrimSpace(key), Value: strings.TrimSpace(value)}
}

// sentenceOf makes a sentence of what is wrong, "" if nothing is.
func sentenceOf(err error) string {
	if err == nil {
		return ""
	}
	return sentence(err.Error())
}

// askForces asks for one force after the other until an empty name.
func (n *newProblem) askForces() error {
	n.draft.Forces = nil
	for {
		var f problems.DraftForce
		var err error
		if f.Name, err = n.ask(askForceName, func(s string) string {
			return unless(s == "", sentenceOf(n.draft.WrongForce(s)))
		}); err != nil || f.Name == "" {
			return err
		}
		if f.Kind, err = n.ask(askForceKind, func(s string) string {
			return unless(slices.Contains(statics.Kinds, statics.Kind(s)), saidKindForm)
		}); err != nil {
			return err
		}
		if len(n.draft.Bodies) > 0 {
			f.On, err = n.ask(askForceOn, func(s string) string { return unless(slices.Contains(n.draft.Bodies, s), saidBodyForm) })
			if err != nil {
				return err
			}
		}
		if err := n.askWhere(&f); err != nil {
			return err
		}
		if f.Size, err = n.ask(askForceSize, nil); err != nil {
			return err
		}
		n.draft.Forces = append(n.draft.Forces, f)
	}
}

// askWhere asks where a force points: sides with an angle, or a full-circle
// direction.
func (n *newProblem) askWhere(f *problems.DraftForce) error {
	points, err := n.ask(askForcePoints, func(s string) string { return unless(s != "", saidNeeded) })
	if err != nil {
		return err
	}
	words := strings.Fields(points)
	if !slices.Contains([]string{"up", "down", "left", "right"}, words[0]) {
		f.Direction = points
		return nil
	}
	f.Points = points
	if len(words) < 2 {
		return nil
	}
	if f.Angle, err = n.ask(askForceAngle, func(s string) string { return unless(s != "", saidNeeded) }); err != nil {
		return err
	}
	f.From, err = n.ask(askForceFrom, func(s string) string { return unless(s == "x" || s == "y", saidFromForm) })
	return err
}

func (n *newProblem) askFind() error {
	text, err := n.ask(askFind, func(s string) string { return unless(s != "", saidNeeded) })
	n.draft.Find = namesIn(text)
	return err
}

// namesIn cuts a list of names at commas and spaces.
func namesIn(text string) []string {
	return strings.FieldsFunc(text, func(c rune) bool { return c == ',' || c == ' ' })
}

// askAgain asks for one part again after the file did not read.
func (n *newProblem) askAgain() error {
	parts := map[string]func() error{
		"text":   func() (err error) { n.draft.Text, err = n.ask(askText, nil); return err },
		"topic":  func() (err error) { n.draft.Topic, err = n.ask(saidTopicForm, nil); return err },
		"given":  func() error { return n.askPairs(&n.draft.Given, askGiven) },
		"tilt":   func() (err error) { n.draft.Tilt, err = n.ask(askTilt, nil); return err },
		"forces": n.askForces,
		"find":   n.askFind,
		"vary":   func() error { return n.askPairs(&n.draft.Vary, askVary) },
	}
	part, err := n.ask(askAgain, func(s string) string { return unless(parts[s] != nil, saidPartForm) })
	if err != nil {
		return err
	}
	return parts[part]()
}

// unless returns the sentence where something does not hold.
func unless(holds bool, sentence string) string {
	if holds {
		return ""
	}
	return sentence
}

// questions asks on lines and asks again where an answer cannot be used.
type questions struct {
	lines *lineReader
	out   io.Writer
}
