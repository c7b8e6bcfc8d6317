"""One line of the table, and the interval that belongs to a rate."""

from collections.abc import Iterable
from dataclasses import dataclass

from scipy.stats import binomtest


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """What was measured, what it should be, what it was, over how many, and what belongs beside it."""

    what: str
    goal: str
    reached: str
    count: int
    note: str = ""


def rate(hits: int, count: int, *, per: int = 100) -> str:
    """Hits a hundred (or `per`) with the exact 95 % interval of Clopper and Pearson."""
    if count == 0:
        return "none to count"
    interval = binomtest(hits, count).proportion_ci(0.95, "exact")
    unit = "%" if per == 100 else f"in {per:,}"
    share = f"{per * hits / count:.4g} {unit} ({per * interval.low:.3g} to {per * interval.high:.3g})"
    return f"{share}; {hits} of {count}"


def table(rows: Iterable[Row]) -> str:
    """As the README and DEVELOPERS.md keep it."""
    lines = ["| what | goal | reached | n | beside it |", "|---|---|---|---|---|"]
    lines += [f"| {r.what} | {r.goal} | {r.reached} | {r.count:,} | {r.note} |" for r in rows]
    return "\n".join(lines)
