"""Whatever is asked for, what reaches the wire is the dialect's own units with plain decimal numbers."""

import contextlib
import re

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drivers import scpi
from drivers.dialect import Dialect, DialectError, parse, shipped
from drivers.scpi_supply import ScpiSupply
from drivers.supply import Protection, Setpoint, SupplyError
from tests.conftest import RunVirtually
from tests.drivers.fake_bench import FakeBench
from tests.drivers.test_dialect import TEXT

SLY = 'x";:OUTP ON\n*RST;VOLT 99\r{value}\x00\u2028;'


def units_of(part: msgspec.Struct) -> list[str]:
    """Every text of a dialect that may be sent."""
    found: list[str] = []
    for name in part.__struct_fields__:
        value = getattr(part, name)
        if isinstance(value, msgspec.Struct):
            found += units_of(value)
        elif isinstance(value, str) and value and name not in ("name", "termination", "reply_termination", "form"):
            found.append(value)
    return found


def is_of(dialect: Dialect, message: str) -> bool:
    """Whether each unit of a message is one of the dialect's, its value a plain decimal number."""
    forms = [re.escape(unit.removeprefix(":")).replace(r"\{value\}", r"-?\d+\.\d{4}") for unit in units_of(dialect)]
    form = re.compile("|".join(forms), re.ASCII)
    return all(form.fullmatch(unit.removeprefix(":")) for unit in message.split(";"))


def test_the_check_tells_a_smuggled_unit() -> None:
    for good in ("VOLT 5.0000", "VOLT?;:CURR?", "*IDN?", "VOLT 5.0000;:CURR 1.0000"):
        assert is_of(shipped(), good), good
    for bad in ("VOLT 5;:*RST", "VOLT 5e3", "VOLT nan", "VOLT 5.0000\nOUTP ON", "VOLT 5.0000;", "SYST:POW 1"):
        assert not is_of(shipped(), bad), bad


@settings(max_examples=200, deadline=None)
@given(
    st.lists(
        st.tuples(
            st.sampled_from(["set", "protect", "switch", "clear", "read", "off", "reopen"]),
            st.floats(),
            st.floats(),
            st.booleans(),
        ),
        max_size=8,
    ),
    st.text(max_size=20) | st.sampled_from(["12.0;:OUTP ON", "1\n*RST", "\x1b[2J"]),
)
def test_no_setpoint_and_no_reply_becomes_a_command(asked: "list[tuple[str, float, float, bool]]", reply: str) -> None:
    bench = FakeBench()
    supply = ScpiSupply(bench.open, shipped(), lambda: bench.now_s)
    for query in list(bench.answers):
        bench.answers[query] = reply if query != "*IDN?" else bench.answers[query]
    for what, volts, amps, on in asked:
        with contextlib.suppress(SupplyError, ValueError):
            match what:
                case "set":
                    supply.set(Setpoint(volts=volts, amps=amps))
                case "protect":
                    supply.protect(Protection(over_volts=volts, over_amps=amps))
                case "switch":
                    supply.switch(on)
                case _:
                    getattr(supply, what)()
    assert bench.writes or bench.queries
    assert [message for message in bench.writes + bench.queries if not is_of(shipped(), message)] == []


@settings(max_examples=300)
@given(st.text(min_size=1, max_size=12) | st.sampled_from([SLY, ";", "\n", "\r", "{value}", "#15;*RST"]), st.data())
def test_a_dialect_that_loads_holds_units_that_stay_one(text: str, data: st.DataObject) -> None:
    old = data.draw(st.sampled_from(["OUTP ON", "VOLT {value}", "*IDN?", "OUTP?"]))
    at = data.draw(st.integers(0, len(old)))
    quoted = "".join(f"\\U{ord(c):08x}" for c in text)
    try:
        loaded = parse(TEXT.replace(f'"{old}"', f'"{old[:at]}{quoted}{old[at:]}"'))
    except DialectError:
        return
    for unit in units_of(loaded):
        sent = unit.format(value=scpi.at_most(12.0, before=0, after=4), n=1)
        assert sent.isascii()
        assert sent.isprintable()
        assert not set(sent) & set(";\"'#{}")


@pytest.mark.parametrize("field", ["load_state", "unlocked", "uid"])
def test_a_requests_words_reach_no_supply(
    run_virtually: RunVirtually, monkeypatch: pytest.MonkeyPatch, field: str
) -> None:
    from drivers.simulated.virtual import VirtualSession

    sent: list[str] = []
    for name in ("write", "query"):
        usual = getattr(VirtualSession, name)

        def recorded(session: VirtualSession, message: str, usual: object = usual) -> object:
            sent.append(message)
            return usual(session, message)  # type: ignore[operator]

        monkeypatch.setattr(VirtualSession, name, recorded)
    run_virtually("free", **{field: SLY})  # type: ignore[arg-type]
    assert len(sent) > 100
    assert [message for message in sent if not is_of(shipped(), message)] == []
