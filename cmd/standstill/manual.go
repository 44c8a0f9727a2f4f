package main

import (
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// manual is the manual page, made of the help texts of all commands. It is written in the
// man macros alone, which every system's man program reads.
func manual(root *cobra.Command) string {
	p := &manPage{}
	p.request(".TH STANDSTILL 1 \"\" \"Standstill " + version + "\" \"Standstill\"")
	p.section("NAME")
	p.text("standstill - " + lowerFirst(root.Short))
	p.section("SYNOPSIS")
	p.usage(root)
	p.request(".B standstill", ".I COMMAND", "[\\fIargument\\fR ...] [\\fIflag\\fR ...]")
	p.section("DESCRIPTION")
	p.help(root.Long)
	p.flags(root.NonInheritedFlags())
	p.section("COMMANDS")
	for _, c := range commandsBelow(root) {
		p.command(c)
	}
	p.section("HELP PAGES")
	for _, t := range topics() {
		p.item("standstill help "+t.name, t.short)
	}
	for _, part := range saidManual() {
		p.section(part.title)
		p.help(part.text)
	}
	return p.String()
}

// commandsBelow are the commands that are there to be seen, each before its own.
func commandsBelow(c *cobra.Command) []*cobra.Command {
	var all []*cobra.Command
	for _, sub := range c.Commands() {
		if sub.IsAvailableCommand() || sub.Name() == "help" {
			all = append(append(all, sub), commandsBelow(sub)...)
		}
	}
	return all
}

// manPage is a page in the man macros.
type manPage struct{ strings.Builder }

// request writes lines for the macros, which are not text.
func (p *manPage) request(lines ...string) {
	p.WriteString(strings.Join(lines, "\n") + "\n")
}

func (p *manPage) section(title string) { p.request(".SH " + title) }

func (p *manPage) command(c *cobra.Command) {
	p.request(".SS " + manText(c.CommandPath()))
	p.usage(c)
	p.request(".PP")
	long := c.Long
	if long == "" {
		long = c.Short + "."
	}
	p.help(long)
	p.flags(c.NonInheritedFlags())
	if c.Example != "" {
		p.request(".PP")
		p.text("Examples:")
		p.help(c.Example)
	}
}

func (p *manPage) usage(c *cobra.Command) {
	name, rest, _ := strings.Cut(strings.TrimPrefix(c.UseLine(), "standstill"), "[flags]")
	p.request(".B "+manText("standstill"+strings.TrimRight(name, " ")), manText("[flags]"+rest), ".br")
}

func (p *manPage) flags(set *pflag.FlagSet) {
	set.VisitAll(func(f *pflag.Flag) {
		// Every command has --help, so it is told once.
		if f.Hidden || f.Name == "help" {
			return
		}
		value, usage := pflag.UnquoteUsage(f)
		p.item(strings.TrimRight(dashes(f.Name)+" "+strings.ToUpper(value), " "), usage)
	})
}

// item writes a term and, further to the right, what it means.
func (p *manPage) item(term, meaning string) {
	p.request(".TP", ".B "+manText(term))
	p.text(meaning)
}

func (p *manPage) text(s string) { p.request(manText(s)) }

// help writes a help text: paragraphs that may be filled anew, and lines set further in,
// which stay as they are.
func (p *manPage) help(text string) {
	inside := false
	for _, line := range strings.Split(text, "\n") {
		if in := strings.HasPrefix(line, "  "); in != inside && line != "" {
			inside = in
			p.request(map[bool]string{true: ".PP\n.RS 4\n.nf", false: ".fi\n.RE\n.PP"}[in])
		}
		switch {
		case line == "" && inside:
			p.request("")
		case line == "":
			p.request(".PP")
		default:
			p.text(line)
		}
	}
	if inside {
		p.request(".fi", ".RE")
	}
}

// manText takes from a text what would mean something to the macros: the backslash, the
// hyphen, which would come out as another character, and a dot or quote in front of a line.
func manText(s string) string {
	s = strings.NewReplacer(`\`, `\e`, "-", `\-`, "^", `\(ha`, "~", `\(ti`, "`", `\(ga`, "'", `\(aq`).Replace(s)
	if strings.HasPrefix(s, ".") {
		s = `\&` + s
	}
	return s
}

func lowerFirst(s string) string { return strings.ToLower(s[:1]) + s[1:] }
