package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/standstill/checker"
	"example.org/standstill/checker/pattern"
	"example.org/standstill/checker/statics"
	"example.org/standstill/problems"
)

// problemQuestions are the questions about a new problem. What the text shows in braces
// is asked for, and so on: each answer may lead to further questions.
type problemQuestions struct {
	taken func(id string) string // why a problem cannot have an id

	answers map[string]string
	asked   []question
}

// list makes the questions that the answers so far lead to.
func (p *problemQuestions) list(answers map[string]string) []question {
	// From the beginning each time: a changed answer may take back questions and add others.
	p.answers, p.asked = answers, nil
	p.heading()
	d := draftOf(answers)
	p.givens(d)
	p.ask("body", askBody, p.optional(func(s string) error {
		d := d
		d.Body, d.Bodies = bodiesIn(s)
		return cmp.Or(d.Wrong("body"), d.Wrong("bodies"))
	}))
	p.ask("tilt", askTilt, p.optional(func(s string) error {
		d := d
		d.Tilt = s
		return cmp.Or(d.WrongTilt(s), d.Wrong("tilt"))
	}))
	p.forces(d)
	p.numbered("equal", askEqual, func(part, s string) string {
		if !strings.Contains(s, "=") {
			return saidEqualForm
		}
		d := p.draftWithout(part)
		d.Equal = append(d.Equal, equalOf(s))
		return sentenceOf(d.Wrong("equal " + equalOf(s).Key))
	})
	p.ask("find", askFind, p.needed(func(s string) error { return d.WrongFind(namesIn(s)) }))
	for _, g := range d.Given {
		// A class gives g, and not the draw of a student.
		if g.HasNumber() && g.Key != "g" {
			p.ask("vary "+g.Key, fmt.Sprintf(askVary, g.Key), p.optional(func(s string) error {
				d := p.draftWithout("vary " + g.Key)
				d.Vary = append(d.Vary, problems.Pair{Key: g.Key, Value: s})
				return d.Wrong("vary " + g.Key)
			}))
		}
	}
	p.ask("notes", askNotes, p.optional(nil))
	p.more(d)
	return p.asked
}

func (p *problemQuestions) ask(part, ask string, check func(string) string) {
	p.asked = append(p.asked, question{Part: part, Ask: ask, Check: check})
}

// needed and optional make a check of what may be wrong with an answer that is there.
func (p *problemQuestions) needed(wrong func(string) error) func(string) string {
	return func(s string) string {
		if s == "" {
			return saidNeeded
		}
		return p.optional(wrong)(s)
	}
}

func (p *problemQuestions) optional(wrong func(string) error) func(string) string {
	return func(s string) string {
		if s == "" || wrong == nil {
			return ""
		}
		return sentenceOf(wrong(s))
	}
}

// numbered asks for one part after the other until an empty one: "equal 1", "equal 2".
func (p *problemQuestions) numbered(name, ask string, check func(part, answer string) string) {
	for i := 1; i <= lastOf(p.answers, name, "")+1; i++ {
		part := fmt.Sprintf("%s %d", name, i)
		p.ask(part, ask, func(s string) string {
			if s == "" {
				return ""
			}
			return check(part, s)
		})
	}
}

// draftWithout is the draft of all answers but one.
func (p *problemQuestions) draftWithout(part string) problems.Draft {
	rest := map[string]string{}
	for key, answer := range p.answers {
		if key != part {
			rest[key] = answer
		}
	}
	return draftOf(rest)
}

var idForm = pattern.Of(`^[a-z0-9]+(-[a-z0-9]+)*$`)

func (p *problemQuestions) heading() {
	var topics []string
	for _, t := range problems.Topics() {
		topics = append(topics, t.ID)
	}
	p.ask("id", askID, func(s string) string {
		if !idForm().MatchString(s) {
			return saidIDForm
		}
		return p.taken(s)
	})
	p.ask("title", askTitle, p.needed(nil))
	p.ask("topic", fmt.Sprintf(askTopic, strings.Join(topics, ", ")), p.needed(func(s string) error {
		return problems.Draft{Topic: s}.Wrong("topic")
	}))
	p.ask("level", askLevel, func(s string) string { return unless(s == "1" || s == "2" || s == "3", saidLevelForm) })
	p.ask("text", askText, p.needed(func(s string) error {
		d := problems.Draft{Text: s}
		for _, letter := range problems.Shown(s) {
			// The letters are checked before their values are known; any value will do.
			if err := d.WrongGiven(problems.Pair{Key: letter, Value: "1 kg"}); err != nil {
				return err
			}
			d.Given = append(d.Given, problems.Pair{Key: letter, Value: "1 kg"})
		}
		return d.Wrong("text")
	}))
}

// givens asks for what the text shows, for further givens, and for what these are.
func (p *problemQuestions) givens(d problems.Draft) {
	for _, letter := range problems.Shown(d.Text) {
		part := "given " + letter
		p.ask(part, fmt.Sprintf(askGiven, letter), p.needed(func(s string) error {
			return p.draftWithout(part).WrongGiven(problems.Pair{Key: letter, Value: s})
		}))
	}
	p.numbered("further given", askFurther, func(part, s string) string {
		if !strings.Contains(s, "=") {
			return saidPairForm
		}
		return sentenceOf(p.draftWithout(part).WrongGiven(pairOf(s)))
	})
	for i := 1; i <= lastOf(p.answers, "further given", ""); i++ {
		if g := pairOf(p.answers[fmt.Sprintf("further given %d", i)]); g.Key != "" && g.Key != "g" && g.HasNumber() {
			p.ask("meaning "+g.Key, fmt.Sprintf(askMeaning, g.Key), p.needed(nil))
		}
	}
}

// forces asks for one force after the other until an empty letter.
func (p *problemQuestions) forces(d problems.Draft) {
	at := 0
	for i := 1; i <= lastOf(p.answers, "force", " name")+1; i++ {
		name := fmt.Sprintf("force %d", i)
		begin := len(p.asked)
		p.ask(name+" name", fmt.Sprintf(askForceName, i), p.optional(func(s string) error {
			return p.draftWithout(name + " name").WrongForce(s)
		}))
		if p.answers[name+" name"] != "" {
			p.force(name, at, d)
			at++
		}
		for k := range p.asked[begin:] {
			p.asked[begin+k].Of = name
		}
	}
}

// extras are what only some problems need, by the word that asks for it, with the
// questions for one of each.
func (p *problemQuestions) extras(name string, d problems.Draft) map[string]func() {
	return map[string]func(){
		"surplus": func() {
			p.ask(name+" surplus", askSurplus, p.needed(func(s string) error {
				d := d
				d.Surplus = namesIn(s)
				return d.Wrong("surplus")
			}))
		},
		"figure": func() {
			p.ask(name+" figure", askFigure, p.needed(func(s string) error {
				d := d
				d.Figure = []problems.Pair{figureOf(s)}
				return d.Wrong("figure")
			}))
		},
		"watch": func() {
			p.ask(name+" stage", askWatchStage, func(s string) string {
				return unless(slices.Contains(checker.Stages, checker.Stage(s)), fmt.Sprintf(saidWatchStage, stagesListed()))
			})
			if len(d.Bodies) > 0 {
				p.ask(name+" item", fmt.Sprintf(askWatchItem, strings.Join(d.Bodies, ", ")), p.optional(nil))
			}
			p.ask(name+" typed", askWatchTyped, p.needed(nil))
			p.ask(name+" say", askWatchSay, p.needed(nil))
		},
	}
}

// more asks for what only some problems need until an empty answer.
func (p *problemQuestions) more(d problems.Draft) {
	for i := 1; i <= lastOf(p.answers, "more", "")+1; i++ {
		name := fmt.Sprintf("more %d", i)
		begin := len(p.asked)
		extras := p.extras(name, d)
		p.ask(name, askMore, func(s string) string {
			return unless(s == "" || extras[s] != nil, saidMoreForm)
		})
		if ask := extras[p.answers[name]]; ask != nil {
			ask()
		}
		for k := range p.asked[begin:] {
			p.asked[begin+k].Of = name
		}
	}
}

func stagesListed() string {
	var names []string
	for _, s := range checker.Stages {
		names = append(names, string(s))
	}
	return strings.Join(names, ", ")
}

// figureOf reads "T1 = post", or a word for the whole drawing.
func figureOf(text string) problems.Pair {
	if !strings.Contains(text, "=") {
		return problems.Pair{Key: problems.View, Value: text}
	}
	return pairOf(text)
}

// force asks for the parts of the force that is at that place in the draft.
func (p *problemQuestions) force(name string, at int, d problems.Draft) {
	f := d.Forces[at]
	wrong := func(key string) func(string) error {
		return func(s string) error {
			d := d
			d.Forces = slices.Clone(d.Forces)
			f := &d.Forces[at]
			// An angle without its axis would be refused.
			if *forceParts(f)[key] = s; key == "angle" {
				f.From = "x" // which is asked next
			}
			return d.Wrong(fmt.Sprintf("force %d %s", at, key))
		}
	}
	var kinds []string
	for _, k := range statics.Kinds {
		kinds = append(kinds, string(k))
	}
	p.ask(name+" kind", fmt.Sprintf(askForceKind, f.Name, strings.Join(kinds, ", ")), p.needed(wrong("kind")))
	if len(d.Bodies) > 0 {
		p.ask(name+" on", fmt.Sprintf(askForceOn, f.Name, strings.Join(d.Bodies, ", ")), p.needed(wrong("on")))
	}
	if f.Kind != string(statics.Weight) {
		p.ask(name+" by", fmt.Sprintf(askForceBy, f.Name), p.optional(wrong("by")))
		points := fmt.Sprintf(askForcePoints, f.Name)
		if d.IsTurned(f.On) {
			points += " " + saidTurnedSides
		}
		p.ask(name+" points", points, p.needed(func(s string) error {
			points, direction := pointsOf(s)
			d := d
			d.Forces = slices.Clone(d.Forces)
			f := &d.Forces[at]
			// The angle of an earlier answer need not fit the new sides.
			f.Points, f.Direction, f.Angle, f.From = points, direction, "", ""
			return cmp.Or(d.Wrong(fmt.Sprintf("force %d points", at)), d.Wrong(fmt.Sprintf("force %d direction", at)))
		}))
		if needsAngle(f.Points) {
			p.ask(name+" angle", fmt.Sprintf(askForceAngle, f.Name), p.needed(wrong("angle")))
			p.ask(name+" from", askForceFrom, p.needed(wrong("from")))
		}
		p.ask(name+" size", fmt.Sprintf(askForceSize, f.Name), p.optional(wrong("size")))
		return
	}
	p.ask(name+" size", fmt.Sprintf(askWeightSize, f.Name), p.optional(wrong("size")))
}

// pointsOf tells sides from a full-circle direction, which is the one that has a number or
// a letter.
func pointsOf(text string) (points, direction string) {
	for _, word := range strings.FieldsFunc(strings.ToLower(text), func(c rune) bool { return c == ' ' || c == '-' }) {
		if len(word) > 1 && slices.Contains([]string{"up", "down", "left", "right", "upper", "lower", "upwards", "downwards"}, word) {
			return text, ""
		}
	}
	return "", text
}

// needsAngle reports whether a force points between two axes.
func needsAngle(points string) bool {
	return len(strings.FieldsFunc(points, func(c rune) bool { return c == ' ' || c == '-' || c == ',' })) > 1
}

// lastOf is the number of the last part "NAME i" that has an answer, 0 if none has.
func lastOf(answers map[string]string, name, rest string) int {
	last := 0
	for part, answer := range answers {
		var i int
		if after, ok := strings.CutPrefix(part, name+" "); ok && answer != "" {
			// Sscanf stops at the first letter, so “1 name” would pass for 1.
			if _, err := fmt.Sscanf(after, "%d", &i); err == nil && after == fmt.Sprint(i)+rest {
				last = max(last, i)
			}
		}
	}
	return last
}

// draftOf makes a draft of the answers so far. Answers to questions that are not asked any
// more are left out.
func draftOf(answers map[string]string) problems.Draft {
	d := problems.Draft{ID: answers["id"], Title: answers["title"], Topic: answers["topic"], Level: answers["level"],
		Text: answers["text"], Tilt: answers["tilt"], Find: namesIn(answers["find"]), Notes: answers["notes"]}
	d.Body, d.Bodies = bodiesIn(answers["body"])
	for _, letter := range problems.Shown(d.Text) {
		if value := answers["given "+letter]; value != "" {
			d.Given = append(d.Given, problems.Pair{Key: letter, Value: value})
		}
	}
	for i := 1; i <= lastOf(answers, "further given", ""); i++ {
		if g := pairOf(answers[fmt.Sprintf("further given %d", i)]); g.Key != "" {
			d.Given = append(d.Given, g)
			if said := answers["meaning "+g.Key]; said != "" {
				d.Meaning = append(d.Meaning, problems.Pair{Key: g.Key, Value: said})
			}
		}
	}
	for i := 1; i <= lastOf(answers, "force", " name"); i++ {
		if f := draftForce(answers, fmt.Sprintf("force %d", i), len(d.Bodies) > 0); f.Name != "" {
			d.Forces = append(d.Forces, f)
		}
	}
	for i := 1; i <= lastOf(answers, "equal", ""); i++ {
		if text := answers[fmt.Sprintf("equal %d", i)]; text != "" {
			d.Equal = append(d.Equal, equalOf(text))
		}
	}
	for _, g := range d.Given {
		if span := answers["vary "+g.Key]; span != "" && g.HasNumber() {
			d.Vary = append(d.Vary, problems.Pair{Key: g.Key, Value: span})
		}
	}
	for i := 1; i <= lastOf(answers, "more", ""); i++ {
		draftMore(&d, answers, fmt.Sprintf("more %d", i))
	}
	return d
}

// draftMore adds what only some problems need, once it is complete.
func draftMore(d *problems.Draft, answers map[string]string, name string) {
	switch answers[name] {
	case "surplus":
		d.Surplus = append(d.Surplus, namesIn(answers[name+" surplus"])...)
	case "figure":
		if said := answers[name+" figure"]; said != "" {
			d.Figure = append(d.Figure, figureOf(said))
		}
	case "watch":
		w := problems.DraftWatch{Stage: answers[name+" stage"], Typed: answers[name+" typed"], Say: answers[name+" say"]}
		if len(d.Bodies) > 0 {
			w.Item = answers[name+" item"]
		}
		// A mistake whose sentence is still missing would be a finding about a question not yet asked.
		if w.Say != "" {
			d.Watch = append(d.Watch, w)
		}
	}
}

func draftForce(answers map[string]string, name string, several bool) problems.DraftForce {
	f := problems.DraftForce{Name: answers[name+" name"], Kind: answers[name+" kind"], Size: answers[name+" size"]}
	if several {
		f.On = answers[name+" on"]
	}
	if f.Kind == string(statics.Weight) {
		return f
	}
	f.By = answers[name+" by"]
	f.Points, f.Direction = pointsOf(answers[name+" points"])
	if needsAngle(f.Points) {
		f.Angle, f.From = answers[name+" angle"], answers[name+" from"]
	}
	return f
}

// answersOf are the answers that the flags give. With forces, what else is optional counts
// as left out.
func answersOf(d problems.Draft) map[string]string {
	answers := map[string]string{}
	set := func(part, answer string) {
		if answer != "" || len(d.Forces) > 0 {
			answers[part] = answer
		}
	}
	for part, answer := range map[string]string{"id": d.ID, "title": d.Title, "topic": d.Topic, "level": d.Level, "text": d.Text,
		"find": strings.Join(d.Find, ", ")} {
		if answer != "" {
			answers[part] = answer
		}
	}
	if len(d.Forces) > 0 {
		// With forces in flags nobody is asked any more, and level 1 is the easy one.
		answers["level"] = cmp.Or(d.Level, "1")
	}
	set("tilt", d.Tilt)
	set("body", strings.Join(d.Bodies, ", "))
	set("notes", d.Notes)
	set("more 1", "")
	further := 0
	for _, g := range d.Given {
		set("vary "+g.Key, "")
		if slices.Contains(problems.Shown(d.Text), g.Key) {
			set("given "+g.Key, g.Value)
			continue
		}
		further++
		set(fmt.Sprintf("further given %d", further), g.Key+" = "+g.Value)
	}
	set(fmt.Sprintf("further given %d", further+1), "")
	for i, f := range d.Forces {
		name := fmt.Sprintf("force %d ", i+1)
		for key, value := range forceParts(&f) {
			answers[name+key] = *value
		}
		answers[name+"points"] = cmp.Or(f.Points, f.Direction)
	}
	set(fmt.Sprintf("force %d name", len(d.Forces)+1), "")
	for i, e := range d.Equal {
		set(fmt.Sprintf("equal %d", i+1), e.Key+" = "+e.Value)
	}
	set(fmt.Sprintf("equal %d", len(d.Equal)+1), "")
	for _, v := range d.Vary {
		set("vary "+v.Key, v.Value)
	}
	return answers
}

// bodiesIn reads names with commas: one name says what the only body is.
func bodiesIn(text string) (body string, bodies []string) {
	if !strings.Contains(text, ",") {
		return strings.TrimSpace(text), nil
	}
	for _, name := range strings.Split(text, ",") {
		if name = strings.TrimSpace(name); name != "" {
			bodies = append(bodies, name)
		}
	}
	return "", bodies
}

func pairOf(text string) problems.Pair {
	key, value, _ := strings.Cut(text, "=")
	return problems.Pair{Key: strings.TrimSpace(key), Value: strings.TrimSpace(value)}
}

// equalOf reads "T = T1, T2".
func equalOf(text string) problems.Pair {
	p := pairOf(text)
	return problems.Pair{Key: p.Key, Value: strings.Join(namesIn(p.Value), ", ")}
}

// namesIn cuts a list of names at commas and spaces.
func namesIn(text string) []string {
	return strings.FieldsFunc(text, func(c rune) bool { return c == ',' || c == ' ' })
}

// sentenceOf makes a sentence of what is wrong, "" if nothing is.
func sentenceOf(err error) string {
	if err == nil {
		return ""
	}
	return sentence(err.Error())
}

// unless returns the sentence where something does not hold.
func unless(holds bool, sentence string) string {
	if holds {
		return ""
	}
	return sentence
}
