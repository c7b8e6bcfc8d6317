"""What the demo ledger tells, as data: jobs, and what happened in each, checked when they are loaded."""

import tomllib
from datetime import datetime
from importlib.resources import files
from typing import Annotated, TypeAlias

import msgspec

from benchlog.records import Item, Motor, RunKind, Stage

Instant: TypeAlias = Annotated[datetime, msgspec.Meta(tz=True)]


class Happening(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """One thing that happened at `at`: an entry (`stage`), a run (`kind`), or the closing (`cause`).

    A run is on `scenario` with `seed`, or, without, `again_after_s` after the last one, on the same bench.
    """

    at: Instant
    stage: Stage | None = None
    text: str = ""
    who: str = ""
    kind: RunKind | None = None
    scenario: str = ""
    seed: int = 0
    again_after_s: float = 0.0
    cause: str = ""
    work_done: str = ""
    prognosis: str = ""


class DemoJob(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    opened: Instant
    item: Item
    motor: Motor
    complaint: str
    load_state: str
    happenings: tuple[Happening, ...]


class _File(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    jobs: tuple[DemoJob, ...]


def demo_jobs() -> tuple[DemoJob, ...]:
    """The jobs that come with the program, in the order in which they were opened."""
    text = (files("demo_db") / "jobs.toml").read_text(encoding="utf-8")
    return msgspec.convert(tomllib.loads(text), _File).jobs
