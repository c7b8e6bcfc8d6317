"""What the terminal says: what happened, whether the output is off, what to do."""

from benchlog.outcome import Outcome, RunResult

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


def off_sentence(result: RunResult) -> str:
    """Whether the output is off."""
    if result.output_confirmed_off:
        return OFF
    return NEVER_ON if result.outcome is Outcome.REFUSED and result.max_volts is None else NOT_OFF
