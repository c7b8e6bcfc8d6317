"""`benchlog window` is told to end: its window is told so as well, and it waits until that has ended."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

STAND_IN = """
import signal, sys, time
from pathlib import Path
def ends(number, _):
    Path(sys.argv[1]).write_text(str(number))
    sys.exit(7)
signal.signal(signal.SIGTERM, ends)
signal.signal(signal.SIGHUP, ends)
print("open", flush=True)
time.sleep(60)
"""
"""In the place of the window, which answers these with output off and then closes: see tests/ui/test_app.py."""

LAUNCHER = """
import sys
from pathlib import Path
from benchlog import children
from benchlog.cli import window
children.command = lambda *_: [sys.executable, "-c", sys.argv[2], sys.argv[1]]
sys.exit(window.open_window(Path("harbour.db")))
"""


HEARD = """
import sys
from pathlib import Path
from benchlog import children
from benchlog.cli import window
children.command = lambda *_: [sys.executable, "-c", "print('free 2'); print('short')"]
with open(sys.argv[1], "w") as hears:
    sys.exit(window.open_window(Path("harbour.db"), hears=hears))
"""


def test_what_the_window_writes_is_heard_by_whom_it_is_for(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-c", HEARD, str(tmp_path / "heard")], capture_output=True, text=True, timeout=60.0
    )
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")
    assert (tmp_path / "heard").read_text().split("\n") == ["free 2", "short", ""]


@pytest.mark.skipif(os.name != "posix", reason="signals between processes")
@pytest.mark.parametrize("number", ["SIGTERM", "SIGHUP"])
def test_a_launcher_told_to_end_leaves_no_window_behind(tmp_path: Path, number: str) -> None:
    told = getattr(signal, number)
    launcher = subprocess.Popen(
        [sys.executable, "-c", LAUNCHER, str(tmp_path / "told"), STAND_IN], stdout=subprocess.PIPE, text=True
    )
    try:
        assert launcher.stdout is not None
        assert launcher.stdout.readline() == "open\n"
        until_s = time.monotonic() + 30.0
        while launcher.poll() is None and time.monotonic() < until_s:
            launcher.send_signal(told)
            time.sleep(0.2)
        assert launcher.wait(timeout=1.0) == 7
        assert (tmp_path / "told").read_text() == str(int(told))
    finally:
        launcher.kill()
        launcher.wait()
        launcher.stdout.close()  # type: ignore[union-attr]
