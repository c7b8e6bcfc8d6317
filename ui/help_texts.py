"""The help, topic by topic, in a little Markdown: headings, lists and bold. Used as `help_texts.NAME` when it is
shown.

A name is that of a topic of `ui.help.pages`, in capitals. Figures are those that the program goes by.
"""

INTAKE = """
Here a job begins: what has stopped moving, what its label says, and what the bench may do to it.

## What to fill in

- **What it is** and **rated volts** are all that is needed to begin. The rated volts stay as they are once the job is
  taken in, because every run is made with them.
- **Serial**: a thing that was here before is recognised by it, and its earlier job is offered.
- **Complaint**: the owner’s own words. They help the next one like it more than a diagnosis.
- **Volts ceiling** starts as the rated volts. Give more only where this job really may have more. **Amps ceiling**
  may stay empty: then the supply’s own range and the measured winding decide.
- **Thermal class**: as the label says, A where it says nothing. It decides how warm the winding may get.
- **Owner**, **may cost at most** and the owner’s consent: what a line of costs is held against later.

## The supply

Type its address, or press **Look for supplies**. Nothing that is found gets a message; a plain socket is never found
by looking. **Ask it** asks by questions only: nothing is set or switched.

## Later

What is typed is kept as a draft while you type. While the job is open everything but its rated volts can be put
right; **Take back the last change** (Ctrl+Z) undoes it. Each change is kept beside what was there.

## What can go wrong

- “above the 42.4 V that this program never goes beyond”: this is for low voltage only, and no setting changes that.
- A number is not taken: write it as 0.5, 0,5, 500m or 500 mA.
"""

MAKE_SAFE = """
Before a lead is clipped on, six lines say what must be so. Press **done** where it is so, or **does not apply**; none
is left open. What was said is kept with the job and is not taken back.

- **Unplugged from the mains.** What was mains-powered goes back together under local rules, by a licensed person.
- **Cell out of circuit, its tabs insulated.** A swollen cell is not worked on here at all.
- **Capacitors discharged through a resistor, and measured.** Never with a screwdriver.
- **Liquid drained, and dry.** A pump that was wet may run dry for seconds only; its seal needs the liquid.
- **Motor leads free of the driver board.** Lift at least one: a board in the way is damaged, or answers in the
  motor’s place.
- **Fingers, hair and blades clear; eye protection on.** A stuck motor that comes free starts at once.

## Not with this

Mains motors, medical devices, life-safety gear, gas appliances, pressure vessels, swollen cells. If it is one of
these, stop here and close the job.
"""

PROBE = """
The probe finds out whether there is a winding, what its resistance is, and whether a diode or electronics are in the
way. It takes a few small currents, half a joule at the most.

## What to do

- Clip the motor’s own two leads on, and press **Probe**.
- You may be asked to turn the shaft a little by hand: the contact of the brushes differs with the angle, and the
  lowest resistance counts.
- With the leads swapped, when you are asked, a diode across the motor is found.
- **Measure the leads** first where the winding has only a few ohms: join the two clips with no motor between them. It
  takes at most 1 A at 1 V, for a second, and is taken out of what is found later.

## What it may say

- **A winding**, with its resistance and an interval. Next is Free.
- **Open**: no current flows. Tap the housing or look at the brushes, then probe again.
- **Shorted**: all current and hardly any volts. Kicks would only heat it.
- **A diode is in the way**: lift one end of it. Never swap the leads of a motor with a diode across it under power.
- **Electronics**: reach the motor’s own leads behind the board.
- **Undecided**: turn the shaft a little and probe again. A free motor may turn already at the probe’s current; then
  its resistance is unknown, not wrong.
"""

FREE = """
Here a stuck motor gets short kicks under hard ceilings, rung by rung, with hand work between. Electrical kicks alone
seldom win: kick, soak, warm, kick, by hand, kick is what works.

## How it goes

1. The winding is measured with small currents, in every run again, also with the hand on the shaft.
2. A gentle start at half the rated volts. What turns here was not stuck.
3. Kicks at 60, 80 and 100 % of the rated volts, 0.2 s each, with rests that keep the winding cool. More than the
   rated volts only where this job was given more.
4. After every kick a look: the current is dropped to almost nothing. Only a turning rotor makes a voltage of its own
   then; a hot winding, a bad contact or an opened protector does not.

**Freed** means: seen to turn twice, held, and started again from rest. Where volts and amps can’t tell, it says
**undetermined**, and why.

## What to press

- **Start** begins the ladder. It stops by itself at a ceiling, when it turns, or when it needs your hands.
- **It moved (M)**: you felt or saw it move, even a little. The ladder stays at that rung for up to two more rounds. A
  small movement that stops again is progress, and not yet freed.
- **Done by hand**: turned, tapped, soaked, warmed, oiled. It lands in the same record and on the chart.
- **Hand on the shaft**: while you hold the space bar, or a foot switch that types it, at most a quarter of the stall
  current flows, and you turn the shaft with the other hand. Letting go is off; so is another window in front.
- **Same as last time**, where it is offered, takes over the ceilings and the ladder that freed one like it.

## On the chart

Volts over amps on one time axis, both as the supply read them back. Pale bands are steps with their names, thick grey
lines are ceilings, small marks are events. The wheel goes closer or wider; a drag goes along; a double click shows
the whole again.

## Mind

- Keep fingers clear of blades and gears: it may start at any kick.
- Limited by current, more volts change nothing. A limit that is too low looks like a seizure.
- Plastic gears strip: uncouple the motor, or lower the amps ceiling.
- A winding that heats very fast (over 60 K/s at stall, extremely thin wire) is not covered by the bound on its
  temperature: lower the ceiling yourself.
"""

PROVE = """
One start is luck; several are a repair. First the winding is measured with small currents. Then the motor starts from
rest again and again, and once more, held until its current is steady. Each start is at the rated volts, or at fewer:
the look whether it turns needs room above them, so a start is at no more than the lowest volts ceiling divided by 1.4.
The page says the volts, and which ceiling it is, before the press.

- Choose how often: 3, 5 or 10 starts. Then **Start the proof**.
- The last start gives the steady current and the run-up, each with an interval, or says why they can’t be told.
- They are held against the proof before, or against known good ones of the same model. The same volts, leads, warmth
  and load, else they can’t be compared, and that is said.

“It starts only when warm” is not repaired. Start it once more when it is cold, later or the next day. A run-in of
hours is in the curves room.

## Mind

- What was freed starts at once: it must be held, its blades clear.
- A pump that needs its liquid may run dry for seconds only.
"""

CLOSE = """
What was wrong, what was done, how long it will last. An honest word here is what the next one like it starts from.

- **Cause** and **it came to** are needed; “not found” is a cause too.
- **What did it**: kicks, by hand, cleaned, a part. The history counts by it.
- **Prognosis**: what you would tell its owner.
- The first run, the one that freed it and the last stand side by side above the form.

A job may be closed whatever came of it, also not repaired. A closed job is only corrected, in the history, by
somebody and for a reason; what was there stays beside it. Every run stays as it was.
"""

RECORD = """
Everything that happens around the runs, while you work: what happened, newest first, beside the forms; where it is
narrow it is a page of its own, **Timeline**.

- **Who** works: said once, kept with every line.
- **Done by hand** and notes: into the running record while a run is on, else into the job’s own.
- **Findings**: parts looked at on a board, their place, marking and value. A marking is read for you where it can be;
  **Calculate** does divider, LED, gate and charger. A finding is never edited: a correction stands in place of the
  earlier one.
- **Costs**: minutes, parts from stock, anything else, against what the owner allows. A line that would pass that is
  not kept until you say who agreed.
- **Waiting**: for approval, for a part, for the owner; or work goes on.
- **Files**: photos and other files, dropped, pasted (Ctrl+V) or chosen. The original is kept byte for byte beside the
  ledger. The place where a photo was taken is not passed on when a sheet leaves the shop.

What is half typed is kept as a draft. While the output may be on no file is chosen from a dialog here; drop it or
paste it.
"""

CURVES = """
This room captures how motors start, from rest, as often as a locked test says, and lays the starts over one another.
The same ceilings hold as everywhere, and each start is looked at whether it turned.

## Three steps

1. **A test**: volts, current limit, time, number of starts, rest, and what triggers. Locked under a name and a
   version, it never changes.
2. **A lot**: units of one kind. Leads and zero are checked each shift of eight hours; without that nothing is judged.
3. **A unit**: scan or type its serial, press Enter, connect it, press Space. Pass or fail is seen and heard; then the
   next.

The job on the bench can be measured as well, without a lot.

## Limits

They come from five known good units or more, with how many of such units they hold and with how much confidence. With
five of them they are wide: about every fifth motor with twice the friction still passes. Where the spread of one
motor swamps that between motors, that is said: then the test can’t tell units apart.

**Report …** beside the units writes the lot as PDF: its units, verdicts, limits and curves.

## Readback

What is drawn is readback: the mean over what the supply averages, some 20 ms, read every so often. The real inrush is
shorter and can’t be seen so. Lay an oscilloscope’s capture over it where you have one.

## Keys on the chart

Plus and minus: closer, wider. Left and right: along. Home: the whole again. Up and down: another start. C: cursors,
moved with left and right; X the other one. Ctrl+C: copies the picture.

## Run-in

Hours at a slow pace with a short look every minute. It ends where the current stays for ten minutes, or rises.
Somebody stays near: nobody here sees smoke, smells heat or hears a bearing.
"""

HISTORY = """
Every job that was ever kept. This room can switch nothing on.

- **The line at the top** searches everything that was said of a job: serial, owner, complaint, cause, parts, notes,
  names of files. Every word must be somewhere in the job, from its beginning; fewer or shorter words find more.
  Ctrl+F comes here from anywhere.
- **The choices below it** narrow it down; a job must fit all of them.
- **A picked job** shows its record and its runs as they were. Another run can be laid under one, dashed, to compare.
- **Take to the bench** goes on with an open job where it was left.
- **Correct**: a closed job or a run is corrected beside what it said, by somebody and for a reason.
- **Paper**: the job’s sheet as PDF or HTML, or its tag. Ctrl+P shows the sheet first. **Export**: a trace or the list
  of jobs as CSV.

## What they came to

Counts with intervals, as “7 of 9 (45 to 94 %)”: with few jobs the truth may be anywhere between. A job that is still
out counts as still out, not as a success. An underlined number opens the jobs behind it.

## Backups

They make themselves: on the first start of a day and before a change of the ledger’s form. **Back up now** makes
the day’s anew. Each is checked; 7 days, 4 weeks and 12 months are kept, beside the ledger.

No file is written and nothing is counted while an output may be on: it takes a moment that a run may need.
"""

SETTINGS = """
How this window looks and sounds. Everything applies at once, but size and language, which wait for the next start.
**Take back the last change** (Ctrl+Z) undoes one press.

- **Taught keys**: press **Teach**, then the key; a foot switch is a key as well. Keys that type, or have a meaning of
  their own here, are refused. Esc and Pause are Output off always.
- **Ceilings of the owner** are shown here only. They are in the owner’s file, which this program reads at every run
  and never writes; they can be raised only there. A file that can’t be understood refuses every run: a doubtful
  ceiling is none.
- **Where things are**: the ledger, its backups, photos and originals, logs. All of it is on this computer.
- **For whoever helps**: one file about this program and what it runs on, with nothing of any job. Look into it before
  you give it away.

Nothing in this room can switch anything on or raise a ceiling.
"""

SAFETY = """
## “Output off” is not an emergency stop

It is a command over a cable. In danger use what always works: **the supply’s own output key, the lead, or the mains
switch**. Know where they are before you begin.

## What is known about off

- **commanded**: it was sent.
- **confirmed by read-back**: the supply said that it is off, at the time that is shown.
- **NOT CONFIRMED: switch the supply off by hand.** That stays, also when the program is closed and started again,
  until a person says that they switched it off.

## What watches

A second process holds the supply and switches off when this window is gone, frozen or silent for half a second. A
third waits to switch off when that one dies. **If the whole computer dies, or all of them at once, the supply stays
as it is**: for that its own over-voltage and over-current limits are set before every run. A supply without them has
one net less, and the run says so.

## Sleep

During a run the computer does not go to sleep by itself. Under Linux with a login manager the output is switched off
before any other sleep, also when the lid is closed. **Elsewhere nothing does that**: leave the lid open, and don’t send
the computer to sleep. Where a system offers none of this, switch its sleep off while you work at the bench. A run that
was slept through ends only when the computer is awake again.

## Who must not do this

- Nobody works on mains motors, medical devices, life-safety gear, gas appliances, pressure vessels or swollen cells
  with this.
- What was mains-powered is put back together by a licensed person, under local rules.
- Nobody works here who does not know where the supply’s output key and the mains switch are.

Local rules and licensed practice come before anything that this program says.

## What holds

- Low voltage only: above 42.4 V DC the program refuses.
- The lowest ceiling holds: the program’s own, the owner’s, the supply’s range, the motor’s thermal class, the job’s,
  the step’s. What is above one is refused, never cut down to fit.
- An unlock is for one job and 12 hours, by name and reason, up to what the owner’s file allows, and stays in the
  record.
- The winding’s temperature is an upper bound for motors that heat by no more than 60 K/s at stall. Thinner wire is
  not covered: lower the ceiling yourself.
- Fingers, hair and blades clear; eye protection on; liquids drained; cells out of circuit; capacitors discharged.
"""

SUPPLY = """
At the right, in every room: volts, amps, what it is doing, how much of each ceiling is used, and Output off.

- **TURNING, LOCKED, CREEPING, NOT KNOWN**: what volts and amps say of the motor. **NOT DRIVEN**: no current is driven
  through it; its shaft may still coast.
- **CV**: the voltage is held. **CC**: the current limit is held; more volts then change nothing.
- **Ceilings used**: each bar names the layer that sets the ceiling.

## Which supplies

Any that answers to SCPI commands and reads back its setpoints and its output. It is asked once what it is, by
questions only; what it is without is said before anything is switched on. Without a read-back it is refused.

## Its address

- A plain socket: TCPIP::192.168.0.5::5025::SOCKET. The port is in the supply’s manual; looking never finds it.
- VXI-11 and HiSLIP: TCPIP::192.168.0.5::INSTR, TCPIP::192.168.0.5::hislip0::INSTR.
- Serial: ASRL/dev/ttyUSB0,115200::INSTR or ASRL3,115200::INSTR; 9600 without a number.
- USB: USB0::…::INSTR. On Linux it wants a rule for udev; “benchlog supplies --udev-rule” prints one.

## What can go wrong

- **The supply was lost**: look at the cable and at the supply’s own display; press its output key if it is on.
- **A setpoint differs from what was sent**: somebody turned a knob. The run stops.
- **Volts there before the output is on**: a charged capacitor, a cell, another source. Refused; find it first.
- **In use**: one supply has one user at a time.
"""

KEYS = """
Esc and Pause switch the output off from anywhere, also while something is being typed. Of the keys below only Space
begins anything, and only where the button that is shown says so or is marked. A field that is being typed into keeps
copy, paste and undo for itself.
"""

KEYS_AFTER = """
Keys that you taught, a foot switch say, are in the settings.
"""

WORDS_ABOUT = "The same word is on the screen, in the ledger, in files and on paper."

WORDS: tuple[tuple[str, str], ...] = (
    (
        "ceiling",
        "what may not be passed: volts, amps, winding temperature, locked time, energy, on-time, kicks. The lowest of "
        "its layers holds.",
    ),
    ("closed", "a job that is done; it is only corrected from then on."),
    ("comeback", "a thing that was here before, known by its serial."),
    ("creeping", "it moves a little and stops again."),
    ("diode", "a part across the motor that conducts one way only."),
    ("electronic", "a driver or board between the leads and the motor."),
    ("freed", "seen to turn twice, held, and started again from rest after it was stuck."),
    ("hand step", "something done by hand: turned, tapped, soaked, warmed, oiled. It is on record like a kick."),
    ("job", "one thing on its way from intake to close, with all its runs."),
    ("kick", "one short push of current, 0.2 s or less."),
    ("ladder, rung", "kicks in rising steps; a rung is one of them, with its tries."),
    ("ledger", "the file with all jobs. One window writes it; a second one only shows it."),
    ("locked", "current flows and the shaft stands still. All of the power is heat."),
    ("look", "almost no current for a moment, to see whether a rotor makes a voltage of its own."),
    ("lot", "units of one kind, measured one after the other in the same way."),
    ("moved", "a small movement that stopped again: progress, and not freed."),
    ("open", "no current flows: the winding or a brush is interrupted."),
    ("readback", "volts and amps as the supply measured them: a mean over some 20 ms, not the true peak."),
    ("run", "one go of the supply: probe, recovery, by hand, proof, start-up or run-in. Its record is never edited."),
    ("runs", "it turned at half its rated volts before any kick: it was not stuck."),
    ("short", "all current and hardly any volts: a part of the winding or a lead is bridged."),
    ("stall current", "what a locked motor draws at its rated volts."),
    ("still stuck", "the ladder was climbed and it did not turn."),
    ("trace", "the readings of a run, with its events."),
    ("undetermined", "volts and amps could not tell. Why is said."),
    ("unlock", "more for one job and 12 hours, by name and reason, up to what the owner’s file allows."),
)
