"""Probe: is there a winding, what is its resistance, is a diode or an electronic driver in the way?"""

from benchlog.records import RunKind
from ui.stages.run_view import RunView
from ui.theme import Tokens


def probe_stage(tokens: Tokens) -> RunView:
    """The chart and one button; the verdict comes as the sentence, the resistance with its interval in it."""
    return RunView(RunKind.PROBE, tokens)
