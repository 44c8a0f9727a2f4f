package main

import (
	"cmp"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/picture"
)

func bankNewCommand(a *app) *cobra.Command {
	var n newProblem
	c := &cobra.Command{
		Use:   "new [FILE]",
		Short: "Create a problem file by answering questions",
		Long: `This command asks for everything that a problem needs, and then writes a problem
file with comments. It also solves the problem and shows the drawing and the
solution. The program checks each answer at once. To go back to the previous
question, type back. If you stop before the end, your answers are saved. To
continue with the next question, type the same command again.

The command does not ask for values that you give as flags. The value of --force
can contain the keys name, kind, points, angle, from, direction, size, by and
on. To see what these keys mean, type standstill help problem-file.`,
		Example: "  standstill bank new my-lantern.yaml --topic one-line --title Lantern --text '{m} hangs' --given 'm=2 kg' --force 'name=T,kind=tension,points=up' --force 'name=w,kind=weight,size=m*g' --find T",
		Args:    cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			file := ""
			if len(args) > 0 {
				file = args[0]
			}
			n.app = a
			return n.make(file)
		},
	}
	f := c.Flags()
	f.StringVar(&n.draft.ID, "id", "", "the `id` of the problem; without this flag, the id is the name of the file")
	f.StringVar(&n.draft.Title, "title", "", "the `title` of the problem")
	f.StringVar(&n.draft.Topic, "topic", "", "the `topic` of the problem")
	f.StringVar(&n.draft.Level, "level", "", "the `level` of the problem: 1, 2 or 3")
	f.StringVar(&n.draft.Text, "text", "", "the `text` of the problem, with letters in braces; you can type _ instead of a space")
	f.StringArrayVar(&n.given, "given", nil, "a given `quantity`, as in m=3.2_kg; you can repeat this flag")
	f.StringVar(&n.draft.Tilt, "tilt", "", "the `angle` by which the x axis is turned, or the word left if the x axis points to the left")
	f.StringArrayVar(&n.draft.Bodies, "body", nil, "the name of a `body`, if there are several bodies; repeat this flag for each body")
	f.StringArrayVar(&n.forces, "force", nil, "a `force`, as in name=T1,kind=tension,points=up_left,angle=alpha,from=x")
	f.StringArrayVar(&n.equal, "equal", nil, "a `letter` for forces of equal size, as in T=T1,T2")
	f.StringSliceVar(&n.draft.Find, "find", nil, "the `unknowns` to find, separated by commas")
	f.StringArrayVar(&n.vary, "vary", nil, "the `range` of a given quantity, as in m=1.5_to_5.0_step_0.1; you can repeat this flag")
	f.StringVar(&n.draft.Notes, "notes", "", "a `note` for other teachers")
	return c
}

// newProblem is a problem in the making.
type newProblem struct {
	*app
	draft                      problems.Draft // what the flags say
	given, forces, equal, vary []string
}

// make asks for what is missing until the file reads, then writes and shows it. Whether
// it can be written is looked at first.
func (n *newProblem) make(file string) error {
	// Only a name that can be an id; for any other it is asked.
	if id := strings.TrimSuffix(filepath.Base(file), filepath.Ext(file)); n.draft.ID == "" && idForm().MatchString(id) {
		n.draft.ID = id
	}
	if info, err := os.Stat(filepath.Dir(file)); err != nil || !info.IsDir() {
		return fmt.Errorf(saidNoFolder, filepath.Dir(file))
	}
	// Before the questions: answers to a problem that cannot be saved would be in vain.
	if said := n.idTaken(n.draft.ID, file); n.draft.ID != "" && said != "" {
		return errors.New(said)
	}
	if err := n.fromFlags(); err != nil {
		return err
	}
	talk := newDialogue(n.In, n.Out, cmp.Or(file, unnamedProblem)+".draft")
	asked := &problemQuestions{taken: func(id string) string { return n.idTaken(id, file) }}
	talk.answers, talk.next, talk.wrong = answersOf(n.draft), asked.list, wrongProblem
	if err := talk.run(); err != nil {
		return err
	}
	d := draftOf(talk.answers)
	if err := n.finish(cmp.Or(file, d.ID+".yaml"), problems.Write(d)); err != nil {
		return err
	}
	talk.done()
	return nil
}

// unnamedProblem is the file whose draft keeps the answers while no file is named.
const unnamedProblem = "new-problem"

// idTaken says that a problem cannot have this id, or that its file is there already.
func (n *newProblem) idTaken(id, file string) string {
	file = cmp.Or(file, id+".yaml")
	if _, err := os.Lstat(file); err == nil {
		return sentence(fmt.Sprintf(saidFileExists, file))
	}
	for _, h := range n.openBank().List() {
		if h.ID == id {
			return fmt.Sprintf(saidIDTaken, id, h.Title)
		}
	}
	return ""
}

// wrongProblem says what the reader of problem files finds in all answers together. The
// file is not there yet, so its lines are shown and not counted.
func wrongProblem(answers map[string]string) string {
	_, findings := problems.Read("", problems.Write(draftOf(answers)))
	var said []string
	for _, f := range findings {
		said = append(said, sentence(strings.TrimSuffix(f.What+"; expected "+f.Expected, "; expected ")))
		if f.Excerpt() != "" {
			said = append(said, f.Excerpt())
		}
	}
	return strings.Join(said, "\n")
}

// finish writes the file, which must not be there yet, and shows the problem as
// bank show does.
func (n *newProblem) finish(file string, data []byte) error {
	// Read back from what is written, so that a file that is there can always be opened.
	p, findings := problems.Read(file, data)
	if err := findings.Err(); err != nil {
		return err
	}
	if err := writeNew(file, data); err != nil {
		return fmt.Errorf(saidNotWritten, file, plainCause(err))
	}
	page, err := tutor.NewPage(p)
	if err != nil {
		return err
	}
	fmt.Fprintf(n.Out, saidProblemWritten, file)
	tellWarnings(n.Out, p)
	scene := picture.OfProblem(page.Ref, picture.View{Solved: true})
	// In a pipe there may be a listener, or a file that is searched.
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
	parts := forceParts(&f)
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

// forceParts are the parts of a force by their keys.
func forceParts(f *problems.DraftForce) map[string]*string {
	return map[string]*string{"on": &f.On, "name": &f.Name, "kind": &f.Kind, "points": &f.Points, "angle": &f.Angle,
		"from": &f.From, "direction": &f.Direction, "size": &f.Size, "by": &f.By}
}
