"""Every sentence that the curves room says to a person, as `ui.texts` holds those of the other rooms."""

from benchlog.quantities import show

# chart
OVERLAY_NAME = "Starts over one another, from their trigger on"
OVERLAY_HINT = (
    "Wheel or + and −: closer or wider in time, the wheel with Ctrl in amps. Drag or arrows: along; a drag with Shift: "
    "a box to look into. Double click or Home: back to the whole. Arrows move a cursor; X or Tab: the other one. "
    "Ctrl+C: copies the picture."
)
PICTURED = "picture of {day} {at}"
LEVELS_LOOKED = "Looking closer at the amps."
OVERLAY_EMPTY = "Nothing captured yet"
OVERLAY_TOLD = "{name}: {starts}. {picked}"
TRIGGER_LINE = "trigger: {word}"
TRIGGER_WORDS = {"output-on": "output on", "amps": "amps rise", "volts": "volts rise"}
CURSOR_TIME = "Δt {seconds}"
CURSOR_ALL = "{name}:  {first}   {second}   Δt {seconds}, ΔV {volts}, ΔI {amps}"
CURSOR_UNNAMED = "{first}   {second}   Δt {seconds}, ΔV {volts}, ΔI {amps}"
CURSOR_AT = "{letter} {seconds}, {volts}, {amps}"
CURSOR_LETTERS = ("A", "B")
AMPS_PANE, VOLTS_PANE, VOLTS_MOTOR_PANE = "amps", "volts at the terminals", "volts at the motor"


STARTS_ONE, STARTS_MANY = "1 start", "{count} starts"


def starts(count: int) -> str:
    """ "1 start", "12 starts"."""
    return STARTS_ONE if count == 1 else STARTS_MANY.format(count=count)


# what is shown

UNIT_NAME, RUN_NAME, START_OF = "unit {number}", "run {run}", "{name}, start {number}"
BEFORE_NAME = "before: run {run}"
NOT_FILLED_IN = "Not filled in: {why}."
MEAN_NAME = "mean of {count}"
BAND_NAME = "band of {units} known good ({coverage} % of units, {confidence} % sure)"
FILLED_IN_NAME = "{count} starts together, a point every {interval}"
DENSE_NAME = "the supply’s own array, every {interval}"


def mean_name(count: int) -> str:
    return MEAN_NAME.format(count=count)


def band_name(units: int, coverage: float, confidence: float) -> str:
    """ "band of 11 known good (95 % of units, 95 % sure)"."""
    return BAND_NAME.format(units=units, coverage=f"{coverage * 100:g}", confidence=f"{confidence * 100:g}")


def filled_in_name(count: int, interval_s: float) -> str:
    return FILLED_IN_NAME.format(count=count, interval=ms(interval_s))


def dense_name(interval_s: float) -> str:
    return DENSE_NAME.format(interval=ms(interval_s))


def ms(seconds: float) -> str:
    """ "15 ms", "0.2 ms"; from a second on in s."""
    if seconds >= 1:
        return f"{seconds:.3g} s"
    return f"{1000 * seconds:.0f} ms" if seconds >= 0.0995 else f"{1000 * seconds:.2g} ms"


# verdict, figures and lot
PASS, FAIL, NOT_JUDGED, NOT_MEASURED = "PASS", "FAIL", "NOT JUDGED", "NOT MEASURED"
NO_VERDICT_WHY = "Measure a unit, or pick one."
NEXT_VERDICT_WHY = "{serial} comes next."
OUTSIDE_OF, CURVE_OUTSIDE = "{outside} of {count} figures outside", "the curve is outside, {share} of it"
ALL_INSIDE, NO_LIMITS_YET = "all {count} figures inside", "there are no limits yet"
VERDICT_NAME = "{word}: {why}"
FIGURE_COLUMNS = ("Figure", "{which}", "Limits", "Result")
FIGURES_NAME = "Figures against their limits: {told}"
FIGURE_MEAN, FIGURE_START, FIGURE_NONE = "Mean of {count}", "Start {number}", "Value"
INSIDE, NO_VALUE, AT_MOST = "in", "—", "≤ {high}"
LIMITS_FROM_TO = "{low} to {high}"
LOT_RATE, LOT_RATE_LEFT = "{rate} pass.", "{rate} pass; {left} not judged."
LOT_NONE_JUDGED = "No unit is judged yet."
LOT_NO_LIMITS = "No limits yet: they take five known good units."
LOT_CAN_LIMIT = "No limits yet. They take five known good units: {count} are measured."
TO_LIMITS, TO_LIMITS_NAME = "Make limits", "To the units, from which limits are made"
LOT_JUDGED_BY = "Judged by limits {id}, from {n} known good."
JOB_RUNS, JOB_NO_RUNS = "{count} with captured starts.", "No captured starts yet."


FIGURES_TOLD = "{name} {value}, limits {limits}, {outside}"


def figures_told(name: str, value: str, limits: str, outside: str) -> str:
    return FIGURES_TOLD.format(name=name, value=value, limits=limits, outside=outside)


# the next unit
SERIAL_NAME, SERIAL_HINT = "Serial of the next unit; scan or type it, then Enter", "Serial, Enter"
START, START_NAME, START_KEY = "Start", "Start to measure this unit. Key: Space", "Space"
CLEAR_TICK = "Hands, hair and blades clear before each start"
CLEAR_HINT = "Each motor out of its circuit; fingers, hair and blades clear; eye protection on."
CLEAR_ENTRY = "Said for every start to come: {hint}"
CHECK_PASSED = "Passed {at}: {checks}"
CHECK_DONE, CHECK_DUE = "{kind} {value}, {at}", "Check due: {kinds}"
CHECK_KINDS = {"zero": "zero", "short": "leads"}
CHECK_NOW, CHECK_NOW_NAME = "Check", "Join the two clips, without a motor, and measure the leads and the zero"
CHECK_HINT = "Join the two clips, with no motor between them: at most 1 A at 1 V. Without it no unit is judged."
CHECK_FAILED = "The {kinds} check did not pass: {told}. No unit is judged until it does."
CHECK_ASK, CHECK_BEGIN, CHECK_LEAVE = "Clips joined, with no motor between them?", "Joined: measure", "Not now"
CHECK_BEGIN_NAME = "The clips are joined: measure the leads and the zero, at most 1 A at 1 V"
CHECK_DEMO = "Demo: join the clips, and later hang a fan on them, with the DEMO button at the top."
NEEDS_JOINED = "First say whether the clips are joined, or leave the check."
NEXT_NOT_KEPT = "A run is on: what is typed or scanned now is not kept. Scan the next unit when it is over."
NEEDS_CLEAR = "First tick that fingers, hair and blades are clear."
NEEDS_SERIAL = "First scan or type the unit’s serial."
NEEDS_ENTER = "Press Enter in the serial’s field first: only then does the space bar start this unit."
NEEDS_TEST = "First choose or define a test."


def interval(low: float, high: float, unit: str) -> str:
    return LIMITS_FROM_TO.format(low=show(low, unit), high=show(high, unit))


LOT_TITLE, JOB_TITLE = "Lot {name}", "Job {number:04d}"
RUNS_ONE, RUNS_MANY = "1 run", "{count} runs"


def job_title(number: int) -> str:
    return JOB_TITLE.format(number=number)


def runs(count: int) -> str:
    """ "1 run", "3 runs"."""
    return RUNS_ONE if count == 1 else RUNS_MANY.format(count=count)


# pages of the room
SHOWN_NAME = "What is shown: a lot, or the job on the bench"
SHOWN_NOTHING, SHOWN_JOB, SHOWN_LOT = "Choose a lot …", "Job {number:04d} on the bench", "Lot {name} · {kind} · {count}"
PAGES = ("Curves", "Units", "Tests", "Run-in")
NEW_LOT = "New lot"
HEADER_LOT, HEADER_UNIT = "Lot {name} · {kind}", "unit {number} of {count} · serial {serial}"
HEADER_NEXT = "unit {number} · serial {serial}"
HEADER_LOT_ABOUT = "{count}, test “{test}”, version {version}"


UNITS_ONE, UNITS_MANY = "1 unit", "{count} units"


def units(count: int) -> str:
    return UNITS_ONE if count == 1 else UNITS_MANY.format(count=count)


# before anything is captured
EMPTY_SAY = "How does a motor start, and does it start as the good ones do?"
EMPTY_WHY = (
    "The same motor many times, many motors of a kind, before and after a repair: every start from rest by one locked "
    "test, laid over one another, with its figures against limits from known good ones."
)
EMPTY_STEPS = (
    (
        "1",
        "Define a test",
        "Volts, time and number of starts. Locked, it never changes: what differs is a new version.",
    ),
    ("2", "Open a lot", "What its units are, who measures with which leads. Or take the job on the bench."),
    ("3", "Scan, connect, press Space", "Pass or fail is seen and heard; every start is filed. Then the next unit."),
)
EMPTY_TEST, EMPTY_LOT, EMPTY_JOB = "Define a test", "Open a new lot", "Starts of the job on the bench"
NOTHING_YET_SAY = "Nothing captured yet."
NOTHING_YET_LOT = "Scan the first unit’s serial at the right, connect the unit, and press Space. Test {test}."
NOTHING_YET_NO_TEST = "Choose a locked test at the right, or define one under “Tests”; then press Space."
TEST_CALLED = "“{name}”, version {version}"
TEST_SHORT = "{name} · {version}"
TEST_LINE = "{name}: {starts} at {volts}, {on_s} each"


# chart page
BEFORE_AFTER, BEFORE_AFTER_NAME = "before / after", "Lay the same motor’s starts before these under them, dashed"
NO_BEFORE = "There are no earlier starts of this motor: none in this job, and none of its serial elsewhere."
BEFORE_NOTHING = "Nothing is captured yet that earlier starts could be laid under."
OVER_NOTHING = "Nothing is captured yet that a capture could be laid over."
CURSORS, CURSORS_NAME = "cursors", "Two cursors with the time, volts and amps between them"
VOLTS, VOLTS_NAME = "volts", "Volts in a pane below the amps"
AT_MOTOR, AT_MOTOR_NAME = "V at the motor", "Volts at the motor: what the leads drop is taken out"
NO_LEADS = "The leads of this run were not measured: nothing is taken out."
LAY_OVER, LAY_OVER_NAME = "lay a capture over", "Lay an oscilloscope’s capture over the start that is picked out"
LAY_OFF = "take the capture off"
COPY, COPY_NAME = "copy picture", "Copy this chart as a picture. Key: Ctrl+C"
EXPORT, EXPORT_NAME = "export", "Write curves, figures and bands, or a picture, to a file"
CHOOSE_TEST_NAME = "The locked test by which the job on the bench is measured"
CHOOSE_TEST = "Choose a test …"
WHY_TEST = "{test}; a readback every {middle} ({low} to {high}), mean of {window}."
CAPTURING_SAY = "Start {number} of {count} is being captured."
CAPTURING_WHY = "Hands off. The drawn curve is readback, as it comes; its figures follow when it is over."
BEGINNING = ("Looking for the supply.", "Nothing is switched on before its output was read back as off. Hands off.")
CAPTURED_SAY = "{count} captured."
CUT_SHORT_SAY = "Ended after {count}."
FILED_WHY = "Every start is filed."


def ended_say(count: int, *, whole: bool) -> str:
    return (CAPTURED_SAY if whole else CUT_SHORT_SAY).format(count=starts(count))


# units page
UNITS_SAY, UNITS_WHY = "Units of lot {name}", "Enter, or a double click, shows a unit’s starts."
UNITS_TABLE = "Units of the lot; Enter shows the starts of one"
UNITS_NONE = "No unit is measured yet. Scan the first serial at the right, connect the unit, and press Space."
RUNS_NONE = "No start of this job is captured yet."
UNIT_COLUMNS = ("No.", "Serial", "Verdict", "Nearest its limit", "Margin, of band", "Starts", "Measured")
RUNS_SAY, RUNS_WHY = "Captured starts of job {number:04d}", "Enter, or a double click, shows the starts of a run."
BY_NUMBER, WORST_FIRST = "by number", "worst first"
ORDER_NAMES = ("Units in the order in which they came", "The unit nearest to its limits, or farthest outside, first")
MAKE_LIMITS, MAKE_LIMITS_NAME = (
    "Make limits from these",
    "Limits from all units that turned and never failed, as known good ones",
)
LIMITS_OF = "Known good are the {good} of {count} that turned and never failed."
LOT_REPORT, LOT_REPORT_NAME = "Report …", "The lot’s report as PDF: its units, their verdicts, limits and curves"
WHO_GOOD, WHO_GOOD_HINT = "Who says that these are good", "name"
WHO_GOOD_LABEL = "Who says they are good"
NEEDS_WHO_GOOD = "Say who says that these units are good."
LIMITS_MADE = "Limits {id} from {n} known good units judge the lot from now on: {judged} of {count} judged{due}."
LIMITS_DUE = ", check due: {kinds}"
LIMITS_NOT = "No limits from these: {why}."
UNIT_PASS, UNIT_FAIL, UNIT_OPEN, UNIT_NEW = "pass", "FAIL", "not judged", "not measured"
UNIT_BEFORE = "{verdict}, failed before"
STANDS = {True: "passed", False: "failed"}
STANDS_OF = "It {verdict} in run {judged}; run {run} has no verdict."
SOUND, SOUND_NAME = "sound", "A sound when a unit is done: one for pass, two for fail"


# test form
TESTS_SAY = "How starts are captured."
TESTS_WHY = (
    "A locked test never changes, so that starts under one name and version were measured the same way. A change is "
    "another version."
)
TEST_CHOOSE, TEST_NEW = "Locked tests", "A new test"
TEST_NAME, TEST_NAME_HINT, TEST_VERSION = "Name", "cold start 3.0 V", "Version"
TEST_VOLTS, TEST_AMPS, TEST_ON, TEST_STARTS = "Volts", "Current limit", "Held for", "Starts"
TEST_AMPS_HINT = "as the winding needs"
TEST_REST, TEST_STILL, TEST_BEFORE = "Rest before each", "Wait until still, at most", "Kept before the trigger"
TEST_TRIGGER, TEST_LEVEL, TEST_HYSTERESIS, TEST_ARM = "Trigger", "Level", "Hysteresis", "Wait for it, at most"
TEST_INTERLEAVE = "Interleave"
INTERLEAVES = {1: "no", 2: "2 starts", 3: "3 starts", 4: "4 starts", 5: "5 starts"}
INTERLEAVE_HINT = (
    "Repeated starts are read in turn a little later, so that together they fill in one denser curve. That takes the "
    "same start each time, which is tested from their spread."
)
TRIGGERS = {"output-on": "output on", "amps": "amps rise through", "volts": "volts rise through"}
TEST_WHO, TEST_LOCK, TEST_NEXT = "Who locks it", "Lock", "New version"
TEST_LOCKED = "Locked {day} by {who}. What it says can’t be changed."
TEST_LOCKED_NOBODY = "Locked {day}. What it says can’t be changed."
TEST_OPEN = "Not locked yet: nothing is measured by it."
TEST_USE = "Use this test"
TEST_IS_LOCKED = "A locked test never changes. A change is another version."
ONLY_WITH_LEVEL = "Only where amps or volts rising through a level trigger."
ONLY_AT_ON = "Only where the output going on triggers."
WRONG_COUNT = "{name}: a whole number."
WRONG_FIELD = "{name}: not a number above zero in {unit}."
NEEDS_WHO_LOCKS = "First say who locks it: a locked test never changes."
LOCKED_NOW = "Test {test} is locked."


# lot form
LOT_SAY = "A new lot"
LOT_WHY = "Units of one kind, measured one after the other in the same way. Leads and zero are checked once a shift."
LOT_NAME, LOT_NAME_HINT = "Lot", "2026-11"
LOT_KIND, LOT_MAKE, LOT_MODEL, LOT_RATED = "What its units are", "Make", "Model", "Rated volts"
LOT_TEST, LOT_OPERATOR, LOT_LEADS, LOT_FIXTURE = "Test", "Who measures", "Leads", "Fixture"
LOT_AMBIENT, LOT_LOAD, LOT_SUPPLY = "Ambient", "Load state", "Supply address"
LEADS_HINT, FIXTURE_HINT, OPERATOR_HINT = "1 m, 1.5 mm²", "clamped, shaft free", "who measures"
LOT_OPEN = "Open the lot"
LOT_NO_TEST = "No test is locked yet: define one first."
NEEDS_LOT = "{name}: say what it is."
WRONG_AMBIENT = "Ambient: a temperature in °C."


TOO_FEW_GOOD = (
    "Limits take five known good units or more; {there} measured here, turned at each start and never failed."
)
TOO_FEW_NONE, TOO_FEW_ONE, TOO_FEW_MANY = "none is", "1 is", "{count} are"
LIVE_NAME = "start {number}"


def too_few_good(count: int) -> str:
    there = {0: TOO_FEW_NONE, 1: TOO_FEW_ONE}.get(count, TOO_FEW_MANY)
    return TOO_FEW_GOOD.format(there=there.format(count=count))


def live_name(number: int) -> str:
    return LIVE_NAME.format(number=number)


def trigger_words(trigger: str) -> str:
    return TRIGGER_LINE.format(word=TRIGGER_WORDS.get(trigger, trigger))


CAPTURED_OF, ENDED_OF = "{name}: {count} captured.", "{name}: {said} {count} captured."


LOT_CLOSED = "This lot is closed: no unit comes any more."
CONNECT_SAY = "Unit {number}, {serial}: connect it."
CONNECT_WHY = "Hands off, fingers and blades clear; then press Space."


def plain_ms(seconds: float) -> str:
    """Without its unit, beside one that has it."""
    return ms(seconds).removesuffix(" ms")


# a capture laid over
NEEDS_PICK = "Pick a start out first: a capture is laid over one."
CAPTURE_TITLE = "Which capture to lay over the start"
CAPTURE_FILTERS = ("Comma-separated values (*.csv *.txt *.tsv)", "All files (*)")
CAPTURE_SAY = "Which columns of {name} are what?"
CAPTURE_WHY = "Guessed from their heads; put right what is wrong. The file itself is kept with the job as it is."
CAPTURE_TABLE = "Columns of the file, with their first values"
CAPTURE_COLUMNS = ("No.", "Head", "Unit", "First values")
CAPTURE_QUANTITIES = {"time": "Time", "volts": "Volts", "amps": "Amps"}
CAPTURE_UNIT, CAPTURE_UNIT_HEAD = "Unit of {name}", "as its head says"
CAPTURE_NONE, CAPTURE_COLUMN = "none", "column {number}: {name}"
CAPTURE_INTERVAL, CAPTURE_INTERVAL_HINT = "Seconds a line, without a column of time", "10 µs"
CAPTURE_SCALE, CAPTURE_PROBE, CAPTURE_PROBE_HINT = "Volts times", "Amps per volt of a probe", "10 for 100 mV/A"
CAPTURE_LAY, CAPTURE_LEAVE = "Lay it over", "Leave it"
CAPTURE_TIME = "Choose a column of time, or say how many seconds a line is; one of the two."
CAPTURE_VALUES = "Choose a column of volts, of amps, or both."
CAPTURE_WRONG = "{what}."
LAID = "Its time 0 is {offset} from the trigger, within {within} (95 %), by its {by}. Kept with the job."
LAID_NOT = "Where it belongs can’t be told ({why}): its time 0 is drawn at the trigger. Kept with the job."
LAID_CAPTION = "run {run}, start {start}: {chosen}"
PEAKS = "Real peak {real}; the readback saw {seen}, {share} % of it."
PEAKS_WHY = "Each reading is the mean of {window}. {words}"
PEAKS_NO_AMPS, PEAKS_NOT_SAME = "No amps were chosen: peaks can’t be compared.", "It does not cover this start."


CAPTURE_NAME = "{name}, every {pace}"


def capture_name(name: str, pace_s: float) -> str:
    micro = f"{pace_s * 1e6:.3g} µs" if pace_s < 1e-4 else ms(pace_s)
    return CAPTURE_NAME.format(name=name[:28], pace=micro)


# export
EXPORT_TITLE = "Where to keep the curves"
EXPORT_FILTERS = (
    "Tables with their description (*.csv)",
    "Report of the lot (*.pdf)",
    "NumPy arrays (*.npz)",
    "HDF5 (*.h5)",
    "Picture, to any size (*.svg)",
    "Picture (*.png)",
)
EXPORT_SUFFIX = "Write a name that ends in {suffixes}"
EXPORT_NO_LOT = "A report is of a lot; the job on the bench has its sheet in the history."
EXPORT_NOTHING = "There is no captured start to write."


# run-in
RUN_IN_SAY = "Run it for hours, and see what its current does."
RUN_IN_WHY = (
    "Falling and then flat is what a run-in is for; rising is friction or heat. Once a minute a short look shows "
    "whether it turns."
)
RUN_IN_STAY = "Stay near it: nobody here sees smoke, smells heat or hears a bearing."
RUN_IN_VOLTS, RUN_IN_HOURS, RUN_IN_PACE, RUN_IN_MASS = "Volts", "Hours, at most", "From reading to reading", "Grams"
RUN_IN_MASS_HINT = "of the motor alone"
RUN_IN_FLAT = "End once the current has stayed for 10 minutes"
RUN_IN_RESTART = "A warm start at its end"
RUN_IN_CLEAR = "Clamped, blades clear, and somebody stays near"
RUN_IN_START = "Run it in"
RUN_IN_NO_JOB = "Take a job to the bench first: a run-in belongs to one."
RUN_IN_WRONG_PACE = "From reading to reading: 1 s at the most, above zero."
CUT_OFF = "cut off"
COLD_NOW = "It is cold now: start it once more, since “it starts only when warm” is not repaired."
COLD_LATER = "Start it once more when it is cold, from {at} on: “it starts only when warm” is not repaired."
