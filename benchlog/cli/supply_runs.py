"""Runs that are about a supply and no motor, one after the other in one job, and what was seen in each."""

import uuid
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from benchlog.bench.frames import Request
from benchlog.cli.one_run import run_and_tell
from benchlog.outcome import RunResult
from benchlog.records import Event, Item, RunKind
from benchlog.recovery.ceilings import Layer, Limits
from benchlog.recovery.steps import Sequence
from benchlog.recovery.supply_check import SupplyCheck

if TYPE_CHECKING:
    from benchlog.ledger.filing import Filed
    from benchlog.ledger.store import Ledger
    from drivers.supply import Capabilities

ITEM = "supply check"


@dataclass(frozen=True, slots=True, kw_only=True)
class RunSeen:
    """A filed run."""

    run: int
    result: RunResult
    events: list[Event]


class CheckRuns:
    """`filed`: every run so far; `last`: the one before, None where it was not filed."""

    def __init__(
        self, book: "Ledger", resource: str, can: "Capabilities", owner: Limits, *, as_json: bool, ask: bool
    ) -> None:
        self._book, self._resource, self._can, self._owner = book, resource, can, owner
        self._as_json, self._ask = as_json, ask
        self._job: int | None = None
        self.last: RunSeen | None = None
        self.filed: list[int] = []

    def run(self, check: SupplyCheck, amps: float, on_terminals: str) -> int:
        """Its exit status. `amps`: the ceiling of the job, whose volts are those of the check."""
        from benchlog.ledger.filing import journals_of
        from benchlog.ledger.supplies import spoken_with

        book, uid, self.last = self._book, uuid.uuid4().hex, None
        request = Request(
            uid=uid,
            kind=RunKind.CHECK,
            resource=self._resource,
            rated_volts=check.volts,
            layers={Layer.OWNER: self._owner, Layer.JOB: Limits(volts=check.volts, amps=amps)},
            sequence=Sequence(name=ITEM),
            journal=str(journals_of(book.path) / f"{uid}.journal"),
            job=self._job,
            item=Item(kind=ITEM),
            complaint=f"supply at {self._resource}",
            load_state=on_terminals,
            unattended=True,
            output=self._can.output,
            check=check,
            **spoken_with(book, self._resource),
        )

        def more(filed: "Filed") -> Mapping[str, object]:
            self._take(filed)
            return {}

        return run_and_tell(book, request, as_json=self._as_json, ask=self._ask, more=more)

    def _take(self, filed: "Filed") -> None:
        run = self._book.run(filed.run)
        self._job = run.job
        self.filed.append(filed.run)
        self.last = RunSeen(run=filed.run, result=run.result, events=self._book.events(filed.run))
