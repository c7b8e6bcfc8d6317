"""Supplies: what was found out about each, by its address and its own word for itself, and the checks of it."""

import sqlalchemy as sa
from alembic import op

revision: str = "0005"
down_revision: str | None = "0004"
branch_labels: None = None
depends_on: None = None


def upgrade() -> None:
    op.create_table(
        "supply",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("utc", sa.Text(), nullable=False),
        sa.Column("resource", sa.Text(), nullable=False),
        sa.Column("identity", sa.Text(), nullable=False),
        sa.Column("output", sa.Integer(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("dialect", sa.Text(), nullable=False),
        sa.Column("content", sa.Text(), nullable=False),
        sa.CheckConstraint("kind IN ('found', 'told', 'checked')", name=op.f("ck_supply_kind_known")),
        sa.CheckConstraint("output > 0", name=op.f("ck_supply_output_above_zero")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_supply")),
    )
    op.create_index(op.f("ix_supply_resource_identity"), "supply", ["resource", "identity"], unique=False)


def downgrade() -> None:
    raise NotImplementedError("the copy made before a migration is the way back")
