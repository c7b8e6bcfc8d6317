"""Ledgers of a thousand to a hundred thousand jobs: search as you type, lists, the owner's history, filing and traces.

Real text from an invented harbour workshop, the same from the same seed. Each figure stands beside the plain way in the
same run: a search by LIKE over all texts, a list sorted whole, a run's trace as one row a sample.

    python -m tests.benchmarks.ledger_speed [--jobs 1000 10000 100000] [--part search|history|filing|trace] [--indexes]

A ledger of 100,000 jobs takes 1.5 GB and some minutes to build; --keep FOLDER keeps it.
"""

import argparse
import json
import random
import sqlite3
import statistics
import time
from collections.abc import Callable, Sequence
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np
from sqlalchemy import select

from benchlog.clock import VirtualClock, utc_text
from benchlog.history.past import Key, summarise
from benchlog.ledger.filing import file_journal
from benchlog.ledger.finding_jobs import choices_for, conditions, count_jobs, find_jobs
from benchlog.ledger.pasts import pasts_of
from benchlog.ledger.schema import JobRow
from benchlog.ledger.search import matches, phrases_of
from benchlog.ledger.store import Ledger
from benchlog.ledger.trace_codec import Coded, decode, encode
from benchlog.ledger.wanted import Order, Waits, Wanted
from benchlog.outcome import Outcome
from benchlog.records import HAND_STEPS, JobState
from tests.ledger.benches import bench_trace, blocks, request, write_journal

BEGAN = datetime(2016, 1, 4, 8, tzinfo=UTC)
KINDS = {
    "bilge pump": ("BP", ("12 V, 30 l/min", "12 V, 60 l/min", "24 V, 60 l/min")),
    "cabin fan": ("CF", ("12 V, 150 mm", "12 V, 180 mm", "24 V, 150 mm")),
    "hatch actuator": ("HA", ("12 V, 200 mm stroke", "24 V, 300 mm stroke")),
    "anchor-light dimmer fan": ("DF", ("12 V, 40 mm", "12 V, 60 mm")),
    "fresh-water pump": ("FW", ("12 V, 10 l/min", "12 V, 12 l/min", "24 V, 16 l/min")),
}
CAUSES = (
    *("dried bilge residue at the shaft seal", "swollen diaphragm", "lubricant gone hard", "rust in the lower bearing"),
    *("brush stuck in its holder", "gear train blocked by a shell", "corroded switch", "scale on the impeller"),
)
METHODS = ("kicks and a turn by hand", "soaked overnight", "kicks alone", "cleaned and oiled", "warmed, then kicks", "")
OWNERS = tuple(f"berth {pier}{number}" for pier in "ABCDEF" for number in range(1, 60))
PEOPLE = ("Ana", "Bosse", "Chloé", "Dörte", "Emil")
WORDS = (
    *("hums", "clicks", "smells", "dead", "slow", "stiff", "salt", "seized", "winter", "laid", "up", "since", "spring"),
    *("the", "a", "and", "but", "when", "after", "it", "no", "water", "comes", "out", "of", "at", "anchor", "pump"),
    *("fan", "blade", "fuse", "blows", "wet", "bilge", "float", "switch", "worked", "yesterday", "geräuschvoll"),
    *(
        "mouillée",
        "trocken",
        "år",
        "shaft",
        "seal",
        "impeller",
        "grease",
        "brush",
        "commutator",
        "lead",
        "red",
        "black",
    ),
    *(
        "turns",
        "by",
        "hand",
        "one",
        "click",
        "per",
        "kick",
        "warm",
        "cold",
        "oil",
        "drop",
        "tapped",
        "housing",
        "screw",
    ),
)
PARTS = ("shaft seal 8 mm", "rocker switch", "brush pair 6 mm", "impeller 40 mm", "fuse 5 A", "diode")
OUTCOMES = (Outcome.FREED, Outcome.RUNS, Outcome.STILL_STUCK, Outcome.OPEN, Outcome.UNDETERMINED, Outcome.FREED)
RUNGS = ("same way, 60 %", "same way, 80 %", "same way, 100 %", "other way, 100 %")
TYPED = (
    *("bilge pump", "BP-0417", "geräuschvoll", "soaked overnight berth c12", "H-00500", "winter seized", "zzz"),
    *("the pump and the switch", "chloe diode", "rust in the lower", "IMG_0077", "10k 0805", "freed corroded"),
)
"""What is typed, a letter at a time: common words, rare ones, serials, and what is not there."""


def build(path: Path, jobs: int, seed: int) -> float:
    """A new ledger with so many jobs; s that it took to bring its search up to date at opening."""
    with Ledger.open(path, clock=VirtualClock(utc_start=BEGAN)):
        pass
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.executescript(
            "PRAGMA journal_mode = OFF; PRAGMA synchronous = OFF; PRAGMA foreign_keys = OFF; BEGIN"
        )
        _fill(connection, jobs, random.Random(seed))
        connection.execute("PRAGMA user_version = 0")
        connection.execute("COMMIT")
    began_s = time.perf_counter()
    with Ledger.open(path):
        return time.perf_counter() - began_s


def _fill(connection: sqlite3.Connection, jobs: int, chance: random.Random) -> None:
    traces = [encode(bench_trace(chance.randint(500, 4000), seed=n)) for n in range(20)]
    thumbnails = [chance.randbytes(8000 + n) for n in range(8)]
    request = json.dumps({"type": "request", "sequence": ["same way"] * 120, "limits": [None] * 120})
    for n, part in enumerate(PARTS):
        _add(connection, "part", name=part, number=f"P-{n}", each_cents=350 + 100 * n, stock=10)
    serials: dict[str, int] = {}
    for number in range(1, jobs + 1):
        _job(connection, number, chance, serials)
        opened = BEGAN + timedelta(hours=0.8 * number)
        for _ in range(chance.choice((0, 1, 1, 2, 3))):
            _run(connection, number, opened, chance, request, chance.choice(traces))
        for n in range(chance.randint(1, 5)):
            kind = str(chance.choice((*HAND_STEPS, "note", "note", "check"))) if n else "check"
            at: dict[str, object] = {
                "job_id": number,
                "utc": utc_text(opened + timedelta(minutes=7 * n)),
                "who": chance.choice(PEOPLE),
            }
            _add(connection, "entry", stage="free", text=_said(chance, 5, 14), kind=kind, **at)
        at = {"job_id": number, "utc": utc_text(opened), "who": chance.choice(PEOPLE)}
        if number % 2:
            seen = {"part": "resistor", "marking": "103", "place": _said(chance, 2, 4), "purpose": _said(chance, 2, 6)}
            _add(connection, "finding", value=f"{chance.randint(1, 99)}k 0805", **seen, **at)
        if number % 3:
            minutes = 5 * chance.randint(1, 20)
            money = {"count": minutes, "each_cents": 6000, "cents": 100 * minutes}
            _add(connection, "charge", kind="minutes", text="work", **money, **at)
        if number % 4 == 0:
            part_id = chance.randint(1, len(PARTS))
            each = 350 + 100 * (part_id - 1)
            money = {"count": 1, "each_cents": each, "cents": each, "part_id": part_id}
            _add(connection, "charge", kind="part", text=PARTS[part_id - 1], **money, **at)
        if number % 3 == 0:
            file = {
                "sha256": f"{number:064x}",
                "name": f"IMG_{number:04d}.jpg",
                "media_type": "image/jpeg",
                "caption": "",
            }
            thumbnail = chance.choice(thumbnails) if number % 9 == 0 else None
            _add(connection, "file", size=2_000_000, width=4000, height=3000, thumbnail=thumbnail, **file, **at)


def _job(connection: sqlite3.Connection, number: int, chance: random.Random, serials: dict[str, int]) -> None:
    kind = chance.choice(tuple(KINDS))
    prefix, models = KINDS[kind]
    serial = f"{prefix}-{chance.randint(1, 40_000):04d}" if chance.random() < 0.7 else ""
    item = serials.get(serial, number) if serial else number
    serials.setdefault(serial, number)
    if item == number:
        _add(connection, "item", id=number, kind=kind, make="", model=chance.choice(models), serial=serial)
        _add(connection, "motor", id=number, item_id=number, rated_volts=12.0, note="")
    opened = BEGAN + timedelta(hours=0.8 * number)
    state = "closed" if chance.random() < 0.985 else str(chance.choice(tuple(JobState)[:-1]))
    said: dict[str, object] = {
        "cause": "",
        "method": "",
        "work_done": "",
        "prognosis": "",
        "result": "",
        "closed_utc": None,
    }
    if state == "closed":
        closed = utc_text(opened + timedelta(days=chance.randint(1, 20)))
        said |= {"cause": chance.choice(CAUSES), "method": chance.choice(METHODS), "work_done": _said(chance, 8, 20)}
        said |= {"prognosis": _said(chance, 4, 9), "closed_utc": closed}
        said["result"] = chance.choice(("works", "works", "works", "partly", "not-repaired"))
    _add(
        connection, "job", id=number, number=number, tag=f"H-{number:04d}", item_id=item, motor_id=item,
        opened_utc=utc_text(opened), state=state, complaint=_said(chance, 10, 40), load_state="dry", searched="",
        owner=chance.choice(OWNERS), who=chance.choice(PEOPLE), **said,
        waiting_since_utc=utc_text(opened) if state.startswith("waiting") else None,
    )  # fmt: skip


def _run(
    connection: sqlite3.Connection, job: int, opened: datetime, chance: random.Random, request: str, coded: object
) -> None:
    outcome = chance.choice(OUTCOMES)
    run = _add(
        connection, "run", job_id=job, uid=f"{chance.getrandbits(128):032x}", kind="recovery",
        started_utc=utc_text(opened + timedelta(minutes=chance.randint(5, 600))), duration_s=chance.uniform(10, 180),
        resource="TCPIP::127.0.0.1::5025::SOCKET", identity="Harbour Workshop,Simulated bench supply,1,1.0",
        dialect="plain", rated_volts=12.0, load_state="dry", sequence_name="starting ladder", request=request,
        ceilings="{}", program="benchlog", complete=1, outcome=outcome.value, reason="as seen",
        winding_verdict="winding", kicks=chance.randint(1, 30), moved=0, locked_s=1.0, output_confirmed_off=1,
        freed_rung=chance.choice(RUNGS) if outcome is Outcome.FREED else "",
    )  # fmt: skip
    for seq, (kind, values) in enumerate(
        [
            ("supply", {}),
            *[("kick", {"volts": 12.0, "amps": 1.5, "number": n}) for n in range(6)],
            ("hand", {"name": "turned"}),
        ]
    ):
        event = {"t_s": 1.0 * seq, "kind": kind, "text": f"{kind} {seq}", "values": json.dumps(values)}
        _add(connection, "event", run_id=run, seq=seq, **event)
    trace = {name: getattr(coded, name) for name in ("samples", "format", "checksum", "data")}
    _add(connection, "trace", run_id=run, **trace)
    connection.execute("UPDATE job SET last_outcome = ? WHERE id = ?", [outcome.value, job])


def _add(connection: sqlite3.Connection, table: str, **values: object) -> int:
    names = ", ".join(f'"{name}"' for name in values)
    say = f"INSERT INTO {table} ({names}) VALUES ({', '.join('?' * len(values))})"
    return connection.execute(say, list(values.values())).lastrowid or 0


def _said(chance: random.Random, least: int, most: int) -> str:
    return " ".join(chance.choices(WORDS, k=chance.randint(least, most)))


INDEXES = (
    *("job (cause)", "job (last_outcome)", "job (who)", "job (opened_utc)", "item (kind)"),
    "run (job_id, started_utc, kind, outcome, kicks, duration_s, freed_rung)",
)
"""Made by hand with --indexes, to see what they are worth."""
LISTS = (
    Wanted(),
    Wanted(order=Order.OLDEST),
    Wanted(state=Waits.WAITING),
    Wanted(kind="cabin fan", state=JobState.FOR_PART),
    Wanted(kind="cabin fan"),
    Wanted(cause="corroded switch"),
    Wanted(cause="not there"),
    Wanted(who="Ana", outcome="open"),
    Wanted(since_utc="2017-01-01", until_utc="2017-02-01"),
    Wanted(until_utc="2016-01-20"),
    Wanted(text="pump", kind="hatch actuator"),
    Wanted(text="bilge", until_utc="2016-03-01", who="Emil"),
    Wanted(text="seized", kind="cabin fan", cause="corroded switch", outcome="open"),
)
CHANGED = (Wanted(order=Order.CHANGED), Wanted(order=Order.CHANGED, state=JobState.FOR_PART))


def timed(work: Callable[[], object], times: int = 3) -> tuple[float, float]:
    """ms, and ms of this process alone: the quickest of a few goes, other programs only slow it down."""
    walls, own = [], []
    for _ in range(times):
        began_s, mine_s = time.perf_counter(), time.process_time()
        work()
        walls.append(1e3 * (time.perf_counter() - began_s))
        own.append(1e3 * (time.process_time() - mine_s))
    return min(walls), min(own)


def told(name: str, spent: Sequence[tuple[float, float]], plain: Sequence[tuple[float, float]] = ()) -> None:
    """p50, p95 and the worst, and how many times longer the plain way takes at its middle."""
    walls, own = sorted(wall for wall, _ in spent), sorted(mine for _, mine in spent)
    p95 = walls[min(len(walls) - 1, round(0.95 * (len(walls) - 1)))]
    line = f"  {name:34} p50 {statistics.median(walls):7.1f}  p95 {p95:7.1f}  worst {walls[-1]:7.1f} ms"
    line += f"  (own time p50 {statistics.median(own):6.1f}, worst {own[-1]:6.1f})"
    if plain:
        ratio = statistics.median(wall for wall, _ in plain) / statistics.median(walls)
        line += f"  plain way {ratio:.1f} times as long"
    print(line)


def searching(ledger: Ledger) -> None:
    typed = [word[:length] for word in TYPED for length in range(1, len(word) + 1)]
    spent = [timed(lambda text=text: find_jobs(ledger, Wanted(text=text)), 2) for text in typed]  # type: ignore[misc]
    plain = [timed(lambda text=text: _plainly(ledger, Wanted(text=text)), 1) for text in TYPED]  # type: ignore[misc]
    told(f"first page, {len(typed)} typed beginnings", spent, plain)
    told("how many, up to 1,000", [timed(lambda text=text: count_jobs(ledger, Wanted(text=text)), 2) for text in TYPED])  # type: ignore[misc]
    lists = [timed(lambda one=one: find_jobs(ledger, one)) for one in LISTS]  # type: ignore[misc]
    told(f"{len(LISTS)} filtered lists", lists, [timed(lambda one=one: _plainly(ledger, one), 1) for one in LISTS])  # type: ignore[misc]
    for one, (wall, own) in zip(LISTS, lists, strict=True):
        if wall > 50.0:
            said = {name: str(getattr(one, name)) for name in Wanted.__slots__ if getattr(one, name)}
            print(f"    above 50 ms: {wall:.0f} ms (own {own:.0f}): {said}")
    told("last changed first", [timed(lambda one=one: find_jobs(ledger, one), 2) for one in CHANGED])  # type: ignore[misc]
    told("what there is to choose from", [timed(lambda: choices_for(ledger))])


def _plainly(ledger: Ledger, wanted: Wanted) -> Sequence[object]:
    """Every row through LIKE and the filters, sorted whole; the first page is cut off afterwards."""
    with ledger.reading() as session:
        every = select(JobRow.id, JobRow.tag, JobRow.complaint).where(
            *conditions(wanted), *matches(phrases_of(wanted.text))
        )
        return list(session.connection().execute(every.order_by((JobRow.number + 0).desc())))[:50]


def histories(ledger: Ledger) -> None:
    pasts = pasts_of(ledger)
    told("history: read", [timed(lambda: pasts_of(ledger), 2)])
    told("history: groups by kind", [timed(lambda: summarise(pasts, Key.KIND, "2027-01-01T00:00:00.000Z"), 2)])
    some = [past.id for past in pasts[:: max(1, len(pasts) // 200)]]
    wall, _ = timed(lambda: [(ledger.job(job), ledger.runs(job)) for job in some], 1)
    print(f"    a job at a time it would take {wall / len(some) * len(pasts) / 1e3:.1f} s")


def filing(folder: Path) -> None:
    trace = bench_trace(57_600)
    rows = list(zip(*(getattr(trace, name).tolist() for name in trace.__slots__), strict=True))
    spent, plain = [], []
    with Ledger.open(folder / "filing.ledger") as ledger, closing(sqlite3.connect(folder / "rows.db")) as connection:
        connection.execute("PRAGMA synchronous = EXTRA")
        connection.execute("CREATE TABLE sample (run, a, b, c, d, e, f, g)")
        for n in range(5):
            journal = write_journal(folder / f"{n}.journal", blocks(request(f"run {n}"), trace=trace))
            spent.append(timed(lambda journal=journal: file_journal(ledger, journal), 1))  # type: ignore[misc]

            def one_row_a_sample(run: int = n) -> None:
                insert = "INSERT INTO sample VALUES (?, ?, ?, ?, ?, ?, ?, ?)"
                connection.executemany(insert, ((run, *row) for row in rows))
                connection.commit()

            plain.append(timed(one_row_a_sample, 1))
    told("filing 10 min, 57,600 readings", spent, plain)


def traces(folder: Path) -> None:
    trace = bench_trace(1_000_000)
    coded = encode(trace)
    with closing(sqlite3.connect(folder / "traces.db")) as connection:
        connection.execute("CREATE TABLE blob (data)")
        connection.execute("CREATE TABLE sample (a, b, c, d, e, f, g)")
        connection.execute("INSERT INTO blob VALUES (?)", [coded.data])
        rows = zip(*(getattr(trace, name).tolist() for name in trace.__slots__), strict=True)
        connection.executemany("INSERT INTO sample VALUES (?, ?, ?, ?, ?, ?, ?)", rows)
        connection.commit()

        def whole() -> None:
            (data,) = connection.execute("SELECT data FROM blob").fetchone()
            decode(Coded(samples=coded.samples, format=coded.format, checksum=coded.checksum, data=data))

        def by_rows() -> None:
            columns = zip(*connection.execute("SELECT * FROM sample"), strict=True)
            _ = [np.array(column) for column in columns]

        told("opening a trace of 1,000,000", [timed(whole, 5)], [timed(by_rows, 1)])
    print(f"    {len(coded.data) / coded.samples:.2f} bytes a sample")


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--jobs", type=int, nargs="*", default=[1000, 10_000])
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--part", choices=("search", "history", "filing", "trace"), nargs="*")
    parser.add_argument("--indexes", action="store_true", help="with the indexes of INDEXES made by hand")
    parser.add_argument("--keep", type=Path, help="a folder in which ledgers are kept and found again")
    asked = parser.parse_args()
    parts = asked.part or ("search", "history", "filing", "trace")
    with TemporaryDirectory() as folder:
        if "filing" in parts:
            filing(Path(folder))
        if "trace" in parts:
            traces(Path(folder))
        for jobs in asked.jobs if {"search", "history"} & {*parts} else ():
            path = (asked.keep or Path(folder)) / f"{jobs}.db"
            made_s = None if path.exists() else build(path, jobs, asked.seed)
            with closing(sqlite3.connect(path)) as connection:
                for number, index in enumerate(INDEXES if asked.indexes else ()):
                    connection.execute(f"CREATE INDEX IF NOT EXISTS by_hand_{number} ON {index}")
            print(f"{jobs:,} jobs, {path.stat().st_size / 1e6:,.0f} MB, {path.stat().st_size / jobs:,.0f} bytes a job")
            if made_s is not None:
                print(f"  search made anew at opening in {made_s:.1f} s")
            with Ledger.open(path) as ledger:
                if "search" in parts:
                    searching(ledger)
                if "history" in parts:
                    histories(ledger)


if __name__ == "__main__":
    main()
