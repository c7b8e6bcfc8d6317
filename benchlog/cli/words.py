"""What the terminal says: what happened, whether the output is off, what to do."""

from benchlog.bench.frames import Ended
from benchlog.clock import minute_text
from benchlog.history.cold_restart import Due
from benchlog.outcome import Outcome

CAUTIONS = """\
Before the output goes on:
  - mains off and unplugged; cell out of circuit, its tabs insulated; capacitors discharged and measured;
  - liquid drained and dry; the motor's own leads free of its driver board;
  - fingers, hair and blades clear; eye protection on.
Not with this: mains motors, medical devices, life-safety gear, gas appliances, pressure vessels, swollen cells.
Local rules and licensed practice come first.
Ctrl-C switches the output off. It is no emergency stop: that is the supply's own output key, the lead, or the
mains switch."""

OUTCOMES: dict[Outcome, str] = {
    Outcome.FREED: "Freed: it keeps turning and starts again from rest.",
    Outcome.RUNS: "It runs: it was not stuck.",
    Outcome.STILL_STUCK: "Still stuck. Now by hand: turn, tap, soak, warm; then try again.",
    Outcome.UNDETERMINED: "Undetermined: volts and amps can't tell. Look at the shaft yourself.",
    Outcome.OPEN: "Open: no current flows. Look at brushes, leads and connections.",
    Outcome.SHORT: "Short: the winding or the leads are bridged.",
    Outcome.DIODE: "A diode conducts in this direction: swap the leads, or free the motor of it.",
    Outcome.ELECTRONIC: "Electronics in the way: free the motor's own leads of the driver board.",
    Outcome.CEILING: "Stopped at a ceiling.",
    Outcome.STOPPED: "Stopped.",
    Outcome.SUPPLY_LOST: "The supply was lost or can't be believed.",
    Outcome.REFUSED: "Refused: nothing was driven.",
}

OFF = "The output is off, confirmed by read-back."
NOT_OFF = "NOT CONFIRMED: switch the supply off by hand."
NEVER_ON = "The output was not switched on."

OFF_BY_HAND = 'Type "off" when the supply is switched off by hand'
ACKNOWLEDGED = "Kept with the job: switched off by hand."
NOT_ACKNOWLEDGED = "Nobody has said that it was switched off. It is asked again before the next run on this supply."
UNCONFIRMED = (
    "NOT CONFIRMED: run {run} of job {job:04d}, begun {at} on this supply, ended without its output confirmed "
    "off, and nobody has said since that it was switched off by hand."
)

QUANTITIES: dict[str, tuple[str, str]] = {
    "volts": ("volts", "V"),
    "amps": ("amps", "A"),
    "winding_c": ("winding, estimated", "°C"),
    "locked_s": ("locked in any 60 s", "s"),
    "energy_j": ("energy in any 60 s", "J"),
    "on_s": ("on-time in a row", "s"),
    "kicks": ("kicks a job and day", ""),
}
"""Words and unit of every ceiling, in the order in which they are shown."""


def quantity_text(name: str, value: float | None) -> str:
    """ "24 V": a ceiling exactly as it was given; "—" where a layer gives none."""
    return "—" if value is None else f"{value:.10g} {QUANTITIES[name][1]}".strip()


def off_sentence(ended: Ended) -> str:
    """Whether the output is off. Without a journal a refused run never reached a supply."""
    if ended.result.output_confirmed_off:
        return OFF
    return NEVER_ON if ended.result.outcome is Outcome.REFUSED and ended.journal is None else NOT_OFF


def cold_words(due: Due, job: int) -> str:
    """That the motor of a job, by its number, which was run in is to start once more when it is cold, and how."""
    how = f"benchlog capture --job {job}"
    if due.now:
        return f"to be started once more, now that it is cold: {how}"
    return f"to be started once more when it is cold: from {minute_text(due.from_utc)} on, or tomorrow; then: {how}"
