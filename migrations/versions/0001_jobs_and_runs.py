"""Jobs, what they are about, their runs and traces."""

import sqlalchemy as sa
from alembic import op

revision: str = "0001"
down_revision: str | None = None
branch_labels: None = None
depends_on: None = None


def upgrade() -> None:
    _things()
    _jobs()
    _runs()


def _things() -> None:
    op.create_table(
        "item",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("make", sa.Text(), nullable=False),
        sa.Column("model", sa.Text(), nullable=False),
        sa.Column("serial", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_item")),
    )
    op.create_index(op.f("ix_item_serial"), "item", ["serial"], unique=False)
    op.create_table(
        "motor",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("item_id", sa.Integer(), nullable=False),
        sa.Column("rated_volts", sa.Double(), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["item_id"], ["item.id"], name=op.f("fk_motor_item_id_item")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_motor")),
    )
    op.create_index(op.f("ix_motor_item_id"), "motor", ["item_id"], unique=False)


def _jobs() -> None:
    op.create_table(
        "job",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("tag", sa.Text(), nullable=False),
        sa.Column("item_id", sa.Integer(), nullable=False),
        sa.Column("motor_id", sa.Integer(), nullable=False),
        sa.Column("opened_utc", sa.Text(), nullable=False),
        sa.Column("closed_utc", sa.Text(), nullable=True),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("complaint", sa.Text(), nullable=False),
        sa.Column("load_state", sa.Text(), nullable=False),
        sa.Column("cause", sa.Text(), nullable=False),
        sa.Column("work_done", sa.Text(), nullable=False),
        sa.Column("prognosis", sa.Text(), nullable=False),
        sa.Column("searched", sa.Text(), nullable=False),
        sa.CheckConstraint("state IN ('open', 'closed')", name=op.f("ck_job_state_known")),
        sa.CheckConstraint("number > 0", name=op.f("ck_job_number_above_zero")),
        sa.ForeignKeyConstraint(["item_id"], ["item.id"], name=op.f("fk_job_item_id_item")),
        sa.ForeignKeyConstraint(["motor_id"], ["motor.id"], name=op.f("fk_job_motor_id_motor")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_job")),
        sa.UniqueConstraint("number", name=op.f("uq_job_number")),
    )
    op.create_index(op.f("ix_job_item_id"), "job", ["item_id"], unique=False)
    op.create_index(op.f("ix_job_motor_id"), "job", ["motor_id"], unique=False)
    op.create_table(
        "entry",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("job_id", sa.Integer(), nullable=False),
        sa.Column("utc", sa.Text(), nullable=False),
        sa.Column("stage", sa.Text(), nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.Column("who", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["job_id"], ["job.id"], name=op.f("fk_entry_job_id_job")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_entry")),
    )
    op.create_index(op.f("ix_entry_job_id_utc"), "entry", ["job_id", "utc"], unique=False)


def _runs() -> None:
    op.create_table(
        "run",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("job_id", sa.Integer(), nullable=False),
        sa.Column("uid", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("started_utc", sa.Text(), nullable=False),
        sa.Column("duration_s", sa.Double(), nullable=False),
        sa.Column("resource", sa.Text(), nullable=False),
        sa.Column("identity", sa.Text(), nullable=False),
        sa.Column("dialect", sa.Text(), nullable=False),
        sa.Column("rated_volts", sa.Double(), nullable=False),
        sa.Column("load_state", sa.Text(), nullable=False),
        sa.Column("sequence_name", sa.Text(), nullable=False),
        sa.Column("request", sa.Text(), nullable=False),
        sa.Column("ceilings", sa.Text(), nullable=False),
        sa.Column("program", sa.Text(), nullable=False),
        sa.Column("complete", sa.Boolean(), nullable=False),
        sa.Column("outcome", sa.Text(), nullable=False),
        sa.Column("reason", sa.Text(), nullable=False),
        sa.Column("winding_verdict", sa.Text(), nullable=False),
        sa.Column("resistance_ohm", sa.Double(), nullable=True),
        sa.Column("resistance_low_ohm", sa.Double(), nullable=True),
        sa.Column("resistance_high_ohm", sa.Double(), nullable=True),
        sa.Column("kicks", sa.Integer(), nullable=False),
        sa.Column("moved", sa.Boolean(), nullable=False),
        sa.Column("max_volts", sa.Double(), nullable=True),
        sa.Column("max_amps", sa.Double(), nullable=True),
        sa.Column("winding_bound_c", sa.Double(), nullable=True),
        sa.Column("locked_s", sa.Double(), nullable=False),
        sa.Column("output_confirmed_off", sa.Boolean(), nullable=False),
        sa.CheckConstraint("duration_s >= 0", name=op.f("ck_run_duration_not_negative")),
        sa.CheckConstraint("kicks >= 0", name=op.f("ck_run_kicks_not_negative")),
        sa.ForeignKeyConstraint(["job_id"], ["job.id"], name=op.f("fk_run_job_id_job")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_run")),
        sa.UniqueConstraint("uid", name=op.f("uq_run_uid")),
    )
    op.create_index(op.f("ix_run_job_id_started_utc"), "run", ["job_id", "started_utc"], unique=False)
    op.create_index(op.f("ix_run_started_utc"), "run", ["started_utc"], unique=False)
    op.create_table(
        "event",
        sa.Column("run_id", sa.Integer(), nullable=False),
        sa.Column("seq", sa.Integer(), nullable=False),
        sa.Column("t_s", sa.Double(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.Column("values", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["run_id"], ["run.id"], name=op.f("fk_event_run_id_run")),
        sa.PrimaryKeyConstraint("run_id", "seq", name=op.f("pk_event")),
    )
    op.create_table(
        "trace",
        sa.Column("run_id", sa.Integer(), nullable=False),
        sa.Column("samples", sa.Integer(), nullable=False),
        sa.Column("format", sa.Integer(), nullable=False),
        sa.Column("checksum", sa.BigInteger(), nullable=False),
        sa.Column("data", sa.LargeBinary(), nullable=False),
        sa.CheckConstraint("samples >= 0", name=op.f("ck_trace_samples_not_negative")),
        sa.ForeignKeyConstraint(["run_id"], ["run.id"], name=op.f("fk_trace_run_id_run")),
        sa.PrimaryKeyConstraint("run_id", name=op.f("pk_trace")),
    )


def downgrade() -> None:
    raise NotImplementedError("the copy made before a migration is the way back")
