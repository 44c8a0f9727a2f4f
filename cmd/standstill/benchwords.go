package main

const (
	saidBench = `Takes a problem as the model of your apparatus, puts what you measured into its
equations, and says what they predict, how certain that is, and whether the scales agree.
With only a problem, or without one, it opens a form on the screen: safety rules, who is at
the table, what you measured, a prediction by hand for those who want one, and then the
result, the uncertainty budget, plots and a series. The bottom of the screen always shows
the keys. With --plain, or without a full terminal, it asks one question after another. With values
on the command line it prints the result at once. A value that is not set comes from the
problem file and is listed as assumed.

Type a measured value as one reading, or several with semicolons between them (a comma may
be a decimal comma), followed by what you know about its uncertainty:
  0.500 kg ± 0.005 kg     a half-width, in a unit or in %; +- works too
  35; 34.5; 35.5 deg div 1 deg
                          repeated readings, and the division of the scale
  20.4 N div 0.2 N        the smallest division: half of it on each side
  20.4 N div 0.2 N zero 0.1 N
                          what the scale shows with nothing on it is subtracted
  20.4 N u 0.1 N          a standard uncertainty
  20.4 N U 0.2 N          an expanded uncertainty (k = 2); so is (20.4 ± 0.2) N, k = 2
  0.48 to 0.52 kg         the range of masses for which friction keeps the ring still
  20 N max                what a string, scale or pulley is rated for

  standstill bench canal-lantern --set 'm=0.500 kg ± 1 %' --set 'alpha=35; 34.5; 35.5 deg div 1 deg' \
    --hanger 'm=50 g div 1 g' --read 'T1=3.4 N div 0.1 N' --json

prints one object, with each value in the unit beside it:
  {"problem":"canal-lantern",
   "inputs":[{"name":"m","letter":"m","value":0.5,"u":0.00289,"unit":"kg","typed":"…","taken":"…"},…],
   "order":["T1","T2"],
   "predicted":{"T1":{"value":3.49,"u":0.03,"U":0.06,"k":2,"unit":"N","interval":[3.43,3.55],
     "from":"law of propagation","drawn":{"mean":3.49,"u":0.03,"interval":[3.43,3.55]},
     "budget":[{"input":"m","estimate":0.5,"u":0.00289,"unit":"kg","sensitivity":6.34,"share":0.6},…],
     "better":{"input":"m","share":0.6,"halved":0.02},"said":"…"},…},
   "correlation":{"T1":{"T1":1,"T2":0.7},…},
   "compared":[{"letter":"T1","value":3.4,"u":0.029,"U":0.058,"unit":"N","combined":0.08,"En":-1.1,
     "verdict":"differ","said":"…"}],
   "left":[{"axis":"x","value":0.01,"u":0.04,"U":0.08,"unit":"N","within":true,"said":"…"},…],
   "draws":{"count":100000,"seed":1901,"failed":0},"warnings":[…],"cautions":[…]}
"verdict" is agree, differ or cannot tell; "nu" is present if Student's t gives k above 2.`

	saidNoRuns        = "No run has been saved yet. To save one, name a --student, or type “names” in the guided form."
	saidReportOfWhat  = "standstill bench report needs a problem with its values, or --run and the number of a saved run"
	saidImportForWhom = "standstill bench import needs --student NAME for everybody who made the runs"
	saidImported      = "%d runs were saved."
	saidWritten       = "Written: %s"
	saidNotAtTable    = "%q is not on the list of the class, so the run is not saved"
	saidFileThereToo  = "the file %s exists already; type the command again, with another file name"
	saidFileThere     = "the file %s exists already; choose another name with --out"
)
