"""One measured start against others: the same motor before, or known good ones. Differences with intervals."""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from statistics import fmean, stdev

from benchlog.motor.fit import Constants, Fitted, constants
from benchlog.motor.friction import Friction, friction
from benchlog.motor.start_figures import StartFigures, figures_of, motor_volts
from benchlog.motor.startup import starts_of, zero_of
from benchlog.quantities import show
from benchlog.records import FLAG_ON, Event, EventKind, Trace

SAME_VOLTS_SHARE, SAME_LEADS_OHM, SAME_AMBIENT_K = 0.02, 0.05, 10.0
"""How far apart two tests may be and still be compared. Starting values of this project."""
SAME_DRIVEN_S, SAME_DRIVEN_TIMES = 60.0, 3.0
"""Driven for so much longer, and so many times as long, before the start is another warm-up. Starting values too."""
SWAPPED = ("leads are swapped", "leads swapped", "swapped back")
"""Answers that say that the leads were turned over, as the run's questions offer them."""
WAY_NOT_KNOWN = "which way round the leads were is not recorded"
WARM_UP_NOT_KNOWN = "warm-up is not known"
ONE_ANGLE = "resistance changes by 50 to 100 % with the brush angle"
ANGLE_SHARE = 1.0
"""Of the resistance of a single earlier probe: what another angle of the brushes adds (common practice, no source)."""
WARM_MOST = 1.6
"""Times its cold resistance: no winding within any ceiling is warmer (+150 K); above, it is the contact."""
WARM_LEAST = 0.9
MEASURED = "measured start"
T95_FEW = {1: 12.706, 2: 4.303, 3: 3.182, 4: 2.776, 5: 2.571, 6: 2.447, 7: 2.365, 8: 2.306, 9: 2.262}
"""Two-sided 95 % of Student's t by degrees of freedom; above, 2.26 errs to wide. Source: any table, from memory."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Test:
    """Under which a start was measured: what must be the same for two to be compared.

    `driven_s`: s with volts on the motor before it in the same run; `swapped`: the leads, since the run began.
    `warm`: the winding's resistance right before the run over its cold one in the job; None where not known.
    """

    __test__ = False  # no test of pytest's

    set_volts: float
    lead_ohm: float
    ambient_c: float
    load_state: str
    driven_s: float = 0.0
    swapped: bool = False
    warm: Fitted | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """One start: of which run, under which test, and what it came to. `ohm`: of the probe, without leads.

    `motor_volts`: V in the steady part, without the leads; None where it was not steady.
    """

    run: int
    test: Test
    figures: StartFigures
    constants: Constants
    friction: Friction
    ohm: Fitted | None = None
    motor_volts: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """After minus before, with its 95 % interval; `sure`: it does not include none at all."""

    name: str
    unit: str
    before: float
    after: float
    low: float
    high: float

    @property
    def sure(self) -> bool:
        return self.low > 0 or self.high < 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """`against`: how many others. `not_same`: in words, what was different about the tests; `cautions`: what about them
    is not recorded."""

    against: int
    differences: tuple[Difference, ...]
    not_same: tuple[str, ...]
    verdict: str
    cautions: tuple[str, ...]


def measured_of(
    trace: Trace,
    events: Sequence[Event],
    *,
    run: int,
    lead_ohm: float,
    ambient_c: float,
    load_state: str,
    ohm: Fitted | None,
    cold_ohm: Fitted | None = None,
) -> Measured | None:
    """The measured start of a filed proof; None where it has none. `cold_ohm`: of the job's first probe."""
    found = [start for start in starts_of(trace, events) if start.name == MEASURED]
    if not found:
        return None
    start = found[-1]
    zero = zero_of(trace)
    told = figures_of(start, lead_ohm=lead_ohm, zero=zero)
    times = sum(e.kind is EventKind.ANSWER and e.text in SWAPPED and e.t_s < start.began_s for e in events)
    fitted = constants(
        start,
        ohm=ohm,
        lead_ohm=lead_ohm,
        sigma_amps=zero.sigma_amps,
        zero_amps=zero.amps,
        u_zero_amps=zero.u_amps,
    )
    return Measured(
        run=run,
        ohm=ohm,
        test=Test(
            set_volts=start.set_volts,
            lead_ohm=lead_ohm,
            ambient_c=ambient_c,
            load_state=load_state,
            driven_s=_driven_s(trace, start.began_s),
            swapped=times % 2 == 1,
            warm=warm_of(ohm, cold_ohm),
        ),
        figures=told,
        motor_volts=motor_volts(start, told, lead_ohm),
        constants=fitted,
        friction=friction(
            trace,
            events,
            zero,
            from_s=start.began_s,
            ohm=ohm,
            lead_ohm=lead_ohm,
            tau_s=None if fitted.tau_s is None else fitted.tau_s.value,
        ),
    )


def warm_of(ohm: Fitted | None, cold_ohm: Fitted | None) -> Fitted | None:
    """Resistance right before over the cold one; None where one is not known, or heat can't be the difference."""
    if ohm is None or cold_ohm is None or min(ohm.low, cold_ohm.low) <= 0:
        return None
    ratio = Fitted(value=ohm.value / cold_ohm.value, low=ohm.low / cold_ohm.high, high=ohm.high / cold_ohm.low)
    return ratio if ratio.high >= WARM_LEAST and ratio.low <= WARM_MOST else None


def _driven_s(trace: Trace, until_s: float) -> float:
    """s with the output on above 0 V, before `until_s`; a reading counts until the next one."""
    t_s = trace.t_s
    on = ((trace.flags[:-1] & FLAG_ON) > 0) & (trace.set_volts[:-1] > 0) & (t_s[1:] <= until_s)
    return float((t_s[1:] - t_s[:-1])[on].sum())


def compare(after: Measured, others: Sequence[Measured]) -> Comparison:
    """Against one other, or those of several that were tested the same way. Raises ValueError for none."""
    if not others:
        raise ValueError("nothing to compare with")
    same = [other for other in others if not what_differs(after.test, other.test)]
    not_same = () if same else tuple(dict.fromkeys(w for other in others for w in what_differs(after.test, other.test)))
    others = same or others
    differences = tuple(
        found
        for found in (
            _difference("steady current", "A", after, others, lambda one: one.constants.steady_amps),
            _difference("run-up time constant", "s", after, others, lambda one: one.constants.tau_s),
            _difference("resistance", "Ω", after, others, lambda one: one.ohm),
        )
        if found is not None
    )
    cautions = [WAY_NOT_KNOWN]
    if any(one.test.warm is None for one in (after, *others)):
        cautions.append(WARM_UP_NOT_KNOWN)
    one_probe = sum(one.ohm is not None for one in others) == 1
    if one_probe and after.ohm is not None:
        cautions.append(ONE_ANGLE)
    return Comparison(
        against=len(others),
        differences=differences,
        not_same=not_same,
        verdict=_verdict(differences, not_same, others, one_probe=one_probe),
        cautions=tuple(cautions),
    )


def what_differs(after: Test, before: Test) -> list[str]:
    """Of two tests, in words; [] where what was measured under them may be compared."""
    found = []
    if abs(after.set_volts / before.set_volts - 1) > SAME_VOLTS_SHARE:
        found.append(f"{show(after.set_volts, 'V')} against {show(before.set_volts, 'V')}")
    if after.load_state != before.load_state:
        found.append(f"{after.load_state} against {before.load_state}")
    if abs(after.lead_ohm - before.lead_ohm) > SAME_LEADS_OHM:
        found.append(f"leads of {show(after.lead_ohm, 'Ω')} against {show(before.lead_ohm, 'Ω')}")
    if abs(after.ambient_c - before.ambient_c) > SAME_AMBIENT_K:
        found.append(f"{after.ambient_c:.0f} °C against {before.ambient_c:.0f} °C")
    if after.swapped != before.swapped:
        found.append("the leads were swapped in one of the runs")
    if after.warm is not None and before.warm is not None and _apart(after.warm, before.warm):
        found.append(
            f"winding at {_times(after.warm)} times its cold resistance against {_times(before.warm)}: "
            "another warm-up, or another angle of the brushes"
        )
    short, long = sorted((after.driven_s, before.driven_s))
    if long - short > SAME_DRIVEN_S and long > SAME_DRIVEN_TIMES * short:
        found.append(f"driven for {after.driven_s:.0f} s before against {before.driven_s:.0f} s")
    return found


def _apart(one: Fitted, other: Fitted) -> bool:
    return one.low > other.high or other.low > one.high


def _times(ratio: Fitted) -> str:
    return f"{ratio.low:.2f} to {ratio.high:.2f}"


def _difference(
    name: str, unit: str, after: Measured, others: Sequence[Measured], value_of: Callable[[Measured], Fitted | None]
) -> Difference | None:
    now = value_of(after)
    then = [value for value in map(value_of, others) if value is not None]
    if now is None or not then:
        return None
    half_now = 0.5 * (now.high - now.low)
    before = fmean(one.value for one in then)
    if len(then) == 1:
        half = math.hypot(half_now, 0.5 * (then[0].high - then[0].low))
    else:
        # A new one of the same kind differs from the mean of n by more than the mean is uncertain.
        spread = stdev([one.value for one in then]) * math.sqrt(1 + 1 / len(then))
        half = math.hypot(half_now, T95_FEW.get(len(then) - 1, 2.26) * spread)
    gap = now.value - before
    return Difference(name=name, unit=unit, before=before, after=now.value, low=gap - half, high=gap + half)


def _verdict(
    differences: Sequence[Difference], not_same: Sequence[str], others: Sequence[Measured], *, one_probe: bool
) -> str:
    if not_same:
        return f"Not comparable: {'; '.join(not_same)}."
    by_name = {one.name: one for one in differences}
    current = by_name.get("steady current")
    if current is None:
        return "The steady current can't be told in one of them: nothing to compare."
    signs = {one.name: (one.low > 0) - (one.high < 0) for one in differences}
    ohm, tau = signs.get("resistance", 0), signs.get("run-up time constant", 0)
    change = f"{show(current.before, 'A')} to {show(current.after, 'A')}"
    if not current.sure:
        words = "as the known good ones" if len(others) > 1 else "no difference that these readings can show"
        return f"Steady current {change}: {words}."
    # A single earlier probe may have met another angle of the brushes: less resistance then says nothing of the turns.
    told = ohm and (not one_probe or by_name["resistance"].low > ANGLE_SHARE * by_name["resistance"].before)
    angle = "" if told or not ohm else f" The resistance is {'higher' if ohm > 0 else 'lower'}: {_MAYBE[ohm]}."
    if current.high < 0:
        if told and ohm > 0:
            return f"Steady current fell, {change}, and the resistance is higher: signs of {_IN_CIRCUIT}."
        return f"Steady current fell, {change}: it turns more freely, or with less load.{angle}"
    if told and ohm < 0:
        return f"Weaker: steady current rose, {change}, and the resistance is lower: signs of shorted turns."
    if tau > 0 and "resistance" in signs and ohm == 0:  # at one friction and inertia i goes as 1/K, tau as 1/K²
        return (
            f"Weaker: steady current rose, {change}, and the run-up takes longer at the same resistance: signs of a "
            "weak magnet. Its speed is not measured."
        )
    return f"Steady current rose, {change}: it turns harder, or with more load.{angle}"


_IN_CIRCUIT = "a high resistance in the circuit (brush, lead)"
_MAYBE = {1: f"another angle of the brushes, or {_IN_CIRCUIT}", -1: "it may be the angle of the brushes"}
