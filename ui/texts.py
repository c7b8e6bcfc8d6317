"""Every sentence the window says to a person, in one place; those of the curves room are in `ui.curve_texts`.

What happened, whether the output is off, what to do. Nothing here imports Qt: some of it is said where Qt is missing.
"""

from benchlog.outcome import Outcome, WindingVerdict
from benchlog.records import JobState, Result, RunKind, Stage

PROGRAM = "benchlog"

# before there is a window
NO_QT = "benchlog: the window needs PySide6, and it is not installed: pip install pyside6-essentials"
NO_LIBRARY = "benchlog: the window needs from this system {library}: apt install {package}"
NO_LIBRARY_UNKNOWN = "benchlog: the window needs a system library that is missing: {what}"
HELP_ITEM = "what is on the bench, filled in for the first job"
HELP_RATED = "its rated volts, filled in for the first job"
HELP_COMPLAINT = "what its owner says, filled in for the first job"
NO_DISPLAY = (
    "benchlog: no window without a display (DISPLAY and WAYLAND_DISPLAY are unset); for one: "
    "apt install xvfb, then put xvfb-run in front"
)

NO_LEDGER = "benchlog: the ledger could not be opened: {what}"
ABOUT = "The window of benchlog: frees stuck small motors with a current-limited bench supply, and keeps the record."
HELP_LEDGER = "the ledger; made where there is none"
HELP_SUPPLY = "the supply's address, as the intake page starts with it"
HELP_DEMO = "mark the window as a demonstration; what is hung on the clips is written to the standard output"
HELP_THEME = "colours; system follows the desktop"
HELP_SNAPSHOT = "save pictures of every stage of the newest job here, and close"

# small words
OPTIONAL = "none"
QUANTITY_NAME = "{name}, in {unit}"
NOT_A_QUANTITY = "Not a number above zero in {unit}. Write it as 0.5, 0,5, 500m or 500 m{unit}."
NOTHING = "—"
DEMO = "DEMO"
DEMO_HINT = "Simulated supply and motor. Nothing real is switched. Press for what hangs on the clips."
DEMO_WITH, DEMO_NAME = "DEMO: {thing}", "Demo. On the supply’s clips: {thing}. Press to hang something else on them"
DEMO_COMPLAINT = "hums, does not turn"
DEMO_FIRST, DEMO_JOINED, DEMO_FAN = "as at first", "the clips joined", "cabin fan {number}"
DEMO_WAITS = "The output may be on: the clips are left alone until it is off."

# header
BENCH, CURVES, HISTORY, NEW_JOB = "Bench", "Curves", "History", "New job"
SETTINGS, HELP = "Settings", "Help"
SETTINGS_NAME, HELP_NAME = "Settings. Key: Ctrl and comma", "Help about this page. Key: F1"
NO_JOB = "New job"
NO_JOB_ABOUT = "nothing is on the bench yet"
JOB_TITLE = "Job {number:04d} · {kind}"
JOB_ABOUT = "tag {tag} · {volts}"
JOB_ABOUT_COMPLAINT = "tag {tag} · {volts} · “{complaint}”"
QUOTED = "“{text}”"

# the way of a job
STAGE_NAMES: dict[Stage, str] = {
    Stage.INTAKE: "Intake",
    Stage.MAKE_SAFE: "Make safe",
    Stage.PROBE: "Probe",
    Stage.FREE: "Free",
    Stage.PROVE: "Prove",
    Stage.CLOSE: "Close",
}
STAGE_ACCESSIBLE = "Stage {number}, {name}: {standing}. {found}"
STANDINGS = ("done", "here", "next", "to come", "left out")
STANDING_DONE, STANDING_HERE, STANDING_NEXT, STANDING_TO_COME, STANDING_SKIPPED = STANDINGS
SKIPPED_BECAUSE = "left out: {reason}"
CHECKED_FOUND = "{done} done"
CHECKED_FOUND_NOT = "{done} done, {other} not for this job"
LIVE_FOUND = "rung {rung}, {kicks}"
LIVE_FOUND_PLAIN = "going on"
FREE_TRIED = "{outcome}, {kicks}"
CLOSED_FOUND = "closed"

# chart
CHART_NAME = "Volts and amps over time, as read back"
CHART_HINT = (
    "Wheel or + and −: closer or wider. Drag or arrows: along. Double click or Home: back to the whole. C: two "
    "cursors, moved with the arrows; X or Tab: the other one. Ctrl+C: copies the picture."
)
CHART_CURSORS, CHART_CURSORS_NAME = "Cursors", "Two cursors with the time, volts and amps between them. Key: C"
CHART_COPY, CHART_COPY_NAME = "Copy picture", "Copy this chart as a picture. Key: Ctrl+C"
CHART_COPIED = "The picture is on the clipboard, {width} × {height} pixels, in light colours for paper."
CHART_CAPTION = "{job} · {run}"
CHART_ZOOMED = "Looking closer: {low} to {high} of {whole}."
CHART_WIDER = "Looking wider: {low} to {high}, the whole is {whole}."
CHART_NOT_FOLLOWED = "The run goes on and is not followed: {low} to {high} is shown."
CHART_BACK, CHART_FOLLOW = "Back to the whole", "Follow the run again"
CHART_EMPTY = "Nothing was measured yet"
VOLTS_LINE, AMPS_LINE = "volts", "amps"
CEILING_LABEL, CEILING_ABOVE_LABEL = "ceiling {value}", "ceiling {value} ↑"
SECONDS_UNIT, MINUTES_UNIT, HOURS_UNIT = "s", "min", "h"

# the supply
MOTION_WORDS: dict[str, str] = {
    "turning": "TURNING",
    "locked": "LOCKED",
    "creeping": "CREEPING",
    "resting": "NOT DRIVEN",
    "unknown": "NOT KNOWN",
    "none": "NO READING",
}
USED_NAMES: dict[str, tuple[str, str]] = {
    "volts": ("Volts", "V"),
    "amps": ("Amps", "A"),
    "winding_c": ("Winding", "°C"),
    "locked_s": ("Locked", "s"),
    "energy_j": ("Energy", "J"),
    "on_s": ("On-time", "s"),
    "kicks": ("Kicks", ""),
}
USED_TITLE, USED_LAST_TITLE = "Ceilings used", "Ceilings used, last run"
USED_BEFORE_TITLE = "Ceilings of this job"
USED_BEFORE_HINT = "Before the supply is known: its own range holds where it is lower."
USED_SET_BY = "set by"
USED_NONE = "Shown once a job is taken in."
USED_OF = "<b>{value}</b> / {ceiling}"
USED_ALL, USED_NEAREST = "all {count}", "nearest"
USED_ALL_NAME = "Show all ceilings, or only the one nearest its end"
USED_WHAT: dict[str, str] = {
    "volts": "at the supply’s terminals",
    "amps": "at the supply’s terminals",
    "winding_c": "an upper bound on its temperature",
    "locked_s": "with current into a rotor that stands still, in any 60 s",
    "energy_j": "heat into the winding, in any 60 s",
    "on_s": "in a row, with volts on the motor",
    "kicks": "of this job, today",
}
USED_HINT = "{name}, {what}: the lowest ceiling is {ceiling}, set by the {layer}."
USED_ACCESSIBLE = "{name}: {value} of {ceiling}, set by the {layer}"
LAYER_NAMES: dict[str, str] = {
    "program": "program itself",
    "owner": "owner of this workshop",
    "supply": "supply’s own range",
    "motor": "motor’s thermal class, A where it is not known",
    "job": "job",
    "step": "step",
}
VOLTS_ACCESSIBLE, AMPS_ACCESSIBLE = "{value} volts at the supply’s terminals", "{value} amperes"
REGULATION_HINT = "CV: the voltage is held. CC: the current limit is held; more volts then change nothing."

# output off
OUTPUT_OFF = "Output off"
OUTPUT_OFF_KEY = "Esc"
OUTPUT_OFF_ACCESSIBLE = "Output off. Key: Escape or Pause, anywhere in this program"
OUTPUT_OFF_TAUGHT = "Output off. Key: Escape, Pause or {key}, anywhere in this program"
NO_EMERGENCY_STOP_SHORT = "Not an emergency stop."
NO_EMERGENCY_STOP = (
    "Stops by command over the cable; not an emergency stop. In danger use the supply’s own output key or the mains "
    "switch."
)
OFF_SHORT = "off"
OFF_IDLE = "Nothing was switched on from here."
OFF_RUNNING = "Output not read back yet: first the supply is looked for."
OFF_RUNNING_ON = "OUTPUT ON since {at}, by read-back."
OFF_RUNNING_OFF = "Off, confirmed by read-back at {at}; the run goes on."
OFF_COMMANDED = "Off commanded at {at}; waiting for the supply to confirm."
OFF_CONFIRMED = "Off, confirmed by read-back at {at}."
OFF_NOT_CONFIRMED = "NOT CONFIRMED: switch the supply off by hand"
OFF_ACKNOWLEDGE = "I switched it off by hand"
STOP_PRESSED = "output off was pressed"
STOP_CLOSING = "the window was closed"
STOP_SESSION_ENDS = "the system is ending the session"
STOP_FAULT = "a fault in the window"
STOP_SLEEPS = "the computer is going to sleep"
AWAKE_WHY = "A bench supply's output may be on"

# taught keys
ROLE_OFF, ROLE_START, ROLE_NEXT = "Output off", "start", "on to the next stage"
KEY_WITHOUT_NAME = "This key has no name here. Set the foot switch to another key, for example F13."
KEY_LOCKS = "This key switches the keyboard itself. Take another one."
KEY_OF_WINDOW = "{key} already has its work in this window. Take another key."
KEY_CLOSES = "Alt and F4 close the window. Take another key."
KEY_TYPES = (
    "This key types or moves in fields. Take a key such as F9, one of the keypad, or one together with Ctrl or Alt."
)
KEY_NUM_LOCK = "With Num Lock off this key is another one, and output off must not hang on that. Take a key such as F9."
KEY_TWICE = "{key} already means: {role}. A key has one meaning."
KEY_NOTHING_HERE = "The taught key has nothing to do here now."

# foot
FOOT_SUPPLY = "supply: {resource}"
FOOT_NO_SUPPLY = "supply: none chosen"
FOOT_RATE = "{rate:.0f} readings/s, last {age}"
FOOT_NO_RATE = "no readings"
FOOT_TRACE = "trace on disk to {at}"
FOOT_NO_TRACE = "no trace open"
FOOT_FILED = "run filed with job {number:04d}"
FOOT_LEDGER = "ledger: {name}"
FOOT_HISTORY = "this room can switch nothing on"
AGE_MS = "{value:.0f} ms ago"
AGE_S = "{value:.0f} s ago"

# banner
FAULT = "A fault in the window: {what}. Output off was sent. {rest}"
FAULT_REST = "Look at the supply before you go on."
LEDGER_TROUBLE = "The ledger could not be used: {what}. The run itself is safe on disk in its journal."
NO_START = "The run could not be begun: {what}. Nothing was switched on."
ENDED_EARLY = (
    "Run {run} of job {number:04d} ({kind}, begun {day} {at}) ended early: {why}. {off} What was read until then is "
    "filed with the job, in the history."
)
LEFT_BEHIND_WHY = "the program ended while it went on"
LEFT_BEHIND_TOO = (
    "The program ended while that run went on; what was read until then is filed with the job, in the history."
)
LEFT_BEHIND_MANY = "{count} runs that a crash left behind were filed."
FOUND_NOT_CONFIRMED = (
    "Run {run} of job {number:04d}, begun {day} {at} on {resource}, ended without its output confirmed off. Nobody has "
    "said since that it was switched off by hand."
)
ACKNOWLEDGE_FIRST = "First switch the supply off by hand, and say so at the right."
NOT_WHILE_ON = "A run is on: let it end or press Output off, then try again."
DISMISS = "Seen"
ACT_NOW, LOOK, YOUR_TURN = "ACT NOW", "LOOK", "YOUR TURN"
NOTICE_MORE, NOTICE_EARLIER = "{count} more", "Earlier"
NOTICE_LIST = "What was said last"
RED_NAME = "Act now: the output may be on"
RED_DO = "Switch the supply off by hand: its own output key or the mains switch."
RED_THEN = "Then say so with the red button above “Output off”."
RED_WHY = "The output may be on. “Off” was sent, but the supply has not confirmed it."
RED_WHY_LINK = "The link to the supply was lost while its output was on. From here it can’t be switched off any more."
RED_SINCE = "Since then, at {at}, the supply has answered that its output is off. Look at it all the same."

# intake
INTAKE_SAY = "What has stopped moving, and what does its label say?"
INTAKE_WHY = "What it is and its rated volts are needed to begin; everything else helps the next one like it."
INTAKE_OPEN_SAY = "Taken in as job {number:04d}."
INTAKE_OPEN_WHY = "What is put right here is kept beside what it was. The rated volts stay: runs were made with them."
KINDS = ("Bilge pump", "Fresh-water pump", "Cabin fan", "Hatch actuator", "Anchor-light dimmer fan")
FIELD_KIND, FIELD_MAKE, FIELD_MODEL, FIELD_SERIAL = "What it is", "Make", "Model", "Serial"
FIELD_COMPLAINT = "Complaint, in the owner’s words"
FIELD_RATED, FIELD_MAX_VOLTS, FIELD_MAX_AMPS = "Rated volts", "Volts ceiling", "Amps ceiling"
FIELD_WET, FIELD_COUPLED = "Load: dry or wet", "Load: coupled or not"
FIELD_SUPPLY = "Supply address"
SUPPLY_EXAMPLE = "TCPIP::192.0.2.7::5025::SOCKET"
LOOK_FOR, LOOK_FOR_NAME = "Look for supplies", "Look for supplies: on the network, on USB, at the serial ports"
LOOKING = "Looking on the network, on USB and at the serial ports …"
LOOKED = "Looked on {day} at {at}. Pick one, then ask it; nothing that was found got a message."
LOOKED_NOTHING = "Looked on {day} at {at}: nothing was found."
LOOK_SOCKETS = "A plain socket is never found by looking: type its address."
LOOK_FAILED = "Could not look: {what}."
LOOK_MISSED = "Not looked at: {part}, {why}."
PLACES_NAME = "Where supplies may be; Enter picks one for the address"
PLACE_KINDS = {"serial": "serial port", "usb": "USB", "network": "network", "visa": "VISA"}
PLACE = "{address}   {kind}"
PLACE_WORDS = "{address}   {kind}, {words}"
PLACE_SERIAL_HINT = "May be anything: it gets no message before you pick it and press “Ask it”."
ASK_IT, ASK_IT_NAME = "Ask it", "Ask the supply at this address what it is"
ASK_HINT = "Asks by questions only: nothing is set or switched."
ASKING = "Asking what it is, by questions only; nothing is set or switched …"
ASK_STOPPED = "the asking was ended"
ASK_TOO_LONG = "it did not get done within {after}"
ASK_NOTHING = "the process that asked ended without a word"
NOT_WHILE_ASKING = "A supply is being asked what it is. Wait until it has answered."
NEEDS_ADDRESS = "Give the address first: type it, or look for supplies."
SUPPLY_USABLE = "Usable: runs on this address open with what it told."
SUPPLY_NOT_USABLE = "Not usable: {why}."
SUPPLY_ASKED = "Asked on {day} at {at}; {checked}."
SUPPLY_CHECKED, SUPPLY_CHECKED_NOT_ALL = "checked on {day}", "checked on {day}, not all within what was stated"
SUPPLY_NOT_CHECKED = "not checked with a resistor yet"
SUPPLY_NOT_KEPT = "What was kept of it before is from {day}."
REPORT_SHOW, REPORT_HIDE = "What it told", "Hide what it told"
REPORT_NAME = "What the supply told: {told}"
REPORT_IDENTITY, REPORT_SPEAKS, REPORT_GIVES = "It says it is", "Speaks", "Gives at most"
REPORT_QUICK, REPORT_KICK, REPORT_QUESTION = "Answers", "Shortest kick", "Please say"
REPORT_RANGE = "{volts} and {amps}"
REPORT_RANGE_OF = "{volts} and {amps}, output {output} of {outputs}"
REPORT_NO_RANGE = "what it does not tell"
REPORT_LATENCY = "{latency} a question, {reading} a reading, {rate} readings a second"
REPORT_LEAST = "{least}; reckoned, not tried: settling is measured only with the output on"
REPORT_TRIED = "{least}; tried on {day} with the leads open"
REPORT_TERMINAL = "At a terminal"
REPORT_COMMANDS = "Checks, which switch it on: benchlog supply {address} --check --ohm 10, or --settling"
REPORT_BY_FILE = "The answer goes into its dialect file: benchlog supply --write, then --dialect."
REPORT_GAPS = {
    "range not told": "Its range is no ceiling then: the owner’s, the job’s and the program’s hold. Say it below.",
}
"""Where the report names a command of the terminal: what is said here in its place."""
FIELD_OUTPUT, OUTPUT_CHOICE = "Output", "Output {number}"
FIELD_MOST_VOLTS, FIELD_MOST_AMPS = "Most volts of an output", "Most amps of an output"
ASK_AGAIN, ASK_AGAIN_NAME = "Ask again with these", "Ask the supply again, with these most volts and amps"
NEEDS_RANGE = "Give both, the most volts and the most amps, above zero."
FOOT_OUTPUT = "{resource}, output {output}"
DRY, WET, COUPLED, UNCOUPLED = "dry", "wet", "coupled", "uncoupled"
LOAD_STATE = "{wet}, {coupled}"
CARD_ITEM, CARD_BENCH = "The thing itself", "On the bench"
MAX_VOLTS_HINT = "Starts as the rated volts. Above them only if this job is given more."
MAX_AMPS_HINT = "Left empty, the supply’s own range and the probed winding decide."
FIELD_UNLOCK_WHO, FIELD_UNLOCK_WHY = "Who unlocks", "Why the usual ceilings don’t do, in a few words"
UNLOCK = "Unlock for 12 h"
UNLOCK_ALLOWED = "The owner’s settings let this job be unlocked up to {limits}; it is kept with the job."
UNLOCKED = "Unlocked by {who} until {at}: {why}"
CARD_OWNER = "Its owner"
FIELD_OWNER, FIELD_CONTACT, FIELD_WHO = "Owner", "How to reach them", "Taken in by"
FIELD_LIMIT, LIMIT_HINT = "May cost at most", "no limit agreed"
FIELD_PUMPED, PUMPED_HINT = "What it moved", "sea water, air, …"
FIELD_OPENED_BEFORE, OPENED_BEFORE_HINT = "Who else was in it", "nobody, the owner, …"
FIELD_CONSENT = "The owner agrees to the attempt and to what it may do to the thing"
OWNER_HINT = "a name, or a berth"
UNDO_CHANGE = "Take back the last change"
UNDONE = "Taken back: {fields}."
JOB_FIELDS = {
    "kind": "what it is",
    "make": "make",
    "model": "model",
    "serial": "serial",
    "complaint": "complaint",
    "load_state": "load state",
    "owner": "owner",
    "contact": "how to reach them",
    "who": "taken in by",
    "consent": "the owner’s consent",
    "spending_limit_cents": "what it may cost",
    "opened_before": "who else was in it",
    "pumped": "what it moved",
    "cause": "cause",
    "work_done": "work done",
    "prognosis": "prognosis",
    "result": "result",
    "method": "what did it",
    "advice": "advice",
    "warranty_days": "warranty",
}
COMEBACK_ONE = "Here before: job {number:04d}, {day}, {ended}."
COMEBACK_MANY = "Here before, {count} times; last as job {number:04d}, {day}, {ended}."
COMEBACK_SAME, COMEBACK_LOOK = "Come back", "Look at it"
BACKUP_FAILED = "The day’s backup: {what}"
BACKUP_LACKS = "The day’s backup is made, but {what}"
DRAFT_FOUND = "What was being typed when the program last ended is here again."
OPEN_JOB = "Take it in"
NEEDS_KIND = "Say what it is."
NEEDS_RATED = "Rated volts: give a number above zero, as the label says."
NEEDS_MAX_VOLTS = "Volts ceiling: give a number above zero."
WRONG_QUANTITY = "{name}: “{typed}” is no number above zero. Write it as 0.5, 0,5, 500m or 500 m{unit}."
ADDRESS_WITH_SPACE = (
    "Supply address: there is a space in it, and an address has none. Take it out, or look for supplies."
)
ADDRESS_UNUSABLE = "Supply address: not usable ({why}). Ask it again, give another address, or leave it empty for now."
ABOVE_PROGRAM = "{name}: {value} is above the {limit} that this program never goes beyond."
NEEDS_SUPPLY = "Give the supply’s address on the intake page first."
INTAKE_ENTRY = "taken in; ceilings {volts}, {amps}; supply {supply}"
AMPS_NO_CEILING = "no amps ceiling of its own"

# make safe
SAFE_SAY = "Make it safe before a lead is clipped on."
SAFE_WHY = "Press each line when it is so, or say that it does not apply to this job; nothing is left open."
SAFE_DONE_SAY = "Made safe."
SAFE_DONE_WHY = "Kept with the job, line by line."
SAFE_ROWS: tuple[tuple[str, bool], ...] = (
    ("Unplugged from the mains", True),
    ("Cell out of circuit, its tabs insulated", True),
    ("Capacitors discharged through a resistor, and measured", True),
    ("Liquid drained, and dry", True),
    ("Motor leads free of the driver board", True),
    ("Fingers, hair and blades clear; eye protection on", False),
)
"""Each line, and whether it may be said not to fit."""
SAFE_CHECKED, SAFE_NOT_FITTING = "done", "does not apply"
SAFE_ENTRY = "{row}: {choice}"
SAFE_REFUSE = (
    "Not with this: medical devices, life-safety gear, gas appliances, pressure vessels, swollen cells. "
    "Mains motors: not with this."
)
SAFE_RULES = "Local rules and licensed practice come first."
SAFE_GO_ON = "It is safe: on to the probe"

# runs: what is said before, and while nothing was said yet
RUN_BEFORE: dict[RunKind, tuple[str, str]] = {
    RunKind.PROBE: (
        "Ready to look at the winding.",
        "A few short pulses of small current tell winding, open, short, diode and electronics apart.",
    ),
    RunKind.RECOVERY: (
        "Ready to free it.",
        "First the winding is measured with small currents. Start: a gentle start, then kicks, hand work between. Hand "
        "on the shaft: current only while you hold a key.",
    ),
    RunKind.PROOF: (
        "Ready to prove that it starts again.",
        "First it measures the winding with small currents; then each start is from rest. One start is luck; several "
        "are a repair.",
    ),
}
RUN_STARTING = ("Looking for the supply.", "Nothing is switched on before its output was read back as off.")
RUN_START_HINT = "Every run begins by measuring the winding with small currents."
RUN_START_BUTTON: dict[RunKind, str] = {
    RunKind.PROBE: "Probe",
    RunKind.RECOVERY: "Start",
    RunKind.PROOF: "Start the proof",
}
RUN_AGAIN_BUTTON: dict[RunKind, str] = {
    RunKind.PROBE: "Probe again",
    RunKind.RECOVERY: "Start again",
    RunKind.PROOF: "Prove again",
}
RUN_KIND_NAMES: dict[RunKind, str] = {kind: kind.value for kind in RunKind} | {RunKind.CHECK: "supply check"}
GO_ON = "On to {stage}"
STARTS_LABEL = "Starts from rest:"
PROOF_AT_RATED = "Each start at the rated {rated}."
PROOF_BELOW_RATED = (
    "Each start at {volts}, not the rated {rated}: the look whether it turns needs room up to the volts ceiling of "
    "{ceiling}, set by the {layer}."
)
PROOF_AT_MOST = "At fewer volts if the supply can’t give that: the run asks it first."
PROVEN_AT_RATED = "Started at the rated {rated}."
PROVEN_BELOW_RATED = (
    "Started at {volts}, not the rated {rated}: the volts ceiling of {ceiling}, set by the {layer}, left no more room."
)
PROOF_TRIED = "{outcome}, started at {volts}"
STARTS_ACCESSIBLE = "{count} starts from rest"
HAND_LABEL = "Done by hand:"
HAND_STEPS = ("turned", "tapped", "soaked", "warmed", "oiled")
HAND_ACCESSIBLE = "Note that it was {step} by hand"
HAND_KEPT = "Kept with the job: {step}, {at}."
HAND_NOTED = "by hand: {step}"
FIELD_NOTE = "A note, stamped into the running record"
NOTE_HINT = "A note for the record, then Enter"
NOTE_KEPT = "note: {text}"
MOVED_BUTTON = "It moved  (M)"
MOVED_ACCESSIBLE = "It moved, even a little. Key: M"
MOVED_NOTED = "the operator felt or saw it move"
HAND_START = "Hand on the shaft"
HAND_START_ACCESSIBLE = (
    "Hand on the shaft: first the winding is measured, then at most a quarter of the stall current while a key is held"
)
HOLD_BUTTON = "Hold for current  (Space)"
HOLD_ACCESSIBLE = "Current flows while this, or the space bar, is held"
MEASURED_LINE = "Measured start at {volts}: steady {amps}, run-up {tau}."
MEASURED_NOT = "not known ({why})"
MEASURED_FIRST = "Nothing to compare with yet: the first proof of its model."
MEASURED_AGAINST = "Against {others}: {verdict}"
ADVICE_TITLE = "Advice, with its reason"
SAME_AS_LAST = "Same as last time"
SAME_AS_LAST_HINT = "Ceilings and ladder as in job {job:04d}, run {run}, which ended freed."
SAME_AS_LAST_DONE = "As in job {job:04d}: its ladder, and its ceilings of {volts} and {amps}."
SAME_AS_LAST_NOT = "Not the same as last time: {why}."
BEGIN_AT = "Begin at rung {rung}"
BEGIN_AT_ACCESSIBLE = "Begin the ladder at the rung that is advised"
LEADS_NEVER = "Leads: not measured; their resistance is part of what is found."
LEADS_KNOWN = "Leads: {ohm}, measured {day}, taken out."
LEADS_BUTTON = "Measure the leads"
LEADS_ACCESSIBLE = "Measure the leads, their two clips joined, no motor between them"
LEADS_HINT = "Join the two clips, with no motor between them: at most 1 A at 1 V, for a second."
LEADS_WORD = "leads measured"
LEADS_SAY = "Leads of {ohm}."
LEADS_DO = "Clip the motor on again, then probe."
LEADS_NOT_SAY = "The leads were not measured."
LEADS_NOT_DO = "Join the two clips, with no motor between them; then check again."
FIELD_CLASS = "Thermal class"
CLASS_HINT = "Of the winding, as the label says; A where it says nothing."
RUNG_TITLE = "{number} {name}"
RUNG_SWAPPED = "swapped"
RUNG_SWAPPED_HINT = "The leads are swapped by hand before this rung."
RUNG_LEFT_OUT = "left out"
RUNG_LEFT_OUT_HINT = "Left out of this run."
RUNG_ABOVE_HINT = "Above the job’s volts ceiling: left out."
RUNG_ACCESSIBLE = "Rung {number}, {name}, {volts}: {tries} of {of} tries"
QUESTION_TITLE = "Your turn"
QUESTION_SAY = ("It needs your hands.", "Only once it says at the right: off, confirmed by read-back.")
CHOICE_WORDS = {
    "it turns": "It turns",
    "still stuck": "Still stuck",
    "turned": "I turned it",
    "enough": "Enough",
    "leads swapped": "Leads swapped",
    "swapped back": "Swapped back",
    "done": "Done",
    "skip": "Skip",
    "yes": "Yes",
    "no": "No",
    "stop": "Stop",
}
HAND_ENDED_DO = "Prove that it starts by itself, or go on by hand."
WHY_BY_KIND: dict[str, str] = {
    "step": "Every ceiling at the right holds.",
    "kick": "One short push; then a look whether it turns.",
    "turning": "A rotor that turns makes a voltage of its own.",
    "rest": "Heat leaves the winding while it rests.",
    "trip": "The output goes off first.",
}
"""Said where an event brings no reason of its own."""

MARK_WORDS: dict[str, str] = {
    "turning": "turning",
    "moved": "moved",
    "trip": "cut off",
    "hand": "by hand",
    "note": "note",
    "rescue": "rescued",
}

# how a run ended: what happened, and what to do
OUTCOME_SAY: dict[Outcome, str] = {
    Outcome.FREED: "It is free.",
    Outcome.RUNS: "It runs.",
    Outcome.STILL_STUCK: "Still stuck.",
    Outcome.UNDETERMINED: "Not decided.",
    Outcome.OPEN: "No current flows: the winding or a brush is open.",
    Outcome.SHORT: "Shorted: all current, hardly any volts.",
    Outcome.DIODE: "A diode is in the way.",
    Outcome.ELECTRONIC: "There are electronics between the leads and the motor.",
    Outcome.CEILING: "A ceiling ended the run.",
    Outcome.STOPPED: "Stopped.",
    Outcome.SUPPLY_LOST: "The supply was lost.",
    Outcome.REFUSED: "Refused: nothing was switched on.",
}
OFF_READ_BACK = "Off, confirmed by read-back."
OFF_NOT_READ_BACK = "NOT CONFIRMED: switch the supply off by hand."
OUTCOME_DO: dict[Outcome, str] = {
    Outcome.FREED: "Next, prove it: several starts from rest.",
    Outcome.RUNS: "Next, prove it: several starts from rest.",
    Outcome.STILL_STUCK: "Work on it by hand, let it soak, and start again; or close the job.",
    Outcome.UNDETERMINED: "Turn the shaft a little and try again, or close the job.",
    Outcome.OPEN: "Tap the housing or look at the brushes, then probe again; or close the job.",
    Outcome.SHORT: "Kicks would only heat it. Look for bridged segments or a cut lead; close the job or probe again.",
    Outcome.DIODE: "Lift one end of it and probe again, or close the job.",
    Outcome.ELECTRONIC: "Reach the motor’s own leads behind the board and probe again, or close the job.",
    Outcome.CEILING: "Let it cool and rest, find out why, and only then start again.",
    Outcome.STOPPED: "Look at the motor, and begin again when it is right.",
    Outcome.SUPPLY_LOST: "Look at the cable and at the supply’s own display; press its output key if it is on.",
    Outcome.REFUSED: "Put right what the sentence names, then begin again.",
}
PROVEN_DO = "It can be closed as running."
PROBED_SAY = "A winding of {ohm}."
PROBED_SAY_UNKNOWN = "There is a winding; its resistance is not known."
PROBED_DO = "Next, free it."
INTERVAL = "({low} to {high})"
VERDICT_WORDS: dict[WindingVerdict, str] = {
    WindingVerdict.WINDING: "winding",
    WindingVerdict.OPEN: "open",
    WindingVerdict.SHORT: "short",
    WindingVerdict.DIODE: "diode",
    WindingVerdict.ELECTRONIC: "electronics",
    WindingVerdict.UNDECIDED: "undecided",
    WindingVerdict.NOT_PROBED: "not probed",
}
OUTCOME_WORDS: dict[Outcome, str] = {outcome: outcome.value.replace("-", " ") for outcome in Outcome}
KICKS_ONE, KICKS_MANY, NO_KICKS = "1 kick", "{count} kicks", "no kicks"

# close
CLOSE_SAY = "What was wrong, what was done, how long will it last?"
CLOSE_WHY = "An honest word here is what the next one like it starts from."
CLOSE_DONE_SAY = "Job {number:04d} is closed."
CLOSE_DONE_WHY = "It is in the history, with every run as it was."
FIELD_CAUSE, FIELD_WORK, FIELD_PROGNOSIS = "Cause", "Work done", "Prognosis"
CAUSE_HINT = "dried residue at the seal, hardened grease, brush stuck, …"
WORK_HINT = "cleaned, oiled, new seal, …"
PROGNOSIS_HINT = "should last the season; may come back when it stands dry, …"
FIELD_RESULT, FIELD_METHOD = "It came to", "What did it"
FIELD_ADVICE, ADVICE_HINT = "Advice to the owner", "turn it by hand once a month, …"
FIELD_WARRANTY, WARRANTY_HINT = "Warranty in days", "none"
RESULTS = {Result.WORKS: "works", Result.PARTLY: "works in part", Result.NOT_REPAIRED: "not repaired"}
METHODS = ("kicks", "kicks and by hand", "by hand", "cleaned", "part replaced", "electrical repair", "nothing helped")
NEEDS_RESULT = "Say what it came to."
WRONG_WARRANTY = "Warranty: a whole number of days, or nothing."
CLOSE_JOB = "Close the job"
NEXT_JOB = "Next job"
JOB_SHEET, JOB_SHEET_NAME = "Job sheet", "The sheet of this job, as it would be printed"
PROPOSAL = "The last run ({last}) proposes: {words}. You say what it came to."
PROPOSAL_TAKE, PROPOSAL_TAKE_NAME = "Take over", "Take over: {words}"
NEEDS_CAUSE = "Cause: say what it was, or “not found”."
CLOSE_SUMMARY = "Before and after"
SUMMARY_NAMES = {
    "kind": "what for",
    "ended": "how it ended",
    "resistance": "winding",
    "volts": "highest volts",
    "amps": "highest amps",
    "kicks": "kicks",
}
SUMMARY_BEFORE, SUMMARY_FREED, SUMMARY_AFTER = "first run", "run that freed it", "last run"

# history
SEARCH_NAME = "Search the jobs"
JOBS_COUNT_ONE, JOBS_COUNT = "1 job", "{count} jobs"
HISTORY_TABLE = "Jobs found"
HISTORY_RUNS = "Runs of this job"
HISTORY_RECORD = "What was kept with this job"
HISTORY_NO_RUN = "No run was filed with this job."
HISTORY_PICK = "Pick a job to see its runs."
HISTORY_TO_BENCH = "Take to the bench"
JOB_DETAIL = "Job {number:04d} · {kind}"
NO_RUN_YET, STATE_CLOSED = "no run yet", "closed"

# record and costs
RECORD = "Record and costs"
RECORD_SAY = "Record of job {number:04d}"
RECORD_WHY = "{stands}. {costs}."
RECORD_BACK, RECORD_YOUR_TURN = "Back to {stage}", "Your turn: back to {stage}"
FIELD_RECORD_WHO, RECORD_WHO_HINT = "Who", "who works"
FIELD_RECORD_WORDS, RECORD_WORDS_HINT = "Words for a hand step or a note", "Words, for a hand step or a note"
RECORD_NOTE, RECORD_CORRECTION = "Keep note", "Keep correction"
RECORD_TIMELINE = "Timeline"
RECORD_FINDINGS, RECORD_COSTS, RECORD_WAITING, RECORD_PICTURES = "Findings", "Costs", "Waiting", "Files"
FILES_ADD, FILES_ADD_NAME = "Add files …", "Choose photos and files to keep with the job"
FILES_NONE = "No photo or file is kept with this job yet."
FILES_HINT, FILES_NAME = "Drop photos and files here, or paste them (Ctrl+V).", "Photos and files of the job"
CAPTION_HINT, CAPTION_NAME = "What is seen on the next one", "Caption of the next photo or file"
FILES_WAIT_FOR_OFF = "While the output may be on no file is chosen here; drop it or paste it."
FILES_READING, NOTHING_PASTED = "Reading {count} …", "There is no picture or file to paste."
FILE_NOT_KEPT = "{name}: could not be kept ({what})"
RECORD_IN_RUN = "In the running record: {text}"
RECORD_DRAFT_FOUND = "What was being typed under “Record and costs” when the program last ended is there again."
NEEDS_WHO = "Say who works, at the top of this page."
TIMELINE_NAME = "What happened with this job, newest first"
TIMELINE_NONE = "Nothing is kept with this job yet: runs, notes, findings and costs come here as they are made."
LINE_NOTE, LINE_HAND, LINE_RUN, LINE_FINDING = "note", "by hand", "run", "finding"
LINE_CHARGE, LINE_FILE, LINE_EDIT, LINE_UNLOCK = "cost", "file", "change", "unlocked"
LINE_KINDS = {"note": "note", "check": "made safe", "state": "state", "correction": "correction"}
YES, NO = "yes", "no"
EDIT_OF_RUN = "run {run}, {field}"
EDIT_UNDONE = "taken back"
FINDING_MARKED = "marked {marking}"
FINDING_REPLACED, FINDING_CORRECTS = "replaced since", "in place of an earlier one"
CHARGED_MINUTES = "{count} min"
CHARGE_TAKEN_BACK = "taken back since"
FIELD_PART, PART_HINT = "Part", "R7, gate resistor, …"
FIELD_PLACE, PLACE_HINT = "Where", "at the driver, …"
FIELD_MARKING, MARKING_HINT = "Marking", "4K7, 152, 01B, …"
FIELD_CAPACITOR = "on a capacitor"
FIELD_PURPOSE, PURPOSE_HINT = "What it seems to do", "holds the gate down"
FIELD_VALUE, VALUE_HINT = "Value", "1.5 kΩ, cracked, …"
FINDING_NEW, FINDING_CORRECTING = "A finding", "A correction: it stands in place of the earlier one"
FINDING_KEEP, FINDING_KEEP_CORRECTION, FINDING_GIVE_UP = "Keep", "Keep it", "Leave it"
FINDING_CORRECT, FINDING_CORRECT_NAME = "Correct", "Correct the finding about {part}"
NEEDS_PART = "Say which part it is."
READING_NAME = "Reading {number} of the marking"
READING_TAKE = "Take {value} as the value. {about}"
CALCULATE = "Calculate"
CALCULATOR_WHICH, CALCULATOR_TAKE = "What to calculate", "Into the value"
CALCULATOR_NAMES = {"supply": "supply", "lower": "lower", "charge": "charge", "draw": "draw"}
"""Words of calculators that mean something else where they stand elsewhere."""
CALCULATOR_INPUT = "{name}, {unit}"
COST_NO_LIMIT = "{cents} so far; no limit agreed"
COST_STANDS = "{cents} of at most {limit}; {left} left"
COST_NEAR = "{cents} of at most {limit}; only {left} left"
COST_SHORT = "{cents} of {limit}"
COST_PASSED = "{cents}: {left} above the {limit} allowed"
COST_NO_CURRENCY = "costs {words}"
CURRENCY_UNKNOWN = "The settings name no currency."
FIELD_MINUTES, MINUTES_HINT = "Minutes of work", "min"
FIELD_DONE, DONE_HINT = "What was done", "what was done"
MINUTES_PROPOSED = "on the bench: {count} min"
MINUTES_PROPOSED_NAME = "Take the {count} minutes that the job was on the bench"
HOUR_COSTS, HOUR_UNKNOWN = (
    "An hour costs {cents}.",
    "The owner’s settings give no price of an hour: minutes cost nothing.",
)
FIELD_STOCK, FIELD_COUNT, NO_STOCK = "Part from stock", "How many pieces", "choose a part"
STOCK_LINE = "{name} · {price} · {stock} there"
STOCK_OPEN, STOCK_OPEN_NAME = "Stock …", "Put a part into the stock, or change one"
STOCK_SAY = "A part for the stock; one of the same name and number gets its price and count anew."
FIELD_STOCK_NAME, STOCK_NAME_HINT = "Name of a part for the stock", "name"
FIELD_STOCK_NUMBER, STOCK_NUMBER_HINT = "Its number or size", "size"
FIELD_STOCK_PRICE, STOCK_PRICE_HINT = "Price of a piece", "price"
FIELD_STOCK_THERE, STOCK_THERE_HINT = "How many are there", "how many"
STOCK_KEEP = "Keep"
NEEDS_STOCK_NAME, WRONG_STOCK = "Say what part it is.", "How many are there: a whole number."
FIELD_OTHER, OTHER_HINT, FIELD_PRICE = "Anything else", "what for", "Its price"
CHARGE = "Charge"
CHARGE_MINUTES, CHARGE_PART, CHARGE_OTHER = "Charge the minutes", "Charge the part", "Charge it with its price"
WRONG_MINUTES, WRONG_COUNT = "Minutes: a whole number above zero.", "Pieces: a whole number above zero."
NEEDS_STOCK, NEEDS_OTHER, NEEDS_PRICE = "Choose a part first.", "Say what it is for.", "Give its price."
OVER_SAY = "Stop or ask: with this the job would come to {cents}; its owner allows {limit}."
FIELD_AGREED, OVER_KEEP, OVER_STOP = "Who agreed to more", "Agreed: charge it", "Stop: leave it out"
TAKE_BACK, TAKE_BACK_NAME = "Take back", "Take back the line {line}"
BACK_SAY = "Take back “{line}”?"
FIELD_BACK_WHY, BACK_KEEP, BACK_STOP = "Why", "Take it back", "Leave it"
WAITING_WORDS = {
    "waiting-for-approval": "waits for approval",
    "waiting-for-part": "waits for a part",
    "waiting-for-owner": "waits for its owner",
}
WAITING_BUTTONS = {
    JobState.FOR_APPROVAL: "Wait for approval",
    JobState.FOR_PART: "Wait for a part",
    JobState.FOR_OWNER: "Wait for its owner",
    JobState.OPEN: "Work goes on",
}
WAITING_SINCE = "{waiting} (since {day})"
WORK_GOES_ON = "Work goes on."
FIELD_WAITING, WAITING_HINT = "What for", "more than was agreed, shaft seal, …"
JOB_ABOUT_WAITING = "{waiting} · {about}"

# history: what is looked for
PAGE_JOBS, PAGE_NUMBERS = "Jobs", "What they came to"
SEARCH_ALL_HINT = "Search everything kept: serial, owner, complaint, cause, parts, notes"
FILTER_KIND, FILTER_CAUSE, FILTER_OUTCOME = (
    "Only of this kind",
    "Only of this cause",
    "Only where the last run ended so",
)
FILTER_STATE, FILTER_WHO, FILTER_ORDER = "Only those that stand so", "Only taken in by", "In what order"
FILTER_SINCE, FILTER_UNTIL = (
    "Taken in on this day or later, as 2026-11-25",
    "Taken in on this day or earlier, as 2026-11-25",
)
SINCE_HINT, UNTIL_HINT = "from day", "to day"
MONTHS_HINT = "Taken in within that month."
MONTHS = {"this": "this month", "last": "last month"}
NOT_A_DAY = "“{said}” is no day, so the list is not narrowed to days: write 2026-11-25 or 25.11.2026."
ANY_KIND, ANY_CAUSE, ANY_OUTCOME = "any kind", "any cause", "any outcome"
ANY_STATE, ANY_WHO = "any state", "anybody"
STATE_WAITING = "waiting for anything"
STATE_WORDS = {
    JobState.OPEN: "open",
    JobState.FOR_APPROVAL: "waits: approval",
    JobState.FOR_PART: "waits: part",
    JobState.FOR_OWNER: "waits: owner",
    JobState.CLOSED: "closed",
}
ORDERS = {"newest": "newest first", "oldest": "oldest first", "changed": "last changed first"}
JOB_COLUMNS = ("Job", "Taken in", "What", "Model · serial", "Complaint", "How it ended", "Stands")
JOBS_COUNT_OVER = "{count} jobs or more"
COUNT_MEASURING = "{jobs}, {count} of them measuring"
MEASURING = "measuring"
SUPPLY_CHECK_ABOUT = "A check of a supply against a resistor or with open leads, no repair: no motor was on it."
MEASURING_ABOUT = "A measuring job, no repair: its starts are under “Curves”, and no rate of the history counts it."
ALL_JOBS = "All jobs"
ONLY_ONE = "Only the job that was asked for."
ONLY_BEHIND = "The jobs behind: {words}"
EMPTY_LEDGER = ("No job is kept yet.", "The first one begins at the bench, with what its label says.")
EMPTY_TEXT = (
    "No job has “{text}” anywhere.",
    "Every word must be in the job, from its beginning; fewer words, or one without its ending, find more.",
)
EMPTY_FILTERED = (
    "No job fits all that is chosen above.",
    "A job must fit the words, every choice and both days. Take one away, or begin again with all jobs.",
)
# history: a picked job
CORRECT, PAPER, EXPORT = "Correct", "Paper", "Export"
PAPERS = {"view": "Look at the job sheet", "pdf": "Job sheet as PDF", "html": "Job sheet as HTML", "tag": "Tag as PDF"}
EXPORTS = {
    "trace": "This run’s trace as CSV, for programs",
    "trace_sheet": "This run’s trace as CSV, for a spreadsheet",
    "jobs": "All jobs found, as CSV",
}
SAVE_TITLES = {
    "pdf": "Where to keep the job sheet",
    "html": "Where to keep the job sheet",
    "tag": "Where to keep the tag",
    "trace": "Where to keep the trace",
    "trace_sheet": "Where to keep the trace",
    "jobs": "Where to keep the list of jobs",
}
WRITTEN = "Written: {path}"
RUN_NAME, RUN_ENDED = "{kind}, {at}", "{run}: {outcome}"
UNDER = "Another run laid under this one, dashed"
UNDER_NONE = "nothing laid under it"
UNDER_THIS, UNDER_JOB = "under it: {run}", "under it: job {number:04d}, {run}"
UNDER_NAME_RUN, UNDER_NAME_JOB = "{kind} {at}", "job {number:04d}"
CORRECT_SAY = "A correction stands beside what was said before."
CORRECT_FIELD, CORRECT_NEW = "What to correct", "What is right"
CORRECT_WHO, CORRECT_WHY = "Who corrects it", "Why"
CORRECT_WAS = "It says: {was}"
CORRECT_RUN_STAYS = "The run stays as it is; this is kept beside it."
CORRECT_KEEP, CORRECT_LEAVE = "Keep the correction", "Leave it"
CORRECT_NEEDS = "Say who, and why."
CORRECT_NEEDS_NEW = "Say what is right."
CORRECT_EMPTY = "This can’t be empty."
CORRECT_SAME = "That is what it says already."
CORRECT_RESULT = "One of: {words}."
CORRECTED = "Kept with job {number:04d}, beside what it said before."
RUN_FIELDS = {
    "run note": "{run}: a remark",
    "run outcome": "{run}: how it ended",
    "run reason": "{run}: why it ended so",
    "run load_state": "{run}: load state",
    "run rated_volts": "{run}: rated volts",
    "run resistance_ohm": "{run}: resistance",
}
# history: what the jobs came to
FIGURES_BY = "Put together by"
FIGURE_KEYS = {
    "kind": "what it is",
    "model": "make and model",
    "cause": "cause",
    "method": "what did it",
    "rung": "rung that freed it",
}
FIGURES_TABLE = "What the jobs came to; Enter opens the jobs behind a number"
FIGURE_COLUMNS = ("Group", "Jobs", "Came free", "Kicks", "Minutes", "Back by 30 days", "Back by 90 days")
CHARGED, CHARGED_IN = "Charged", "Charged, {currency}"
RUNG_COLUMNS = ("What", "Rung", "Of those that came free")
FIGURES_ABOUT = (
    "Of {count} repairs found. Middle (middle half); 95 % limits. An underlined number opens its jobs: click or Enter."
)
FIGURES_ABOUT_ONE = "Of 1 repair found. 95 % limits. An underlined number opens its job: click or Enter."
FIGURES_EMPTY = "No repair fits what is chosen above, so there is nothing to count."
FIGURES_LATER = "Not counted while an output may be on. Come back to this page when it is off."
BEHIND = "{label}, {what}: {text}"
OPENS_ONE, OPENS_MANY, OPENS_NONE = "Opens 1 job.", "Opens {count} jobs.", "No job behind it."
INTERVALS_TITLE, RUNGS_TITLE = "Came free", "Came free at this rung"
INTERVALS_NAME = "Share that came free, with 95 % limits: {told}"
INTERVALS_MORE = "{count} more in the table"
NEVER_TRIED = "none was kicked and closed"
NOT_BACK_TITLE = "Not back yet"
NOT_BACK_OF = "Not back yet: {label}"
NOT_BACK_NAME = "Share not back yet after days: {told}"
NOT_BACK_LINE, NOT_BACK_LIMIT = "not back", "95 % limit"
NOT_BACK_PICK = "Pick a group in the table."
NOT_BACK_NONE = "None went out working with a serial to know it again by."
NOT_BACK_ABOUT = "{count} went out working; {ended} came back. What is still out counts until today, and no longer."
NOT_BACK_UNSEEN = "{count} without a serial can’t be recognised."
HOPELESS_TITLE, HOPELESS_NONE = "Hardly ever comes free", "No group: too few tried, or enough came free."
WAITS_TITLE, WAITS_NONE = "What waits", "None of these jobs waits for anything."
WAITS_ONE, WAITS_MANY = "{state}: 1 job, for {days}", "{state}: {count} jobs, the longest for {days}"
DAYS_ONE, DAYS_MANY = "1 day", "{days} days"
OPEN_ONE, OPEN_MANY = "Look at it", "Look at the {count}"
# history: its foot
BACK_UP, BACKING_UP = "Back up now", "A backup is being made …"
LAST_BACKUP = "Last good backup: {day} {at}, {jobs} jobs"
LAST_BACKUP_ONE = "Last good backup: {day} {at}, 1 job"
NO_BACKUP = "No good backup of this ledger yet."
BACKUP_NOT_MADE = "No backup was made: {what}"
BACKUP_MADE_LACKS = "The backup is made, but {what}"

# prove: the measured start
MEASURED_MOVES = "First seen to turn: {when}."
MEASURED_CAUTIONS = "Mind: {cautions}."

# keys of the whole window
KEY_WORDS: dict[str, str] = {
    "bench": "To the bench",
    "curves": "To the curves",
    "history": "To the history",
    "settings": "To the settings",
    "help": "Help about this page; once more, back to it",
    "back": "Back from help, settings or paper",
    "new_job": "Put this job aside and begin another",
    "find": "Search the history",
    "paper": "The sheet of the job that is shown, as it would be printed",
    "keep": "Keep what is half typed now; it is kept by itself anyway",
    "paste": "Keep a copied picture or file with the job, where no field takes it",
    "full": "Whole screen, and back",
    "close": "Close the window: output off first",
}
OTHER_KEYS: tuple[tuple[str, str], ...] = (
    ("Esc, Pause", "Output off, anywhere and always"),
    ("Space, held", "Current flows, with the hand on the shaft"),
    ("M", "It moved, while it is being freed"),
    ("Ctrl+Z", "Take back the last change, on the intake page and in the settings"),
    ("Space", "In the curves: begin, after a serial and Enter"),
    ("+  −  ←  →  Home", "On a chart: closer, wider, along, back to the whole"),
    ("C", "On the chart of a run: two cursors; the arrows move one, X or Tab takes the other"),
    ("Ctrl+C", "On a chart: copy it as a picture"),
    ("Enter", "Opens what is picked, or keeps what is typed"),
    ("Tab", "From field to field, through everything that can be pressed"),
)
KEPT_ALREADY = "Everything that was entered is kept. What is half typed is kept as a draft."
KEPT_WHILE_ON = "Everything is kept by itself, also while a run is on: its readings are on disk before they are shown."
NO_JOB_FOR_PAPER = "No job is shown whose sheet could be made: take one to the bench, or pick one in the history."

# settings
SETTINGS_SAY = "How this window looks and sounds."
SETTINGS_WHY = (
    "Everything here applies at once, but size and language at the next start. Nothing here can switch anything on, "
    "or raise a ceiling."
)
BACK_FROM_HERE, BACK_NAME = "Back", "Back to where you were. Key: Alt and left"
SETTING_UNDO = "Take back the last change"
SETTING_NOTHING_CHANGED = "Nothing was changed since this window was opened."
SETTING_UNDONE = "Taken back."
NEXT_START = "Takes effect at the next start."
CARD_LOOK, CARD_SOUND, CARD_KEYS = "Look", "Sound", "Taught keys"
FIELD_COLOURS, FIELD_SIZE, FIELD_LANGUAGE = "Colours", "Size", "Language"
COLOUR_NAMES = {"system": "As the desktop", "light": "Light", "dark": "Dark"}
COLOUR_CHOICE, SIZE_CHOICE = "Colours: {name}", "Size: {name}"
FIELD_CONTRAST = "High contrast"
SIZE_PERCENT = "{percent} %"
LANGUAGE_NAMES = {"": "As the desktop", "en": "English", "de": "Deutsch"}
FIELD_BEEP = "Beep at kicks, when current begins to flow by hand, and at pass or fail"
KEYS_WHY = (
    "A foot switch, or any key: press “Teach”, then that key. Esc and Pause are Output off always, whatever is taught."
)
KEY_NONE = "none"
KEY_TEACH, KEY_TEACH_NAME = "Teach", "Teach a key for: {role}"
KEY_FORGET, KEY_FORGET_NAME = "Forget", "Forget the key for: {role}"
KEY_PRESS_NOW = "Press the key now …"
KEY_SAID = "{role}: {words}"
KEY_NOT_WHILE_ON = "Not while a run is on: a key that is pressed could mean something else then."
KEY_NONE_TO_FORGET = "No key is taught for this."
CARD_LIMITS = "Ceilings of the owner"
LIMITS_WHY = "Read from the owner’s file at every run, and shown here only: this program never writes it."
LIMITS_NONE = "The file gives no ceiling: the program’s own, the supply’s, the motor’s and the job’s hold."
LIMITS_USUAL, LIMITS_UNLOCKED = "For every job: {limits}.", "With an unlock, for one job and 12 hours: {limits}."
LIMITS_NO_UNLOCK = "Nothing can be unlocked."
LIMITS_WRONG = "The file can’t be taken, so no run is begun: {what}."
LIMIT_PART = "{name} {value}"
CARD_PLACES = "Where things are"
PLACE_NAMES = {
    "ledger": "Ledger",
    "backups": "Backups",
    "files": "Photos and originals",
    "journals": "Runs not filed yet",
    "owner": "Owner’s settings",
    "window": "Settings of this window",
    "logs": "Logs",
}
PLACE_NOT_THERE = "not there yet"
COPY_PATH, COPY_PATH_NAME = "Copy path", "Copy the path of: {name}"
OPEN_FOLDER, OPEN_FOLDER_NAME = "Open folder", "Open the folder of: {name}"
FOLDER_NOT_WHILE_ON = "While the output may be on no other window is opened in front of this one."
FOLDER_NOT_THERE = "There is no such folder yet."
FOLDER_NOT_OPENED = "The desktop did not open it. The path is copied instead."
COPIED = "Copied: {what}"
CARD_BUNDLE = "For whoever helps when something is wrong"
BUNDLE_WHY = (
    "One file with what this program is and runs on, its logs and the ledger’s form and size. Not in it: jobs, owners, "
    "complaints, photos, traces. Look into it before you give it away; nothing is sent by this program."
)
BUNDLE_MAKE, BUNDLE_TITLE = "Make the file …", "Where to keep the file"
BUNDLE_NOT_WHILE_ON = "Not while the output may be on: making it takes a moment that a run may need."
BUNDLE_MADE = "Made: {path}. Look into it before you give it away."
BUNDLE_FAILED = "The file could not be made: {what}."
CARD_LICENCES = "Licences"
LICENCES_WHY = "The open libraries that this program stands on, with their licences."
LICENCES_NAME = "Licences of the libraries, one below the other"

# help
HELP_TOPICS, HELP_SEARCH = "Topics of the help", "Search the help"
HELP_PAGE = "Help: {title}"
HELP_NOTHING = "Nothing in the help has all these words. Fewer or shorter words find more."
HELP_TITLES: dict[str, str] = {
    "intake": "Intake",
    "make-safe": "Make safe",
    "probe": "Probe",
    "free": "Free",
    "prove": "Prove",
    "close": "Close",
    "record": "Record and costs",
    "curves": "Curves",
    "history": "History",
    "settings": "Settings",
    "safety": "Safety",
    "supply": "The supply",
    "keys": "All keys",
    "words": "Words used here",
}

# why something can't be pressed
NEEDS_JOB = "Take a job in first."
JOB_IS_CLOSED = "The job is closed. What it says is corrected in the history."
COMES_AFTER = "Not yet: first {stage}."
SAFE_OPEN_ONE, SAFE_OPEN_MANY = "1 line is not answered yet.", "{count} lines are not answered yet."
SAFE_KEPT = "Kept with the job; what was said is not taken back."
NOTHING_TO_UNDO = "Nothing was changed that could be taken back."
STILL_LOOKING = "Supplies are being looked for. Wait until that is over."
NOTHING_CALCULATED = "Give what is asked for first."
NO_MINUTES = "The job was not on the bench since minutes were last charged."
GOES_ON_ALREADY = "Work goes on already."
RUN_NOT_NOW = "No run can be begun now."

# to go on with, and what is dropped or pasted
RECENT_TITLE, RECENT_JOB, RECENT_NAME = "Go on with:", "{number:04d} · {kind}", "Go on with job {job}"
DROPPED_LEDGER = (
    "That is a ledger: it is opened when the program starts (benchlog window --ledger FILE). Nothing was taken."
)
DROPPED_TABLE = (
    "That is a table: a capture is laid over a start in the curves room, another trace is laid on a run by “benchlog "
    "import-trace”. Nothing was taken."
)
DROPPED_NO_JOB = (
    "No job is on the bench to keep it with: take one in, or take one up from the history. Nothing was taken."
)
DROPPED_ELSEWHERE = (
    "First take job {number:04d} to the bench, so that it is kept with the right job. Nothing was taken."
)
DROPPED_KEPT = "{name} is kept with job {number:04d}."

# a sheet before it is on paper
PAPER_PAGES = "The pages of the sheet; the arrow keys and Page Down go through them"
PAPER_SAY, PAPER_PAGE = "Sheet of job {number:04d} · {kind}", "Page {number} of {count} of the sheet"
PAPER_PRINT, PAPER_PRINT_NAME, PAPER_SAVE = "Print", "Print on the printer that this computer uses", "Keep as PDF …"
PAPER_NO_PRINTER = "This computer knows no printer. Keep the sheet as PDF, and print that."
PAPER_PRINTED = "Given to the printer {name}."
