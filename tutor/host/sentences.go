package host

import (
	"fmt"
	"time"
)

// What a student or the teacher is told.
const (
	saidPhrase     = "Pass phrase: "
	saidNoCommand  = "This host leads lessons and does nothing else: it runs no commands and copies no files. Connect without a command."
	saidOneSession = "one session a connection"
	saidStopping   = "The host is being stopped. Everything you checked is kept, and so is the line you were typing. Connect again later."
	saidTaken      = "You are connected from another window now, which has taken over from this one."
	saidIdleEnd    = "No key was pressed for a long time, so this visit has ended. Everything is kept: connect again to go on."
	saidFault      = "Standstill has met a fault of its own, and this visit has ended. Everything you checked is kept: connect again to go on."
	saidNotNow     = "The lesson cannot be opened at the moment. %s"
	saidUsed       = "Somebody is here under that name already. Connect with another name."
	saidReport     = "The report cannot be made: %v"
	saidLiveKeys   = "n hide or show names   r report   q quit"
	saidAnyKey     = "Any key goes back to the lab."
	wordOpen       = " (not proved)"
)

func saidIdle(left time.Duration) string {
	return fmt.Sprintf("No key was pressed for a long time. This visit ends in %d seconds unless you press one.", int(left.Seconds()))
}
