"""Real key events of an X server reach "Output off", whatever is open. Needs Xvfb, as CI has it."""

import json
import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


@pytest.fixture
def display() -> Iterator[str]:
    """The name of a display on a server of its own; it picks a number that is free."""
    if shutil.which("Xvfb") is None:
        pytest.skip("there is no Xvfb")
    ours, theirs = os.pipe()
    with subprocess.Popen(
        ["Xvfb", "-displayfd", str(theirs), "-screen", "0", "1366x768x24", "-nolisten", "tcp"],
        pass_fds=[theirs],
        stderr=subprocess.DEVNULL,
    ) as server:
        os.close(theirs)
        with open(ours, encoding="ascii") as told:
            yield f":{told.readline().strip()}"
        server.terminate()


def test_output_off_is_heard_with_everything_open_that_can_be_and_after_the_window_was_busy(
    display: str, tmp_path: Path
) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "tests.ui.keys_walk", str(tmp_path)],
        cwd=ROOT,
        env={**os.environ, "QT_QPA_PLATFORM": "xcb", "DISPLAY": display, "QT_ACCESSIBILITY": "0"},
        capture_output=True,
        text=True,
        timeout=90,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    heard = json.loads(done.stdout.splitlines()[-1])
    assert {name for name, was in heard.items() if not was} == set()
    assert {"message box", "file dialog", "menu", "combo popup", "completer", "busy", "bench, taught"} <= set(heard)
