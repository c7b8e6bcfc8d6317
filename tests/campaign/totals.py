"""Many cases, counted; in one process or several."""

import logging
import tempfile
import traceback
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from multiprocessing import get_context
from pathlib import Path

from tests.campaign.cases import Case, draw_case
from tests.campaign.checks import broken
from tests.campaign.dialects import draw_any_dialect, draw_run_in_in_any_dialect, draw_start_up_in_any_dialect
from tests.campaign.run_ins import draw_run_in
from tests.campaign.running import Record, run_case
from tests.campaign.start_ups import draw_start_up

BATCH = 50
DRAWS: dict[str, Callable[[int, int], Case]] = {
    "any": draw_case,
    "start-up": draw_start_up,
    "run-in": draw_run_in,
    "dialects": draw_any_dialect,
    "start-up-dialects": draw_start_up_in_any_dialect,
    "run-in-dialects": draw_run_in_in_any_dialect,
}
"""Kind of case: what draws it from a seed and a number."""


@dataclass(slots=True)
class Totals:
    """What a number of cases came to. `failures`: case, check, words."""

    cases: int = 0
    runs: int = 0
    readings: int = 0
    virtual_s: float = 0.0
    refused_by_parser: int = 0
    outcomes: Counter[str] = field(default_factory=Counter)
    items: Counter[str] = field(default_factory=Counter)
    faults: Counter[str] = field(default_factory=Counter)
    failures: list[tuple[int, str, str]] = field(default_factory=list)

    def count(self, record: Record) -> None:
        self.cases += 1
        self.refused_by_parser += record.refused_by_parser is not None
        for ran in record.runs:
            self.runs += 1
            self.readings += len(ran.judged)
            self.virtual_s += ran.ended_s - ran.began_s
            self.outcomes[ran.result.outcome] += 1
            self.items[record.case.item] += 1
            self.faults.update(fault.kind for _, _, fault in ran.struck)
            self.failures += [(record.case.number, *one) for one in broken(record.case, ran).items()]

    def add(self, other: "Totals") -> None:
        self.cases += other.cases
        self.runs += other.runs
        self.readings += other.readings
        self.virtual_s += other.virtual_s
        self.refused_by_parser += other.refused_by_parser
        self.outcomes.update(other.outcomes)
        self.items.update(other.items)
        self.faults.update(other.faults)
        self.failures += other.failures


def run_batch(seed: int, numbers: Iterable[int], kind: str = "any") -> Totals:
    """Some cases, one after the other, in this process."""
    totals, logged = Totals(), logging.root.manager.disable
    logging.disable(logging.ERROR)
    try:
        for number in numbers:
            with tempfile.TemporaryDirectory() as folder:
                try:
                    totals.count(run_case(DRAWS[kind](seed, number), Path(folder)))
                except Exception:  # noqa: BLE001  any of them is a failure of the case
                    totals.failures.append((number, "no exception", traceback.format_exc(limit=-3)))
    finally:
        logging.disable(logged)  # what is tested next in this process may be a log
    return totals


def run_all(seed: int, cases: range, workers: int, kind: str = "any") -> Iterator[Totals]:
    """Cases of a seed by their numbers, batch by batch."""
    batches = [cases[first : first + BATCH] for first in range(0, len(cases), BATCH)]
    if workers == 1:
        yield from (run_batch(seed, batch, kind) for batch in batches)
        return
    with ProcessPoolExecutor(workers, mp_context=get_context("spawn")) as pool:
        yield from pool.map(run_batch, [seed] * len(batches), batches, [kind] * len(batches))
