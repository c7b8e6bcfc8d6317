"""Every sentence that the curves room says to a person, as `ui.texts` holds those of the other rooms."""

# chart
OVERLAY_NAME = "Starts over one another, from their trigger on"
OVERLAY_HINT = (
    "Wheel: closer or wider in time, with Ctrl in amps. Drag: along; with Shift: a box to look into. Double click or "
    "Home: back to the whole."
)
OVERLAY_EMPTY = "Nothing captured yet"
OVERLAY_TOLD = "{name}: {starts}. {picked}"
TRIGGER_LINE = "trigger: {word}"
TRIGGER_WORDS = {"output-on": "output on", "amps": "amps rise", "volts": "volts rise"}
CURSOR_TIME = "Δt {seconds}"
CURSOR_ALL = "{name}:  Δt {seconds}   ΔV {volts}   ΔI {amps}"
CURSOR_LETTERS = ("A", "B")
AMPS_PANE, VOLTS_PANE, VOLTS_MOTOR_PANE = "amps", "volts at the terminals", "volts at the motor"


def starts(count: int) -> str:
    """ "1 start", "12 starts"."""
    return "1 start" if count == 1 else f"{count} starts"
