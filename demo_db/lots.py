"""What the demo ledger measures beside its repairs, as data: a start test and lots, checked when they are loaded."""

import tomllib
from importlib.resources import files

import msgspec

from benchlog.records import CheckKind, Item, Motor
from benchlog.recovery.start_test import StartTest
from demo_db.jobs import Instant


class DemoCheck(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    at: Instant
    kind: CheckKind
    value: float
    unit: str


class DemoUnit(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """Measured at `at` on `scenario` with `seed`, fields of its motor multiplied by `motor`. `good`: known to be."""

    at: Instant
    serial: str
    seed: int
    scenario: str = "free"
    motor: dict[str, float] = {}
    good: bool = False


class DemoLot(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`limits_at`: when limits are made from the good ones and all units are judged by them."""

    opened: Instant
    name: str
    item: Item
    motor: Motor
    load_state: str
    operator: str
    leads: str
    fixture: str
    ambient_c: float
    limits_at: Instant
    checks: tuple[DemoCheck, ...]
    units: tuple[DemoUnit, ...]


class _File(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    test: StartTest
    lots: tuple[DemoLot, ...]


def demo_test() -> StartTest:
    """By which every start of the demo is captured."""
    return _told().test


def demo_lots() -> tuple[DemoLot, ...]:
    """In the order in which they were begun."""
    return _told().lots


def _told() -> _File:
    text = (files("demo_db") / "lots.toml").read_text(encoding="utf-8")
    return msgspec.convert(tomllib.loads(text), _File)
