package main

// What is said about sheets and new problem files.
const (
	saidStudentsNeedClass = "--student needs --class, the code that the copies are drawn for"
	saidSheetWritten      = "%s is written. Open it in a browser and print it.\n"
	saidFileIsThere       = "%s is there already and is left as it is; name another file"
)
