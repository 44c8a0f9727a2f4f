package checker

// Code names what is off about a line. The names are a contract.
type Code string

// The codes that come with Wrong.
const (
	Sign               Code = "sign"
	SineCosine         Code = "sine-cosine"
	Tangent            Code = "tangent"
	NotResolved        Code = "not-resolved"
	MissingForce       Code = "missing-force"
	ExtraForce         Code = "extra-force"
	WrongAxis          Code = "wrong-axis"
	OtherAngle         Code = "other-angle"
	NormalEqualsWeight Code = "normal-equals-weight"
	MassForWeight      Code = "mass-for-weight"
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
	Slip               Code = "slip"
	PowerOfTen         Code = "power-of-ten"
	DoesNotFollow      Code = "does-not-follow"
	Unexplained        Code = "unexplained"
)

// The codes that come with Almost and Unread.
const (
	NoUnit       Code = "no-unit"
	WrongUnit    Code = "wrong-unit"
	Coarse       Code = "coarse"
	NoEquation   Code = "no-equation"
	HoldsAlways  Code = "holds-always"
	StillUnknown Code = "still-unknown"
	TrueNotAsked Code = "true-not-asked"
	UnknownName  Code = "unknown-name"
	Unreadable   Code = "unreadable"
)
