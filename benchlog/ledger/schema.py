"""The tables of the ledger, in types that any SQL database has.

SI units. UTC instants are ISO 8601 text with a trailing Z, so that they sort as text. Words (states, outcomes, kinds)
are kept as the text that the screen shows. A run and what hangs on it is written once and never changed.
"""

from sqlalchemy import BigInteger, CheckConstraint, ForeignKey, Index, LargeBinary, MetaData, Text, UniqueConstraint
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
    __table_args__ = (Index(None, "serial"),)


class MotorRow(Row):
    """A motor inside an item."""

    __tablename__ = "motor"
    id: Mapped[int] = mapped_column(primary_key=True)
    item_id: Mapped[int] = mapped_column(ForeignKey("item.id"))
    rated_volts: Mapped[float]
    note: Mapped[str]
    __table_args__ = (Index(None, "item_id"),)


class JobRow(Row):
    """One repair. `searched` is what a search looks through, without case and accents: derived from the rest."""

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
    __table_args__ = (
        UniqueConstraint("number"),
        Index(None, "item_id"),
        Index(None, "motor_id"),
        CheckConstraint("number > 0", name="number_above_zero"),
        CheckConstraint("state IN ('open', 'closed')", name="state_known"),
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
    __table_args__ = (Index(None, "job_id", "utc"),)


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
    __table_args__ = (
        UniqueConstraint("uid"),
        Index(None, "job_id", "started_utc"),
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
