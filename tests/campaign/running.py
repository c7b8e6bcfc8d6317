"""A case run to its end on the shipped driver, loop, guard, plan, arming, switching off and journal."""

import threading
from dataclasses import dataclass, field
from datetime import UTC, datetime
from itertools import pairwise
from pathlib import Path

from msgspec.structs import replace

from benchlog.bench.conduct import Conductor
from benchlog.bench.frames import Answer, Frame, Hold, Progress, Question, Renew, Request
from benchlog.bench.journal import Block, Journal, JournalContents, Sample, read_journal
from benchlog.bench.lease import Lease
from benchlog.bench.rescue import Charge
from benchlog.bench.switching_off import switch_off
from benchlog.clock import VirtualClock
from benchlog.errors import Refused
from benchlog.outcome import Outcome, RunResult
from benchlog.records import Trace
from benchlog.recovery.budget import Pulse, pulses_of
from benchlog.recovery.by_hand import STILL_STUCK
from benchlog.recovery.ceilings import Ceilings, Layer, Limits, intersect
from benchlog.recovery.steps import Sequence, parse
from drivers.dialect import Dialect, shipped
from drivers.scpi_supply import ScpiSupply, Session
from drivers.simulated.bench import Bench
from drivers.simulated.quirks import together
from drivers.simulated.scenario import ResistorData
from drivers.simulated.truth import Extremes, OutputTruth, Truth
from drivers.simulated.virtual import VirtualSession
from drivers.supply import Capabilities, Reading, SupplyError
from tests.campaign.cases import AMBIENT_C, Case
from tests.campaign.dialects import reading_s, spoken_in
from tests.campaign.faults import DEATHS, Dead, Fault, FaultySession, Wire
from tests.campaign.lines import AnySession

BEGAN = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)
RENEW_EVERY_S = 0.1


class RunClock(VirtualClock):
    """Virtual time in which the window goes on renewing its lease while anybody waits."""

    lease: Lease | None = None
    wire: Wire | None = None
    asked: tuple[float, int] | None = None
    case: Case | None = None

    def wait(self, until_s: float, wake: threading.Event | None = None) -> None:
        while self.now() < until_s - RENEW_EVERY_S and not (wake is not None and wake.is_set()):
            super().wait(self.now() + RENEW_EVERY_S, wake)
            self._renew()
        super().wait(until_s, wake)
        self._renew()

    def _renew(self) -> None:
        if self.lease is not None and self.wire is not None and self.wire.window_open:
            self.lease.take(Renew())
            self._hands(self.lease)

    def _hands(self, lease: Lease) -> None:
        """The key, said to be down with every renewal while it is; and the answer, when it is time."""
        if self.asked is None or self.case is None:
            return
        since_s = self.now() - self.asked[0]
        lease.take(Hold(down=any(a <= since_s < b for a, b in self.case.holds)))
        if since_s >= self.case.answers_s:
            lease.take(Answer(question=self.asked[1], choice=STILL_STUCK))
            self.asked = None


class WatchedSupply(ScpiSupply):
    """The shipped supply; what its reads returned is kept, to hold the record against."""

    def __init__(self, rig: "Rig") -> None:
        self._rig = rig
        super().__init__(rig.open_session, rig.dialect, rig.clock.now, output=rig.case.output, wait=rig.clock.wait)

    def read(self) -> Reading:
        reading = super().read()
        self._rig.judged.append(reading)
        return reading


class CountedJournal(Journal):
    """The shipped journal; fails when the wire says that the disk does."""

    rig: "Rig"
    samples = 0

    def write(self, block: Block) -> None:
        if self.rig.wire.journal_broken:
            raise OSError("no space left on the disk")
        super().write(block)
        self.samples += isinstance(block, Sample)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ran:
    """One run and all that is known of it. `judged`: the readings the program had; `log`: what reached the instrument.

    `shown_early`: readings on the screen before they were in the journal. `on_at_end`: the output, by the
    truth. `hand_volts`, `hand_amps`: the most that a hand set; `reading_s`: one takes so long.
    `ignored_off`: OFFs that a fault of the run before left to be ignored.
    """

    result: RunResult
    journal: JournalContents | None
    ceilings: Ceilings
    judged: tuple[Reading, ...]
    log: tuple[tuple[float, str], ...]
    struck: tuple[tuple[float, int, Fault], ...]
    truth: tuple[Truth, ...]
    extremes: Extremes
    ending_s: float | None
    began_s: float
    ended_s: float
    on_at_end: bool
    shown_early: int
    kicks_before: int
    hand_volts: float
    hand_amps: float
    hand_mattered: bool
    reachable_at_end: bool
    ignores_off: bool
    ignored_off: bool
    set_volts_at_end: float
    set_amps_at_end: float
    reading_s: float
    others_left_alone: bool

    @property
    def armed_s(self) -> float:
        """When the supply had been made ready, its output still off; the first reading is part of that."""
        return self.judged[0].received_s if self.judged else self.ended_s

    @property
    def off_was_possible(self) -> bool:
        return self.reachable_at_end and not self.ignores_off and not self.hand_after_death

    @property
    def hand_after_death(self) -> bool:
        """A hand switched on what no process of ours had switched on, or was there any more to switch off."""
        dead = [when for when, _, fault in self.struck if fault.kind in DEATHS]
        hands = [when for when, _, fault in self.struck if fault.kind == "hand: on"]
        return bool(dead and hands) and not self.judged and max(hands) >= min(dead)

    @property
    def gap_s(self) -> float:
        """Between two readings at the most, and to the OFF that the later one led to."""
        return max((b.received_s - a.received_s for a, b in pairwise(self.judged)), default=0.0) + self.reading_s

    @property
    def trace(self) -> Trace:
        assert self.journal is not None
        return self.journal.trace

    @property
    def switches(self) -> list[OutputTruth]:
        return [one for one in self.truth if isinstance(one, OutputTruth)]

    def hit_by(self, *kinds: str) -> list[tuple[float, int, Fault]]:
        return [one for one in self.struck if one[2].kind in kinds]


@dataclass(slots=True, kw_only=True)
class Record:
    """A case and its runs; none where the parser refused the sequence."""

    case: Case
    refused_by_parser: str | None = None
    runs: list[Ran] = field(default_factory=list)


class Rig:
    """Bench, clock and wire of a case."""

    def __init__(self, case: Case) -> None:
        self.case = case
        if case.dialect is None:
            self.bench = self.own = Bench(case.scenario, seed=case.number)
            plain = shipped()
            self.dialect = replace(plain, link=replace(plain.link, compound=case.compound))
        else:
            self.bench, self.own = _bench_that_speaks(case, case.dialect)
            self.dialect = spoken_in(case)
        self.bench.instrument.reply_s = case.reply_s
        self.clock = RunClock(utc_start=BEGAN)
        self.clock.case = case
        self.judged: list[Reading] = []
        self.identified: list[Capabilities] = []
        self.new_run(list(case.faults))

    def new_run(self, faults: list[Fault]) -> None:
        lease = Lease(self.clock)
        self.wire = Wire(
            bench=self.bench,
            own=self.own,
            clock=self.clock,
            lease=lease,
            latches=self.case.latches,
            waiting=faults,
            exponents=self.case.exponents,
        )
        self.clock.lease, self.clock.wire, self.clock.asked = lease, self.wire, None
        self.judged.clear()
        self.identified.clear()
        self.own.extremes = Extremes()

    def between_runs(self) -> float:
        """A rest; a supply that was left on stays so until a hand switches it off. When it was off, in s."""
        self.clock.wait(self.clock.now() + self.case.unseen_s)
        self.bench.advance(self.clock.now())
        if self.own.output.on:
            self.own.output.switch(False)
            self.bench.instrument.offs_to_ignore = 0
        off_s = max((one.at_s for one in self.own.truth if isinstance(one, OutputTruth)), default=0.0)
        self.clock.wait(self.clock.now() + 2.0)
        self.bench.advance(self.clock.now())
        return off_s

    def open_session(self, timeout_s: float) -> Session:
        self.wire.check_link("drawn")
        inner = VirtualSession(self.bench, self.clock.now, self.clock.wait)
        session = (
            FaultySession(inner, self.wire)
            if self.case.dialect is None
            else AnySession(inner, self.wire, self.dialect, self.case.output)
        )
        session.set_timeout(timeout_s)
        return session

    def hang_up(self) -> None:
        """What a process leaves behind when it is killed: closed lines."""
        for session in list(self.bench.sessions):
            assert isinstance(session, VirtualSession)
            session.close()

    @property
    def others(self) -> list[Bench]:
        """The further outputs of the same supply."""
        return [one for one in (self.bench, *self.bench.others) if one is not self.own]

    def answer(self, frame: Frame) -> None:
        """Somebody at the bench: does what is asked, or skips it."""
        if not isinstance(frame, Question):
            return
        if STILL_STUCK in frame.choices:
            self.clock.asked = (self.clock.now(), frame.id)
            return
        choice = frame.choices[0 if self.case.answer_first else -1]
        if choice == "leads are swapped":
            self.own.swap_leads()
        lease = self.clock.lease
        assert lease is not None
        lease.take(Answer(question=frame.id, choice=choice))


def _bench_that_speaks(case: Case, dialect: Dialect) -> tuple[Bench, Bench]:
    """The instrument's bench, and that of the output in use; what else there is has a resistor on it."""
    quirks = together(case.quirks)
    if case.output == 1:
        bench = Bench(case.scenario, seed=case.number, speaks=dialect, quirks=quirks)
        return bench, bench
    plain = replace(case.scenario, motor=None, driver=None, diode=None, resistor=ResistorData(ohms=20.0))
    bench = Bench(plain, seed=case.number, speaks=dialect, quirks=quirks, others=(case.scenario,))
    return bench, bench.others[0]


def _limits_told(case: Case) -> Limits:
    """The supply's range, as far as it can be known."""
    supply, dialect = case.scenario.supply, case.dialect
    if dialect is None or dialect.ranges is not None:
        return Limits(volts=supply.volts_max, amps=supply.amps_max)
    asked = dialect.identify
    return Limits(volts=supply.volts_max if asked.volts_max else None, amps=supply.amps_max if asked.amps_max else None)


def _untouched(bench: Bench) -> bool:
    return (
        not bench.output.on and bench.output.set_v == 0.0 and not any(isinstance(t, OutputTruth) for t in bench.truth)
    )


def run_case(case: Case, folder: Path) -> Record:
    """All runs of a case, one after the other on one bench. Faults that did not strike are left for the next run."""
    record = Record(case=case)
    try:
        sequence = parse(case.sequence) if case.sequence else Sequence(name=case.kind.value)
    except Refused as refusal:
        record.refused_by_parser = str(refusal)
        return record
    rig, earlier, known_ohm, kicks = Rig(case), tuple[Pulse, ...](), None, 0
    for number in range(case.runs):
        if number:
            off_s = rig.between_runs()
            now_s, last = rig.clock.now(), record.runs[-1]
            ended_s = max((one.received_s for one in last.judged), default=last.began_s)
            earlier = tuple(
                pulses_of(
                    last.trace,
                    ended_ago_s=now_s - ended_s,
                    off_ago_s=min(now_s - off_s, now_s - ended_s),
                    reference_ohm=known_ohm,
                    rated_volts=case.scenario.rated_volts,
                )
            )
            rig.new_run([])
        ran = _run(rig, sequence, folder / f"{number}.journal", earlier, known_ohm, kicks)
        record.runs.append(ran)
        if ran.journal is None:
            break
        known_ohm = ran.result.resistance_high_ohm or known_ohm
        kicks += ran.journal.kicks
    return record


def _run(
    rig: Rig, sequence: Sequence, path: Path, earlier: tuple[Pulse, ...], known_ohm: float | None, kicks: int
) -> Ran:
    case, wire, first, began_s = rig.case, rig.wire, len(rig.own.truth), rig.clock.now()
    to_ignore = rig.bench.instrument.offs_to_ignore
    request = Request(
        uid=path.stem,
        kind=case.kind,
        resource="TCPIP::127.0.0.1::5025::SOCKET",
        rated_volts=case.scenario.rated_volts,
        layers=case.layers,
        sequence=sequence,
        journal=str(path),
        job=None,
        unattended=case.unattended,
        ambient_c=AMBIENT_C,
        kicks_today=kicks,
        known_ohm=known_ohm,
        earlier=earlier,
        starts=2,
        start_test=case.start_test,
        run_in=case.run_in,
    )
    journal = CountedJournal(path, sync_thread=False)
    journal.rig = rig
    shown = shown_early = 0

    def emit(frame: Frame) -> None:
        nonlocal shown, shown_early
        if isinstance(frame, Progress):
            shown += len(frame.t_s)
            shown_early = max(shown_early, shown - journal.samples)
        rig.answer(frame)

    assert rig.clock.lease is not None
    conductor = Conductor(
        request, clock=rig.clock, lease=rig.clock.lease, emit=emit, beat=lambda: None, going_off=wire.ends,
        journal=journal,
    )  # fmt: skip
    try:
        result = conductor.run(lambda: WatchedSupply(rig), rig.identified.append)
    except Dead:
        journal.close()
        result = _rescued(rig)
    output, ended_s = rig.own.output, rig.clock.now()
    rig.bench.advance(ended_s + together(case.quirks).relay_s)
    on_at_end, left = output.on, (output.set_v, output.limit_a)
    rig.bench.advance(ended_s + 0.2)
    return Ran(
        result=result,
        journal=read_journal(path) if path.exists() else None,
        ceilings=intersect(case.layers | {Layer.SUPPLY: _limits_told(case)}),
        judged=tuple(rig.judged),
        log=tuple(wire.log),
        struck=tuple(wire.struck),
        truth=tuple(rig.own.truth[first:]),
        extremes=rig.own.extremes,
        ending_s=wire.ending_s,
        began_s=began_s,
        ended_s=ended_s,
        on_at_end=on_at_end,
        shown_early=shown_early,
        kicks_before=kicks,
        hand_volts=wire.hand_volts,
        hand_amps=wire.hand_amps,
        hand_mattered=wire.hand_mattered,
        reachable_at_end=ended_s >= wire.down_until_s,
        ignores_off=rig.bench.instrument.offs_to_ignore > 0,
        ignored_off=rig.bench.instrument.offs_to_ignore < to_ignore,
        set_volts_at_end=left[0],
        set_amps_at_end=left[1],
        reading_s=reading_s(case),
        others_left_alone=all(_untouched(one) for one in rig.others),
    )


def _rescued(rig: Rig) -> RunResult:
    """What the waiting process does once it knows: a fresh session, off until read back, for as long as it tries."""
    wire, clock = rig.wire, rig.clock
    hung = any(fault.kind == "hung" for _, _, fault in wire.struck)
    known = rig.identified[-1] if rig.identified else None
    wire.dead = wire.dead_after = False
    rig.hang_up()
    wire.waiting = [fault for fault in wire.waiting if fault.kind not in DEATHS]  # it is another process
    result = RunResult(outcome=Outcome.STOPPED, reason="the bench process was gone", output_confirmed_off=False)
    if known is None:
        return result  # it is ready before the output may be on; here nothing was on yet
    charge = Charge(resource="", pid=0, record="", capabilities=known)
    clock.wait(clock.now() + (charge.silence_s if hung else 0.0))
    until_s = clock.now() + 3.0
    while not result.output_confirmed_off and clock.now() < until_s:
        try:
            supply = ScpiSupply(
                rig.open_session, rig.dialect, clock.now, output=rig.case.output, known=known, wait=clock.wait
            )
        except SupplyError:
            clock.wait(clock.now() + 0.02)
            continue
        off = switch_off(supply, clock, wire.ends)
        supply.close()
        result = replace(result, reason=off.text, output_confirmed_off=off.confirmed)
    return result
