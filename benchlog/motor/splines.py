"""A smooth curve through many readings: cubic B-splines, by least squares."""

import numpy as np
import numpy.typing as npt

from benchlog.motor.startup import Values

GROWS = 1.25
"""From one knot to the next, away from where a start changes fast. Starting value of this project."""


def knots_of(first_s: float, last_s: float, closest_s: float, *, fast_s: tuple[float, float]) -> Values:
    """s, rising, from `first_s` to `last_s`: `closest_s` apart within `fast_s`, further and further to either side."""
    begin_s, end_s = max(first_s, min(fast_s[0], last_s - closest_s)), min(last_s, fast_s[1])
    if begin_s - first_s < 2 * closest_s:
        begin_s = first_s
    close = list(begin_s + closest_s * np.arange(max(1.0, np.floor((end_s - begin_s) / closest_s))))
    before = [first_s, *_outwards(begin_s, first_s, -closest_s)[::-1]] if begin_s > first_s else []
    return np.array([*before, *close, *_outwards(close[-1], last_s, closest_s), last_s])


def _outwards(from_s: float, to_s: float, step_s: float) -> list[float]:
    knots: list[float] = []
    at_s = from_s + GROWS * step_s
    while abs(to_s - at_s) > abs(step_s) and (to_s - at_s) * step_s > 0:
        knots.append(at_s)
        step_s *= GROWS
        at_s += GROWS * step_s
    return knots


def splines(at_s: Values, knots: Values) -> npt.NDArray[np.float64]:
    """float64[n, k + 2]: each of the splines between k knots, at times within them. Source: the recursion of Cox and de
    Boor, from memory; they add up to one everywhere."""
    ends = np.concatenate([[knots[0]] * 3, knots, [knots[-1]] * 3])
    place = np.clip(np.searchsorted(ends, at_s, side="right") - 1, 3, len(knots) + 1)
    left = [at_s - ends[place + 1 - j] for j in range(4)]
    right = [ends[place + j] - at_s for j in range(4)]
    four = [np.ones_like(at_s)]
    for degree in range(1, 4):
        carried, raised = np.zeros_like(at_s), []
        for r, value in enumerate(four):
            part = value / (right[r + 1] + left[degree - r])
            raised.append(carried + right[r + 1] * part)
            carried = left[degree - r] * part
        four = [*raised, carried]
    told = np.zeros((len(at_s), len(knots) + 2))
    rows = np.arange(len(at_s))
    for r, value in enumerate(four):
        told[rows, place - 3 + r] = value
    return told


def fitted(design: npt.NDArray[np.float64], values: Values, sigma: Values | None = None) -> tuple[Values, float]:
    """The least squares values, and the sum of squares left; in units of `sigma`, float64[n], where that is given."""
    each = np.ones_like(values) if sigma is None else 1.0 / sigma
    scaled, weighted = values * each, design * each[:, None]
    told = np.asarray(weighted @ (inverse(weighted) @ (weighted.T @ scaled)), dtype=np.float64)
    return told / each, float(np.sum((scaled - told) ** 2))


def inverse(design: npt.NDArray[np.float64]) -> npt.NDArray[np.float64]:
    """float64[k, k]: of the normal equations of n rows and k columns; a column that tells nothing gets nothing."""
    squares = design.T @ design
    return np.asarray(np.linalg.inv(squares + 1e-9 * np.trace(squares) / len(squares) * np.eye(len(squares))))
