"""The way of a job: who and for how much, waiting, costs, parts, findings, files, edits, drafts; what freed it."""

import json

import sqlalchemy as sa
from alembic import op

revision: str = "0003"
down_revision: str | None = "0002"
branch_labels: None = None
depends_on: None = None

STATES = "state IN ('open', 'waiting-for-approval', 'waiting-for-part', 'waiting-for-owner', 'closed')"


def upgrade() -> None:
    _jobs()
    with op.batch_alter_table("entry") as batch:
        batch.add_column(_text("kind", "note"))
    with op.batch_alter_table("run") as batch:
        batch.add_column(_text("freed_rung"))
        batch.drop_index(op.f("ix_run_job_id_started_utc"))
        of_history = ["job_id", "started_utc", "kind", "outcome", "kicks", "duration_s", "freed_rung"]
        batch.create_index("ix_run_history", of_history, unique=False)
    _fill()
    _costs()
    _taken_apart()
    _edits()


def downgrade() -> None:
    raise NotImplementedError("the copy made before a migration is the way back")


def _text(name: str, default: str = "") -> sa.Column[str]:
    return sa.Column(name, sa.Text(), nullable=False, server_default=default)


def _jobs() -> None:
    with op.batch_alter_table("job") as batch:
        for name in ("owner", "contact", "who", "opened_before", "pumped", "waiting_for", "result", "method", "advice"):
            batch.add_column(_text(name))
        batch.add_column(sa.Column("consent", sa.Boolean(), nullable=False, server_default=sa.false()))
        batch.add_column(sa.Column("spending_limit_cents", sa.BigInteger(), nullable=True))
        batch.add_column(sa.Column("waiting_since_utc", sa.Text(), nullable=True))
        batch.add_column(sa.Column("warranty_days", sa.Integer(), nullable=True))
        batch.add_column(sa.Column("comeback_of", sa.Integer(), nullable=True))
        batch.add_column(sa.Column("last_outcome", sa.Text(), nullable=True))
        batch.create_foreign_key(op.f("fk_job_comeback_of_job"), "job", ["comeback_of"], ["id"])
        batch.drop_constraint(op.f("ck_job_state_known"), type_="check")
        batch.create_check_constraint(op.f("ck_job_state_known"), STATES)
        batch.create_check_constraint(op.f("ck_job_result_known"), "result IN ('', 'works', 'partly', 'not-repaired')")
        batch.add_column(_text("changed_utc"))
        for name in ("state", "cause", "last_outcome", "who", "opened_utc", "changed_utc"):
            batch.create_index(op.f(f"ix_job_{name}"), [name], unique=False)
    op.create_index(op.f("ix_item_kind"), "item", ["kind"], unique=False)


def _fill() -> None:
    """What can be told of what is there: when a job was last changed, how its last run ended, where one came free."""
    there = op.get_bind()
    there.execute(sa.text("UPDATE job SET changed_utc = coalesce(closed_utc, opened_utc)"))
    for table, instant in (("entry", "utc"), ("run", "started_utc")):
        last = f"(SELECT max({instant}) FROM {table} WHERE job_id = job.id)"
        there.execute(sa.text(f"UPDATE job SET changed_utc = {last} WHERE {last} > changed_utc"))
    runs = there.execute(
        sa.text("SELECT id, job_id, outcome, rated_volts FROM run WHERE kind <> 'leads' ORDER BY started_utc, id")
    ).all()
    for job, outcome in {job: outcome for _, job, outcome, _ in runs}.items():
        there.execute(
            sa.text("UPDATE job SET last_outcome = :outcome WHERE id = :job"), {"outcome": outcome, "job": job}
        )
    for run, _, outcome, rated in runs:
        if outcome == "freed":
            steps = sa.text("SELECT \"values\" FROM event WHERE run_id = :run AND kind = 'step' ORDER BY seq DESC")
            rung = _rung([values for (values,) in there.execute(steps, {"run": run})], rated)
            there.execute(sa.text("UPDATE run SET freed_rung = :rung WHERE id = :run"), {"rung": rung, "run": run})


def _rung(steps: list[str], rated_volts: float) -> str:
    for values in steps:
        try:
            step = json.loads(values)
            return f"{step['name']}, {step['volts'] / rated_volts:.0%}".replace("%", " %") if step["rung"] else ""
        except (ValueError, TypeError, KeyError, ZeroDivisionError):
            continue  # a step that was left out, or what can't be read: the run keeps its words all the same
    return ""


def _costs() -> None:
    op.create_table(
        "part",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("number", sa.Text(), nullable=False),
        sa.Column("each_cents", sa.BigInteger(), nullable=False),
        sa.Column("stock", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_part")),
        sa.UniqueConstraint("name", "number", name=op.f("uq_part_name_number")),
    )
    op.create_table(
        "charge",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("job_id", sa.Integer(), nullable=False),
        sa.Column("utc", sa.Text(), nullable=False),
        sa.Column("who", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.Column("part_id", sa.Integer(), nullable=True),
        sa.Column("count", sa.Integer(), nullable=False),
        sa.Column("each_cents", sa.BigInteger(), nullable=False),
        sa.Column("cents", sa.BigInteger(), nullable=False),
        sa.Column("corrects", sa.Integer(), nullable=True),
        sa.CheckConstraint("kind IN ('part', 'minutes', 'other')", name=op.f("ck_charge_kind_known")),
        sa.ForeignKeyConstraint(["job_id"], ["job.id"], name=op.f("fk_charge_job_id_job")),
        sa.ForeignKeyConstraint(["part_id"], ["part.id"], name=op.f("fk_charge_part_id_part")),
        sa.ForeignKeyConstraint(["corrects"], ["charge.id"], name=op.f("fk_charge_corrects_charge")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_charge")),
        sa.UniqueConstraint("corrects", name=op.f("uq_charge_corrects")),
    )
    op.create_index(op.f("ix_charge_job_id"), "charge", ["job_id"], unique=False)


def _taken_apart() -> None:
    op.create_table(
        "finding",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("job_id", sa.Integer(), nullable=False),
        sa.Column("utc", sa.Text(), nullable=False),
        sa.Column("who", sa.Text(), nullable=False),
        sa.Column("part", sa.Text(), nullable=False),
        sa.Column("marking", sa.Text(), nullable=False),
        sa.Column("place", sa.Text(), nullable=False),
        sa.Column("purpose", sa.Text(), nullable=False),
        sa.Column("value", sa.Text(), nullable=False),
        sa.Column("corrects", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(["job_id"], ["job.id"], name=op.f("fk_finding_job_id_job")),
        sa.ForeignKeyConstraint(["corrects"], ["finding.id"], name=op.f("fk_finding_corrects_finding")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_finding")),
        sa.UniqueConstraint("corrects", name=op.f("uq_finding_corrects")),
    )
    op.create_index(op.f("ix_finding_job_id"), "finding", ["job_id"], unique=False)
    op.create_table(
        "file",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("job_id", sa.Integer(), nullable=False),
        sa.Column("utc", sa.Text(), nullable=False),
        sa.Column("who", sa.Text(), nullable=False),
        sa.Column("sha256", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("media_type", sa.Text(), nullable=False),
        sa.Column("size", sa.BigInteger(), nullable=False),
        sa.Column("width", sa.Integer(), nullable=True),
        sa.Column("height", sa.Integer(), nullable=True),
        sa.Column("caption", sa.Text(), nullable=False),
        sa.Column("thumbnail", sa.LargeBinary(), nullable=True),
        sa.ForeignKeyConstraint(["job_id"], ["job.id"], name=op.f("fk_file_job_id_job")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_file")),
    )
    op.create_index(op.f("ix_file_job_id"), "file", ["job_id"], unique=False)
    op.create_index(op.f("ix_file_sha256"), "file", ["sha256"], unique=False)


def _edits() -> None:
    op.create_table(
        "edit",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("job_id", sa.Integer(), nullable=False),
        sa.Column("run_id", sa.Integer(), nullable=True),
        sa.Column("utc", sa.Text(), nullable=False),
        sa.Column("who", sa.Text(), nullable=False),
        sa.Column("why", sa.Text(), nullable=False),
        sa.Column("field", sa.Text(), nullable=False),
        sa.Column("old", sa.Text(), nullable=False),
        sa.Column("new", sa.Text(), nullable=False),
        sa.Column("undone_utc", sa.Text(), nullable=True),
        sa.ForeignKeyConstraint(["job_id"], ["job.id"], name=op.f("fk_edit_job_id_job")),
        sa.ForeignKeyConstraint(["run_id"], ["run.id"], name=op.f("fk_edit_run_id_run")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_edit")),
    )
    op.create_index(op.f("ix_edit_job_id_utc"), "edit", ["job_id", "utc"], unique=False)
    op.create_table(
        "draft",
        sa.Column("key", sa.Text(), nullable=False),
        sa.Column("utc", sa.Text(), nullable=False),
        sa.Column("fields", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("key", name=op.f("pk_draft")),
    )
