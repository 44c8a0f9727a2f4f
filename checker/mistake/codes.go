package mistake

// Code names what is off about a line. The names are a contract.
type Code string

// The codes that come with a wrong line.
const (
	Sign               Code = "sign"
	SineCosine         Code = "sine-cosine"
	Tangent            Code = "tangent"
	NotResolved        Code = "not-resolved"
	OverResolved       Code = "over-resolved"
	MissingForce       Code = "missing-force"
	ExtraForce         Code = "extra-force"
	WrongAxis          Code = "wrong-axis"
	OtherAngle         Code = "other-angle"
	NormalEqualsWeight Code = "normal-equals-weight"
	MassForWeight      Code = "mass-for-weight"
	WeightForMass      Code = "weight-for-mass"
	EqualTensions      Code = "equal-tensions"
	SharedWeight       Code = "shared-weight"
	WholeFactor        Code = "factor"
	Inverted           Code = "inverted"
	Radians            Code = "radians"
	OtherG             Code = "other-g"
	WrongSide          Code = "wrong-side"
	OtherBody          Code = "other-body"
	OtherUnknown       Code = "other-unknown"
	Pythagoras         Code = "pythagoras"
	TwiceCounted       Code = "twice-counted"
	Unbalanced         Code = "unbalanced"
	LimitAssumed       Code = "limit-assumed"
	Link               Code = "link"
	Slip               Code = "slip"
	PowerOfTen         Code = "power-of-ten"
	DoesNotFollow      Code = "does-not-follow"
	Own                Code = "own"
	Unexplained        Code = "unexplained"
)

// The codes of lines that are right but for their form, and of lines that are not understood.
const (
	NoUnit       Code = "no-unit"
	WrongUnit    Code = "wrong-unit"
	Coarse       Code = "coarse"
	NoEquation   Code = "no-equation"
	HoldsAlways  Code = "holds-always"
	StillUnknown Code = "still-unknown"
	NoWorking    Code = "no-working"
	TrueNotAsked Code = "true-not-asked"
	UnknownName  Code = "unknown-name"
	Unreadable   Code = "unreadable"
)

// NoAttempt is the code of the hints for a stage in which nothing was typed yet.
const NoAttempt Code = ""
