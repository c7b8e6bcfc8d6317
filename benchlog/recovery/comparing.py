"""Where today's conclusions about a run differ from the filed ones: events, winding, outcome, figures."""

import re

from benchlog.outcome import WindingVerdict
from benchlog.records import TICK_S, Event, EventKind
from benchlog.recovery.filed_run import Difference, Filed, Replayed
from benchlog.recovery.moves import Finding, Situation

CLOCK_S = 3 * TICK_S
"""What rounding of the record can make of the loop's clock."""
_SHIFTED_OHM_SHARE = 0.02
"""Of a resistance: what a reading more or less may change."""
_BOUND_K, _LOCKED_S, _LOCKED_SHARE, _OHM_SHARE = 0.5, 0.05, 0.02, 0.001
_COMPARED = (EventKind.FINDING, EventKind.KICK, EventKind.LOOK, EventKind.TURNING, EventKind.MOVED)


class Comparison:
    """Adds what differs to `told`. `trip`: the event with which the filed run ended, if it tripped."""

    def __init__(self, filed: Filed, told: Replayed, situation: Situation, trip: Event | None) -> None:
        self._filed, self.told, self._situation, self._trip = filed, told, situation, trip

    def events(self, marks: list[Event]) -> None:
        """Conclusions in their order, up to the first that differs, and the winding by its figures."""
        until_s = self.told.diverged_s
        was = [e for e in self._filed.events if _concludes(e) and (until_s is None or e.t_s <= until_s + CLOCK_S)]
        now = [e for e in marks if _concludes(e)]
        for filed, today in zip(was, now, strict=False):
            if (filed.kind, _verdict(filed)) != (today.kind, _verdict(today)):
                self.differs(filed.t_s, str(filed.kind), filed.text, today.text, _why(today))
                return
            self._ohms(filed, today)
        for extra, side in ((was[len(now) :], "filed"), (now[len(was) :], "today")):
            if extra and until_s is None and (self._filed.complete or side == "filed"):
                texts = (extra[0].text, "nothing") if side == "filed" else ("nothing", extra[0].text)
                self.differs(extra[0].t_s, str(extra[0].kind), *texts, _why(extra[0]))

    def _ohms(self, filed: Event, today: Event) -> None:
        shifted = _SHIFTED_OHM_SHARE if self.told.inexact else _OHM_SHARE
        was, now = filed.values.get("resistance_ohm"), today.values.get("resistance_ohm")
        if (was is None) != (now is None) or (
            isinstance(was, int | float) and isinstance(now, int | float) and abs(now - was) > shifted * abs(was)
        ):
            self.differs(filed.t_s, "resistance", _in_ohms(was), _in_ohms(now), _why(today))

    def result(self, finding: Finding, now_s: float) -> None:
        """How it ended, and its figures."""
        filed = self._filed.result
        if not self._filed.complete:
            self.told.remarks.append("The run was cut short; its outcome was not compared.")
            return
        if self._from_outside():
            assert self._trip is not None
            self.differs(now_s, "outcome", self._trip.text, f"{finding.outcome}: {finding.reason}")
            return
        if finding.outcome != filed.outcome or _words(finding.reason) != _words(filed.reason):
            self.differs(
                now_s,
                "outcome",
                f"{filed.outcome}: {filed.reason}",
                f"{finding.outcome}: {finding.reason}",
            )
        self._figures(now_s)

    def end_of_record(self, now_s: float) -> None:
        """The plan wanted to go on where the record ends."""
        if not self._filed.complete:
            self.told.remarks.append(f"The run was cut short: compared up to its last reading at {now_s:.2f} s.")
        elif self._from_outside():
            assert self._trip is not None
            self.told.remarks.append(f"It ended from outside ({self._trip.text}); compared up to there.")
            self._figures(now_s)
        elif self._trip is not None:
            self.differs(self._trip.t_s, "trip", self._trip.text, "no trip: it would go on")
        else:
            filed = self._filed.result
            self.differs(now_s, "outcome", f"{filed.outcome}: {filed.reason}", "it would go on")

    def _from_outside(self) -> bool:
        """Whether a stop, a lost link or a full disk ended it: no reading says so."""
        starts = ("stopped: ", "the record can't be kept", f"{self._filed.resource}: ")
        return self._trip is not None and self._trip.text.startswith(starts)

    def _figures(self, now_s: float) -> None:
        filed, now, budget = self._filed.result, self._situation, self._situation.budget
        verdict = now.winding.verdict if now.winding is not None else WindingVerdict.NOT_PROBED
        if verdict != filed.winding_verdict:
            self.differs(None, "winding", str(filed.winding_verdict), str(verdict))
        if budget.kicks_this_run != filed.kicks:
            self.differs(None, "kicks", str(filed.kicks), str(budget.kicks_this_run))
        if now.moved != filed.moved:
            self.differs(None, "moved", _yes(filed.moved), _yes(now.moved))
        locked_s = budget.locked_total_s
        if abs(locked_s - filed.locked_s) > max(_LOCKED_S, _LOCKED_SHARE * filed.locked_s):
            self.differs(None, "locked time", f"{filed.locked_s:.3g} s", f"{locked_s:.3g} s")
        bound_c = budget.winding_c(max(self._filed.duration_s, now_s))
        if filed.winding_bound_c is not None and abs(bound_c - filed.winding_bound_c) > _BOUND_K:
            self.differs(None, "bound of the winding's heat", f"{filed.winding_bound_c:.1f} °C", f"{bound_c:.1f} °C")

    def differs(self, t_s: float | None, what: str, filed: str, today: str, why: str = "") -> None:
        """Adds a difference."""
        self.told.differences.append(Difference(t_s=t_s, what=what, filed=filed, today=today, why=why))


def _concludes(event: Event) -> bool:
    return event.kind in _COMPARED and event.values.get("by") != "operator"


def _verdict(event: Event) -> str:
    match event.kind:
        case EventKind.KICK | EventKind.LOOK:
            return event.text.rpartition(": ")[2]
        case EventKind.FINDING:
            return str(event.values.get("verdict", _words(event.text)))
    return ""


def _why(event: Event) -> str:
    return str(event.values.get("why") or "")


def _words(text: str) -> str:
    """The text without its figures: these follow from readings that may be shifted by one."""
    return re.sub(r"\d+(\.\d+)?(e[+-]?\d+)?", "#", text)


def _in_ohms(value: object) -> str:
    return f"{value:.4g} Ω" if isinstance(value, int | float) else "none"


def _yes(value: bool) -> str:
    return "yes" if value else "no"
