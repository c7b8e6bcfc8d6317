"""The instant at which volts or amps rise through a level: with hysteresis, so that noise about it counts once."""

from dataclasses import dataclass, replace


@dataclass(frozen=True, slots=True, kw_only=True)
class Edge:
    """What has been seen so far. `armed`: it was below `level` - `hysteresis`, and has not risen through since."""

    level: float
    hysteresis: float
    armed: bool = False
    t_s: float | None = None
    value: float = 0.0


def seen_by(edge: Edge, t_s: float, value: float) -> tuple[Edge, float | None]:
    """After one more value; and when it rose through the level, on the line from the value before, if it did now."""
    rose = edge.armed and value >= edge.level
    after = replace(edge, armed=not rose and (edge.armed or value < edge.level - edge.hysteresis), t_s=t_s, value=value)
    if not rose:
        return after, None
    assert edge.t_s is not None, "armed by a value"
    return after, edge.t_s + (edge.level - edge.value) / (value - edge.value) * (t_s - edge.t_s)
