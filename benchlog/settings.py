"""The owner's settings: a TOML file that this program reads and never writes.

The owner's ceilings live here and can be raised only here:

    [ceilings]
    volts = 24.0
    amps = 5.0
    on_s = 600.0
    kicks = 40

What an unlock may allow for one job and half a day, quantity by quantity. It takes the place of the value above while
an unlock holds; the program's own, the supply's and the job's ceilings stay. What is not named can't be unlocked:

    [unlocked]
    volts = 30.0

What the shop reckons with:

    [shop]
    currency = "EUR"
    hour = 60.0
    warranty_days = 180
    paper = "A4"
"""

import re
from pathlib import Path

import msgspec
import platformdirs

from benchlog.errors import Refused
from benchlog.recovery.ceilings import Limits
from drivers import foreign


class Shop(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """What work costs here, and how it is written. `hour`: the price of an hour; `warranty_days`: on what was done."""

    currency: str = ""
    hour: float = 0.0
    warranty_days: int = 0
    paper: str = ""

    def __post_init__(self) -> None:
        if not (len(self.currency) <= 8 and self.currency.isprintable()):
            raise ValueError("shop.currency: a short word, such as EUR")
        if not 0 <= self.hour <= 100_000 or abs(self.hour * 100 - round(self.hour * 100)) > 1e-6:
            raise ValueError("shop.hour: a price in whole cents, 0 to 100000")
        if not 0 <= self.warranty_days <= 36_500:
            raise ValueError("shop.warranty_days: 0 to 36500")
        if self.paper not in ("", "A4", "Letter"):
            raise ValueError('shop.paper: "A4" or "Letter"')

    @property
    def hour_cents(self) -> int:
        return round(self.hour * 100)


class Settings(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """What the owner of the installation decides for every job."""

    ceilings: Limits = Limits()
    unlocked: Limits = Limits()
    shop: Shop = Shop()

    def __post_init__(self) -> None:
        for name in Limits.__struct_fields__:
            usual, unlocked = getattr(self.ceilings, name), getattr(self.unlocked, name)
            if unlocked is None:
                continue
            if usual is None:
                raise ValueError(f"unlocked.{name}: [ceilings] gives no {name}, so there is nothing to unlock")
            if unlocked < usual:
                raise ValueError(f"unlocked.{name}: {unlocked:g} is below the {usual:g} of [ceilings]")

    @property
    def allow_unlocks(self) -> bool:
        """Whether there is anything that an unlock may raise."""
        return self.unlocked != Limits()


def settings_file() -> Path:
    """Where the settings are."""
    return Path(platformdirs.user_config_dir("benchlog", appauthor=False)) / "settings.toml"


def ledger_file() -> Path:
    """Where the ledger is when nobody says."""
    return Path(platformdirs.user_data_dir("benchlog", appauthor=False)) / "ledger.db"


def owner_settings(path: Path | None = None) -> Settings:
    """The settings, or none where there is no file. Raises Refused naming the place: a doubtful ceiling is none."""
    path = path or settings_file()
    try:
        if path.stat().st_size > foreign.MAX_TEXT:
            raise Refused(f"{path}: longer than {foreign.MAX_TEXT} bytes")
        return msgspec.convert(foreign.toml(path.read_text(encoding="utf-8")), Settings)
    except FileNotFoundError as error:
        if path.is_symlink():  # it leads to a place that is not there now, and may hold ceilings
            raise Refused(f"{path}: leads to a file that is not there") from error
        return Settings()
    except msgspec.ValidationError as error:
        what, _, place = foreign.inert(str(error)).partition(" - at `$")
        where = (str(path), place.rstrip("`").lstrip("."), what)
        raise Refused(": ".join(part for part in where if part) + _known(what, place)) from error
    except (OSError, ValueError) as error:
        raise Refused(f"{path}: {foreign.inert(str(error))}{_comma_in(path)}") from error


def _known(what: str, place: str) -> str:
    """What there is where a name is of none."""
    if "unknown field" not in what:
        return ""
    table = place.strip("`.").partition(".")[0]
    fields = {"ceilings": Limits, "unlocked": Limits, "shop": Shop}.get(table, Settings).__struct_fields__
    return f" (known are {', '.join(fields)})"


def _comma_in(path: Path) -> str:
    """A decimal comma is what a document that is no TOML has in it most often."""
    try:
        found = re.search(r"^\s*\w+\s*=\s*(\d+),(\d+)\s*(#.*)?$", path.read_text(encoding="utf-8"), re.MULTILINE)
    except (OSError, ValueError):
        return ""
    return f' ("{found[1]},{found[2]}": write {found[1]}.{found[2]} with a point)' if found else ""
