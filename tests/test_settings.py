"""The owner's ceilings: read from one file, doubtful ones refused with the place."""

from pathlib import Path

import pytest

from benchlog.errors import Refused
from benchlog.recovery.ceilings import Layer, intersect
from benchlog.settings import owner_settings


def written(folder: Path, text: str) -> Path:
    path = folder / "settings.toml"
    path.write_text(text, encoding="utf-8")
    return path


def test_without_a_file_the_owner_says_nothing(tmp_path: Path) -> None:
    assert owner_settings(tmp_path / "none.toml").ceilings.volts is None


def test_the_owner_s_ceilings_bind(tmp_path: Path) -> None:
    limits = owner_settings(written(tmp_path, "[ceilings]\nvolts = 24.0\namps = 5\n")).ceilings
    ceilings = intersect({Layer.OWNER: limits})
    assert (ceilings.volts.value, ceilings.volts.layer, ceilings.amps.value) == (24.0, Layer.OWNER, 5.0)


def test_what_an_unlock_may_allow_is_read_quantity_by_quantity(tmp_path: Path) -> None:
    settings = owner_settings(written(tmp_path, "[ceilings]\nvolts = 24\namps = 5\n[unlocked]\nvolts = 30\n"))
    assert (settings.unlocked.volts, settings.unlocked.amps, settings.ceilings.volts) == (30.0, None, 24.0)
    assert owner_settings(written(tmp_path, "[ceilings]\nvolts = 24\n")).unlocked.volts is None


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("[ceilings]\nvolts = nan\n", "ceilings"),
        ("[ceilings]\nvolts = -1.0\n", "ceilings"),
        ("[ceilings]\nvolts = '24'\n", "ceilings.volts"),
        ("[ceilings]\ncurrent = 5.0\n", "current"),
        ("[colours]\n", "colours"),
        ("volts", "settings.toml"),
        ("#" * 70_000, "longer"),
        ("[unlocked]\nvolts = nan\n", "unlocked"),
        ("[unlocked]\ncurrent = 5.0\n", "current"),
        ("[ceilings]\nvolts = 24\n[unlocked]\nvolts = 20\n", "settings.toml: unlocked.volts: 20 is below the 24"),
        ("[ceilings]\namps = 5\n[unlocked]\nvolts = 30\n", "unlocked.volts: .ceilings. gives no volts"),
    ],
)
def test_a_doubtful_setting_is_refused_with_its_place(text: str, words: str, tmp_path: Path) -> None:
    with pytest.raises(Refused, match=words):
        owner_settings(written(tmp_path, text))
