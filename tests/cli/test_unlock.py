"""`benchlog ceilings` and `benchlog unlock`: what holds, from which layer, and who let a job go further."""

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import msgspec
import pytest
from click.testing import CliRunner, Result

from benchlog.bench.frames import Request
from benchlog.cli import main
from benchlog.cli.words import QUANTITIES
from benchlog.ledger.store import Ledger
from benchlog.records import Item, Motor
from benchlog.recovery.ceilings import PROGRAM, Layer, Limits
from tests.processes import BenchProcess

pytestmark = pytest.mark.skipif(
    sys.platform != "linux", reason="elsewhere the settings can't be put into a test folder"
)

SETTINGS = "[ceilings]\nvolts = 24.0\namps = 5\n[unlocked]\nvolts = 30.0\n"
BY = ("--by", "dock foreman", "--reason", "24 V hatch actuator")


class Shop:
    """One workshop's settings and ledger, and its terminal."""

    def __init__(self, folder: Path) -> None:
        self.folder, self.ledger = folder, folder / "ledger.db"
        (folder / "benchlog").mkdir()

    def settings(self, text: str) -> None:
        (self.folder / "benchlog" / "settings.toml").write_text(text, encoding="utf-8")

    def job(self, rated_volts: float = 36.0) -> int:
        with Ledger.open(self.ledger) as ledger:
            item, motor = Item(kind="Hatch actuator"), Motor(rated_volts=rated_volts)
            return ledger.new_job(item=item, motor=motor, complaint="stops", load_state="dry, uncoupled").number

    def run(self, *arguments: str) -> Result:
        runner = CliRunner(env={"XDG_CONFIG_HOME": str(self.folder)})
        return runner.invoke(main, [*arguments, "--ledger", str(self.ledger)])

    def lines(self, *arguments: str) -> list[dict[str, Any]]:
        done = self.run(*arguments, "--json")
        assert done.exit_code == 0, done.stderr
        return [json.loads(text) for text in done.stdout.splitlines()]

    def ceiling(self, quantity: str, *arguments: str) -> dict[str, Any]:
        return next(line for line in self.lines("ceilings", *arguments) if line["quantity"] == quantity)


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    shop = Shop(tmp_path)
    shop.settings(SETTINGS)
    return shop


def test_every_quantity_has_its_words() -> None:
    assert set(QUANTITIES) == set(Limits.__struct_fields__)


def test_without_a_job_the_program_s_and_the_owner_s_layers_are_shown_and_no_ledger_is_made(shop: Shop) -> None:
    volts, energy = shop.ceiling("volts"), shop.ceiling("energy_j")
    assert (volts["ceiling"], volts["layer"], volts["program"], volts["owner"], volts["job"]) == (
        24.0,
        "owner",
        PROGRAM.volts,
        24.0,
        None,
    )
    assert (energy["ceiling"], energy["layer"], energy["owner"], energy["unit"]) == (1000.0, "program", None, "J")
    assert not shop.ledger.exists()


def test_a_job_s_own_layer_is_its_rated_volts_or_what_is_given(shop: Shop) -> None:
    number = str(shop.job(12.0))
    assert shop.ceiling("volts", "--job", number)["layer"] == "job"
    given = shop.ceiling("volts", "--rated-voltage", "12", "--max-voltage", "15")
    assert (given["ceiling"], given["layer"]) == (15.0, "job")
    amps = shop.ceiling("amps", "--job", number, "--max-current", "2.5")
    assert (amps["ceiling"], amps["layer"], amps["owner"]) == (2.5, "job", 5.0)


def test_the_table_says_each_ceiling_with_its_layer(shop: Shop) -> None:
    rows = shop.run("ceilings", "--rated-voltage", "12").stdout.splitlines()
    assert rows[0].split() == ["ceiling", "layer", "program", "owner", "motor", "job"]
    assert rows[1].split() == ["volts", "12", "V", "job", "42.4", "V", "24", "V", "—", "12", "V"]
    assert rows[2].split() == ["amps", "5", "A", "owner", "20", "A", "5", "A", "—", "—"]
    assert len(rows) == 1 + len(QUANTITIES) + 1


def test_an_unlock_says_what_now_holds_and_until_when_and_is_on_record(shop: Shop) -> None:
    number = str(shop.job())
    assert shop.ceiling("volts", "--job", number)["ceiling"] == 24.0
    done = shop.run("unlock", number, *BY)
    assert done.exit_code == 0, done.stderr
    assert "unlocked by dock foreman until" in done.stdout
    assert "UTC now holds" in done.stdout
    assert [row.split()[1:4] for row in done.stdout.splitlines() if row.startswith("volts")] == [["30", "V", "owner"]]
    volts = shop.ceiling("volts", "--job", number)
    assert (volts["ceiling"], volts["layer"]) == (30.0, "owner")
    assert volts["unlocked"].endswith("24 V hatch actuator")
    assert shop.ceiling("volts", "--job", str(shop.job()))["ceiling"] == 24.0

    (kept,) = shop.lines("unlock", "--list")
    assert (kept["job"], kept["who"], kept["why"], kept["limits"]) == (
        1,
        "dock foreman",
        "24 V hatch actuator",
        {"volts": 30.0},
    )
    assert shop.lines("unlock", "--list", "--job", "2") == []
    said = shop.run("unlock", "--list", "--job", number).stdout
    assert "dock foreman: 24 V hatch actuator  [volts 30 V]" in said


def test_an_unlock_never_passes_the_job_s_or_the_program_s_own_ceiling(shop: Shop) -> None:
    shop.settings("[ceilings]\nvolts = 9.0\namps = 5\n[unlocked]\nvolts = 400.0\namps = 90\n")
    number = str(shop.job(12.0))
    shop.run("unlock", number, *BY)
    volts, amps = shop.ceiling("volts", "--job", number), shop.ceiling("amps", "--job", number)
    assert (volts["ceiling"], volts["layer"]) == (12.0, "job")
    assert (amps["ceiling"], amps["layer"]) == (PROGRAM.amps, "program")


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ((), "no job"),
        (("one", *BY), '"one" is not a job'),
        (("77", *BY), "no job number 77"),
        (("1", "--by", "", "--reason", "two words"), "who unlocks"),
        (("1", "--by", "dock foreman"), "the reason"),
        (("--list", "--job", "77"), "no job number 77"),
    ],
)
def test_what_is_missing_is_said_in_a_sentence_and_nothing_is_unlocked(
    shop: Shop, arguments: tuple[str, ...], words: str
) -> None:
    shop.job()
    done = shop.run("unlock", *arguments)
    assert (done.exit_code, words in done.stderr) == (2, True), done.stderr
    assert shop.lines("unlock", "--list") == []


@pytest.mark.parametrize(
    ("settings", "words"),
    [
        ("[ceilings]\nvolts = 24.0\n", "no [unlocked] ceilings"),
        ("[ceilings]\nvolts = 24.0\n[unlocked]\nvolts = 20.0\n", "unlocked.volts: 20 is below the 24"),
    ],
)
def test_where_the_settings_allow_nothing_it_is_refused(shop: Shop, settings: str, words: str) -> None:
    number = str(shop.job())
    shop.settings(settings)
    done = shop.run("unlock", number, *BY)
    assert (done.exit_code, words in done.stderr) == (2, True), done.stderr
    assert shop.run("unlock", "--list").stdout == "Nothing was ever unlocked.\n"


def test_a_run_of_the_job_goes_by_the_unlock_and_says_so_in_its_own_record(shop: Shop) -> None:
    shop.settings("[ceilings]\nvolts = 9.0\n[unlocked]\nvolts = 12.5\n")
    number = str(shop.job(12.0))
    bench = BenchProcess(shop.folder, "open")

    def recovered() -> dict[str, Any]:
        command = [sys.executable, "-P", "-m", "benchlog.cli", "recover", "--supply", bench.resource, "--yes", "--json"]
        done = subprocess.run(
            [*command, "--rated-voltage", "12", "--job", number, "--ledger", str(shop.ledger)],
            capture_output=True,
            text=True,
            timeout=60.0,
            stdin=subprocess.DEVNULL,
            env=os.environ | {"XDG_CONFIG_HOME": str(shop.folder)},
        )
        last: dict[str, Any] = json.loads(done.stdout.splitlines()[-1])
        return last

    try:
        before = recovered()
        assert (before["outcome"], before["run"]) == ("refused", None)
        assert "the owner's ceiling of 9 V" in before["reason"]
        shop.run("unlock", number, *BY)
        after = recovered()
    finally:
        bench.close()
    assert after["outcome"] == "open"
    with Ledger.open(shop.ledger) as ledger:
        request = msgspec.json.decode(ledger.run(after["run"]).request, type=Request)
    assert request.layers[Layer.OWNER].volts == 12.5
    assert request.unlocked.startswith("unlocked by dock foreman until ")
    assert request.unlocked.endswith("UTC: 24 V hatch actuator")
