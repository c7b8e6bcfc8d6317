"""What an overlay of starts holds: lines over one time axis with the trigger at zero, and the band of known good."""

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from ui.charts.reduction import Floats

NOTHING: Floats = np.empty(0)
VOLTS, AMPS = "volts", "amps"


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """float64[n]: t_s, s since the trigger, rising; volts, amps as read. Volts or amps may be empty."""

    name: str = ""
    t_s: Floats = field(default_factory=lambda: NOTHING)
    volts: Floats = field(default_factory=lambda: NOTHING)
    amps: Floats = field(default_factory=lambda: NOTHING)

    def of(self, what: str, lead_ohm: float = 0.0) -> Floats:
        """Its amps; or its volts, with what the leads drop taken out."""
        if what == AMPS or not self.volts.size:
            return self.amps if what == AMPS else self.volts
        return self.volts - lead_ohm * self.amps if lead_ohm and self.amps.size else self.volts


@dataclass(frozen=True, slots=True, kw_only=True)
class BandOf:
    """Where known good ones lie: amps between `low` and `high`, float64[n] over t_s."""

    name: str
    t_s: Floats
    low: Floats
    high: Floats


@dataclass(slots=True, kw_only=True)
class Overlaid:
    """All that is drawn. `crowd`: every start, thin; `picked`: the one picked out, by its number there.

    `mean`: of them; `before`: the same motor's earlier run, dashed; `capture`: taken by another instrument;
    `filled_in`: repeated starts as one denser curve; `live`: the start that is being captured.
    """

    crowd: Sequence[Line] = ()
    picked: int | None = None
    mean: Line | None = None
    band: BandOf | None = None
    before: Sequence[Line] = ()
    before_name: str = ""
    capture: Line | None = None
    filled_in: Line | None = None
    live: Line | None = None
    trigger: str = ""
    expected: tuple[float, float] | None = None
    """s, from before the trigger to the end of the starts to come."""

    def single(self) -> list[Line]:
        """All but the crowd, without those that are not there."""
        picked = None if self.picked is None else self.crowd[self.picked]
        lines = (picked, self.mean, self.capture, self.filled_in, self.live, *self.before)
        return [line for line in lines if line is not None and line.t_s.size]

    def span(self) -> tuple[float, float]:
        """s, of everything but the capture, which may go on for long; a second where there is nothing."""
        lines = [line for line in (*self.crowd, *self.single()) if line is not self.capture and line.t_s.size]
        if not lines and self.capture is not None:
            lines = [self.capture]
        ends = [(float(line.t_s[0]), float(line.t_s[-1])) for line in lines]
        if self.expected is not None:
            ends.append(self.expected)
        if not ends:
            return -0.1, 1.0
        return min(begin for begin, _ in ends), max(end for _, end in ends)

    def most(self, what: str, lead_ohm: float = 0.0) -> float:
        """The highest value of all that is drawn."""
        tops = [float(values.max()) for line in self.single() if (values := line.of(what, lead_ohm)).size]
        if what == AMPS and self.band is not None and self.band.high.size:
            tops.append(float(self.band.high.max()))
        return max(tops, default=0.0)
