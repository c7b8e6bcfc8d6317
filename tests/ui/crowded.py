"""A ledger with some hundred jobs of the invented harbour workshop, for lists and plots; the same from one seed."""

import random
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import msgspec
import numpy as np
from sqlalchemy.orm import Session

from benchlog.clock import VirtualClock, utc_text
from benchlog.ledger.jobs import add_job
from benchlog.ledger.schema import ChargeRow, RunRow, TraceRow
from benchlog.ledger.store import Ledger
from benchlog.ledger.trace_codec import encode
from benchlog.outcome import Outcome, WindingVerdict
from benchlog.records import ChargeKind, Item, JobState, Motor, Result, RunKind, TakenIn
from benchlog.recovery.ceilings import intersect
from tests.ledger.benches import bench_trace

BEGAN = datetime(2025, 3, 3, 8, tzinfo=UTC)
DAYS = 620
THINGS = {
    # of 100 that are kicked, so many come free
    "bilge pump": ("MP", ("30 l/min", "60 l/min"), 82),
    "cabin fan": ("CF", ("150 mm", "180 mm"), 92),
    "fresh-water pump": ("FW", ("10 l/min", "16 l/min"), 70),
    "hatch actuator": ("HA", ("200 mm stroke", "300 mm stroke"), 45),
    "anchor-light dimmer fan": ("DF", ("40 mm",), 6),
}
CAUSES = ("dried residue at the shaft seal", "lubricant gone hard", "rust in the lower bearing", "brush stuck", "shell")
METHODS = ("kicks", "kicks and by hand", "cleaned", "nothing helped")
COMPLAINTS = ("hums, does not turn", "seized over winter", "trips the fuse", "slow, and gets hot", "dead since spring")
PEOPLE = ("dock foreman", "the apprentice")
CEILINGS = msgspec.json.encode(intersect({})).decode()
RUNGS = ("gentle start", "rated volts", "short kicks", "long kicks")


def crowd(ledger: Ledger, jobs: int, seed: int = 11) -> None:
    """Puts so many jobs into a new ledger. What comes back says so. They are found by what was taken in."""
    chance = random.Random(seed)
    serials: dict[str, dict[str, int]] = {kind: {} for kind in THINGS}
    with ledger.writing() as session:
        for number in range(1, jobs + 1):
            kind = chance.choice(tuple(THINGS))
            prefix, models, share = THINGS[kind]
            known = serials[kind]
            serial, last = "", None
            if known and chance.random() < 0.25:
                serial = chance.choice(tuple(known))
                last = known[serial]
            elif chance.random() < 0.8:
                serial = f"{prefix}-{chance.randint(1000, 99999)}"
            opened = BEGAN + timedelta(days=DAYS * number / jobs, minutes=chance.randint(0, 400))
            row = add_job(
                session,
                item=Item(kind=kind, model=chance.choice(models), serial=serial),
                motor=Motor(rated_volts=12.0),
                complaint=chance.choice(COMPLAINTS),
                load_state="dry, uncoupled",
                opened_utc=utc_text(opened),
                taken_in=TakenIn(owner=f"berth {chance.randint(1, 80)}", who=chance.choice(PEOPLE), comeback_of=last),
            )
            session.flush()
            if serial:
                known[serial] = row.id
            free = chance.randint(1, 100) <= share
            outcome = Outcome.FREED if free else Outcome.STILL_STUCK
            _run(session, row.id, opened, outcome, chance)
            row.last_outcome = outcome.value
            if number > jobs - 12 and chance.random() < 0.7:
                state = chance.choice(tuple(JobState)[:-1])
                row.state = state.value
                if state is not JobState.OPEN:
                    row.waiting_since_utc = utc_text(opened + timedelta(days=1))
            else:
                row.state, row.closed_utc = JobState.CLOSED.value, utc_text(opened + timedelta(days=2))
                row.cause, row.work_done = chance.choice(CAUSES), "soaked, cleaned, seal oiled"
                row.result = (Result.WORKS if free else Result.NOT_REPAIRED).value
                row.method = METHODS[3] if not free else chance.choice(METHODS[:3])
            if chance.random() < 0.8:
                minutes = 5 * chance.randint(1, 18)
                told = {"text": "work", "who": row.who, "utc": utc_text(opened)}
                cost = {"count": minutes, "each_cents": 5400, "cents": 90 * minutes}
                session.add(ChargeRow(job_id=row.id, kind=ChargeKind.MINUTES.value, **told, **cost))


def crowded_ledger(path: Path, jobs: int) -> Ledger:
    """Open; its clock stands at the day after the last job."""
    ledger = Ledger.open(path, clock=VirtualClock(utc_start=BEGAN + timedelta(days=DAYS + 1)))
    crowd(ledger, jobs)
    return ledger


def _run(session: Session, job: int, opened: datetime, outcome: Outcome, chance: random.Random) -> None:
    samples = chance.randint(800, 2500)
    row = RunRow(
        job_id=job,
        uid=f"{chance.getrandbits(128):032x}",
        kind=RunKind.RECOVERY.value,
        started_utc=utc_text(opened + timedelta(hours=1)),
        duration_s=samples / 96.0,
        resource="TCPIP::192.0.2.7::5025::SOCKET",
        identity="Harbour Workshop,Simulated bench supply,1,1.0",
        dialect="plain",
        rated_volts=12.0,
        load_state="dry, uncoupled",
        sequence_name="starting-ladder",
        request="{}",
        ceilings=CEILINGS,
        program="benchlog",
        complete=True,
        outcome=outcome.value,
        reason="it turned for 2 s" if outcome is Outcome.FREED else "the ladder is at its end",
        winding_verdict=WindingVerdict.WINDING.value,
        kicks=chance.randint(1, 9) if outcome is Outcome.FREED else chance.randint(20, 40),
        moved=outcome is Outcome.FREED,
        locked_s=1.0,
        output_confirmed_off=True,
        freed_rung=chance.choice(RUNGS) if outcome is Outcome.FREED else "",
    )
    session.add(row)
    session.flush()
    trace, amps = bench_trace(samples, seed=job), chance.uniform(0.6, 1.0)
    coded = encode(replace(trace, volts=10 * trace.volts, amps=np.round(amps * trace.amps, 3)))
    session.add(
        TraceRow(run_id=row.id, samples=coded.samples, format=coded.format, checksum=coded.checksum, data=coded.data)
    )
