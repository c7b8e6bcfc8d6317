"""`benchlog attach`: each file on its own, refusals in a sentence and in the exit status."""

import json
from pathlib import Path

from click.testing import CliRunner, Result

from benchlog.cli.attach import command
from benchlog.ledger.files import files_of
from benchlog.ledger.store import Ledger
from benchlog.records import Item, Motor
from tests.pictures import making


def _run(folder: Path, *arguments: str) -> Result:
    return CliRunner().invoke(command, [*arguments, "--ledger", str(folder / "harbour.db")])


def test_files_are_kept_and_one_that_is_refused_keeps_no_other_back(tmp_path: Path) -> None:
    with Ledger.open(tmp_path / "harbour.db") as ledger:
        item, motor = Item(kind="Cabin fan"), Motor(rated_volts=12.0)
        ledger.new_job(item=item, motor=motor, complaint="stops", load_state="dry")
    (tmp_path / "cut.jpg").write_bytes(making.jpeg()[:300])
    (tmp_path / "fan.jpg").write_bytes(making.jpeg(6))
    (tmp_path / "note.jpg").write_bytes(b"hums")
    names = [str(tmp_path / name) for name in ("cut.jpg", "fan.jpg", "note.jpg")]
    done = _run(tmp_path, "1", *names, "--caption", "the hub", "--who", "dock foreman", "--json")
    assert done.exit_code == 2
    assert "cut.jpg: a JPEG picture that is cut short" in done.stderr
    fan, note = (json.loads(text) for text in done.stdout.splitlines())
    assert (fan["media_type"], fan["width"], fan["height"], fan["caption"]) == ("image/jpeg", 64, 96, "the hub")
    assert note["media_type"] == "text/plain"
    assert note["remark"].startswith("note.jpg: is no picture")
    with Ledger.open(tmp_path / "harbour.db") as ledger:
        assert [one.name for one in files_of(ledger, 1)] == ["fan.jpg", "note.jpg"]
    said = _run(tmp_path, "1", names[1])
    assert said.exit_code == 0
    assert "fan.jpg (image/jpeg, " in said.stdout
    assert _run(tmp_path, "9", names[1]).exit_code == 2
