"""The tables of the ledger, in types that any SQL database has.

SI units. UTC instants are ISO 8601 text with a trailing Z, so that they sort as text. Words (states, outcomes, kinds)
are kept as the text that the screen shows. A run and what hangs on it is written once and never changed.
"""

from sqlalchemy import (
    BigInteger,
    CheckConstraint,
    ForeignKey,
    Index,
    LargeBinary,
    MetaData,
    Text,
    UniqueConstraint,
    false,
)
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column

NAMES = {
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "ck": "ck_%(table_name)s_%(constraint_name)s",
    "fk": "fk_%(table_name)s_%(column_0_N_name)s_%(referred_table_name)s",
    "pk": "pk_%(table_name)s",
}
"""SQLite can only drop or alter a constraint by its name, and by default has none."""


class Row(DeclarativeBase):
    """What all tables share: one catalogue, and text without a length."""

    metadata = MetaData(naming_convention=NAMES)
    type_annotation_map = {str: Text(), bytes: LargeBinary()}  # noqa: RUF012  read once, by the declarative machinery


class ItemRow(Row):
    """A thing that was on the bench, as its label says."""

    __tablename__ = "item"
    id: Mapped[int] = mapped_column(primary_key=True)
    kind: Mapped[str]
    make: Mapped[str]
    model: Mapped[str]
    serial: Mapped[str]
    __table_args__ = (Index(None, "serial"), Index(None, "kind"))


class MotorRow(Row):
    """A motor inside an item."""

    __tablename__ = "motor"
    id: Mapped[int] = mapped_column(primary_key=True)
    item_id: Mapped[int] = mapped_column(ForeignKey("item.id"))
    rated_volts: Mapped[float]
    note: Mapped[str]
    __table_args__ = (Index(None, "item_id"),)


class JobRow(Row):
    """One repair, or one lot that is measured. `changed_utc`: when it, or what hangs on it, was last written.

    `searched` is what a search looks through, without case and accents: derived from the rest.
    """

    __tablename__ = "job"
    id: Mapped[int] = mapped_column(primary_key=True)
    number: Mapped[int]
    tag: Mapped[str]
    item_id: Mapped[int] = mapped_column(ForeignKey("item.id"))
    motor_id: Mapped[int] = mapped_column(ForeignKey("motor.id"))
    opened_utc: Mapped[str]
    closed_utc: Mapped[str | None]
    state: Mapped[str]
    complaint: Mapped[str]
    load_state: Mapped[str]
    cause: Mapped[str]
    work_done: Mapped[str]
    prognosis: Mapped[str]
    searched: Mapped[str]
    owner: Mapped[str] = mapped_column(server_default="")
    contact: Mapped[str] = mapped_column(server_default="")
    who: Mapped[str] = mapped_column(server_default="")
    consent: Mapped[bool] = mapped_column(server_default=false())
    spending_limit_cents: Mapped[int | None] = mapped_column(BigInteger)
    opened_before: Mapped[str] = mapped_column(server_default="")
    pumped: Mapped[str] = mapped_column(server_default="")
    waiting_for: Mapped[str] = mapped_column(server_default="")
    waiting_since_utc: Mapped[str | None]
    result: Mapped[str] = mapped_column(server_default="")
    method: Mapped[str] = mapped_column(server_default="")
    advice: Mapped[str] = mapped_column(server_default="")
    warranty_days: Mapped[int | None]
    comeback_of: Mapped[int | None] = mapped_column(ForeignKey("job.id"))
    last_outcome: Mapped[str | None]
    changed_utc: Mapped[str] = mapped_column(server_default="")
    purpose: Mapped[str] = mapped_column(server_default="repair")
    __table_args__ = (
        UniqueConstraint("number"),
        Index(None, "item_id"),
        Index(None, "motor_id"),
        Index(None, "state"),
        Index(None, "cause"),
        Index(None, "last_outcome"),
        Index(None, "who"),
        Index(None, "opened_utc"),
        Index(None, "changed_utc"),
        Index(None, "purpose"),
        CheckConstraint("number > 0", name="number_above_zero"),
        CheckConstraint(
            "state IN ('open', 'waiting-for-approval', 'waiting-for-part', 'waiting-for-owner', 'closed')",
            name="state_known",
        ),
        CheckConstraint("result IN ('', 'works', 'partly', 'not-repaired')", name="result_known"),
        CheckConstraint("purpose IN ('repair', 'measuring')", name="purpose_known"),
    )


class EntryRow(Row):
    """A dated line in a job's own record."""

    __tablename__ = "entry"
    id: Mapped[int] = mapped_column(primary_key=True)
    job_id: Mapped[int] = mapped_column(ForeignKey("job.id"))
    utc: Mapped[str]
    stage: Mapped[str]
    text: Mapped[str]
    who: Mapped[str]
    kind: Mapped[str] = mapped_column(server_default="note")
    __table_args__ = (Index(None, "job_id", "utc"),)


class PartRow(Row):
    """A spare part that the shop keeps, with its price and how many are there."""

    __tablename__ = "part"
    id: Mapped[int] = mapped_column(primary_key=True)
    name: Mapped[str]
    number: Mapped[str]
    each_cents: Mapped[int] = mapped_column(BigInteger)
    stock: Mapped[int]
    __table_args__ = (UniqueConstraint("name", "number"),)


class ChargeRow(Row):
    """What a job costs: parts by the piece, work by the minute, or something else. Never edited.

    `corrects`: the line that this one takes back; its count and cents are then the negative of it.
    """

    __tablename__ = "charge"
    id: Mapped[int] = mapped_column(primary_key=True)
    job_id: Mapped[int] = mapped_column(ForeignKey("job.id"))
    utc: Mapped[str]
    who: Mapped[str]
    kind: Mapped[str]
    text: Mapped[str]
    part_id: Mapped[int | None] = mapped_column(ForeignKey("part.id"))
    count: Mapped[int]
    each_cents: Mapped[int] = mapped_column(BigInteger)
    cents: Mapped[int] = mapped_column(BigInteger)
    corrects: Mapped[int | None] = mapped_column(ForeignKey("charge.id"))
    __table_args__ = (
        Index(None, "job_id"),
        UniqueConstraint("corrects"),
        CheckConstraint("kind IN ('part', 'minutes', 'other')", name="kind_known"),
    )


class FindingRow(Row):
    """A part seen while an item is taken apart. Never edited: `corrects` is the finding in whose place it stands."""

    __tablename__ = "finding"
    id: Mapped[int] = mapped_column(primary_key=True)
    job_id: Mapped[int] = mapped_column(ForeignKey("job.id"))
    utc: Mapped[str]
    who: Mapped[str]
    part: Mapped[str]
    marking: Mapped[str]
    place: Mapped[str]
    purpose: Mapped[str]
    value: Mapped[str]
    corrects: Mapped[int | None] = mapped_column(ForeignKey("finding.id"))
    __table_args__ = (Index(None, "job_id"), UniqueConstraint("corrects"))


class FileRow(Row):
    """A photo or another file of a job. The original lies beside the ledger, under its SHA-256.

    `thumbnail` comes last: the columns before it are read without touching the pages of the picture.
    """

    __tablename__ = "file"
    id: Mapped[int] = mapped_column(primary_key=True)
    job_id: Mapped[int] = mapped_column(ForeignKey("job.id"))
    utc: Mapped[str]
    who: Mapped[str]
    sha256: Mapped[str]
    name: Mapped[str]
    media_type: Mapped[str]
    size: Mapped[int] = mapped_column(BigInteger)
    width: Mapped[int | None]
    height: Mapped[int | None]
    caption: Mapped[str]
    thumbnail: Mapped[bytes | None]
    __table_args__ = (Index(None, "job_id"), Index(None, "sha256"))


class EditRow(Row):
    """A field of a job as it was and as it became. With `run_id` it is about a run, which itself stays as it is.

    `undone_utc`: when it was taken back, while the job was open.
    """

    __tablename__ = "edit"
    id: Mapped[int] = mapped_column(primary_key=True)
    job_id: Mapped[int] = mapped_column(ForeignKey("job.id"))
    run_id: Mapped[int | None] = mapped_column(ForeignKey("run.id"))
    utc: Mapped[str]
    who: Mapped[str]
    why: Mapped[str]
    field: Mapped[str]
    old: Mapped[str]
    new: Mapped[str]
    undone_utc: Mapped[str | None]
    __table_args__ = (Index(None, "job_id", "utc"),)


class DraftRow(Row):
    """A form that was begun and not kept yet. `fields` is JSON text."""

    __tablename__ = "draft"
    key: Mapped[str] = mapped_column(primary_key=True)
    utc: Mapped[str]
    fields: Mapped[str]


class UnlockRow(Row):
    """Who let a job go up to higher ceilings of the owner, and until when. `limits` is JSON text, as then allowed."""

    __tablename__ = "unlock"
    id: Mapped[int] = mapped_column(primary_key=True)
    job_id: Mapped[int] = mapped_column(ForeignKey("job.id"))
    utc: Mapped[str]
    until_utc: Mapped[str]
    who: Mapped[str]
    why: Mapped[str]
    limits: Mapped[str]
    __table_args__ = (
        Index(None, "job_id", "utc"),
        CheckConstraint("trim(who) <> ''", name="who_not_blank"),
        CheckConstraint("trim(why) <> ''", name="why_not_blank"),
        CheckConstraint("until_utc > utc", name="ends_after_it_begins"),
    )


class StartTestRow(Row):
    """How starts are captured, locked under a name and a version. Never edited: what differs is another version.

    `content` is JSON text, `digest` its SHA-256.
    """

    __tablename__ = "start_test"
    id: Mapped[int] = mapped_column(primary_key=True)
    name: Mapped[str]
    version: Mapped[int]
    content: Mapped[str]
    digest: Mapped[str]
    utc: Mapped[str]
    who: Mapped[str]
    __table_args__ = (
        UniqueConstraint("name", "version"),
        CheckConstraint("version > 0", name="version_above_zero"),
    )


class LimitsRow(Row):
    """What known good ones of a kind came to under a test, as limits for others. `content` is JSON text. Never edited.

    `n`: how many good ones; `coverage`, `confidence`: shares, as were asked for.
    """

    __tablename__ = "limits"
    id: Mapped[int] = mapped_column(primary_key=True)
    test_name: Mapped[str]
    test_version: Mapped[int]
    kind: Mapped[str]
    make: Mapped[str]
    model: Mapped[str]
    n: Mapped[int]
    coverage: Mapped[float]
    confidence: Mapped[float]
    content: Mapped[str]
    utc: Mapped[str]
    who: Mapped[str]
    __table_args__ = (
        Index(None, "test_name", "test_version"),
        CheckConstraint("n > 0", name="n_above_zero"),
    )


class LotRow(Row):
    """What a job that measures a lot has beside what every job has. `limits_id`: what it is judged by, None for none.

    `leads`, `fixture`: what it is measured with, in words; `ambient_c` °C.
    """

    __tablename__ = "lot"
    job_id: Mapped[int] = mapped_column(ForeignKey("job.id"), primary_key=True)
    name: Mapped[str]
    test_id: Mapped[int] = mapped_column(ForeignKey("start_test.id"))
    limits_id: Mapped[int | None] = mapped_column(ForeignKey("limits.id"))
    operator: Mapped[str]
    leads: Mapped[str]
    fixture: Mapped[str]
    ambient_c: Mapped[float]


class UnitRow(Row):
    """One of a lot: its place in it and its serial. Runs point to it."""

    __tablename__ = "unit"
    id: Mapped[int] = mapped_column(primary_key=True)
    job_id: Mapped[int] = mapped_column(ForeignKey("lot.job_id"))
    number: Mapped[int]
    serial: Mapped[str]
    utc: Mapped[str]
    __table_args__ = (
        UniqueConstraint("job_id", "number"),
        UniqueConstraint("job_id", "serial"),
        Index(None, "serial"),
        CheckConstraint("number > 0", name="number_above_zero"),
        CheckConstraint("trim(serial) <> ''", name="serial_not_blank"),
    )


class LotCheckRow(Row):
    """That the leads and the zero of a lot's supply were looked at: `value` in `unit`. Never edited.

    `run_id`: the run that measured it; None where a person says so.
    """

    __tablename__ = "lot_check"
    id: Mapped[int] = mapped_column(primary_key=True)
    job_id: Mapped[int] = mapped_column(ForeignKey("lot.job_id"))
    run_id: Mapped[int | None] = mapped_column(ForeignKey("run.id"))
    utc: Mapped[str]
    kind: Mapped[str]
    value: Mapped[float]
    unit: Mapped[str]
    passed: Mapped[bool]
    who: Mapped[str]
    __table_args__ = (Index(None, "job_id", "utc"), CheckConstraint("kind IN ('zero', 'short')", name="kind_known"))


class RunRow(Row):
    """One filed run. `uid` is given when the run is asked for, so that filing it twice is seen."""

    __tablename__ = "run"
    id: Mapped[int] = mapped_column(primary_key=True)
    job_id: Mapped[int] = mapped_column(ForeignKey("job.id"))
    uid: Mapped[str]
    kind: Mapped[str]
    started_utc: Mapped[str]
    duration_s: Mapped[float]
    resource: Mapped[str]
    identity: Mapped[str]
    dialect: Mapped[str]
    rated_volts: Mapped[float]
    load_state: Mapped[str]
    sequence_name: Mapped[str]
    request: Mapped[str]
    ceilings: Mapped[str]
    program: Mapped[str]
    complete: Mapped[bool]
    outcome: Mapped[str]
    reason: Mapped[str]
    winding_verdict: Mapped[str]
    resistance_ohm: Mapped[float | None]
    resistance_low_ohm: Mapped[float | None]
    resistance_high_ohm: Mapped[float | None]
    kicks: Mapped[int]
    moved: Mapped[bool]
    max_volts: Mapped[float | None]
    max_amps: Mapped[float | None]
    winding_bound_c: Mapped[float | None]
    locked_s: Mapped[float]
    output_confirmed_off: Mapped[bool]
    freed_rung: Mapped[str] = mapped_column(server_default="")
    unit_id: Mapped[int | None] = mapped_column(ForeignKey("unit.id"))
    __table_args__ = (
        UniqueConstraint("uid"),
        # The history reads of every run no more than these; the rows themselves are long.
        Index("ix_run_history", "job_id", "started_utc", "kind", "outcome", "kicks", "duration_s", "freed_rung"),
        Index(None, "started_utc"),
        Index(None, "unit_id"),
        CheckConstraint("duration_s >= 0", name="duration_not_negative"),
        CheckConstraint("kicks >= 0", name="kicks_not_negative"),
    )


class EventRow(Row):
    """Something that happened `t_s` into a run. `values` is JSON text."""

    __tablename__ = "event"
    run_id: Mapped[int] = mapped_column(ForeignKey("run.id"), primary_key=True)
    seq: Mapped[int] = mapped_column(primary_key=True)
    t_s: Mapped[float]
    kind: Mapped[str]
    text: Mapped[str]
    values: Mapped[str]


class TraceRow(Row):
    """All readbacks of a run as one coded blob. A row a sample took 14 times the room and 30 times as long to load.

    `data` comes last: the columns before it are read without touching the pages of the blob.
    """

    __tablename__ = "trace"
    run_id: Mapped[int] = mapped_column(ForeignKey("run.id"), primary_key=True)
    samples: Mapped[int]
    format: Mapped[int]
    checksum: Mapped[int] = mapped_column(BigInteger)
    data: Mapped[bytes]
    __table_args__ = (CheckConstraint("samples >= 0", name="samples_not_negative"),)


class DenseRow(Row):
    """A curve that the supply itself measured during a run: volts and amps at even intervals, as one coded blob.

    `seq`: its place in the run; `number`: of the start it belongs to. `began_s`, give or take
    `u_began_s`: s since the run began. `data` last.
    """

    __tablename__ = "dense"
    run_id: Mapped[int] = mapped_column(ForeignKey("run.id"), primary_key=True)
    seq: Mapped[int] = mapped_column(primary_key=True)
    number: Mapped[int]
    began_s: Mapped[float]
    u_began_s: Mapped[float]
    interval_s: Mapped[float]
    samples: Mapped[int]
    format: Mapped[int]
    checksum: Mapped[int] = mapped_column(BigInteger)
    data: Mapped[bytes]
    __table_args__ = (CheckConstraint("samples >= 0", name="samples_not_negative"),)


class JudgedRow(Row):
    """A unit's run held against limits. `passed`: None where it can't be told; `content`: JSON text. Never edited."""

    __tablename__ = "judged"
    id: Mapped[int] = mapped_column(primary_key=True)
    unit_id: Mapped[int] = mapped_column(ForeignKey("unit.id"))
    run_id: Mapped[int] = mapped_column(ForeignKey("run.id"))
    limits_id: Mapped[int] = mapped_column(ForeignKey("limits.id"))
    passed: Mapped[bool | None]
    content: Mapped[str]
    utc: Mapped[str]
    __table_args__ = (Index(None, "unit_id"), Index(None, "run_id"))


class SupplyRow(Row):
    """What was found out about a supply, or told of it, or checked with it. Never edited: the last of a kind counts.

    `identity`: its own word for itself. `dialect`: as JSON text, "" for a check; `content`: JSON text.
    """

    __tablename__ = "supply"
    id: Mapped[int] = mapped_column(primary_key=True)
    utc: Mapped[str]
    resource: Mapped[str]
    identity: Mapped[str]
    output: Mapped[int]
    kind: Mapped[str]
    dialect: Mapped[str]
    content: Mapped[str]
    __table_args__ = (
        Index(None, "resource", "identity"),
        CheckConstraint("kind IN ('found', 'told', 'checked')", name="kind_known"),
        CheckConstraint("output > 0", name="output_above_zero"),
    )
