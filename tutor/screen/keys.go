package screen

// keys are the keys of the sheets, with what the key line says of them.
type keys struct {
	handIn, compare, empty, earlier, nextPart, toForces, nextForce, point                 binding
	scroll, scrollHere, stages, upDown, topic, choose, open                               binding
	goOn, showIt, nextProblem, angles, slider, turn, turnFar                              binding
	back, myPage, menu, leave, plain                                                      binding
	takeIt, nextField, toResult, nextPage, letter, mark, toBench, toForm, seat, layBeside binding
}

func allKeys() keys {
	return keys{
		handIn:      bind("enter", "check", "enter"),
		compare:     bind("enter", "worked solution", "enter"),
		empty:       bind("ctrl+u", "clear line", "ctrl+u"),
		earlier:     bind("↑", "earlier line", "up"),
		nextPart:    bind("tab", "next", "tab"),
		toForces:    bind("tab", "to the forces", "tab"),
		nextForce:   bind("tab", "next", "tab"),
		point:       bind("↑ ↓ ← →", "direction", "up"),
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
		slider:      bind("↑ ↓", "choose", "up"),
		turn:        bind("← →", "change", "left"),
		turnFar:     bind("pgup pgdn", "big steps", "pgup"),
		takeIt:      bind("enter", "save value", "enter"),
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
		menu:        bind("esc", "menu", "esc"),
		leave:       bind("ctrl+c", "quit", "ctrl+c"),
		plain:       bind("enter", "lines of text", "enter"),
	}
}
