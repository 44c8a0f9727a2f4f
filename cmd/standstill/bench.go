package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.org/standstill/problems"
	"example.org/standstill/tutor/bench"
)

// measured are the flags that hold what was measured.
type measured struct {
	set, hanger, ring, read []string
	json                    bool
}

func (m *measured) any() bool { return len(m.set)+len(m.hanger)+len(m.ring)+len(m.read) > 0 || m.json }

func (m *measured) flags(c *cobra.Command) {
	f := c.Flags()
	f.StringArrayVar(&m.set, "set", nil, "a measured `value` of a given, as in 'm=0.500 kg ± 1 %'; may be given several times")
	f.StringArrayVar(&m.read, "read", nil, "what a scale or protractor shows for a predicted `value`, as in 'T1=20.4 N div 0.2 N'")
	f.StringArrayVar(&m.hanger, "hanger", nil, "a hanger's own mass on top of a given `value`, as in 'm=50 g ± 0.5 g'")
	f.StringArrayVar(&m.ring, "ring", nil, "the ring's own mass, a `value` such as '12 g div 1 g'")
	f.BoolVar(&m.json, "json", false, "print one JSON object")
}

func benchCommand(a *app) *cobra.Command {
	var m measured
	c := &cobra.Command{
		Use:     "bench [PROBLEM]",
		Short:   "Compare measured values with what the sums predict",
		Long:    saidBench,
		Example: "  standstill bench canal-lantern --set m=0.500kg±1% --set alpha=35;34.5;35.5deg --read T1=4.1N±0.1N",
		Args:    atMostOne,
		RunE: func(c *cobra.Command, args []string) error {
			p, err := a.problem(args[0])
			if err != nil {
				return err
			}
			return a.benchRun(p, &m)
		},
	}
	m.flags(c)
	return c
}

// atMostOne refuses a second word behind a command.
func atMostOne(c *cobra.Command, args []string) error {
	if len(args) > 1 {
		return exactly(1, "")(c, args)
	}
	return nil
}

// benchRun computes one run from the command line and prints it.
func (a *app) benchRun(p *problems.Problem, m *measured) error {
	f, err := bench.NewForm(p)
	if err != nil {
		return fmt.Errorf("%s: %w", p.ID, err)
	}
	wrong := m.fill(f)
	var r *bench.Result
	if wrong == nil {
		r, wrong = f.Result()
	}
	if wrong != nil {
		for _, why := range wrong {
			fmt.Fprintln(a.Err, why)
		}
		return errFound
	}
	if m.json {
		out, err := r.JSON()
		if err == nil {
			_, err = a.Out.Write(out)
		}
		return err
	}
	text := f.Heading() + "\n" + strings.Join(bench.Style{Plain: !isTerminal(a.Out)}.Set(r.Blocks()), "\n")
	_, err = fmt.Fprintln(a.Out, text)
	return err
}

// fill puts the flags into the form; every value that is refused is told.
func (m *measured) fill(f *bench.Form) []string {
	var wrong []string
	for _, part := range []struct {
		kind  bench.Kind
		lines []string
	}{{bench.Measure, m.set}, {bench.Hanger, m.hanger}, {bench.Ring, m.ring}, {bench.Reading, m.read}} {
		for _, line := range part.lines {
			if why := f.Assign(part.kind, line); why != "" {
				wrong = append(wrong, why)
			}
		}
	}
	return wrong
}

const saidBench = `Takes a problem as the model of what stands on the table, puts what was measured into
its sums, and says what they predict, how sure that is, and whether the scales agree.`
