"""`benchlog marking` and `benchlog calculate` as a user types them."""

import json

import pytest
from click.testing import CliRunner, Result

from benchlog.board.calculators import CALCULATORS
from benchlog.cli import main


def run(*arguments: str) -> Result:
    return CliRunner().invoke(main, arguments)


def rows(*arguments: str) -> list[dict[str, object]]:
    done = run(*arguments, "--json")
    assert done.exit_code == 0, done.stderr
    return [json.loads(row) for row in done.stdout.splitlines()]


def test_every_reading_of_a_marking_is_a_line_with_its_code_and_neighbours() -> None:
    # 220 is 22 Ω by the code (IEC 60062, published); printed as such: common practice, no source.
    done = run("marking", "220")
    assert done.exit_code == 0
    assert done.stdout.splitlines() == [
        "three-digit      22 Ω (E12 and E24; neighbours 18 and 27 Ω)",
        "printed as such  220 Ω (E12 and E24; neighbours 180 and 270 Ω)",
    ]


def test_the_same_as_json_in_base_units() -> None:
    (row,) = rows("marking", "18B")
    assert (row["code"], row["value"], row["unit"]) == ("EIA-96", 1500.0, "Ω")
    assert (row["series"], row["neighbours_in"], row["below"], row["above"]) == (["E96"], "E96", 1470.0, 1540.0)
    (jumper,) = rows("marking", "000")
    assert (jumper["code"], jumper["value"], jumper["series"], jumper["below"]) == ("jumper", 0.0, [], None)


def test_a_capacitor_is_read_in_picofarads() -> None:
    (row,) = rows("marking", "104K", "--capacitor")
    assert (row["value"], row["unit"]) == (pytest.approx(100e-9), "F")
    assert (row["low"], row["high"]) == (pytest.approx(90e-9), pytest.approx(110e-9))


def test_quantities_are_typed_as_anywhere() -> None:
    same = [
        run("calculate", "divider", "supply=12", upper, lower).stdout
        for upper, lower in (
            ("upper=10k", "lower=4k7"),
            ("upper=10 kΩ", "lower=4,7k"),
            ("upper=10000", "lower=4.7 kohm"),
        )
    ]
    assert len(set(same)) == 1
    # Computed by hand: 12 V · 4.7/14.7.
    assert same[0].startswith("Divider: output 3.84 V (")


def test_a_calculation_as_json_has_what_went_in_what_came_out_and_the_line_for_a_finding() -> None:
    (row,) = rows("calculate", "charge-resistor", "current=0,5 A")
    assert row["given"] == {"current": 0.5, "tolerance": 0.0}
    results = row["results"]
    assert isinstance(results, list)
    assert [(one["name"], one["unit"]) for one in results] == list(CALCULATORS["charge-resistor"].gives)
    assert results[0]["value"] == pytest.approx(2400.0)
    assert str(row["text"]).startswith("Program resistor of a linear lithium charger: exactly 2.4 kΩ")


def test_cautions_stand_below_what_concerns_a_cell() -> None:
    done = run("calculate", "charge-current", "resistor=1k5", "cell-limit=500 mA")
    told = " ".join(done.stdout.split())
    assert "TOO MUCH for the cell: up to 880 mA against its 500 mA" in told
    assert "swollen" in told
    assert "Local rules and licensed practice come first" in told
    assert "swollen" not in run("calculate", "divider", "supply=5", "upper=1k", "lower=1k").stdout


def test_without_a_name_all_are_listed_with_every_input_formula_and_source() -> None:
    done = run("calculate")
    assert done.exit_code == 0
    assert max(map(len, done.stdout.splitlines())) <= 80
    listed = rows("calculate")
    assert [row["calculator"] for row in listed] == list(CALCULATORS)
    for one in CALCULATORS.values():
        assert f"{one.name}: {one.words}" in done.stdout
        for asked in one.inputs:
            assert f"  {asked.name} " in done.stdout


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("marking", "XYZ"), '"XYZ" is in no code known here'),
        (("marking", "000", "--capacitor"), "in no code known here"),
        (("marking", "1" * 5000), "1 to 12 characters, not 5000"),
        (("marking", "4\x1b[2J"), "4?[2J"),
        (("calculate", "tide"), '"tide" is none of divider'),
        (("calculate", "tide", "a=1"), '"tide" is none of divider'),
        (("calculate", "days"), "capacity is missing"),
        (("calculate", "days", "capacity"), '"capacity" is not KEY=VALUE'),
        (("calculate", "days", "capacity=2200mAh", "capacity=1Ah"), "capacity is given twice"),
        (("calculate", "days", "capacity=full", "draw=1mA"), '"full" is not a number in Ah'),
        (("calculate", "days", "depth=1"), '"depth" is none of its inputs'),
        (("calculate", "divider", "supply=48", "upper=1k", "lower=1k"), "48 V is not within 100 mV to 42.4 V"),
        (("calculate", "charge-resistor", "current=1", "cell-limit=1"), "above the cell's 1 A"),
    ],
)
def test_what_is_refused_is_one_line_and_status_2(arguments: tuple[str, ...], words: str) -> None:
    for more in ((), ("--json",)):
        done = run(*arguments, *more)
        assert (done.exit_code, done.stdout) == (2, "")
        assert words in done.stderr
        assert len(done.stderr.strip().splitlines()) == 1
