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

// Meaning says in a teacher's words what a code stands for: "sine and cosine exchanged".
// It is the code itself for one that is not known.
func (c Code) Meaning() string {
	if said, ok := meanings[c]; ok {
		return said
	}
	return string(c)
}

var meanings = map[Code]string{
	Sign: "a sign the wrong way round", SineCosine: "sine and cosine exchanged", Tangent: "a tangent for a sine or cosine",
	NotResolved: "a whole force for its part", MissingForce: "a force left out", ExtraForce: "a force too many",
	WrongAxis: "the other axis", OtherAngle: "another force's angle", NormalEqualsWeight: "the normal force taken as the weight",
	MassForWeight: "the mass for the weight", EqualTensions: "the tensions taken as equal", SharedWeight: "the weight shared out",
	WholeFactor: "doubled or halved", Inverted: "a quotient upside down", Radians: "the angle in radians", OtherG: "another g",
	WrongSide: "a force to the wrong side", OtherBody: "another body's mass or force", OtherUnknown: "another unknown's value",
	Pythagoras: "sizes put together as if at a right angle, or added", TwiceCounted: "a force beside its own part",
	Slip: "a slip of a number", PowerOfTen: "a wrong power of ten", DoesNotFollow: "a line that does not follow",
	Unexplained: "not explained", NoUnit: "no unit", WrongUnit: "a unit of something else", Coarse: "only one figure",
	NoEquation: "not set equal to zero", HoldsAlways: "true whatever the forces are", StillUnknown: "an unknown left in the answer",
	TrueNotAsked: "true, but not what was asked", UnknownName: "an unknown letter", Unreadable: "not readable",
}
