"""A filed run through today's code: the same readings, the same plan, and where its conclusions differ.

The plan is driven by the recorded readings instead of a supply. The record does not say at which instant the loop
decided, only, to 0.1 ms, when readings were asked for and came. So where today's plan sets something a reading earlier
or later than was recorded, readings are stepped over or repeated, and counted. Where it sets something else it has
diverged, and from there on only the guard's judgement of the readings is compared.
"""

from benchlog.motor.motion import Motion
from benchlog.outcome import Outcome
from benchlog.records import FLAG_CC, FLAG_CV, FLAG_ON, TICK_S, Event, EventKind, RunKind, Trace
from benchlog.recovery.commands import Apply, Ask, Command, Mark, Seen, Switch
from benchlog.recovery.comparing import CLOCK_S, Comparison
from benchlog.recovery.filed_run import Difference, Filed, Replayed
from benchlog.recovery.guard import Trip
from benchlog.recovery.moves import REST_PACE_S, Finding
from benchlog.recovery.plan import plan_of
from benchlog.recovery.setting_up import set_up
from drivers.supply import ArrayLimits, Capabilities, Reading, Regulation

SHIFT_MOST = 5
"""Readings by which today's plan may be early or late at one place while volts are set. Rests may be of any length."""
RESTS_MOST = 6000
REST_ALIKE_S = 1.0
"""s by which a rest may differ without being told: rests are looked for in steps that grow with them."""
SHIFTED_SHARE = 0.06
"""Of a setpoint: what a reading more or less may change. A hold is lowered in steps of 5 %."""
_OPERATOR_ANSWERED = "It moved a little, the operator says."
_DEFAULTS = {"volts_step": 0.001, "amps_step": 0.001, "window_s": 0.02, "settle_s": 0.0}


def replay(filed: Filed) -> Replayed:
    """A filed run through today's guard, budget and plan."""
    told = _Replay(filed, TICK_S / 2).run()
    if told.differences and told.undecided:
        # Whether a reading at the very edge belonged to its setpoint is not in the record: the other way fits better?
        other = _Replay(filed, -TICK_S / 2).run()
        return min(told, other, key=lambda one: len(one.differences))
    return told


class _Diverged(Exception):
    """Today's plan asked for something that was not recorded."""

    def __init__(self, t_s: float, filed: str, today: str) -> None:
        super().__init__(today)
        self.t_s, self.filed, self.today = t_s, filed, today


class _RecordEnds(Exception):
    """The plan wants to go on and there are no more readings."""


class _Replay:
    def __init__(self, filed: Filed, edge_s: float) -> None:
        self._filed, self._edge_s = filed, edge_s
        self.told = Replayed()
        self._can = _capabilities(filed.events, self.told.remarks)
        self._situation, self._guard = set_up(filed, filed.ceilings, self._can, began_s=0.0)
        self._plan = plan_of(filed.kind, self._situation, filed.starts)
        self._trip = next((e for e in filed.events if e.kind is EventKind.TRIP), None)
        self._compare = Comparison(filed, self.told, self._situation, self._trip)
        self._rows = _readings(filed.trace)
        if self._trip is not None:
            self._rows = [row for row in self._rows if row.received_s <= self._trip.t_s + CLOCK_S]
        self._at = -1  # the row that was seen last
        self._set = Apply(volts=0.0, amps=0.0)
        self._set_at_s = self._rows[0].sent_s if self._rows else 0.0
        self._marks: list[Event] = []
        self._answers = [e for e in filed.events if e.kind is EventKind.ANSWER]
        self._questions = [e.t_s for e in filed.events if e.kind is EventKind.QUESTION]
        self._asked = False
        self._repeats = 0  # since the last recorded command
        self._felt = [
            e
            for e in filed.events
            if e.kind is EventKind.MOVED and e.values.get("by") == "operator" and e.text != _OPERATOR_ANSWERED
        ]
        if filed.kind is RunKind.HAND:
            self.told.remarks.append("When the key was held is taken from when current was let flow.")

    @property
    def _now_s(self) -> float:
        return self._rows[self._at].received_s if self._at >= 0 else 0.0

    def run(self) -> Replayed:
        told, finding, ended = self.told, None, False
        try:
            finding = self._through_plan()
        except _RecordEnds:
            ended = True
        except _Diverged as here:
            told.diverged_s = here.t_s
            last = self._marks[-1] if self._marks else None
            why = "" if last is None else f"the last that it noted: {last.text} {last.values.get('why') or ''}".strip()
            told.differences.append(
                Difference(t_s=here.t_s, what="command", filed=here.filed, today=here.today, why=why)
            )
        self._compare.events(self._marks)
        if told.diverged_s is not None:
            self._guard_alone()
        elif ended:
            self._compare.end_of_record(self._now_s)
        else:
            assert finding is not None
            self._compare.result(finding, self._now_s)
        told.readings = len(self._rows)
        return told

    def _through_plan(self) -> Finding:
        try:
            command = self._past_marks(next(self._plan))
            while True:
                refusal = self._guard.admit(command)
                if refusal is not None:
                    outcome = Outcome.CEILING if isinstance(command, Apply) else Outcome.STOPPED
                    return self._tripped(Trip(outcome=outcome, text=refusal))
                seen, trip = self._answered(command)
                if trip is not None:
                    return self._tripped(trip)
                command = self._past_marks(self._plan.send(seen))
        except StopIteration as done:
            finding: Finding = done.value
            return finding

    def _tripped(self, trip: Trip) -> Finding:
        text = self._trip.text if trip.went_off and self._trip is not None else trip.text
        outcome = Outcome.CEILING if text.endswith("latch tripped") else trip.outcome
        return Finding(outcome=outcome, reason=text)

    def _past_marks(self, command: Command) -> Command:
        while isinstance(command, Mark):
            event = command.event
            self._marks.append(Event(t_s=self._now_s, kind=event.kind, text=event.text, values=event.values))
            command = next(self._plan)
        return command

    def _answered(self, command: Command) -> tuple[Seen, Trip | None]:
        """The recorded reading that answers a command, found again where the record is early or late."""
        passed, early_s = 0, 0.0
        while True:
            row = self._next_row()
            if row is None:
                raise _RecordEnds
            if self._fits(command, row):
                break
            if not self._as_before(row):
                return self._other_than_recorded(command, row)
            if not isinstance(command, Apply | Switch) or (passed >= SHIFT_MOST and self._driven(row)):
                raise _Diverged(row.sent_s, f"left as it was: {_in_words(row)}", _wish_in_words(command))
            # Today's plan is early: what was still read before the recorded command counts for the guard alone.
            self._at += 1
            passed += 1
            self.told.stepped_over += 1
            early_s += row.received_s - self._rows[self._at - 1].received_s if self._at else 0.0
            trip = self._guard.judge(row)
            if trip is not None:
                return self._seen(row, self._now_s), trip
        self._compare_rest(row.sent_s, early_s)
        self._send(command, row.sent_s)
        self._at += 1
        return self._seen(row, None), self._guard.judge(row)

    def _other_than_recorded(self, command: Command, row: Reading) -> tuple[Seen, Trip | None]:
        """The record sets something here and the plan does not, or something else."""
        if isinstance(command, Apply | Switch) or self._at < 0:
            raise _Diverged(row.sent_s, _in_words(row), _wish_in_words(command))
        last = self._rows[self._at]
        if self._repeats >= (SHIFT_MOST if self._driven(last) else RESTS_MOST):
            raise _Diverged(row.sent_s, _in_words(row), "watch on, and set nothing yet")
        # Today's plan is late: the last reading once more, at the instant when the recorded command was sent; while it
        # rests, as often as it wants to rest on.
        late_s = 0.0 if self._driven(last) else self._repeats * REST_PACE_S
        self._repeats += 1
        self.told.repeated += 1
        return self._seen(last, row.sent_s + late_s), None

    def _compare_rest(self, t_s: float, early_s: float) -> None:
        late_s = self._repeats * REST_PACE_S
        if max(early_s, late_s) > REST_ALIKE_S:
            today = f"{early_s:.1f} s less" if early_s else f"{late_s:.1f} s more"
            self._compare.differs(t_s, "rest", f"rested until {t_s:.2f} s", today)

    def _send(self, command: Command, at_s: float) -> None:
        self._repeats = 0
        if isinstance(command, Apply):
            self._set = command
        elif isinstance(command, Ask):
            self._asked = True
            put_s = self._questions.pop(0) if self._questions else at_s
            self._answers = [e for e in self._answers if e.t_s >= put_s]
        if isinstance(command, Apply | Switch):
            self._set_at_s = at_s
            self._guard.sent(command, at_s)

    def _next_row(self) -> Reading | None:
        return self._rows[self._at + 1] if self._at + 1 < len(self._rows) else None

    def _fits(self, command: Command, row: Reading) -> bool:
        on = self._rows[self._at].output_on if self._at >= 0 else False
        match command:
            case Apply():
                return row.output_on == on and self._is_set_to(row, command)
            case Switch():
                return row.output_on == command.on
            case _:
                return self._as_before(row)

    def _as_before(self, row: Reading) -> bool:
        """Whether nothing was set or switched since the last reading; what comes at the very first counts as that."""
        if self._at < 0:
            return True
        last = self._rows[self._at]
        return (row.output_on, row.set_volts, row.set_amps) == (last.output_on, last.set_volts, last.set_amps)

    def _is_set_to(self, row: Reading, command: Apply) -> bool:
        shifted = SHIFTED_SHARE if self.told.inexact else 0.0
        return all(
            abs(told - said) <= 1.01 * step + (1e-4 + shifted) * said
            for told, said, step in (
                (row.set_volts, command.volts, max(self._can.volts_step, 0.001)),
                (row.set_amps, command.amps, max(self._can.amps_step, 0.001)),
            )
        )

    def _driven(self, row: Reading) -> bool:
        return row.output_on and row.set_volts > 0

    def _seen(self, row: Reading, now_s: float | None) -> Seen:
        after = self._next_row()
        changes = after is not None and not self._as_before(after)
        if now_s is None:
            # The loop's clock lies within the rounding of the record; what it then decided says on which side.
            now_s = row.received_s + (CLOCK_S if changes else -CLOCK_S)
        window_from_s = row.sent_s - self._can.window_s
        settled_s = self._set_at_s + self._can.settle_s
        self.told.undecided += abs(window_from_s - settled_s) < 1.5 * TICK_S
        return Seen(
            reading=row,
            now_s=now_s,
            set_at_s=self._set_at_s,
            since_s=window_from_s - self._set_at_s,
            whole=window_from_s >= settled_s - self._edge_s,
            answer=self._answer_by(row, after),
            felt=self._felt_by(row, after),
            held=after is not None and after.output_on and (after.set_volts > 0 or not row.output_on),
        )

    def _answer_by(self, row: Reading, after: Reading | None) -> str | None:
        answer = None
        while self._asked and self._answers and _by_then(self._answers[0].t_s, row, after):
            answer = self._answers.pop(0).text  # the last word counts
        self._asked = self._asked and answer is None
        return answer

    def _felt_by(self, row: Reading, after: Reading | None) -> bool:
        felt = bool(self._felt) and _by_then(self._felt[0].t_s, row, after)
        if felt:
            self._felt.pop(0)
        return felt

    def _guard_alone(self) -> None:
        """After a divergence: today's guard over the commands that were recorded, locked time aside."""
        self.told.remarks.append(
            "After the divergence only the guard's judgement of the readings was compared, locked time aside."
        )
        off_again = len(self._rows)
        while off_again and not self._rows[off_again - 1].output_on:
            off_again -= 1
        while self._at + 1 < off_again:
            row = self._rows[self._at + 1]
            if not self._as_before(row) or not self._is_set_to(row, self._set):
                self._send(Switch(on=row.output_on), row.sent_s)
                # Which of it turned is not known any more: heat and energy count in any case, locked time does not.
                self._send(Apply(volts=row.set_volts, amps=row.set_amps, belief=Motion.TURNING), row.sent_s)
            self._at += 1
            trip = self._guard.judge(row)
            if trip is not None:
                if self._trip is None or self._at + 1 < len(self._rows):
                    self._compare.differs(row.received_s, "trip", "no trip", trip.text)
                return


def _readings(trace: Trace) -> list[Reading]:
    columns = (trace.sent, trace.received, trace.volts, trace.amps, trace.set_volts, trace.set_amps, trace.flags)
    rows = zip(*(column.tolist() for column in columns), strict=True)
    return [
        Reading(
            sent_s=sent * TICK_S,
            received_s=received * TICK_S,
            volts=volts,
            amps=amps,
            set_volts=set_volts,
            set_amps=set_amps,
            output_on=bool(flags & FLAG_ON),
            regulation=Regulation.CC if flags & FLAG_CC else Regulation.CV if flags & FLAG_CV else Regulation.UNKNOWN,
        )
        for sent, received, volts, amps, set_volts, set_amps, flags in rows
    ]


def _capabilities(events: tuple[Event, ...], remarks: list[str]) -> Capabilities:
    """The supply as the record introduces it; what older records lack is assumed, and said to be."""
    supply = next((e for e in events if e.kind is EventKind.SUPPLY), None)
    values = supply.values if supply is not None else {}
    known = {name: value for name in _DEFAULTS if isinstance(value := values.get(name), int | float)}
    missing = [name for name in _DEFAULTS if name not in known]
    if missing:
        assumed = ", ".join(f"{name} {_DEFAULTS[name]:g}" for name in missing)
        remarks.append(f"The record does not tell the supply's {assumed}: assumed.")
    found = _DEFAULTS | known
    return Capabilities(
        identity=str(values.get("identity", "")),
        dialect=str(values.get("dialect", "")),
        volts_max=None,
        amps_max=None,
        latches=frozenset(),
        reply_s=0.0,
        volts_step=float(found["volts_step"]),
        amps_step=float(found["amps_step"]),
        window_s=float(found["window_s"]),
        settle_s=float(found["settle_s"]),
        array=_array(values),
    )


def _array(values: dict[str, float | int | str | bool | None]) -> ArrayLimits | None:
    interval_s, points = values.get("array_interval_s"), values.get("array_points")
    if not isinstance(interval_s, int | float) or not isinstance(points, int):
        return None
    return ArrayLimits(least_interval_s=float(interval_s), most_points=points)


def _by_then(t_s: float, row: Reading, after: Reading | None) -> bool:
    """Whether something said at an instant was there when this reading was handed on: it lies nearer to it."""
    return after is None or t_s - row.received_s <= max(after.sent_s - t_s, CLOCK_S)


def _in_words(row: Reading) -> str:
    return f"{row.set_volts:g} V, {row.set_amps:g} A, output {'on' if row.output_on else 'off'}"


def _wish_in_words(command: Command) -> str:
    match command:
        case Apply():
            return f"set {command.volts:.4g} V, {command.amps:.4g} A"
        case Switch():
            return f"output {'on' if command.on else 'off'}"
        case Ask():
            return f'ask "{command.text}"'
    return "watch on"
