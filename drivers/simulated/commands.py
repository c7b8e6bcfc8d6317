"""Every command the instrument knows, as tables from definition to what it does.

Source: command names by IEEE 488.2-1992 and SCPI-1999; the protection commands are common among bench supplies (from
memory, in no standard text seen here).
"""

import math
from collections.abc import Callable
from typing import TypeAlias

from drivers.simulated import parameters
from drivers.simulated.array import SampleArray
from drivers.simulated.parameters import Range
from drivers.simulated.readback import nearest_step
from drivers.simulated.status import OPERATION_COMPLETE, Group, Refusal, Status
from drivers.simulated.supply_model import OutputStage, SupplyData, Trip

Handler: TypeAlias = Callable[[str], str | None]
"""Parameter text in; reply of a query or None out. Raises Refusal."""

_BYTE = Range(lowest=0, highest=255, default=0)
_WORD = Range(lowest=0, highest=65535, default=0)


def common_commands(
    status: Status, output: OutputStage, identity: str, waits: Callable[[], bool]
) -> dict[str, Handler]:
    """The commands every instrument must have. `waits` tells whether a reply is ready in the output queue."""

    def standard_enable(text: str) -> None:
        status.standard_enable = round(parameters.number(text, _BYTE))

    def service_enable(text: str) -> None:
        status.service_enable = round(parameters.number(text, _BYTE)) & ~0x40

    def complete() -> None:
        status.standard_event |= OPERATION_COMPLETE

    return {
        "*CLS": _act(status.clear),
        "*ESE": standard_enable,
        "*ESE?": _ask(lambda: str(status.standard_enable)),
        "*ESR?": _ask(lambda: str(status.take_standard_event())),
        "*IDN?": _ask(lambda: identity),
        "*OPC": _act(complete),
        "*OPC?": _ask(lambda: "1"),
        "*RST": _act(output.reset),
        "*SRE": service_enable,
        "*SRE?": _ask(lambda: str(status.service_enable)),
        "*STB?": _ask(lambda: str(status.byte(waits()))),
        "*TST?": _ask(lambda: "0"),
        "*WAI": _act(lambda: None),
    }


def status_commands(status: Status) -> dict[str, Handler]:
    """Error queue, version and the two status groups."""
    return {
        "SYSTem:ERRor[:NEXT]?": _ask(status.next_error),
        "SYSTem:VERSion?": _ask(lambda: "1999.0"),
        "STATus:PRESet": _act(status.preset),
        **_group_commands("OPERation", status.operation),
        **_group_commands("QUEStionable", status.questionable),
    }


def source_commands(data: SupplyData, output: OutputStage) -> dict[str, Handler]:
    """Setpoints and protections. A setpoint above a protection level is taken; the latch then does its work."""
    volts = Range(lowest=0.0, highest=data.volts_max, default=0.0, unit="V")
    amps = Range(lowest=0.0, highest=data.amps_max, default=0.1 * data.amps_max, unit="A")
    over_volts = Range(lowest=0.0, highest=1.1 * data.volts_max, default=1.1 * data.volts_max, unit="V")
    over_amps = Range(lowest=0.0, highest=1.1 * data.amps_max, default=1.1 * data.amps_max, unit="A")

    def set_volts(value: float) -> None:
        output.change(set_v=nearest_step(value, data.step_v))

    def set_amps(value: float) -> None:
        output.change(limit_a=nearest_step(value, data.step_a))

    def set_over_volts(value: float) -> None:
        output.over_volts = value

    def set_over_amps(value: float) -> None:
        output.over_amps = value

    def set_over_volts_on(on: bool) -> None:
        output.over_volts_on = on

    def set_over_amps_on(on: bool) -> None:
        output.over_amps_on = on

    level = "[:LEVel][:IMMediate][:AMPLitude]"
    return {
        **_value_commands(f"[SOURce:]VOLTage{level}", volts, data.step_v, set_volts, lambda: output.set_v),
        **_value_commands(f"[SOURce:]CURRent{level}", amps, data.step_a, set_amps, lambda: output.limit_a),
        **_value_commands(
            "[SOURce:]VOLTage:PROTection[:LEVel]", over_volts, data.step_v, set_over_volts, lambda: output.over_volts
        ),
        **_value_commands(
            "[SOURce:]CURRent:PROTection[:LEVel]", over_amps, data.step_a, set_over_amps, lambda: output.over_amps
        ),
        **_switch_commands("[SOURce:]VOLTage:PROTection:STATe", set_over_volts_on, lambda: output.over_volts_on),
        **_switch_commands("[SOURce:]CURRent:PROTection:STATe", set_over_amps_on, lambda: output.over_amps_on),
        "[SOURce:]VOLTage:PROTection:TRIPped?": _ask(lambda: _bit(output.trip is Trip.OVER_VOLTS)),
        "[SOURce:]CURRent:PROTection:TRIPped?": _ask(lambda: _bit(output.trip is Trip.OVER_AMPS)),
        "[SOURce:]VOLTage:PROTection:CLEar": _act(output.clear),
        "[SOURce:]CURRent:PROTection:CLEar": _act(output.clear),
    }


def output_commands(
    data: SupplyData, output: OutputStage, switch: Callable[[bool], None], acquire: Callable[[], tuple[float, float]]
) -> dict[str, Handler]:
    """The output switch and the meter. `acquire` gives what the meter shows for the window that ends now."""

    def ask_switch(on: bool) -> None:
        if on and output.trip is not None:
            raise Refusal(-221, "OUTP ON while tripped")
        switch(on)

    return {
        **_switch_commands("OUTPut[:STATe]", ask_switch, lambda: output.on),
        "OUTPut:PROTection:CLEar": _act(output.clear),
        "MEASure[:SCALar]:VOLTage[:DC]?": _ask(lambda: shown(acquire()[0], data.step_v)),
        "MEASure[:SCALar]:CURRent[:DC]?": _ask(lambda: shown(acquire()[1], data.step_a)),
    }


def array_commands(data: SupplyData, array: SampleArray) -> dict[str, Handler]:
    """The measurement array.

    Source: SCPI-1999 volumes 2 and 3 for the headers, from memory. It starts at once only, and so has no samples from
    before its start.
    """
    least_s, most = array.data.least_interval_s, array.data.most_points
    interval = Range(lowest=least_s, highest=1.0, default=least_s, unit="S")
    points = Range(lowest=1, highest=most, default=most)
    none_before = Range(lowest=0, highest=0, default=0)

    def source(text: str) -> None:
        if parameters.single(text).upper() not in ("IMM", "IMMEDIATE"):
            raise Refusal(-224, text)

    def listed(which: int, step: float) -> Handler:
        return _ask(lambda: ",".join(shown(sample[which], step) for sample in array.held()))

    sweep = "SENSe:SWEep"
    return {
        **_value_commands(f"{sweep}:TINTerval", interval, 1e-6, array.set_interval, lambda: array.interval_s),
        **_value_commands(f"{sweep}:POINts", points, 1, array.set_points, lambda: array.points),
        **_value_commands(f"{sweep}:OFFSet:POINts", none_before, 1, lambda _: None, lambda: 0.0),
        "TRIGger[:SEQuence]:SOURce": source,
        "TRIGger[:SEQuence]:SOURce?": _ask(lambda: "IMM"),
        "INITiate[:IMMediate]": _act(array.start),
        "ABORt": _act(array.abort),
        "FETCh:ARRay:VOLTage[:DC]?": listed(0, data.step_v),
        "FETCh:ARRay:CURRent[:DC]?": listed(1, data.step_a),
    }


def shown(value: float, step: float) -> str:
    """A figure with as many decimals as its step has."""
    decimals = max(0, len(f"{step:.9f}".rstrip("0").partition(".")[2]))
    return f"{value:.{decimals}f}"


def shown_in(value: float, most: float, length: int) -> str:
    """A figure in exactly so many characters, as many before the point as `most` needs; never below zero."""
    after = max(0, length - 1 - len(str(math.floor(most))))
    return f"{max(0.0, value):0{length}.{after}f}"


def _bit(state: bool) -> str:
    return "1" if state else "0"


def _act(do: Callable[[], None]) -> Handler:
    def handle(text: str) -> None:
        parameters.none(text)
        do()

    return handle


def _ask(answer: Callable[[], str]) -> Handler:
    def handle(text: str) -> str:
        parameters.none(text)
        return answer()

    return handle


def _group_commands(name: str, group: Group) -> dict[str, Handler]:
    def enable(text: str) -> None:
        group.enable = round(parameters.number(text, _WORD)) & 0x7FFF

    return {
        f"STATus:{name}[:EVENt]?": _ask(lambda: str(group.take_event())),
        f"STATus:{name}:CONDition?": _ask(lambda: str(group.condition)),
        f"STATus:{name}:ENABle": enable,
        f"STATus:{name}:ENABle?": _ask(lambda: str(group.enable)),
    }


def _value_commands(
    definition: str, allowed: Range, step: float, change: Callable[[float], None], now: Callable[[], float]
) -> dict[str, Handler]:
    def handle(text: str) -> None:
        change(parameters.number(text, allowed))

    def answer(text: str) -> str:
        if not text:
            return shown(now(), step)
        limit = allowed.named(parameters.single(text))
        if limit is None:
            raise Refusal(-104, text)
        return shown(limit, step)

    return {definition: handle, f"{definition}?": answer}


def _switch_commands(definition: str, change: Callable[[bool], None], now: Callable[[], bool]) -> dict[str, Handler]:
    def handle(text: str) -> None:
        change(parameters.switch(text))

    return {definition: handle, f"{definition}?": _ask(lambda: _bit(now()))}
