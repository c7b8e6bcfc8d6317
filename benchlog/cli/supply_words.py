"""What the terminal says of a supply: its dialect in words, what is missing, and what the program does about it."""

from typing import Any

import msgspec

from drivers.dialect import Dialect
from drivers.finding_measured import Measured
from drivers.supply import (
    CHOICE_NOT_TOLD,
    CHOSEN_APART,
    NO_ERROR_QUEUE,
    NO_MODE,
    NO_OUTPUT_STATE,
    NO_OVER_AMPS_LATCH,
    NO_OVER_VOLTS_LATCH,
    NO_SETPOINTS,
    ONE_SWITCH,
    RANGE_NOT_TOLD,
    UNUSABLE,
)

WIDTH = 110

ABOUT_GAPS: dict[str, str] = {
    NO_SETPOINTS: "It is not used: a knob that somebody turned would go unseen.",
    NO_OUTPUT_STATE: "It is not used: an output that stayed on would go unseen.",
    NO_OVER_VOLTS_LATCH: "The volts are watched at every reading, by the program alone: one ceiling less, "
    "which every record says.",
    NO_OVER_AMPS_LATCH: "The current limit and every reading hold the amps, with no latch behind them: one ceiling "
    "less, which every record says.",
    NO_MODE: "Whether volts or current hold is reckoned from each reading and the setpoints.",
    NO_ERROR_QUEUE: "What it refused shows by reading back: a setpoint that did not arrive ends the run.",
    RANGE_NOT_TOLD: "Its range is no ceiling then: the owner's, the job's and the program's hold. Give it with "
    "--most-volts and --most-amps.",
    ONE_SWITCH: "Off switches every output off, and on switches every one on: use one output only.",
    CHOICE_NOT_TOLD: "Which output it listens for can't be asked, and what it refused is not told: look that the right "
    "one lights up.",
    CHOSEN_APART: "The output is chosen anew before every message; keep other programs and the front panel away.",
}

MEASURED_NEXT = "settling is measured next"
NOT_MEASURED = "settling was not measured: that needs the output on, nothing connected, and --settling"


def working(dialect: Dialect, measured: Measured | None) -> list[str]:
    """What can be used."""
    can = None if measured is None else measured.capabilities
    has = [
        ("volts and amps set and read back", bool(dialect.readback.set_volts and dialect.readback.set_amps)),
        ("whether the output is on", bool(dialect.readback.output or (dialect.status and dialect.status.output))),
        ("what holds it, volts or current", NO_MODE not in gaps(dialect, measured)),
        ("over-voltage latch", can.over_volts if can else dialect.over_volts is not None),
        ("over-current latch", can.over_amps if can else dialect.over_amps is not None),
        ("error queue", dialect.errors.form != "none"),
        ("sensing with four wires", can.sense if can else dialect.sense is not None),
        ("an output timer of its own", can.watchdog if can else dialect.watchdog is not None),
        ("a measurement array, asked for before a capture", dialect.array is not None),
    ]
    return [name for name, there in has if there]


def gaps(dialect: Dialect, measured: Measured | None) -> list[str]:
    """What is missing, the worst first."""
    from drivers.identifying import gaps_of

    found = gaps_of(dialect) if measured is None else measured.capabilities.gaps
    return sorted(found, key=lambda gap: (gap not in UNUSABLE, gap))


def as_toml(dialect: Dialect) -> str:
    """A dialect's file, without what has its usual value."""
    plain = msgspec.to_builtins(dialect)
    lines = [f"name = {_toml(plain['name'])}"]
    for name, part in plain.items():
        if isinstance(part, dict):
            lines += ["", f"[{name}]"] + [f"{key} = {_toml(value)}" for key, value in part.items() if value is not None]
    return "\n".join(lines) + "\n"


def _toml(value: Any) -> str:
    """JSON's texts, numbers and lists are TOML's too."""
    if isinstance(value, dict):
        return "{ " + ", ".join(f"{key} = {_toml(one)}" for key, one in value.items()) + " }"
    return msgspec.json.encode(value).decode()
