package checker

import "example.org/standstill/checker/mistake"

// Code names what is off about a line; the names are a contract. What there is to know of each
// is in the table of package mistake.
type Code = mistake.Code

// The codes, as package mistake has them.
const (
	Sign               = mistake.Sign
	SineCosine         = mistake.SineCosine
	Tangent            = mistake.Tangent
	NotResolved        = mistake.NotResolved
	OverResolved       = mistake.OverResolved
	MissingForce       = mistake.MissingForce
	ExtraForce         = mistake.ExtraForce
	WrongAxis          = mistake.WrongAxis
	OtherAngle         = mistake.OtherAngle
	NormalEqualsWeight = mistake.NormalEqualsWeight
	MassForWeight      = mistake.MassForWeight
	WeightForMass      = mistake.WeightForMass
	EqualTensions      = mistake.EqualTensions
	SharedWeight       = mistake.SharedWeight
	WholeFactor        = mistake.WholeFactor
	Inverted           = mistake.Inverted
	Radians            = mistake.Radians
	OtherG             = mistake.OtherG
	WrongSide          = mistake.WrongSide
	OtherBody          = mistake.OtherBody
	OtherUnknown       = mistake.OtherUnknown
	Pythagoras         = mistake.Pythagoras
	TwiceCounted       = mistake.TwiceCounted
	Unbalanced         = mistake.Unbalanced
	LimitAssumed       = mistake.LimitAssumed
	Link               = mistake.Link
	Slip               = mistake.Slip
	PowerOfTen         = mistake.PowerOfTen
	DoesNotFollow      = mistake.DoesNotFollow
	Unexplained        = mistake.Unexplained
	NoUnit             = mistake.NoUnit
	WrongUnit          = mistake.WrongUnit
	Coarse             = mistake.Coarse
	NoEquation         = mistake.NoEquation
	HoldsAlways        = mistake.HoldsAlways
	StillUnknown       = mistake.StillUnknown
	NoWorking          = mistake.NoWorking
	TrueNotAsked       = mistake.TrueNotAsked
	UnknownName        = mistake.UnknownName
	Unreadable         = mistake.Unreadable
)
