package host

import (
	"fmt"
	"time"
)

// What a student or the teacher is told.
const (
	saidPhrase     = "Pass phrase: "
	saidNoCommand  = "This host is only for lessons. It does not run commands or copy files. Connect without a command."
	saidOneSession = "only one session per connection is possible"
	saidStopping   = "The host is stopping. Every line that you checked is saved, and so is the line that you were typing. Connect again later."
	saidTaken      = "You are now connected from another window, so the lesson in this window has stopped."
	saidIdleEnd    = "You did not press a key for a long time, so the connection was closed. Your work is saved. To continue, connect again."
	saidFault      = "The connection was closed because of an error in Standstill. Every line that you checked is saved. To continue, connect again."
	saidNotNow     = "The lesson cannot be opened at the moment. %s"
	saidLate       = "The record is not available yet. Please wait. The lesson will open as soon as the record is available."
	saidUsed       = "Somebody else is connected under this name. Connect under another name."
	saidReport     = "The report cannot be made: %v"
	saidLiveKeys   = "q quit   n hide or show names"
	saidReportKey  = "   r report"
	saidUnclear    = "unclear" // not understood, in a narrow column
	saidNextPage   = "   space next page"
	saidPage       = "  page %d of %d"
	saidAnyKey     = "Press any key to go back to the list of students."
	wordOpen       = " (unverified)"
)

func saidIdle(left time.Duration) string {
	return fmt.Sprintf("You have not pressed a key for a long time. The connection closes in %d seconds unless you press a key.", int(left.Seconds()))
}
