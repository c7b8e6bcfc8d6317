"""What was counted of bands and verdicts, and its tables."""

from collections import Counter, defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from benchlog.motor.start_figures import FIGURES
from benchlog.motor.tolerance import two_sided_factor
from tests.benchmarks.accuracy.rows import rate
from tests.benchmarks.band_population import FAULTS

KNOWN_GOOD = (5, 8, 12, 20)
COVERAGE = CONFIDENCE = 0.95
ONE_START = "any figure, one start against limits, widened, about the mean of 2 to 5"
CURVE = "the whole curve"
CAUSES = {"friction times 2": "friction", "resistance + 30 %": "resistance", "magnet - 15 %": "magnet"}
"""What a sentence must name, among others or alone, to be of use."""


@dataclass(slots=True)
class Counts:
    """`shares`: of counted units inside, one a lot. `none`: lots without such a band. `judged`: by fault and verdict.
    By population, what, and known good units; `named`: failed units whose sentence has the cause in it; `said`:
    sentences by population and fault."""

    shares: dict[tuple[str, str, int], list[float]] = field(default_factory=lambda: defaultdict(list))
    none: Counter[tuple[str, str, int]] = field(default_factory=Counter)
    judged: Counter[tuple[str, str, int, bool | None]] = field(default_factory=Counter)
    named: Counter[tuple[str, str, int]] = field(default_factory=Counter)
    said: Counter[tuple[str, str, str]] = field(default_factory=Counter)

    def add(self, other: "Counts") -> None:
        for key, shares in other.shares.items():
            self.shares[key] += shares
        self.none.update(other.none)
        self.judged.update(other.judged)
        self.named.update(other.named)
        self.said.update(other.said)


def factor_by_chance(n: int, factor: float, source: np.random.Generator, times: int = 1_000_000) -> float:
    """Share of samples whose mean ± factor s holds COVERAGE of a normal population: by drawing, not by integrating."""
    from scipy.stats import norm

    mean = source.standard_normal(times) / np.sqrt(n)
    spread = np.sqrt(source.chisquare(n - 1, times) / (n - 1))
    holds = norm.cdf(mean + factor * spread) - norm.cdf(mean - factor * spread)
    return float(np.mean(holds >= COVERAGE))


def report(counts: Counts, populations: Sequence[str], seed: int) -> str:
    lines = [
        "| population | band | known good | lots in which 95 % or more are inside | in 95 % of lots at least | none |"
    ]
    lines.append("|---|---|---|---|---|---|")
    for population in populations:
        for what in (*(kind.label for kind in FIGURES), CURVE, ONE_START):
            for n in KNOWN_GOOD:
                shares = counts.shares.get((population, what, n), [])
                held = rate(sum(share >= COVERAGE for share in shares), len(shares))
                least = f"{100 * float(np.quantile(shares, 1 - CONFIDENCE)):.1f} %" if shares else "—"
                lines.append(f"| {population} | {what} | {n} | {held} | {least} | {counts.none[population, what, n]} |")
    lines += ["", "| population | unit | known good | fails | can't be told | of the failed, the cause is named |"]
    lines.append("|---|---|---|---|---|---|")
    for population in populations:
        for fault in FAULTS:
            for n in KNOWN_GOOD:
                by = {passed: counts.judged[population, fault, n, passed] for passed in (True, False, None)}
                every = sum(by.values())
                named = rate(counts.named[population, fault, n], by[False]) if fault in CAUSES else "—"
                verdicts = f"{rate(by[False], every)} | {rate(by[None], every)}"
                lines.append(f"| {population} | {fault} | {n} | {verdicts} | {named} |")
    lines += ["", f"Sentences, {max(KNOWN_GOOD)} known good, most often first:", ""]
    for population in populations:
        for fault in FAULTS:
            said = Counter({s: c for (p, f, s), c in counts.said.items() if (p, f) == (population, fault) and c})
            told = "; ".join(f"{count} × {sentence}" for sentence, count in said.most_common(5))
            lines.append(f"- {population}, {fault}: {told}")
    source = np.random.default_rng(seed)
    lines += ["", "Exact factors, by a million drawn samples each, hold 95 % in:", ""]
    for n in (4, 10, 20, 30, 60):
        factor = two_sided_factor(n, COVERAGE, CONFIDENCE)
        lines.append(f"- n {n}, factor {factor:.4f}: {100 * factor_by_chance(n, factor, source):.2f} %")
    return "\n".join(lines)
