"""What figures outside their limits look like, in words: a table of patterns, none of which says more than it shows.

Source of the patterns: the trade's no-load table (low speed and high current: friction or shorted turns; low current:
high resistance; weak magnet: more current), and the equations of a motor: stall current V/R, current at speed T/K, time
constant J R/K². A speed is not measured.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from benchlog.motor.limit_values import JudgedFigure, listed
from benchlog.quantities import show

FRICTION = "more current than a weak magnet with that run-up explains"
NEAR_STALL = "the steady current is most of the peak"


@dataclass(frozen=True, slots=True, kw_only=True)
class Signs:
    """`signs`: by figure and "ohms", +1 above, 0 inside, -1 below, None where these starts don't tell it; absent where
    there are no limits. `also`: of FRICTION and NEAR_STALL. `curve_at_s`: where the curve is farthest outside, or None.
    """

    signs: Mapping[str, int | None]
    also: frozenset[str]
    curve_at_s: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    sentence: str
    because: str


@dataclass(frozen=True, slots=True, kw_only=True)
class _Pattern:
    """`when`: the sign each of these must have; "?" after a name: where it has limits. `like`: what is said to be like
    the others, where it is. `also`: what else must be so."""

    sentence: str
    when: Mapping[str, tuple[int | None, ...]]
    also: str = ""
    like: tuple[str, ...] = ("ohms", "peak_amps")


_HIGH, _IN, _LOW = (1,), (0,), (-1,)
_PATTERNS: tuple[_Pattern, ...] = (
    _Pattern(
        sentence="It draws much and shows no run-up: it may not have turned.",
        when={"run_up_s?": (None,), "steady_amps": _HIGH},
        also=NEAR_STALL,
    ),
    _Pattern(
        sentence="It draws less from the first reading on: more resistance in the circuit (brush, lead, winding).",
        when={"peak_amps": _LOW, "steady_amps?": (0, -1), "ohms?": (0, 1)},
        like=("steady_amps",),
    ),
    _Pattern(
        sentence="It draws more from the first reading on, and keeps it up: signs of shorted turns.",
        when={"peak_amps": _HIGH, "steady_amps": _HIGH, "run_up_s?": (0, -1), "ohms": _LOW},
        like=("run_up_s",),
    ),
    _Pattern(
        sentence="It draws more from the first reading on, and keeps it up: friction or shorted turns.",
        when={"peak_amps": _HIGH, "steady_amps": _HIGH, "run_up_s?": (0, -1), "ohms?": _IN},
        like=("run_up_s",),
    ),
    _Pattern(
        sentence="It draws more from the first reading on, and starts slowly: signs of shorted turns or a weak magnet.",
        when={"peak_amps": _HIGH, "steady_amps": _HIGH, "run_up_s": _HIGH, "ohms?": (0, -1)},
        like=(),
    ),
    _Pattern(
        sentence="It draws more at first: less resistance in the circuit, or a colder winding.",
        when={"peak_amps": _HIGH, "steady_amps?": (0, -1), "run_up_s?": (0, -1), "ohms?": (0, -1)},
        like=("steady_amps", "run_up_s"),
    ),
    _Pattern(
        sentence="It starts slowly and then draws what the others do: more to set moving, or a weaker magnet.",
        when={"peak_amps": _HIGH, "steady_amps": _IN, "run_up_s": _HIGH, "ohms?": _IN},
        like=("ohms", "steady_amps"),
    ),
    _Pattern(
        sentence="It starts slowly: friction, not the winding.",
        when={"peak_amps": _IN, "run_up_s": _HIGH, "steady_amps": _HIGH, "ohms?": _IN},
        also=FRICTION,
    ),
    _Pattern(
        sentence="It starts slowly: friction or a weak magnet, not the winding.",
        when={"peak_amps": _IN, "run_up_s": _HIGH, "steady_amps": _HIGH, "ohms?": _IN},
    ),
    _Pattern(
        sentence="It turns harder: friction or load, not the winding.",
        when={"peak_amps": _IN, "run_up_s": (0, -1), "steady_amps": _HIGH, "ohms?": _IN},
        also=FRICTION,
        like=("ohms", "peak_amps", "run_up_s"),
    ),
    _Pattern(
        sentence="It draws more when it runs: friction, load or a weak magnet, not the winding.",
        when={"peak_amps": _IN, "steady_amps": _HIGH, "ohms?": _IN},
        like=("ohms", "peak_amps", "run_up_s"),
    ),
    _Pattern(
        sentence="It starts slowly and then draws what the others do: more to set moving, or a weaker magnet.",
        when={"peak_amps?": _IN, "run_up_s": _HIGH, "steady_amps": _IN, "ohms": _IN},
        like=("ohms", "peak_amps", "steady_amps"),
    ),
    _Pattern(
        sentence="It starts slowly and then draws what the others do: more to set moving, more resistance or a weaker "
        "magnet.",
        when={"peak_amps?": _IN, "run_up_s": _HIGH, "steady_amps": _IN, "ohms?": (0, 1)},
        like=("peak_amps", "steady_amps"),
    ),
    _Pattern(
        sentence="It draws less when it runs: it turns more freely, or with less load.",
        when={"peak_amps": _IN, "steady_amps": _LOW, "ohms?": _IN},
        like=("ohms", "peak_amps", "run_up_s"),
    ),
    _Pattern(
        sentence="Its current is rougher: brushes, contact, or something that catches.",
        when={"ripple_amps": _HIGH, "peak_amps?": _IN, "run_up_s?": _IN, "steady_amps?": _IN, "energy_j?": _IN},
        like=("peak_amps", "run_up_s", "steady_amps"),
    ),
    _Pattern(
        sentence="It takes more energy: friction, load or a slower start.",
        when={"peak_amps": _IN, "energy_j": _HIGH, "ohms?": _IN},
        like=("ohms", "peak_amps", "run_up_s", "steady_amps"),
    ),
)
"""The first that fits is said. Starting values of this project."""
_SHORT = {"ohms": "resistance", "peak_amps": "peak"}


def words_for(signs: Signs, rows: Sequence[JudgedFigure]) -> Told:
    """`rows`: of the figures, those of `signs` among them."""
    labels = {row.name: row.label for row in rows} | _SHORT
    outside = [row for row in rows if row.inside is False]
    if not outside and signs.curve_at_s is None:
        count = sum(row.inside is True for row in rows)
        return Told(
            sentence="It starts like the known good ones.",
            because=f"All {count} figures that have limits are inside." if count else "Its curve is inside.",
        )
    if not outside:
        return Told(
            sentence="Its curve is unlike those of the known good ones.",
            because=f"Its figures are inside; the curve is outside, most at {show(signs.curve_at_s, 's')}.",
        )
    for pattern in _PATTERNS:
        if (not pattern.also or pattern.also in signs.also) and _fits(pattern.when, signs.signs):
            like = [labels[name] for name in pattern.like if signs.signs.get(name) == 0]
            return Told(sentence=pattern.sentence, because=_like(like) or _outside(outside))
    return Told(sentence=f"It is outside in {listed([row.label for row in outside])}.", because=_outside(outside))


def _fits(when: Mapping[str, tuple[int | None, ...]], signs: Mapping[str, int | None]) -> bool:
    for asked, allowed in when.items():
        name = asked.removesuffix("?")
        if not (signs[name] in allowed if name in signs else asked.endswith("?")):
            return False
    return True


def _like(labels: Sequence[str]) -> str:
    if not labels:
        return ""
    text = f"{listed(labels)} {'is' if len(labels) == 1 else 'are'} like the others."
    return text[0].upper() + text[1:]


def _outside(rows: Sequence[JudgedFigure]) -> str:
    def side(row: JudgedFigure) -> str:
        high = row.high is not None and row.value is not None and row.value > row.high
        limit = row.high if high else row.low
        value, bound = _told_apart(row.value, limit, row.unit)
        return f"{row.label} {value} is {'above' if high else 'below'} {bound}"

    text = f"{listed([side(row) for row in rows])}."
    return text[0].upper() + text[1:]


def _told_apart(value: float | None, limit: float | None, unit: str) -> tuple[str, str]:
    """Both with as many digits as it takes to see which is the larger, three to six."""
    for digits in range(3, 7):
        said = show(value, unit, digits), show(limit, unit, digits)
        if said[0] != said[1]:
            break
    return said
