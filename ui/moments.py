"""Instants as people at the bench read them: local time, short."""

from datetime import UTC, datetime

from benchlog.clock import day_text as day_text
from benchlog.clock import local


def now_text() -> str:
    return datetime.now(UTC).astimezone().strftime("%H:%M:%S")


def now_utc() -> str:
    """ISO 8601 with a trailing Z."""
    return datetime.now(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")


def clock_text(utc: str) -> str:
    """ISO 8601 with a trailing Z to local "14:03"."""
    return local(utc).strftime("%H:%M")
