"""What must hold of every run, as a table: each check looks at one run and says what is wrong, or nothing.

The truth is the simulated bench's own: what the terminals did, what reached the instrument and when.
"""

import re
from collections.abc import Callable, Iterator

import numpy as np

from benchlog.bench.frames import HELD_S, LEASE_S
from benchlog.bench.journal import flags_of
from benchlog.outcome import Outcome
from benchlog.records import TICK_S, EventKind, RunKind
from benchlog.recovery.ceilings import Bound
from drivers.supply import Reading
from tests.campaign.cases import AMBIENT_C, Case
from tests.campaign.faults import DEATHS, HANDS, SPOILED
from tests.campaign.items import capacitor_overshoot, draws_evenly, inside_heat_limits
from tests.campaign.running import RENEW_EVERY_S, Ran

_SETPOINT = re.compile(r"(VOLT|CURR) ([0-9.]+)")
NEVER_TURNS = ("locked", "lifts", "protector", "open", "short", "diode")
TROUBLE_WITH_OFF = (*SPOILED, *DEATHS, "link drops", "ignored off", "off by one")
UNWATCHED = (*HANDS, "link drops", "hung")
"""What a ceiling that counts over time can't be held against: nobody reads, or somebody else drives."""
MAY_TURN = ("free", "stuck", "regrips", "slips", "contact step", "diode across a motor")
NO_WORD = (*SPOILED, "link drops", "latch trips")
"""With these the loop may end between a kick written down and a kick sent."""
REACTION_S = 0.1
"""s beside the replies of the supply within which the program must have decided."""


def setpoints(ran: Ran) -> Iterator[tuple[float, str, float]]:
    """When, VOLT or CURR, and the value, of every setpoint that reached the instrument."""
    for at_s, message in ran.log:
        for unit in message.split(";"):
            if found := _SETPOINT.fullmatch(unit.removeprefix(":")):
                yield at_s, found[1], float(found[2])


def no_setpoint_above_a_ceiling(case: Case, ran: Ran) -> str | None:
    bounds = {"VOLT": ran.ceilings.volts.value, "CURR": ran.ceilings.amps.value}
    for at_s, name, value in setpoints(ran):
        if value > bounds[name]:
            return f"{name} {value} sent at {at_s:.3f} s, the ceiling is {bounds[name]}"
    return None


def terminal_volts_within_the_ceiling(case: Case, ran: Ran) -> str | None:
    supply = case.scenario.supply
    most = max(ran.ceilings.volts.value, ran.hand_volts)
    allowed = most * (1 + supply.gain) + 0.5 * supply.offset_v + 0.5 * supply.step_v + 1e-6
    if case.item in MAY_TURN:
        # Its EMF, at most the volts it was given, rings up from the clamp at -0.7 V: no one-quadrant supply holds that.
        allowed += (allowed + 0.7) * capacitor_overshoot(case.scenario)
    most_volts = ran.extremes.max_volts
    return f"{most_volts:.4f} V, {allowed:.4f} V allowed" if most_volts > allowed else None


def terminal_amps_within_the_ceiling(case: Case, ran: Ran) -> str | None:
    """Only where the supply's limit binds the load: a load that grows at once is fed from the output capacitor."""
    if not draws_evenly(case.item, case.scenario):
        return None
    supply = case.scenario.supply
    most = max(ran.ceilings.amps.value, ran.hand_amps)
    limit = most * (1 + supply.gain) + 0.5 * supply.offset_a + 0.5 * supply.step_a
    allowed = (limit + supply.limit_headroom * (limit + 0.1)) * (1 + capacitor_overshoot(case.scenario)) + 1e-6
    most_amps = ran.extremes.max_amps
    return f"{most_amps:.4f} A, {allowed:.4f} A allowed" if most_amps > allowed else None


def other_outputs_are_left_alone(case: Case, ran: Ran) -> str | None:
    return None if ran.others_left_alone else "another output was set or switched"


def off_at_the_end(case: Case, ran: Ran) -> str | None:
    return "the output is on" if ran.on_at_end and ran.off_was_possible else None


def still_off_afterwards(case: Case, ran: Ran) -> str | None:
    if ran.hand_after_death:
        return None
    after = [switch for switch in ran.switches if switch.on and switch.at_s > ran.ended_s]
    return f"on again at {after[0].at_s:.3f} s" if after else None


def confirmed_off_is_off(case: Case, ran: Ran) -> str | None:
    if not ran.result.output_confirmed_off:
        return None
    return "the output is on, or volts are set" if ran.on_at_end or ran.set_volts_at_end else None


def without_off_there_are_no_volts(case: Case, ran: Ran) -> str | None:
    """A supply that ignores OFF is left at 0 V and no current, where it can be reached at all."""
    if not ran.on_at_end or not ran.reachable_at_end or ran.hand_after_death:
        return None
    left = (ran.set_volts_at_end, ran.set_amps_at_end)
    return f"left at {left[0]} V, {left[1]} A" if left != (0.0, 0.0) else None


def off_soon_after_the_decision(case: Case, ran: Ran) -> str | None:
    late_hand = any(when[0] >= (ran.ending_s or 0.0) for when in ran.hit_by("hand: on"))
    excused = late_hand or ran.ignored_off or not ran.off_was_possible
    if ran.ending_s is None or excused or ran.hit_by(*TROUBLE_WITH_OFF):
        return None
    off = [switch.at_s for switch in ran.switches if not switch.on and switch.at_s >= ran.ending_s]
    before = [switch.on for switch in ran.switches if switch.at_s < ran.ending_s]
    if not before or not before[-1]:
        return None
    if not off:
        return "never"
    allowed = ran.reading_s + 0.01
    return f"{off[0] - ran.ending_s:.3f} s after the decision" if off[0] - ran.ending_s > allowed else None


def every_reading_is_in_the_journal(case: Case, ran: Ran) -> str | None:
    """In order and bit for bit; the reading of arming is not the run's, and a full disk takes no more."""
    if ran.journal is None:
        return "no journal" if ran.judged else None
    count = len(ran.journal.trace.sent)
    if not ran.hit_by("journal fails", *DEATHS) and len(ran.judged) - count not in (0, 1):
        return f"{len(ran.judged)} readings, {count} in the journal"
    first = len(ran.judged) > count
    parts = [list(ran.judged[skip : skip + count]) for skip in (first, 0)]
    return None if any(_same(ran, part) for part in parts) else "what is in the journal is not what was read"


def _same(ran: Ran, judged: list[Reading]) -> bool:
    assert ran.journal is not None
    trace = ran.journal.trace
    return (
        np.array_equal(trace.volts, [one.volts for one in judged])
        and np.array_equal(trace.amps, [one.amps for one in judged])
        and np.array_equal(trace.set_volts, [one.set_volts for one in judged])
        and np.array_equal(trace.set_amps, [one.set_amps for one in judged])
        and np.array_equal(trace.flags, [flags_of(one) for one in judged])
        and np.array_equal(trace.sent, [round((one.sent_s - ran.began_s) / TICK_S) for one in judged])
        and np.array_equal(trace.received, [round((one.received_s - ran.began_s) / TICK_S) for one in judged])
    )


def the_journal_is_complete(case: Case, ran: Ran) -> str | None:
    if ran.journal is None or ran.hit_by("journal fails", *DEATHS):
        return None
    if ran.journal.ending is None:
        return "no ending"
    return None if ran.journal.ending.result == ran.result else "another result than the one that was told"


def nothing_shown_before_it_is_kept(case: Case, ran: Ran) -> str | None:
    return f"{ran.shown_early} readings" if ran.shown_early > 0 else None


def what_can_not_turn_is_not_called_turning(case: Case, ran: Ran) -> str | None:
    turned = ran.result.outcome in (Outcome.FREED, Outcome.RUNS)
    return f"called {ran.result.outcome}" if turned and case.item in NEVER_TURNS else None


def no_start_of_what_can_not_turn_is_called_turning(case: Case, ran: Ran) -> str | None:
    if ran.journal is None or case.item not in NEVER_TURNS:
        return None
    starts = [event for event in ran.journal.events if event.kind is EventKind.START]
    turned = [event for event in starts if event.values.get("turning") == "turning"]
    return turned[0].text if turned else None


def every_start_is_on_record(case: Case, ran: Ran) -> str | None:
    """What was begun was told, or the run ended in the middle of it."""
    if ran.journal is None or case.kind is not RunKind.START_UP:
        return None
    events = ran.journal.events
    begun = sum(e.kind is EventKind.STEP and str(e.values.get("name", "")).startswith("start ") for e in events)
    told = sum(e.kind is EventKind.START for e in events)
    untold = begun - told
    by_itself = ran.result.outcome in (Outcome.RUNS, Outcome.STILL_STUCK)
    return f"{begun} begun, {told} told" if untold not in (0, 1) or (untold and by_itself) else None


def winding_within_the_ceiling(case: Case, ran: Ran) -> str | None:
    most_c = ran.extremes.max_winding_c
    if most_c is None or not inside_heat_limits(case.scenario, AMBIENT_C) or ran.hit_by(*UNWATCHED):
        return None
    return _above_by_a_reading(most_c, ran.ceilings.winding_c, _heating_k_s(case) * ran.gap_s, "°C")


def energy_within_the_ceiling(case: Case, ran: Ran) -> str | None:
    """Where all of it heats the winding; no run here is longer than the window of 60 s it counts in."""
    if case.item != "locked" or ran.ended_s - ran.began_s > 60.0 or ran.hit_by(*UNWATCHED):
        return None
    return _above_by_a_reading(ran.extremes.energy_j, ran.ceilings.energy_j, _most_watts(case, ran) * ran.gap_s, "J")


def locked_within_the_ceiling(case: Case, ran: Ran) -> str | None:
    """In seconds at the motor's true stall power at rated volts."""
    motor = case.scenario.motor
    if case.item != "locked" or motor is None or ran.ended_s - ran.began_s > 60.0 or ran.hit_by(*UNWATCHED):
        return None
    stall_watts = case.scenario.rated_volts**2 / motor.ohms
    locked_s = ran.extremes.energy_j / stall_watts
    overrun_s = ran.gap_s * _most_watts(case, ran) / stall_watts
    return _above_by_a_reading(locked_s, ran.ceilings.locked_s, overrun_s, "s")


def driven_in_a_row_within_the_ceiling(case: Case, ran: Ran) -> str | None:
    longest_s = max((until_s - since_s for since_s, until_s in _driven(ran)), default=0.0)
    if ran.hit_by(*UNWATCHED, "ignored off"):
        return None
    return _above_by_a_reading(longest_s, ran.ceilings.on_s, ran.gap_s, "s")


def _driven(ran: Ran) -> Iterator[tuple[float, float]]:
    """From a setpoint above 0 V to the next at 0 V, by what reached the instrument."""
    since_s: float | None = None
    for at_s, name, value in setpoints(ran):
        if name == "VOLT" and value > 0 and since_s is None:
            since_s = at_s
        elif name == "VOLT" and value == 0 and since_s is not None:
            yield since_s, at_s
            since_s = None


def driven_only_while_the_key_is_down(case: Case, ran: Ran) -> str | None:
    """From the question on: a reading and the key's own silence after it is up, and no more than a quarter of stall."""
    if case.kind is not RunKind.HAND or ran.journal is None or ran.hit_by(*HANDS, *DEATHS, "sleep"):
        return None
    asked = [event.t_s for event in ran.journal.events if event.kind is EventKind.QUESTION]
    if not asked:
        return None
    since_s = ran.began_s + asked[0]
    late_s = HELD_S + 2 * RENEW_EVERY_S + ran.gap_s + REACTION_S
    spells: list[tuple[float, float]] = []
    for down, up in case.holds:  # a key up for less than it takes to notice was down all along
        joined = bool(spells) and down <= spells[-1][1] + late_s
        spells[-1:] = [(spells[-1][0], up)] if joined else [*spells[-1:], (down, up)]
    for began_s, ended_s in _driven(ran):
        if began_s > since_s and not any(
            down <= began_s - since_s <= up + late_s and ended_s - since_s <= up + late_s for down, up in spells
        ):
            return f"driven from {began_s - since_s:.3f} to {ended_s - since_s:.3f} s, the key was down in {case.holds}"
    return None


def kicks_within_the_ceiling(case: Case, ran: Ran) -> str | None:
    given = ran.journal.kicks if ran.journal is not None else 0
    if given and ran.kicks_before + given > ran.ceilings.kicks.value:
        return f"{ran.kicks_before + given} kicks, {ran.ceilings.kicks.value:g} allowed"
    if ran.journal is not None and not ran.hit_by(*DEATHS):
        if given != ran.result.kicks and not ran.hit_by("journal fails", *NO_WORD):
            return f"{given} kicks written down, {ran.result.kicks} told"
        counted = sum(event.kind is EventKind.KICK for event in ran.journal.events)
        if counted > ran.result.kicks:
            return f"{counted} kicks on record, {ran.result.kicks} counted"
    return None


def on_only_at_0_v_with_the_latches_set(case: Case, ran: Ran) -> str | None:
    last: dict[str, float] = {}
    for at_s, message in ran.log:
        for unit in message.split(";"):
            name, _, value = unit.removeprefix(":").partition(" ")
            if name in ("VOLT", "CURR", "VOLT:PROT", "CURR:PROT") and value:
                last[name] = float(value)
            elif name == "OUTP" and value == "ON":
                if last.get("VOLT") != 0.0:
                    return f"on at {at_s:.3f} s with {last.get('VOLT')} V set"
                if case.latches and not ("VOLT:PROT" in last and "CURR:PROT" in last):
                    return f"on at {at_s:.3f} s before its latches were set"
    return None


def a_hand_ends_the_run_as_stopped(case: Case, ran: Ran) -> str | None:
    """Or as a ceiling, where what the hand did passed one."""
    hands = [when for when in ran.hit_by(*HANDS) if ran.armed_s <= when[0] < (ran.ending_s or 0.0)]
    if not hands or len(ran.struck) > 1 or not ran.hand_mattered:
        return None
    if ran.result.outcome not in (Outcome.STOPPED, Outcome.CEILING, Outcome.REFUSED):
        return f"{hands[0][2].kind}: ended as {ran.result.outcome}"
    assert ran.ending_s is not None
    late_s = ran.ending_s - hands[0][0]
    return f"noticed {late_s:.3f} s later" if late_s > 3 * ran.reading_s + REACTION_S else None


def a_spoiled_reading_ends_the_run(case: Case, ran: Ran) -> str | None:
    """At once after what came back, or what did not. A number cut short in a reply of its own still is a number."""
    told = [kind for kind in SPOILED if case.compound or kind != "cut reply"]
    spoiled = [when for when in ran.hit_by(*told) if when[2].at is not None and when[1] > 1]
    if not spoiled or len(ran.struck) > 1 or ran.ending_s is None:
        return None
    late_s = ran.ending_s - spoiled[0][0]
    allowed = max(0.3, 3 * ran.reading_s) + 3 * ran.reading_s + REACTION_S + 0.5
    return f"{spoiled[0][2].kind}: ended {late_s:.3f} s later" if late_s > allowed else None


def a_silent_window_ends_the_run(case: Case, ran: Ran) -> str | None:
    """As soon as the output could be on."""
    lost = ran.hit_by("lease lost")
    if not lost or len(ran.struck) > 1 or ran.ending_s is None:
        return None
    late_s = ran.ending_s - max(lost[0][0], ran.armed_s)
    allowed = LEASE_S + RENEW_EVERY_S + 3 * ran.reading_s + REACTION_S
    return f"ended {late_s:.3f} s later" if late_s > allowed else None


def a_dead_process_is_rescued(case: Case, ran: Ran) -> str | None:
    """Off by the waiting process, at once where it is gone, after its silence where it hangs."""
    dead = ran.hit_by(*DEATHS)
    if not dead or len(ran.struck) > 1:
        return None
    at_s, _, fault = dead[0]
    off = [switch.at_s for switch in ran.switches if not switch.on and switch.at_s >= at_s]
    on = [switch for switch in ran.switches if switch.at_s < at_s]
    if not on or not on[-1].on:
        return None
    allowed = ran.reading_s + REACTION_S + (max(0.5, 6 * ran.reading_s + 0.1) if fault.kind == "hung" else 0.0)
    if not off:
        return "never off"
    return f"off {off[0] - at_s:.3f} s after it was {fault.kind}" if off[0] - at_s > allowed else None


def _heating_k_s(case: Case) -> float:
    motor = case.scenario.motor
    assert motor is not None
    return case.scenario.rated_volts**2 / motor.ohms / motor.winding_j_per_k


def _most_watts(case: Case, ran: Ran) -> float:
    return ran.extremes.max_volts * ran.extremes.max_amps


def _above_by_a_reading(value: float, bound: Bound, overrun: float, unit: str) -> str | None:
    """The guard sees a ceiling passed with the reading that shows it: that much later it trips."""
    allowed = bound.value + 1.5 * overrun + 1e-3 * bound.value
    return f"{value:.3f} {unit}, {bound.value:.3f} {unit} is the {bound.layer}'s ceiling" if value > allowed else None


CHECKS: dict[str, Callable[[Case, Ran], str | None]] = {
    check.__name__.replace("_", " "): check
    for check in (
        no_setpoint_above_a_ceiling,
        terminal_volts_within_the_ceiling,
        terminal_amps_within_the_ceiling,
        winding_within_the_ceiling,
        energy_within_the_ceiling,
        locked_within_the_ceiling,
        driven_in_a_row_within_the_ceiling,
        driven_only_while_the_key_is_down,
        kicks_within_the_ceiling,
        on_only_at_0_v_with_the_latches_set,
        other_outputs_are_left_alone,
        off_at_the_end,
        still_off_afterwards,
        confirmed_off_is_off,
        without_off_there_are_no_volts,
        off_soon_after_the_decision,
        a_hand_ends_the_run_as_stopped,
        a_spoiled_reading_ends_the_run,
        a_silent_window_ends_the_run,
        a_dead_process_is_rescued,
        every_reading_is_in_the_journal,
        the_journal_is_complete,
        nothing_shown_before_it_is_kept,
        what_can_not_turn_is_not_called_turning,
        no_start_of_what_can_not_turn_is_called_turning,
        every_start_is_on_record,
    )
}


def broken(case: Case, ran: Ran) -> dict[str, str]:
    """Every check that does not hold, with what is wrong."""
    found = {name: check(case, ran) for name, check in CHECKS.items()}
    return {name: words for name, words in found.items() if words is not None}
