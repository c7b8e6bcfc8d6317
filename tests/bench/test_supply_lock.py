"""One supply, one user at a time: a second is refused before a byte is sent, and is told who has it."""

import os
import subprocess
import sys
from pathlib import Path

import msgspec
import pytest

from benchlog.bench.frames import Request
from benchlog.bench.supply_lock import hold, hold_for
from benchlog.errors import Refused
from benchlog.records import RunKind
from benchlog.recovery.steps import built_in
from drivers.dialect import Dialect, shipped, shipped_names
from drivers.identifying import outputs_apart
from tests.processes import BenchProcess, TerminalProcess, end

HERE = "TCPIP::127.0.0.1::5025::SOCKET"
APART = ("scpi-1999-list", "scpi-1999-suffix", "scpi-apply-character")


def test_a_second_user_is_refused_and_told_who_has_it(tmp_path: Path) -> None:
    with (
        hold(HERE, what="a run of job 12 on output 1", where=tmp_path),
        pytest.raises(Refused, match=rf"in use by a run of job 12 on output 1 \(process {os.getpid()}, since"),
    ):
        hold("tcpip0::localhost::5025::SOCKET", what="another", where=tmp_path, patience_s=0.0)


def test_once_it_is_let_go_of_the_next_may_and_nothing_stays_behind(tmp_path: Path) -> None:
    hold(HERE, what="one", where=tmp_path).release()
    with hold(HERE, what="another", where=tmp_path, patience_s=0.0):
        pass
    assert list(tmp_path.iterdir()) == []


def test_two_supplies_and_two_outputs_that_are_apart_may_be_used_at_the_same_time(tmp_path: Path) -> None:
    with (
        hold(HERE, what="one", output=1, where=tmp_path),
        hold(HERE, what="another", output=2, where=tmp_path, patience_s=0.0),
        hold(HERE.replace("5025", "5026"), what="a third", where=tmp_path, patience_s=0.0),
    ):
        pass


@pytest.mark.parametrize(("first", "second"), [(None, 2), (2, None), (2, 2)])
def test_who_uses_all_of_it_and_who_uses_an_output_are_in_each_others_way(
    tmp_path: Path, first: int | None, second: int | None
) -> None:
    with hold(HERE, what="one", output=first, where=tmp_path):
        with pytest.raises(Refused):
            hold(HERE, what="another", output=second, where=tmp_path, patience_s=0.0)
        held = sorted(path.name[-2:] for path in tmp_path.iterdir())
    assert len(held) == (16 if first is None else 1)  # the second one left none of its own


@pytest.mark.skipif(sys.platform == "win32", reason="there a lock is its process's own")
def test_a_lock_ends_with_its_process_and_with_one_that_inherited_it(tmp_path: Path) -> None:
    code = (
        "import subprocess, sys; from pathlib import Path; from benchlog.bench.supply_lock import hold\n"
        f"held = hold({HERE!r}, what='a run', output=1, where=Path({str(tmp_path)!r}))\n"
        "child = subprocess.Popen([sys.executable, '-c', 'import time; time.sleep(60)'], pass_fds=held.files)\n"
        "print(child.pid, flush=True); child.wait()"
    )
    process = subprocess.Popen([sys.executable, "-P", "-c", code], stdout=subprocess.PIPE, text=True)
    assert process.stdout is not None
    heir = int(process.stdout.readline())
    process.kill()
    process.wait()
    process.stdout.close()
    with pytest.raises(Refused):
        hold(HERE, what="another", where=tmp_path, patience_s=0.0)
    end(heir)
    hold(HERE, what="another", where=tmp_path).release()


def test_a_folder_that_can_not_be_used_refuses_the_run(tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    with pytest.raises(Refused, match="can't be told"):
        hold(HERE, what="one", where=tmp_path / "file", patience_s=0.0)


@pytest.mark.parametrize("name", shipped_names())
def test_outputs_are_apart_only_where_each_is_named_in_all_that_changes_anything(name: str) -> None:
    assert outputs_apart(shipped(name)) is (name in APART)


@pytest.mark.parametrize("change", ["clear", "one client", "one output"])
def test_in_doubt_outputs_are_not_apart(change: str) -> None:
    dialect = shipped("scpi-1999-suffix")
    assert dialect.over_volts is not None
    changed: dict[str, Dialect] = {
        "clear": msgspec.structs.replace(
            dialect, over_volts=msgspec.structs.replace(dialect.over_volts, clear="OUTP:PROT:CLE")
        ),
        "one client": msgspec.structs.replace(dialect, link=msgspec.structs.replace(dialect.link, one_client=True)),
        "one output": msgspec.structs.replace(dialect, outputs=msgspec.structs.replace(dialect.outputs, count=1)),
    }
    assert not outputs_apart(changed[change])


def test_a_run_on_one_of_two_outputs_has_that_output_alone_and_never_on_a_serial_port(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path))
    request = Request(
        uid="one",
        kind=RunKind.RECOVERY,
        resource=HERE,
        rated_volts=12.0,
        layers={},
        sequence=built_in("starting-ladder"),
        journal="",
        job=3,
        output=2,
    )
    suffix = shipped("scpi-1999-suffix")
    for resource, locks in ((HERE, 1), ("ASRL9::INSTR", 16)):
        with hold_for(msgspec.structs.replace(request, resource=resource), suffix) as held:
            assert len(held.files) == locks


def test_a_run_on_a_supply_in_use_is_refused_and_sends_nothing(tmp_path: Path) -> None:
    bench = BenchProcess(tmp_path, "hopeless")
    terminal = TerminalProcess(bench.resource, tmp_path / "ledger.db")
    try:
        with hold(bench.resource, what="a run of job 12 on output 1"):
            status, said, _ = terminal.ended()
        asked = bench.truth()
    finally:
        terminal.close()
        bench.close()
    assert (status, said[-1]["outcome"], asked) == (2, "refused", [])
    assert f"in use by a run of job 12 on output 1 (process {os.getpid()}" in said[-1]["reason"]


def test_an_address_that_is_no_text_gets_a_lock_as_well(tmp_path: Path) -> None:
    with hold("TCPIP::\udcff::5025::SOCKET", what="a run", where=tmp_path, output=1):
        assert len(list(tmp_path.iterdir())) == 1
