package picture

// All words that a listener may hear stand here, to be read as a page.
// Sentences begin with what matters most.

// kindWords are the name of a kind, as a problem file has it, what such a force
// is called where it has no letter, and what it does.
type kindWords struct {
	name, noun string
	does       string // drawn outwards
	doesInward string // drawn towards the body
}

func kinds() []kindWords {
	return []kindWords{
		Tension:  {"tension", "A string", "pulls", "pulls"},
		Weight:   {"weight", "The weight", "pulls", "pulls"},
		Normal:   {"normal", "A normal force", "pushes", "pushes"},
		Friction: {"friction", "Friction", "acts along the surface,", "acts along the surface,"},
		Spring:   {"spring", "A spring", "pulls", "pushes"},
		Push:     {"push", "A push", "pushes", "pushes"},
		Pull:     {"pull", "A pull", "pulls", "pulls"},
		Strut:    {"strut", "A strut", "pulls", "pushes"},
	}
}

func (k Kind) words() kindWords {
	if all := kinds(); known(int(k), len(all)) {
		return all[k]
	}
	return kindWords{"force", "A force", "acts", "acts"}
}

// String is the name of the kind, as KindOf reads it.
func (k Kind) String() string { return k.words().name }

const (
	wordsAbove        = "seen from above"
	wordsNotTrue      = "not to scale"
	wordsAboveNotTrue = "seen from above, not to scale"
	saysBackAtStart   = "↑ back at the start: ΣF"
	saysAbove         = "The drawing is a view from above."
	saysNotTrue       = "The unknown angle is not drawn to scale."
	saysForce         = "%s %s %s." // T1 · pulls · up and to the left, …
	saysNoDirection   = "%s acts in an unknown direction."
	saysInHand        = "The question is about %s."
	saysAngle         = "%s is the angle between %s and the %s axis."
	saysTriangle      = "%s is resolved into %s."
	saysLeg           = "%s, %s along the %s axis" // T1 cos alpha · to the left · x
	saysChain         = "%s are drawn head to tail along the %s axis: %s."
	saysStep          = "%s %s" // T2 cos beta · to the right
	saysChainCloses   = "The last arrow ends where the first one starts."
	saysChainOpen     = "The last arrow does not end where the first one starts."
	saysPolygon       = "%s are drawn head to tail and to scale: %s."
	saysCloses        = "The polygon closes: the last arrow ends where the first one starts."
	saysOpen          = "The polygon does not close."
	saysPlot          = "%s is plotted against %s, from %s to %s."
	saysConstant      = "%s stays at %s."
	saysOneWay        = "%s %s from %s to %s."
	saysTurns         = "%s %s from %s to %s at %s, then %s to %s."
	saysVaries        = "%s is between %s and %s."
	saysVanishing     = "As %s gets close to zero, %s grows without limit."
	saysNearing       = "As %s gets close to %s, %s grows without limit."
	saysPresent       = "At %s, %s."
	saysIs            = "%s is %s"
	saysMeasured      = "At %[2]s, the measured value of %[1]s is %[3]s%[4]s."
	saysGiveOrTake    = " ± "
	saysLevelGround   = "%s is on a horizontal surface."
	saysRises         = "%s is on a slope that rises to the %s at %s."
	saysTouchesSlope  = "%s touches a slope that rises to the %s at %s."
	saysUpright       = "%s touches a vertical wall on the %s."
	saysOverhead      = "%s touches a surface above it."
	saysSlopeAxes     = "The x axis points %s, and the y axis points away from the slope."
	saysTurnedAxes    = "The axes are turned %s %s."
	saysLink          = "%s and %s are joined by %s."
	saysOver          = "%s and %s are joined by a rope over %s."
	saysOnBody        = "%s on %s"
	saysForcesOn      = "Forces on %s"
	saysForces        = "The forces"
	saysParts         = "The components"
	saysPartsOn       = "The components on %s"
	wordForce         = "a force"
	wordPart          = "a component"
	wordThen          = ", then "
	wordAnd           = " and "
	wordFalls         = "falls"
	wordRises         = "rises"
	wordClockwise     = "clockwise"
	wordAnticlock     = "anticlockwise"
	wordUnknown       = "at an unknown angle"
	saysUnknown       = "at the unknown angle %s"
	wordStraight      = "straight "
	wordLast          = ", and "
	wordAway          = "away from the surface, "
)

// linkWords names what joins two bodies.
var linkWords = [...]string{Rope: "a rope", Coil: "a spring", Rod: "a strut"}

// shapeWords names a body that has no name.
var shapeWords = [...]string{Knot: "the knot", Ring: "the ring", Block: "the block", Pulley: "the pulley", Anchor: "the support"}

// sideWords are the sides along the room's axes, by sign.
var (
	acrossWords = map[int]string{-1: "to the left", 1: "to the right"}
	heightWords = map[int]string{-1: "down", 1: "up"}
	depthWords  = map[int]string{-1: "towards you", 1: "away from you"} // seen from above
)
