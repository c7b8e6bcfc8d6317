"""Lots: what a job is for, locked start tests, limits from known good ones, units, checks, dense curves, judgements."""

import sqlalchemy as sa
from alembic import op

revision: str = "0004"
down_revision: str | None = "0003"
branch_labels: None = None
depends_on: None = None


def upgrade() -> None:
    with op.batch_alter_table("job") as batch:
        batch.add_column(sa.Column("purpose", sa.Text(), nullable=False, server_default="repair"))
        batch.create_check_constraint(op.f("ck_job_purpose_known"), "purpose IN ('repair', 'measuring')")
        batch.create_index(op.f("ix_job_purpose"), ["purpose"], unique=False)
    _measured_by()
    _lots()
    with op.batch_alter_table("run") as batch:
        batch.add_column(sa.Column("unit_id", sa.Integer(), nullable=True))
        batch.create_foreign_key(op.f("fk_run_unit_id_unit"), "unit", ["unit_id"], ["id"])
        batch.create_index(op.f("ix_run_unit_id"), ["unit_id"], unique=False)
    _of_runs()


def downgrade() -> None:
    raise NotImplementedError("the copy made before a migration is the way back")


def _measured_by() -> None:
    op.create_table(
        "start_test",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("content", sa.Text(), nullable=False),
        sa.Column("digest", sa.Text(), nullable=False),
        sa.Column("utc", sa.Text(), nullable=False),
        sa.Column("who", sa.Text(), nullable=False),
        sa.CheckConstraint("version > 0", name=op.f("ck_start_test_version_above_zero")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_start_test")),
        sa.UniqueConstraint("name", "version", name=op.f("uq_start_test_name_version")),
    )
    op.create_table(
        "limits",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("test_name", sa.Text(), nullable=False),
        sa.Column("test_version", sa.Integer(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("make", sa.Text(), nullable=False),
        sa.Column("model", sa.Text(), nullable=False),
        sa.Column("n", sa.Integer(), nullable=False),
        sa.Column("coverage", sa.Double(), nullable=False),
        sa.Column("confidence", sa.Double(), nullable=False),
        sa.Column("content", sa.Text(), nullable=False),
        sa.Column("utc", sa.Text(), nullable=False),
        sa.Column("who", sa.Text(), nullable=False),
        sa.CheckConstraint("n > 0", name=op.f("ck_limits_n_above_zero")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_limits")),
    )
    op.create_index(op.f("ix_limits_test_name_test_version"), "limits", ["test_name", "test_version"], unique=False)


def _lots() -> None:
    op.create_table(
        "lot",
        sa.Column("job_id", sa.Integer(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("test_id", sa.Integer(), nullable=False),
        sa.Column("limits_id", sa.Integer(), nullable=True),
        sa.Column("operator", sa.Text(), nullable=False),
        sa.Column("leads", sa.Text(), nullable=False),
        sa.Column("fixture", sa.Text(), nullable=False),
        sa.Column("ambient_c", sa.Double(), nullable=False),
        sa.ForeignKeyConstraint(["job_id"], ["job.id"], name=op.f("fk_lot_job_id_job")),
        sa.ForeignKeyConstraint(["test_id"], ["start_test.id"], name=op.f("fk_lot_test_id_start_test")),
        sa.ForeignKeyConstraint(["limits_id"], ["limits.id"], name=op.f("fk_lot_limits_id_limits")),
        sa.PrimaryKeyConstraint("job_id", name=op.f("pk_lot")),
    )
    op.create_table(
        "unit",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("job_id", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("serial", sa.Text(), nullable=False),
        sa.Column("utc", sa.Text(), nullable=False),
        sa.CheckConstraint("number > 0", name=op.f("ck_unit_number_above_zero")),
        sa.CheckConstraint("trim(serial) <> ''", name=op.f("ck_unit_serial_not_blank")),
        sa.ForeignKeyConstraint(["job_id"], ["lot.job_id"], name=op.f("fk_unit_job_id_lot")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_unit")),
        sa.UniqueConstraint("job_id", "number", name=op.f("uq_unit_job_id_number")),
        sa.UniqueConstraint("job_id", "serial", name=op.f("uq_unit_job_id_serial")),
    )
    op.create_index(op.f("ix_unit_serial"), "unit", ["serial"], unique=False)


def _of_runs() -> None:
    op.create_table(
        "lot_check",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("job_id", sa.Integer(), nullable=False),
        sa.Column("run_id", sa.Integer(), nullable=True),
        sa.Column("utc", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("value", sa.Double(), nullable=False),
        sa.Column("unit", sa.Text(), nullable=False),
        sa.Column("passed", sa.Boolean(), nullable=False),
        sa.Column("who", sa.Text(), nullable=False),
        sa.CheckConstraint("kind IN ('zero', 'short')", name=op.f("ck_lot_check_kind_known")),
        sa.ForeignKeyConstraint(["job_id"], ["lot.job_id"], name=op.f("fk_lot_check_job_id_lot")),
        sa.ForeignKeyConstraint(["run_id"], ["run.id"], name=op.f("fk_lot_check_run_id_run")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_lot_check")),
    )
    op.create_index(op.f("ix_lot_check_job_id_utc"), "lot_check", ["job_id", "utc"], unique=False)
    op.create_table(
        "dense",
        sa.Column("run_id", sa.Integer(), nullable=False),
        sa.Column("seq", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("began_s", sa.Double(), nullable=False),
        sa.Column("u_began_s", sa.Double(), nullable=False),
        sa.Column("interval_s", sa.Double(), nullable=False),
        sa.Column("samples", sa.Integer(), nullable=False),
        sa.Column("format", sa.Integer(), nullable=False),
        sa.Column("checksum", sa.BigInteger(), nullable=False),
        sa.Column("data", sa.LargeBinary(), nullable=False),
        sa.CheckConstraint("samples >= 0", name=op.f("ck_dense_samples_not_negative")),
        sa.ForeignKeyConstraint(["run_id"], ["run.id"], name=op.f("fk_dense_run_id_run")),
        sa.PrimaryKeyConstraint("run_id", "seq", name=op.f("pk_dense")),
    )
    op.create_table(
        "judged",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("unit_id", sa.Integer(), nullable=False),
        sa.Column("run_id", sa.Integer(), nullable=False),
        sa.Column("limits_id", sa.Integer(), nullable=False),
        sa.Column("passed", sa.Boolean(), nullable=True),
        sa.Column("content", sa.Text(), nullable=False),
        sa.Column("utc", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["unit_id"], ["unit.id"], name=op.f("fk_judged_unit_id_unit")),
        sa.ForeignKeyConstraint(["run_id"], ["run.id"], name=op.f("fk_judged_run_id_run")),
        sa.ForeignKeyConstraint(["limits_id"], ["limits.id"], name=op.f("fk_judged_limits_id_limits")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_judged")),
    )
    op.create_index(op.f("ix_judged_unit_id"), "judged", ["unit_id"], unique=False)
    op.create_index(op.f("ix_judged_run_id"), "judged", ["run_id"], unique=False)
