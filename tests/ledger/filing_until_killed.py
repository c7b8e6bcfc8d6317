"""Files journals in a child that is killed without warning, again and again, and looks at the ledger after each kill.

Run as a script with a ledger's path, and perhaps a seed and how many kills (else a short form): it forks, so it must be
a process without threads. Prints one line of JSON.
"""

import json
import os
import random
import signal
import sqlite3
import sys
import time
from contextlib import closing
from pathlib import Path

from benchlog.bench.journal import Dense
from benchlog.ledger.filing import file_journal, file_left_behind, journals_of
from benchlog.ledger.store import Ledger
from benchlog.records import Trace
from tests.ledger.benches import bench_trace, blocks, kick, request, write_journal

EVENTS = tuple(kick(0.05 * number, number) for number in range(150))
SAMPLES = 400
ARRAY = Dense(1, 5000, 0.0005, (12.0,) * 400, (1.0,) * 400)
JOURNALS_A_ROUND = 4
AT_LEAST_KILLS = 30
AT_LEAST_IN_A_COMMIT = 3
NO_LONGER_THAN_S = 25.0


def write_journals(path: Path, trace: Trace, round_: int) -> None:
    for number in range(JOURNALS_A_ROUND):
        uid = f"{round_}-{number}"
        said = blocks(request(uid), trace=trace, events=EVENTS)
        write_journal(journals_of(path) / f"{uid}.journal", [*said[:2], ARRAY, *said[2:]])


def kill_while_filing(path: Path, after_s: float) -> bool:
    """Whether the kill left a transaction half way: its rollback journal is still there."""
    child = os.fork()
    if child == 0:
        with Ledger.open(path) as ledger:
            for journal in journals_of(path).iterdir():
                file_journal(ledger, journal)
        os._exit(0)
    time.sleep(after_s)
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    return path.with_name(f"{path.name}-journal").exists()


def whole_s(path: Path, trace: Trace) -> float:
    """s that a round takes here which nobody kills; the second, since for the first something is still imported."""
    for round_ in range(2):
        write_journals(path, trace, round_)
        began_s = time.monotonic()
        with Ledger.open(path) as ledger:
            file_left_behind(ledger, journals_of(path))
        took_s = time.monotonic() - began_s
    return took_s


def look(path: Path) -> tuple[int, list[str]]:
    """Runs in the ledger, and what is wrong with it."""
    with Ledger.open(path) as ledger, closing(sqlite3.connect(path)) as connection:
        wrong = [text for (text,) in connection.execute("PRAGMA integrity_check") if text != "ok"]
        wrong += [str(row) for row in connection.execute("PRAGMA foreign_key_check")]
        runs, jobs, traces, curves, events = (
            connection.execute(f"SELECT count(*) FROM {table}").fetchone()[0]
            for table in ("run", "job", "trace", "dense", "event")
        )
        if not (runs == jobs == traces == curves and events == runs * len(EVENTS)):
            wrong.append(f"{runs} runs, {jobs} jobs, {traces} traces, {curves} curves, {events} events")
        for run in ledger.recent_runs(limit=JOURNALS_A_ROUND):
            if not run.complete or len(ledger.trace(run.id).t_s) != SAMPLES:
                wrong.append(f"run {run.id} is cut short")
    return runs, wrong


def main(path: Path, seed: int = 5, at_least: int = AT_LEAST_KILLS, within_s: float = NO_LONGER_THAN_S) -> None:
    trace, chance = bench_trace(SAMPLES), random.Random(seed)
    Ledger.open(path).close()
    round_s = whole_s(path.with_name("unkilled.ledger"), trace)
    kills = in_a_commit = recovered = 0
    wrong: list[str] = []
    end_s = time.monotonic() + within_s
    while (kills < at_least or in_a_commit < AT_LEAST_IN_A_COMMIT) and time.monotonic() < end_s:
        write_journals(path, trace, kills)
        in_a_commit += kill_while_filing(path, chance.uniform(0.1, 1.0) * round_s)
        kills += 1
        runs, found = look(path)
        wrong += found
        # A journal that is filed but still there is not filed twice.
        with Ledger.open(path) as ledger:
            recovered += len(file_left_behind(ledger, journals_of(path)))
        total, found = look(path)
        wrong += found
        if total != kills * JOURNALS_A_ROUND or any(journals_of(path).iterdir()):
            wrong.append(f"{runs} runs after kill {kills}, {total} after filing what was left")
    print(json.dumps([kills, in_a_commit, total, recovered, wrong]))


if __name__ == "__main__":
    main(Path(sys.argv[1]), *(int(word) for word in sys.argv[2:]))
