"""What the demo ledger tells, as data: jobs, and what happened in each, checked when they are loaded."""

import tomllib
from datetime import datetime
from importlib.resources import files
from typing import Annotated, TypeAlias

import msgspec

from benchlog.records import EntryKind, Item, JobState, Motor, Result, RunKind, Stage, TakenIn

Instant: TypeAlias = Annotated[datetime, msgspec.Meta(tz=True)]


class Happening(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """One thing that happened at `at`: an entry (`stage`), a run (`kind`), a cost, a finding, a wait or the closing.

    A run is on `scenario` with `seed`, fields of its motor multiplied by `motor`; or, without, `again_after_s` after
    the last one, on the same bench.
    """

    at: Instant
    stage: Stage | None = None
    text: str = ""
    who: str = ""
    by_hand: EntryKind = EntryKind.NOTE
    minutes: int = 0
    part: str = ""
    cents: int = 0
    found: str = ""
    marking: str = ""
    place: str = ""
    purpose: str = ""
    value: str = ""
    waits: JobState | None = None
    kind: RunKind | None = None
    scenario: str = ""
    seed: int = 0
    motor: dict[str, float] = {}
    again_after_s: float = 0.0
    cause: str = ""
    work_done: str = ""
    prognosis: str = ""
    result: Result = Result.UNSAID
    method: str = ""
    advice: str = ""
    warranty_days: int | None = None


class Spare(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A part on the shelf before the first job."""

    name: str
    each_cents: int
    stock: int


class DemoJob(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    opened: Instant
    item: Item
    motor: Motor
    complaint: str
    load_state: str
    taken_in: TakenIn = TakenIn()
    happenings: tuple[Happening, ...]


class _File(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    jobs: tuple[DemoJob, ...]
    shelf: tuple[Spare, ...] = ()


def demo_shelf() -> tuple[Spare, ...]:
    """The spare parts that the workshop keeps."""
    return _told().shelf


def demo_jobs() -> tuple[DemoJob, ...]:
    """The jobs that come with the program, in the order in which they were opened."""
    return _told().jobs


def _told() -> _File:
    text = (files("demo_db") / "jobs.toml").read_text(encoding="utf-8")
    return msgspec.convert(tomllib.loads(text), _File)
