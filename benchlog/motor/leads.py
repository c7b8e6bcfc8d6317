"""What the leads themselves have, measured with their clips joined."""

from collections.abc import Sequence

from benchlog.motor.meter import Meter
from benchlog.motor.winding import Level, Winding
from benchlog.outcome import WindingVerdict

MOST_LEAD_OHM = 1.0
"""Ω above which it is not leads that were measured. Starting value of this project."""
_GAIN_SHARE = 0.0025


def lead_resistance(levels: Sequence[Level], meter: Meter) -> Winding:
    """Ω of leads and clips, with limits; short is what joined clips are. Sum(V I)/sum(I²) over the levels that flowed.

    The limits add noise, rounding and a wrong zero of one reading at the largest current.
    """
    flowing = [level for level in levels if level.amps > 3 * meter.u_amps and level.limited(meter)]
    if not flowing:
        return Winding(verdict=WindingVerdict.OPEN, reason="no current flows: join the two clips and measure again")
    top = max(flowing, key=lambda level: level.amps)
    ohm = sum(level.volts * level.amps for level in flowing) / sum(level.amps**2 for level in flowing)
    doubt = (meter.u_volts + abs(ohm) * meter.u_amps) / top.amps + _GAIN_SHARE * abs(ohm)
    if ohm - doubt > MOST_LEAD_OHM:
        return Winding(
            verdict=WindingVerdict.UNDECIDED,
            reason=f"{ohm:.3g} Ω is too much for leads: is a motor still between them, or a clip loose?",
        )
    return Winding(
        verdict=WindingVerdict.SHORT,
        reason=f"at {top.amps:.3g} A the leads take {top.volts * 1000:.0f} mV",
        ohm=max(ohm, 0.0),
        low_ohm=max(ohm - doubt, 0.0),
        high_ohm=max(ohm + doubt, 0.0),
    )
