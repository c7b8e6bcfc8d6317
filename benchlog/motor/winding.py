"""What lies between the leads, from a short, small, current-limited probe at several levels."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from benchlog.motor.meter import OFFSET_LEFT_A, Meter
from benchlog.outcome import WindingVerdict

SHORT_BELOW_OHM = 0.22
"""Ω: the upper end of R under which a winding is called short; the smallest motors here start at 0.3 Ω."""
ALPHA_PER_K = 0.00393
"""1/K, copper at 20 °C. Source: NBS Handbook 100."""
_COPPER_K = 235.0
"""°C. Source: IEC 60034-1 (copper 235)."""
_GAIN_SHARE = 0.0025  # readback gain: 0.05 % of volts and 0.2 % of amps, added
_CLAMP_V = (0.4, 1.6)  # V: between these a conducting junction holds the voltage
_NEAR_LIMIT = 0.7
_STEP_UP = 1.8  # two levels a factor of two apart, as they are read back
_FAST_HEATING_K_S = 60.0  # K/s at stall, as in heat.py's bound


@dataclass(frozen=True, slots=True, kw_only=True)
class Level:
    """One level of the probe: means over its whole readings, zero taken out, and the largest current of any.

    V, A, count of readings, s driven, and the limits that were set in V and A.
    """

    volts: float
    amps: float
    most_amps: float
    count: int
    driven_s: float
    asked_volts: float
    asked_amps: float

    def limited(self, meter: Meter) -> bool:
        """Whether the volts or the amps came near their limit, as one of them must; if not, the readings mislead."""
        return (
            self.volts + meter.u_volts >= _NEAR_LIMIT * self.asked_volts
            or self.amps + meter.u_amps >= _NEAR_LIMIT * self.asked_amps
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Winding:
    """The verdict. Ω with a 95 % interval at this shaft angle and temperature; None where two levels did not agree.

    `reference_ohm`: the lowest V/I seen, an upper estimate of R even if the motor turned; for motion and heat.
    """

    verdict: WindingVerdict
    reason: str
    ohm: float | None = None
    low_ohm: float | None = None
    high_ohm: float | None = None
    reference_ohm: float | None = None


def classify(
    levels: Sequence[Level], raised: Sequence[Level], meter: Meter, *, lead_ohm: float, rated_volts: float
) -> Winding:
    """The verdict from the probe's levels, lowest first, and those with raised volts if the first showed no current."""
    with_current = [level for level in levels if level.amps > 3 * meter.u_amps]
    if not with_current:
        return _without_current(levels, raised, meter)
    carrying = [level for level in with_current if level.limited(meter)]
    if not carrying:
        return Winding(
            verdict=WindingVerdict.UNDECIDED,
            reason="neither the volts nor the amps came near their limit: the readings can't be right",
        )
    top = carrying[-1]
    upper = (top.volts + meter.u_volts) / (top.amps - meter.u_amps) - lead_ohm
    if upper < SHORT_BELOW_OHM:
        return Winding(
            verdict=WindingVerdict.SHORT,
            reason=f"at {top.amps:.3g} A the volts stay at {top.volts:.3g} V: less than {upper:.2g} Ω",
        )
    late = _starts_late(with_current, levels)
    if late is not None:
        return Winding(verdict=WindingVerdict.ELECTRONIC, reason=late)
    clamp = _clamped(carrying)
    if clamp is not None:
        return Winding(verdict=WindingVerdict.DIODE, reason=clamp)
    return _resistance(carrying, meter, lead_ohm, rated_volts)


def _without_current(levels: Sequence[Level], raised: Sequence[Level], meter: Meter) -> Winding:
    small = _small_current(levels, meter)
    if small is not None:
        # As much as may flow without a doubt: an upper estimate of R, and whoever kicks is limited all the more.
        volts = min(level.volts for level in levels)
        return Winding(
            verdict=WindingVerdict.WINDING,
            reason=f"about {small * 1000:.0f} mA flow already at {volts:.2g} V: a rotor that turns freely, or a high "
            "resistance",
            reference_ohm=max(volts / small, 1e-3),
        )
    carrying = [level for level in raised if level.most_amps > 3 * meter.u_amps]
    last = raised[-1] if raised else None
    if last is not None and not last.limited(meter):  # shorter levels may end before the output capacitor is full
        return Winding(
            verdict=WindingVerdict.ELECTRONIC,
            reason=f"the volts stay at {last.volts:.3g} V of {last.asked_volts:.3g} V while hardly any current is "
            "read: electronics that start and stop",
        )
    if last is not None and carrying == [last]:
        return Winding(
            verdict=WindingVerdict.ELECTRONIC,
            reason=f"up to {last.most_amps:.3g} A flow at {last.volts:.3g} V, and nothing did where less was allowed: "
            "electronics in the way, or a brush that closed",
        )
    if not carrying:
        most = max((level.volts for level in raised), default=0.0)
        return Winding(verdict=WindingVerdict.OPEN, reason=f"no current up to {most:.3g} V: the circuit is open")
    ratios = [level.volts / max(level.amps, meter.u_amps) for level in carrying]
    silent = [level for level in raised if level.most_amps <= 3 * meter.u_amps]
    # A plain resistance that carries 3 u at the first level that shows must have carried some share of that before.
    proportional = (
        0 < max(ratios) < 1.5 * min(ratios)
        and all(level.most_amps < 2 * level.amps for level in carrying)
        and all(level.volts / max(ratios) < 4.5 * meter.u_amps for level in silent)
    )
    if proportional:
        reference = min(ratios)
        return Winding(
            verdict=WindingVerdict.WINDING,
            reason="a winding of high resistance: its current is too small to measure well",
            reference_ohm=reference,
        )
    return Winding(
        verdict=WindingVerdict.ELECTRONIC,
        reason=f"current starts at {carrying[0].volts:.3g} V and does not follow the volts: electronics in the way",
    )


def _small_current(levels: Sequence[Level], meter: Meter) -> float | None:
    """A: the mean over all readings of the first levels, where it is more than a wrong zero. Electronics draw none."""
    count = sum(level.count for level in levels)
    if count == 0:
        return None
    mean = sum(level.amps * level.count for level in levels) / count
    noise = (meter.sigma_amps + meter.step_amps / math.sqrt(12)) * math.sqrt(1 / count + 1 / meter.count)
    return mean if mean > OFFSET_LEFT_A + 3 * noise else None


def _starts_late(with_current: Sequence[Level], levels: Sequence[Level]) -> str | None:
    """Why it is no winding, or None: at the same volts nothing flowed first, and then an unsteady current."""
    first = with_current[0]
    before = [level for level in levels[: list(levels).index(first)] if level.volts > 0.8 * first.volts]
    if not before or first.most_amps < 1.5 * first.amps:
        return None
    return (
        f"at {first.volts:.2f} V nothing flowed at first, then up to {first.most_amps:.3g} A, unsteady: electronics in "
        "the way"
    )


def _clamped(carrying: Sequence[Level]) -> str | None:
    """Why a junction is conducting, or None: more current does not bring more volts, between 0.4 and 1.6 V."""
    top = carrying[-1]
    if not _CLAMP_V[0] <= top.volts <= _CLAMP_V[1]:
        return None
    lower = next((level for level in reversed(carrying) if top.amps >= _STEP_UP * level.amps), None)
    if lower is None or lower.volts <= 0 or top.volts / lower.volts > 1.35:
        return None
    slope = (top.volts - carrying[0].volts) / (top.amps - carrying[0].amps)
    if slope > 0.35 * carrying[0].volts / carrying[0].amps:
        return None
    return (
        f"{lower.amps:.3g} A gives {lower.volts:.2f} V and {top.amps:.3g} A still {top.volts:.2f} V: "
        "a diode conducts in this direction"
    )


def _resistance(carrying: Sequence[Level], meter: Meter, lead_ohm: float, rated_volts: float) -> Winding:
    ratios = [level.volts / level.amps - lead_ohm for level in carrying]
    reference = max(min(ratios), 1e-3)
    pair = next(
        (k for k in range(len(carrying) - 2, -1, -1) if _agree(carrying[k], carrying[k + 1], meter)),
        None,
    )
    if pair is None:
        return Winding(
            verdict=WindingVerdict.WINDING,
            reason="a winding; no two levels agree on its resistance: it may have turned, or the contact changed",
            reference_ohm=reference,
        )
    used = [level for level in carrying[: pair + 2] if _agree(level, carrying[pair + 1], meter)]
    ohm, low, high = _interval(used, meter, lead_ohm, rated_volts)
    return Winding(
        verdict=WindingVerdict.WINDING,
        reason=f"{len(used)} levels agree",
        ohm=ohm,
        low_ohm=low,
        high_ohm=high,
        reference_ohm=max(min(ohm, *ratios), 1e-3),
    )


def _agree(one: Level, other: Level, meter: Meter) -> bool:
    if min(one.volts, other.volts, one.amps, other.amps) <= 0:
        return False
    doubt = sum(meter.u_volts / level.volts + meter.u_amps / level.amps for level in (one, other))
    return abs(math.log((one.volts / one.amps) / (other.volts / other.amps))) <= 0.03 + doubt


def _interval(used: Sequence[Level], meter: Meter, lead_ohm: float, rated_volts: float) -> tuple[float, float, float]:
    """Zero-corrected ratio sum(V I)/sum(I²), its limits from the declared errors, the lower one widened by heating.

    Noise falls with the readings, rounding only with the levels, a wrong zero not at all.
    """
    amps_squared = sum(level.amps**2 for level in used)
    ohm = sum(level.volts * level.amps for level in used) / amps_squared - lead_ohm
    readings = sum(level.count for level in used)
    weight = sum(level.amps for level in used) / amps_squared

    def limit(sigma: float, step: float) -> float:
        noise = 1.96 * sigma * math.sqrt(1 / readings + 1 / meter.count)
        return noise + step / math.sqrt(3 * len(used))

    whole = ohm + lead_ohm
    doubt = weight * math.hypot(
        limit(meter.sigma_volts, meter.step_volts), whole * limit(meter.sigma_amps, meter.step_amps)
    )
    doubt += _GAIN_SHARE * whole
    stall_amps = rated_volts / max(ohm, 1e-3)
    warming_k = _FAST_HEATING_K_S * sum((level.amps / stall_amps) ** 2 * level.driven_s for level in used)
    return ohm, max(0.0, ohm - doubt - ALPHA_PER_K * warming_k * ohm), ohm + doubt


def temperature_c(ohm: float, *, reference_ohm: float, reference_c: float, k: float = _COPPER_K) -> float:
    """°C of a winding from its resistance, the shaft unmoved since the reference was taken.

    t2 = R2/R1 (k + t1) - k. k: 235 copper, 225 aluminium. Source: IEC 60034-1. Raises ValueError unless R > 0.
    """
    if not (ohm > 0 and reference_ohm > 0):
        raise ValueError("resistances must be above zero")
    return ohm / reference_ohm * (k + reference_c) - k
