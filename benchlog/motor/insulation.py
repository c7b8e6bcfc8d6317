"""Thermal classes of insulation, and the temperature that a winding of a class may be brought to."""

from benchlog.errors import Refused

CLASS_C = {"Y": 90, "A": 105, "E": 120, "B": 130, "F": 155, "H": 180, "N": 200, "R": 220, "250": 250}
"""°C, hot spot. Source: IEC 60085:2007 table 1."""
UNKNOWN_CLASS = "A"
HOT_SPOT_MARGIN_K = 15.0
"""K between the hot spot and the average that a resistance shows: 5 to 15 K; the larger is taken."""
MOST_C = 140.0
"""°C: a class above F raises the ceiling no further. What else is in a small motor (magnet, adhesive, plastic) bears no
more, whatever the wire does (common practice, no source)."""


def winding_ceiling_c(thermal_class: str = UNKNOWN_CLASS, margin_k: float = HOT_SPOT_MARGIN_K) -> float:
    """°C for the average of the winding. Raises Refused for a class that is none, ValueError for a margin below 5 K."""
    limit = CLASS_C.get(thermal_class.strip().upper())
    if limit is None:
        raise Refused(f'thermal class: "{thermal_class[:20]}" is none of {", ".join(CLASS_C)}')
    if not margin_k >= 5.0:
        raise ValueError("the hot spot is 5 K or more above the average")
    return min(MOST_C, limit - margin_k)


def class_of(ceiling_c: float | None) -> str:
    """The lowest class that has this ceiling with the usual margin; the unknown one where none has."""
    return next((name for name in CLASS_C if winding_ceiling_c(name) == ceiling_c), UNKNOWN_CLASS)
