package main

const (
	saidBench = `This command compares your measurements with the equations of a problem. Choose
a problem that matches your apparatus. The command puts your measured values
into the equations of the problem and prints the predicted forces with their
uncertainties. It then says whether your readings agree with the prediction.

Without values on the command line, the command opens a form on the screen. The
form shows the safety rules and asks for the names of the students and for the
measured values. Each student can predict the forces by hand. The form then
shows the result, the uncertainty budget and plots, and you can compare several
runs. The bottom of the screen shows the keys that you can use. With --plain, or
if the terminal cannot show the form, the command asks one question after
another.

With values on the command line, the command prints the result at once. If you
leave out a value, the command uses the value from the problem file and lists
it as assumed.

Type a measured value as one reading, or as several readings with semicolons
between them. Do not use commas between readings, because the program may read a
comma as a decimal comma. After the readings, type what you know about the
uncertainty:
  0.500 kg ± 0.005 kg     a half-width with its unit or in %; you can also type +-
  35; 34.5; 35.5 deg div 1 deg
                          repeated readings, and the smallest division of the scale
  20.4 N div 0.2 N        one reading, and the smallest division of the scale
  20.4 N div 0.2 N zero 0.1 N
                          one reading; the zero reading, 0.1 N, is subtracted from it
  20.4 N u 0.1 N          a standard uncertainty
  20.4 N U 0.2 N          an expanded uncertainty (k = 2); you can also type
                          (20.4 ± 0.2) N, k = 2
  0.48 to 0.52 kg         a range of masses for which the ring stays at rest
  20 N max                the rated load of a string, a spring scale or a pulley

For example, this command

  standstill bench canal-lantern --set 'm=0.500 kg ± 1 %' --set 'alpha=35; 34.5; 35.5 deg div 1 deg' \
    --hanger 'm=50 g div 1 g' --read 'T1=3.4 N div 0.1 N' --json

prints one JSON object. Each value is in the unit that follows it:
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
The value of "verdict" is agree, differ or cannot tell. If there are so few
readings that k is larger than 2 (Student's t), the key "nu" gives the number of
degrees of freedom.`

	saidNoRuns        = "No run has been saved yet. To save a run, add --student and a name, or type your names in the form."
	saidReportOfWhat  = "standstill bench report needs either a problem and measured values, or --run and the number of a saved run"
	saidImportForWhom = "standstill bench import needs --student NAME for each student who made the runs"
	saidImported      = "Runs saved: %d."
	saidWritten       = "The file has been saved as %s."
	saidNotAtTable    = "%q is not on the class list, so the run was not saved"
	saidFileThereToo  = saidFileExists + " and type it after the command"
	saidFileThere     = saidFileExists + " with -o"
)
