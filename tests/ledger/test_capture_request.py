"""What a run that measures is asked to be: from the ledger's own word, and refused above a ceiling by the field."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from benchlog.clock import VirtualClock
from benchlog.errors import Refused
from benchlog.ledger.capture_request import AMBIENT_C, capture_request
from benchlog.ledger.filing import journals_of
from benchlog.ledger.lots import add_unit
from benchlog.ledger.store import Ledger
from benchlog.ledger.unlocks import OwnerLayer
from benchlog.records import Item, RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.start_test import RunIn, StartTest
from tests.ledger.benches import QUICK_LOOK, a_lot, file_start_up, fresh_ledger

RESOURCE = "TCPIP::127.0.0.1::5025::SOCKET"
OWNER = OwnerLayer(limits=Limits(volts=24.0, amps=6.0))
TWELVE = {Layer.JOB: Limits(volts=12.0)}


@pytest.fixture
def ledger(tmp_path: Path) -> Iterator[Ledger]:
    with fresh_ledger(tmp_path, VirtualClock()) as ledger:
        yield ledger


def test_a_run_without_a_job_is_of_the_thing_that_is_named(ledger: Ledger) -> None:
    asked = capture_request(
        ledger, resource=RESOURCE, rated_volts=12.0, test=QUICK_LOOK, layers=TWELVE, owner=OWNER, item=Item(kind="fan")
    )
    assert (asked.kind, asked.job, asked.unit, asked.item) == (RunKind.START_UP, None, None, Item(kind="fan"))
    assert asked.start_test == QUICK_LOOK
    assert asked.layers == {Layer.JOB: Limits(volts=12.0), Layer.OWNER: OWNER.limits}
    assert asked.sequence.steps == (), "no ladder is climbed in it"
    assert (asked.ambient_c, asked.lead_ohm, asked.earlier) == (AMBIENT_C, 0.0, ())
    assert Path(asked.journal).parent == journals_of(ledger.path)


def test_a_unit_brings_its_lots_job_ambient_and_its_own_warmth(ledger: Ledger, tmp_path: Path) -> None:
    measured = a_lot(ledger)
    one, other = (add_unit(ledger, measured, serial) for serial in ("F-1", "F-2"))
    file_start_up(ledger, tmp_path, "r1", job=measured.job.id, unit=one.id, utc=ledger.clock.utc())
    warm, cold = (
        capture_request(
            ledger, resource=RESOURCE, rated_volts=12.0, test=QUICK_LOOK, layers=TWELVE, owner=OWNER, unit=unit
        )
        for unit in (one, other)
    )
    assert (warm.job, warm.unit, warm.ambient_c) == (measured.job.id, one.id, 21.5)
    assert sum(pulse.joules for pulse in warm.earlier) > 1.0, "its own starts of just now"
    assert cold.earlier == (), "another serial is another motor"


def test_a_run_in_is_asked_for_in_the_same_way(ledger: Ledger) -> None:
    asked = capture_request(
        ledger, resource=RESOURCE, rated_volts=12.0, test=RunIn(volts=6.0), layers=TWELVE, owner=OWNER
    )
    assert (asked.kind, asked.run_in, asked.start_test) == (RunKind.RUN_IN, RunIn(volts=6.0), None)


@pytest.mark.parametrize(
    ("test", "words"),
    [
        (StartTest(name="x", volts=13.0), "start_test.volts: 13 V is above the job's ceiling of 12 V"),
        (StartTest(name="x", volts=9.0, amps=7.0), "start_test.amps: 7 A is above the owner's ceiling of 6 A"),
        (RunIn(volts=13.0), "run_in.volts: 13 V is above the job's ceiling of 12 V"),
        (StartTest(name="x", volts=9.0, starts=0), "starts: 0 is outside"),
    ],
)
def test_what_is_above_a_ceiling_is_refused_by_its_field(ledger: Ledger, test: StartTest | RunIn, words: str) -> None:
    with pytest.raises(Refused, match=words):
        capture_request(ledger, resource=RESOURCE, rated_volts=12.0, test=test, layers=TWELVE, owner=OWNER)
    assert ledger.jobs() == []


def test_a_unit_of_another_job_is_refused(ledger: Ledger) -> None:
    one = add_unit(ledger, a_lot(ledger), "F-1")
    with pytest.raises(Refused, match="not one of job"):
        capture_request(
            ledger,
            resource=RESOURCE,
            rated_volts=12.0,
            test=QUICK_LOOK,
            layers=TWELVE,
            owner=OWNER,
            job=one.job + 1,
            unit=one,
        )
