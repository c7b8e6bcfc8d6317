"""Everything that is not spoken here - USBTMC first of all - through a VISA backend, kept to deadlines by a thread.

The pure-Python backend comes first. What it can't serve on this machine goes to the system's own VISA, where one is
installed; none has to be.
"""

import time
from collections.abc import Callable, Collection
from functools import cache
from typing import Any

import pyvisa
from pyvisa import constants
from pyvisa.errors import VisaIOError

from drivers.links.carrier import Piece
from drivers.links.in_time import InTime
from drivers.scpi import LONGEST_REPLY

PURE, SYSTEM = "@py", "@ivi"
_CLOSE_S = 0.5


class ByVisa:
    """One resource of a backend. A call that does not come back in time leaves the session to its thread."""

    byte_s = 0.0

    def __init__(self, resource: str, backend: str, deadline_s: float) -> None:
        self._thread = InTime()
        self._visa: Any = None
        try:
            self._visa = self._thread.call(
                # One ResourceManager per process and backend: closing it would close every session, so it never is.
                lambda: pyvisa.ResourceManager(backend).open_resource(resource, open_timeout=_left_ms(deadline_s)),
                deadline_s,
                "nothing answers at this address",
            )
        except BaseException:
            self._thread.close(lambda: None, 0.0)
            raise

    def send(self, data: bytes, deadline_s: float) -> None:
        self._call(lambda: self._visa.write_raw(data), deadline_s, "it takes no more messages")

    def receive(self, deadline_s: float) -> Piece:
        # In one go: of a longer reply the pure backend takes the first part over USB for the whole.
        data = self._call(lambda: self._visa.read_raw(LONGEST_REPLY + 1), deadline_s, "no reply in time")
        return Piece(data, len(data) <= LONGEST_REPLY)

    def close(self) -> None:
        self._thread.close(self._visa.close, time.monotonic() + _CLOSE_S)

    def _call(self, act: Any, deadline_s: float, what: str) -> Any:
        def timed() -> Any:
            self._visa.timeout = _left_ms(deadline_s)
            return act()

        try:
            return self._thread.call(timed, deadline_s, what)
        except VisaIOError as error:
            if error.error_code == constants.StatusCode.error_timeout:
                raise TimeoutError(what) from error
            raise


def backend_for(
    kind: tuple[object, str], pure: Collection[tuple[object, str]], has_system: Callable[[], bool]
) -> str | None:
    """Which backend serves an interface type and resource class; None where neither does.

    `has_system`: asked only where it matters, because looking for a library takes 0.2 s.
    """
    if kind in pure:
        return PURE
    return SYSTEM if has_system() else None


def pure_kinds() -> set[tuple[object, str]]:
    """What the pure-Python backend can serve with what is installed here."""
    from pyvisa_py.highlevel import PyVisaLibrary  # registers what it finds
    from pyvisa_py.sessions import Session

    assert PyVisaLibrary
    # It counts GPIB as there without its library; only the class beside it tells.
    missing = {interface for (interface, _), _ in Session.iter_session_classes_issues()}
    return {kind for kind, _ in Session.iter_valid_session_classes() if kind[0] not in missing}


@cache
def has_system_visa() -> bool:
    from pyvisa.ctwrapper.highlevel import IVIVisaLibrary

    return bool(IVIVisaLibrary.get_library_paths())


def _left_ms(deadline_s: float) -> int:
    return max(1, round(1000.0 * (deadline_s - time.monotonic())))
