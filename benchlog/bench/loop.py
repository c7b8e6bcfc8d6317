"""The control loop: read, judge, record, next, admit, send. One run from first to last reading.

Everything it touches is handed in, the clock included, so that it also runs in virtual time.
"""

import logging
from collections.abc import Callable
from dataclasses import dataclass

from benchlog.bench.frames import Answer, Note
from benchlog.bench.journal import Dense as DenseBlock
from benchlog.bench.journal import Happening, Journal, Kicked
from benchlog.bench.lease import Lease
from benchlog.clock import Clock
from benchlog.outcome import Outcome
from benchlog.records import TICK_S, Event, EventKind
from benchlog.recovery.commands import Acquire, Apply, Ask, Command, Fetch, Mark, Plan, Seen, Switch, Watch
from benchlog.recovery.guard import Guard, Trip
from benchlog.recovery.moves import Finding
from drivers.supply import Dense, Reading, Setpoint, Supply, SupplyError

SLEPT_S = 2.0
"""s by which the clocks may drift apart in a run before the computer is taken to have slept."""
LOOK_AHEAD_S = 0.05
BEAT_WHILE_WAITING_S = 0.1
"""s between two beats while the loop waits for the time of a slow reading: silence counts as death after 0.5 s."""
_log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True, kw_only=True)
class Screen:
    """Where the loop shows what happens. None of these may block."""

    reading: Callable[[Reading, Apply], None]
    event: Callable[[Event], None]
    question: Callable[[int, Ask], None]


class Loop:
    """One run. `zero_s`: clock time that the record counts from. `beat`: tells the rescue that this process lives."""

    def __init__(
        self,
        *,
        supply: Supply,
        guard: Guard,
        journal: Journal,
        lease: Lease,
        clock: Clock,
        screen: Screen,
        zero_s: float,
        beat: Callable[[], None],
    ) -> None:
        self._supply, self._guard, self._journal = supply, guard, journal
        self._lease, self._clock, self._screen = lease, clock, screen
        self._zero_s, self._beat = zero_s, beat
        self._applied = Apply(volts=0.0, amps=0.0)
        self._set_at_s = clock.now()
        self._ahead_s = clock.awake_and_asleep() - clock.now()
        self._question = 0
        self._was_on = False
        self._took_s = 0.0
        self._answer: str | None = None
        self._felt = False
        self._dense: Dense | None = None
        self.max_volts: float | None = None
        self.max_amps: float | None = None

    def run(self, plan: Plan[Finding]) -> Finding:
        """Until the plan ends, or a trip. The output is left as it is: the caller switches off in any case."""
        try:
            command = self._past_marks(plan, next(plan))
            while True:
                trip = self._send(command)
                if trip is None:
                    reading = self._supply.read()
                    self._record(reading)
                    trip = self._guard.judge(reading) or self._wish()
                if trip is not None:
                    return self._tripped(self._explained(trip))
                command = self._past_marks(plan, plan.send(self._seen(reading)))
        except StopIteration as done:
            finding = done.value
            assert isinstance(finding, Finding)
            return finding
        except SupplyError as error:
            return self._tripped(Trip(outcome=Outcome.SUPPLY_LOST, text=str(error)))
        except OSError as error:
            return self._tripped(Trip(outcome=Outcome.STOPPED, text=f"the record can't be kept: {error}"))

    def _send(self, command: Command) -> Trip | None:
        """Waits for its time, admits, sends. A refusal is a trip: a plan that asks for too much is over."""
        if isinstance(command, Apply | Watch):
            self._wait(command.at_s)
        self._beat()
        refusal = self._guard.admit(command)
        if refusal is not None:
            return Trip(outcome=self._outcome_of_refusing(command), text=refusal)
        trip = self._wish()
        if trip is not None:
            return trip
        match command:
            case Apply():
                if command.kick:
                    self._journal.write(Kicked(round((self._clock.now() - self._zero_s) / TICK_S)))
                self._supply.set(Setpoint(volts=command.volts, amps=command.amps))
                self._applied = command
            case Switch():
                self._was_on |= command.on
                self._supply.switch(command.on)
            case Ask():
                self._question += 1
                self._answer = None
                self.note(Event(t_s=0.0, kind=EventKind.QUESTION, text=command.text))
                self._screen.question(self._question, command)
            case Acquire():
                self._acquire(command)
            case Fetch():
                self._fetch(command.number)
            case Watch() | Mark():
                return None
        if isinstance(command, Apply | Switch):
            self._set_at_s = self._clock.now()
            self._guard.sent(command, self._set_at_s)
        if isinstance(command, Apply) and command.read_later_s > 0:
            self._wait(self._set_at_s + command.read_later_s)
        return None

    def _acquire(self, command: Acquire) -> None:
        """A supply whose array gives nothing usable is no reason to end: one that is lost shows in the next reading."""
        try:
            self._supply.acquire(command.points, command.interval_s, self._beat)
        except (ValueError, SupplyError) as error:
            self.note(Event(t_s=0.0, kind=EventKind.NOTE, text=f"The supply's own array was not started: {error}."))

    def _fetch(self, number: int) -> None:
        """What the supply's own array held: on disk first."""
        try:
            dense = self._supply.fetch(self._beat)
        except (ValueError, SupplyError) as error:
            self.note(Event(t_s=0.0, kind=EventKind.NOTE, text=f"No dense curve of start {number}: {error}."))
            return
        began = round((dense.began_s - self._zero_s) / TICK_S)
        self._journal.write(DenseBlock(number, began, dense.interval_s, dense.volts, dense.amps, dense.u_began_s))
        self._dense = dense

    def _wait(self, until_s: float) -> None:
        """Until then, or until the lease is over, whichever comes first; saying meanwhile that this process lives."""
        while not self._lease.wake.is_set():
            now_s = self._clock.now()
            next_s = min(until_s, self._lease.expires_s)
            if now_s >= next_s:
                return
            self._beat()
            self._clock.wait(min(next_s, now_s + BEAT_WHILE_WAITING_S), self._lease.wake)

    def _outcome_of_refusing(self, command: Command) -> Outcome:
        if isinstance(command, Apply):
            return Outcome.CEILING
        return Outcome.STOPPED if self._was_on else Outcome.REFUSED

    def _wish(self) -> Trip | None:
        """What the operator said meanwhile: notes and answers for the record; a stop, or silence, is a trip."""
        for order in self._lease.said():
            match order:
                case Answer():
                    if order.question == self._question:
                        self._answer = order.choice
                        self.note(Event(t_s=0.0, kind=EventKind.ANSWER, text=order.choice))
                case Note(moved=True):
                    self._felt = True
                    self.note(Event(t_s=0.0, kind=EventKind.MOVED, text=order.text, values={"by": "operator"}))
                case Note():
                    self.note(Event(t_s=0.0, kind=EventKind.HAND if order.hand else EventKind.NOTE, text=order.text))
        slept_s = self._clock.awake_and_asleep() - self._clock.now() - self._ahead_s
        if abs(slept_s) > SLEPT_S:
            return Trip(
                outcome=Outcome.STOPPED, text=f"stopped: the computer slept, or its clock jumped {slept_s:.0f} s"
            )
        # The next chance to notice comes with the next reading: off by the end of the lease, not a reading later.
        ended = self._lease.ended(self._clock.now() + min(self._took_s, LOOK_AHEAD_S))
        return None if ended is None else Trip(outcome=Outcome.STOPPED, text=f"stopped: {ended}")

    def _record(self, reading: Reading) -> None:
        self._journal.sample(reading, self._zero_s)
        self._took_s = reading.received_s - reading.sent_s
        self.max_volts = max(reading.volts, self.max_volts or 0.0)
        self.max_amps = max(reading.amps, self.max_amps or 0.0)
        self._screen.reading(reading, self._applied)

    def note(self, event: Event) -> None:
        """An event, stamped now, on disk first and then on the screen."""
        stamped = Event(
            t_s=round(self._clock.now() - self._zero_s, 4), kind=event.kind, text=event.text, values=event.values
        )
        self._journal.write(Happening(stamped))
        self._screen.event(stamped)

    def _past_marks(self, plan: Plan[Finding], command: Command) -> Command:
        while isinstance(command, Mark):
            self.note(command.event)
            command = next(plan)
        return command

    def _seen(self, reading: Reading) -> Seen:
        window_from_s = reading.sent_s - self._supply.capabilities.window_s
        answer, self._answer = self._answer, None
        dense, self._dense = self._dense, None
        felt, self._felt = self._felt, False
        now_s = self._clock.now()
        return Seen(
            reading=reading,
            now_s=now_s,
            set_at_s=self._set_at_s,
            since_s=window_from_s - self._set_at_s,
            whole=window_from_s >= self._set_at_s + self._supply.capabilities.settle_s,
            answer=answer,
            felt=felt,
            held=self._lease.held(now_s),
            dense=dense,
        )

    def _explained(self, trip: Trip) -> Trip:
        """An output that went off by itself: the supply's own latch, where it says so."""
        if not trip.went_off:
            return trip
        try:
            latch = self._supply.tripped()
        except SupplyError:
            return trip
        return trip if latch is None else Trip(outcome=Outcome.CEILING, text=f"the supply's own {latch} latch tripped")

    def _tripped(self, trip: Trip) -> Finding:
        try:
            self.note(Event(t_s=0.0, kind=EventKind.TRIP, text=trip.text, values={"outcome": trip.outcome}))
        except OSError as error:
            _log.error("the trip could not be recorded: %s", error)
        return Finding(outcome=trip.outcome, reason=trip.text)
