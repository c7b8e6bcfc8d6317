"""Run by Alembic for every revision. The caller hands over a connection, and owns its transaction."""

from alembic import context

from benchlog.ledger.schema import Row

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=Row.metadata,
    # SQLite alters little: a table is copied, changed and renamed instead.
    render_as_batch=True,
    transactional_ddl=True,
)
with context.begin_transaction():
    context.run_migrations()
