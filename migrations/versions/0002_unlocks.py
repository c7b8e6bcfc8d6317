"""Unlocks: who let a job go up to higher ceilings of the owner, when, why, how far and until when."""

import sqlalchemy as sa
from alembic import op

revision: str = "0002"
down_revision: str | None = "0001"
branch_labels: None = None
depends_on: None = None


def upgrade() -> None:
    op.create_table(
        "unlock",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("job_id", sa.Integer(), nullable=False),
        sa.Column("utc", sa.Text(), nullable=False),
        sa.Column("until_utc", sa.Text(), nullable=False),
        sa.Column("who", sa.Text(), nullable=False),
        sa.Column("why", sa.Text(), nullable=False),
        sa.Column("limits", sa.Text(), nullable=False),
        sa.CheckConstraint("trim(who) <> ''", name=op.f("ck_unlock_who_not_blank")),
        sa.CheckConstraint("trim(why) <> ''", name=op.f("ck_unlock_why_not_blank")),
        sa.CheckConstraint("until_utc > utc", name=op.f("ck_unlock_ends_after_it_begins")),
        sa.ForeignKeyConstraint(["job_id"], ["job.id"], name=op.f("fk_unlock_job_id_job")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_unlock")),
    )
    op.create_index(op.f("ix_unlock_job_id_utc"), "unlock", ["job_id", "utc"], unique=False)


def downgrade() -> None:
    raise NotImplementedError("the copy made before a migration is the way back")
