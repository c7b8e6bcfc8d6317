"""Traces come back equal, small, and from nothing but what was written."""

import zlib

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra import numpy as arrays

from benchlog.ledger.column_codec import ColumnDamaged, decode_column, encode_column
from benchlog.ledger.trace_codec import MAX_SAMPLES, Coded, TraceDamaged, decode, encode
from benchlog.records import Trace
from tests.ledger.benches import bench_trace

NAMES = ("sent", "received", "volts", "amps", "set_volts", "set_amps", "flags")

ANY_FLOAT = st.floats(allow_nan=True, allow_infinity=True, width=64)
DECIMAL = st.integers(0, 9).flatmap(lambda digits: st.integers(-(10**7), 10**7).map(lambda n: float(f"{n}e-{digits}")))


def floats(samples: int) -> st.SearchStrategy[np.ndarray[tuple[int], np.dtype[np.float64]]]:
    return st.one_of(
        arrays.arrays(np.float64, samples, elements=ANY_FLOAT),
        arrays.arrays(np.float64, samples, elements=DECIMAL),
        arrays.arrays(np.float64, samples, elements=st.integers(-(2**60), 2**60).map(float)),
    )


@st.composite
def traces(draw: st.DrawFn) -> Trace:
    samples = draw(st.integers(0, 40))
    ticks = arrays.arrays(np.int64, samples, elements=st.integers(-(2**63), 2**63 - 1) | st.integers(0, 10**6))
    return Trace(
        sent=draw(ticks),
        received=draw(ticks),
        volts=draw(floats(samples)),
        amps=draw(floats(samples)),
        set_volts=draw(floats(samples)),
        set_amps=draw(floats(samples)),
        flags=draw(arrays.arrays(np.uint8, samples)),
    )


def assert_same(one: Trace, other: Trace) -> None:
    for name in NAMES:
        first, second = getattr(one, name), getattr(other, name)
        assert first.dtype == second.dtype
        np.testing.assert_array_equal(first, second, err_msg=name)


@settings(deadline=None, max_examples=200)
@given(trace=traces())
def test_any_trace_comes_back_equal(trace: Trace) -> None:
    assert_same(decode(encode(trace)), trace)


@pytest.mark.parametrize("samples", [0, 1, 2, 96, 10_000])
def test_a_trace_from_a_bench_comes_back_equal(samples: int) -> None:
    trace = bench_trace(samples)
    assert_same(decode(encode(trace)), trace)


@pytest.mark.parametrize("on_share", [0.1, 0.5, 1.0])
def test_ten_minutes_take_at_most_two_bytes_a_sample(on_share: float) -> None:
    trace = bench_trace(57_600, on_share=on_share)
    size = len(encode(trace).data) / 57_600
    print(f"{on_share:.0%} on: {size:.2f} bytes a sample")
    assert size <= 2.0


@pytest.mark.parametrize("step", [1.0, 0.1, 0.01, 1e-3, 1e-4, 1e-6, 1e-9])
def test_readings_are_kept_as_the_digits_they_came_in(step: float) -> None:
    digits = round(-np.log10(step))
    replies = [f"{n * step:.{digits}f}" for n in range(-300, 301)]
    values = np.array([float(reply) for reply in replies])
    decoded, end = decode_column(encode_column(values), 0, len(values))
    np.testing.assert_array_equal(decoded, values)
    assert encode_column(values)[0] == digits
    assert end == len(encode_column(values))


@settings(deadline=None)
@given(values=arrays.arrays(np.int64, st.integers(0, 60), elements=st.integers(-(2**63), 2**63 - 1)))
def test_any_whole_numbers_come_back(values: np.ndarray[tuple[int], np.dtype[np.int64]]) -> None:
    decoded, _ = decode_column(encode_column(values), 0, len(values))
    np.testing.assert_array_equal(decoded, values)


def test_columns_of_different_lengths_are_no_trace() -> None:
    whole = bench_trace(5)
    short = Trace(**{name: getattr(whole, name) for name in NAMES} | {"amps": whole.amps[:4]})
    with pytest.raises(ValueError, match="columns of one length"):
        encode(short)


def with_data(coded: Coded, data: bytes, *, samples: int | None = None) -> Coded:
    samples = coded.samples if samples is None else samples
    return Coded(samples=samples, format=coded.format, checksum=zlib.crc32(data), data=data)


@settings(deadline=None, max_examples=200)
@given(at=st.integers(0, 10**6), bit=st.integers(0, 7))
def test_one_changed_bit_is_seen(at: int, bit: int) -> None:
    coded = encode(bench_trace(50))
    data = bytearray(coded.data)
    data[at % len(data)] ^= 1 << bit
    with pytest.raises(TraceDamaged, match="checksum"):
        decode(Coded(samples=coded.samples, format=coded.format, checksum=coded.checksum, data=bytes(data)))


@settings(deadline=None, max_examples=300)
@given(data=st.data())
def test_hostile_bytes_with_a_fitting_checksum_are_refused_or_are_a_trace_of_that_length(data: st.DataObject) -> None:
    coded = encode(bench_trace(50))
    hostile = bytearray(coded.data)
    for _ in range(data.draw(st.integers(1, 4))):
        hostile[data.draw(st.integers(0, len(hostile) - 1))] = data.draw(st.integers(0, 255))
    del hostile[data.draw(st.integers(len(hostile) // 2, 2 * len(hostile))) :]
    samples = data.draw(st.sampled_from([50, 0, 49, 51, 1000]))
    try:
        trace = decode(with_data(coded, bytes(hostile), samples=samples))
    except TraceDamaged:
        return
    assert all(len(getattr(trace, name)) == samples for name in NAMES)


@pytest.mark.parametrize(
    ("change", "what"),
    [
        ({"format": 2}, "format 2"),
        ({"samples": -1}, "outside"),
        ({"samples": MAX_SAMPLES + 1}, "outside"),
        ({"samples": 49}, "not as long"),
        ({"samples": 51}, "not as long"),
        ({"checksum": 1}, "checksum"),
    ],
)
def test_a_label_that_does_not_fit_the_data_is_refused(change: dict[str, int], what: str) -> None:
    coded = encode(bench_trace(50))
    fields = {"samples": 50, "format": coded.format, "checksum": coded.checksum} | change
    with pytest.raises(TraceDamaged, match=what):
        decode(Coded(**fields, data=coded.data))


def test_something_after_the_last_column_is_refused() -> None:
    coded = encode(bench_trace(50))
    with pytest.raises(TraceDamaged, match="after its last column"):
        decode(with_data(coded, coded.data + b"\x00"))


def test_data_that_would_unpack_to_far_more_than_it_claims_is_refused_unpacked() -> None:
    bomb = zlib.compress(b"\x00" * 50_000_000, 9)
    column = bytes([0, 0, 1]) + len(bomb).to_bytes(4, "little") + bomb
    with pytest.raises(ColumnDamaged, match="not as long as it says"):
        decode_column(column, 0, 100)
