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
    """One repair. `changed_utc`: when it, or what hangs on it, was last written.

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
        CheckConstraint("number > 0", name="number_above_zero"),
        CheckConstraint(
            "state IN ('open', 'waiting-for-approval', 'waiting-for-part', 'waiting-for-owner', 'closed')",
            name="state_known",
        ),
        CheckConstraint("result IN ('', 'works', 'partly', 'not-repaired')", name="result_known"),
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
    __table_args__ = (
        UniqueConstraint("uid"),
        # The history reads of every run no more than these; the rows themselves are long.
        Index("ix_run_history", "job_id", "started_utc", "kind", "outcome", "kicks", "duration_s", "freed_rung"),
        Index(None, "started_utc"),
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
