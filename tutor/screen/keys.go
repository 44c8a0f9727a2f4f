package screen

// keys are the keys of the sheets, with what the key line says of them.
type keys struct {
	handIn, compare, empty, earlier, nextPart, toForces, nextForce, point                 binding
	scroll, scrollHere, stages, upDown, topic, choose, open                               binding
	goOn, showIt, nextProblem, angles, knob, turn, turnFar                                binding
	back, myPage, menu, leave, plain                                                      binding
	takeIt, nextField, toResult, nextPage, letter, mark, toBench, toForm, seat, layBeside binding
}

func allKeys() keys {
	return keys{
		handIn:      bind("enter", "hand in", "enter"),
		compare:     bind("enter", "worked solution", "enter"),
		empty:       bind("ctrl+u", "empty it", "ctrl+u"),
		earlier:     bind("↑", "earlier line", "up"),
		nextPart:    bind("tab", "next part", "tab"),
		toForces:    bind("tab", "to the forces", "tab"),
		nextForce:   bind("tab", "next force", "tab"),
		point:       bind("↑ ↓ ← →", "point it", "up"),
		scroll:      bind("pgup", "scroll", "pgup"),
		scrollHere:  bind("↑ ↓", "scroll", "up"),
		stages:      bind("← →", "stage", "left"),
		upDown:      bind("↑ ↓", "move", "up"),
		topic:       bind("tab", "next topic", "tab"),
		choose:      bind("enter", "choose", "enter"),
		open:        bind("enter", "open", "enter"),
		goOn:        bind("enter", "go on", "enter"),
		showIt:      bind("enter", "show it", "enter"),
		nextProblem: bind("enter", "next problem", "enter"),
		angles:      bind("tab", "other angles", "tab"),
		knob:        bind("↑ ↓", "choose", "up"),
		turn:        bind("← →", "turn", "left"),
		turnFar:     bind("pgup pgdn", "turn far", "pgup"),
		takeIt:      bind("enter", "take it", "enter"),
		nextField:   bind("enter", "next", "enter"),
		toResult:    bind("enter", "result", "enter"),
		nextPage:    bind("tab", "next page", "tab"),
		letter:      bind("↑ ↓", "other letter", "up"),
		mark:        bind("tab", "mark to compare", "tab"),
		toBench:     bind("enter", "to the bench", "enter"),
		toForm:      bind("enter", "to the values", "enter"),
		layBeside:   bind("enter", "compare", "enter"),
		seat:        bind("enter", "begin", "enter"),
		back:        bind("esc", "back", "esc"),
		myPage:      bind("esc", "my page", "esc"),
		menu:        bind("esc", "more", "esc"),
		leave:       bind("ctrl+c", "leave", "ctrl+c"),
		plain:       bind("enter", "lines of text", "enter"),
	}
}
