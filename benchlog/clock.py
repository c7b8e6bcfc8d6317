"""The only place that knows what time it is, so that a whole bench also runs in virtual time."""

import threading
import time
from datetime import UTC, datetime
from typing import Protocol


class Clock(Protocol):
    """Monotonic seconds, a UTC instant, and a wait that an event may cut short."""

    def now(self) -> float: ...

    def awake_and_asleep(self) -> float:
        """Seconds that go on while the computer sleeps, from any origin."""
        ...

    def utc(self) -> str:
        """ISO 8601 with milliseconds and a trailing Z."""
        ...

    def wait(self, until_s: float, wake: threading.Event | None = None) -> None:
        """Returns at `until_s` of now(), or at once when `wake` is set."""
        ...


class SystemClock:
    """Real time. perf_counter, because Windows' monotonic clock steps by 15.6 ms before Python 3.13."""

    def now(self) -> float:
        return time.perf_counter()

    def awake_and_asleep(self) -> float:
        # perf_counter stands still in a suspend on Linux; elsewhere only the wall clock is sure to go on.
        return time.clock_gettime(time.CLOCK_BOOTTIME) if hasattr(time, "CLOCK_BOOTTIME") else time.time()

    def utc(self) -> str:
        return utc_text(datetime.now(UTC))

    def wait(self, until_s: float, wake: threading.Event | None = None) -> None:
        remaining = until_s - self.now()
        if remaining <= 0:
            return
        if wake is None:
            time.sleep(remaining)
        else:
            wake.wait(remaining)


class VirtualClock:
    """Time that passes only when it is told to. Starts at `start_s`, and at `utc_start` for the record."""

    def __init__(self, start_s: float = 0.0, utc_start: datetime = datetime(2026, 1, 1, tzinfo=UTC)) -> None:
        self._start_s = start_s
        self._now_s = start_s
        self._utc_start = utc_start
        self._slept_s = 0.0

    def now(self) -> float:
        return self._now_s

    def awake_and_asleep(self) -> float:
        return self._now_s + self._slept_s

    def sleep(self, for_s: float) -> None:
        """The computer sleeps: only the clock that goes on in a suspend does."""
        self._slept_s += for_s

    def utc(self) -> str:
        return utc_text(datetime.fromtimestamp(self._utc_start.timestamp() + self._now_s - self._start_s, UTC))

    def wait(self, until_s: float, wake: threading.Event | None = None) -> None:
        if wake is None or not wake.is_set():
            self._now_s = max(self._now_s, until_s)

    def advance(self, by_s: float) -> None:
        self._now_s += by_s


def utc_text(instant: datetime) -> str:
    """The one form in which instants are kept: 2026-01-01T12:00:00.000Z."""
    return instant.astimezone(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")


def local(utc: str) -> datetime:
    """An instant as it was kept, by the calendar and the clock here. Raises ValueError, OverflowError or OSError where
    it is none, or none that this system's calendar reaches."""
    return datetime.fromisoformat(utc).astimezone()


def day_text(utc: str) -> str:
    """Its day here, 2026-01-01; what is no instant as it was kept."""
    try:
        return local(utc).date().isoformat()
    except (ValueError, OverflowError, OSError):
        return utc[:10]


def minute_text(utc: str) -> str:
    """Its day and minute here, with the zone they are in: 2026-01-01 12:00 UTC+01:00."""
    try:
        at = local(utc)
    except (ValueError, OverflowError, OSError):
        return utc[:16]
    offset = f"{at:%z}"
    return f"{at:%Y-%m-%d %H:%M} UTC{f'{offset[:3]}:{offset[3:5]}' if offset.strip('+-0') else ''}"
