"""Instants as people at the bench read them: local time, short."""

from datetime import UTC, datetime


def now_text() -> str:
    return datetime.now(UTC).astimezone().strftime("%H:%M:%S")


def now_utc() -> str:
    """ISO 8601 with a trailing Z."""
    return datetime.now(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")


def clock_text(utc: str) -> str:
    """ISO 8601 with a trailing Z to local "14:03"."""
    return _local(utc).strftime("%H:%M")


def day_text(utc: str) -> str:
    """ISO 8601 with a trailing Z to a local date."""
    return _local(utc).strftime("%Y-%m-%d")


def _local(utc: str) -> datetime:
    return datetime.fromisoformat(utc.replace("Z", "+00:00")).astimezone()
