package sheet

import "example.org/standstill/checker"

// asks says what is to be done at each stage.
var asks = map[checker.Stage]string{
	checker.Diagram:    "Draw an arrow on the axes for every force that acts on the body, and label each arrow with the letter of the force.",
	checker.Components: "Write the x component and the y component of each force.",
	checker.XSum:       "Write ΣFx = 0 for the forces in this problem.",
	checker.YSum:       "Write ΣFy = 0 for the forces in this problem.",
	checker.Solve:      "Solve the equations. Give each answer with its unit.",
}
