"""What is known about the output being off, as a table: commanded, confirmed by read-back, or not confirmed.

"Not confirmed" stays until a person says that the supply was switched off by hand; nothing else takes it away.
"""

from enum import Enum


class OffState(Enum):
    IDLE = "idle"  # nothing was switched on from here
    RUNNING = "running"  # a run is on; the output may be on
    COMMANDED = "commanded"
    CONFIRMED = "confirmed"
    NOT_CONFIRMED = "not confirmed"


class OffEvent(Enum):
    BEGAN = "a run began"
    PRESSED = "output off was pressed"
    ENDED_CONFIRMED = "the run ended, off read back"
    ENDED_UNCONFIRMED = "the run ended, off not read back"
    ENDED_NOTHING_ON = "refused before a supply was reached"
    OVERDUE = "no answer for too long"
    FOUND = "a filed run, off not read back, that nobody has acknowledged"
    ACKNOWLEDGED = "a person switched it off"


_S, _E = OffState, OffEvent
TABLE: dict[tuple[OffState, OffEvent], OffState] = {
    (_S.IDLE, _E.BEGAN): _S.RUNNING,
    (_S.CONFIRMED, _E.BEGAN): _S.RUNNING,
    (_S.RUNNING, _E.PRESSED): _S.COMMANDED,
    (_S.RUNNING, _E.ENDED_CONFIRMED): _S.CONFIRMED,
    (_S.RUNNING, _E.ENDED_UNCONFIRMED): _S.NOT_CONFIRMED,
    (_S.COMMANDED, _E.ENDED_CONFIRMED): _S.CONFIRMED,
    (_S.COMMANDED, _E.ENDED_UNCONFIRMED): _S.NOT_CONFIRMED,
    (_S.RUNNING, _E.ENDED_NOTHING_ON): _S.IDLE,
    (_S.COMMANDED, _E.ENDED_NOTHING_ON): _S.IDLE,
    (_S.COMMANDED, _E.OVERDUE): _S.NOT_CONFIRMED,
    (_S.IDLE, _E.FOUND): _S.NOT_CONFIRMED,
    (_S.CONFIRMED, _E.FOUND): _S.NOT_CONFIRMED,
    (_S.NOT_CONFIRMED, _E.ACKNOWLEDGED): _S.IDLE,
}


def after(state: OffState, event: OffEvent) -> OffState:
    """The next state; an event that has no place in a state changes nothing."""
    return TABLE.get((state, event), state)
