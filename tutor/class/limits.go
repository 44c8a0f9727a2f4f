package class

import (
	"time"

	"example.org/standstill/problems"
)

// What is read of one hand-in, and done about it, is bounded: a small file must not
// keep the teacher's machine busy. No lesson makes more than a small part of any of
// these. What is left out because of a bound is told. An answer has at most
// tutor.LongestText characters, a problem file problems.LargestFile bytes.
const (
	largestHandIn   = 32 << 20 // bytes of a file
	largestUnpacked = 64 << 20 // bytes once it is unpacked
	// JSON writes a character of a problem file as up to six bytes for each of its own.
	longestHanded = 6*problems.LargestFile + 64<<10
	mostEntries   = 20_000
	mostUnread    = 1_000 // lines that are no entries
	mostProblems  = 300
	mostAttempts  = 40 // of one student at one problem
)

// What marking may take: comparing the answers of one file with what it says of
// them, and the work of one student in a report.
const (
	patienceOfFile  = time.Second
	patienceOfSheet = 20 * time.Second
)
