package sheet

import "example.org/standstill/checker"

// asks says what is to be done at each stage.
var asks = map[checker.Stage]string{
	checker.Diagram:    "Draw every force that acts, with its letter, on the body in the figure.",
	checker.Components: "Write the x part and the y part of each force.",
	checker.XSum:       "Write ΣFx = 0 with this problem's forces.",
	checker.YSum:       "Write ΣFy = 0 with this problem's forces.",
	checker.Solve:      "Solve for what is asked. Give each answer with its unit.",
}
