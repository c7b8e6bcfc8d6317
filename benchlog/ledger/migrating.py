"""Brings a ledger's tables from one revision to the next. The only import of Alembic.

The revisions lie in the installed package `migrations`; no configuration file and no working folder are needed.
"""

import io
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from importlib.resources import files
from pathlib import Path

from alembic import command
from alembic.config import Config
from alembic.script import ScriptDirectory
from sqlalchemy import Connection

from benchlog.clock import Clock
from benchlog.errors import LedgerDamaged, LedgerTooNew
from benchlog.ledger.backups import copy_verified, row_counts, troubles
from benchlog.ledger.connection import WRITING, open_engine
from benchlog.ledger.sql_errors import translated


def scripts() -> Path:
    """The folder of the revisions."""
    return Path(str(files("migrations")))


def build(path: Path, *, application_id: int) -> None:
    """Makes all tables in an empty file, in one transaction. Raises LedgerError."""
    with translated(path), _writing(path) as connection:
        connection.exec_driver_sql(f"PRAGMA application_id = {application_id:d}")
        command.upgrade(_config(scripts(), connection), "head")


def migrate(path: Path, clock: Clock, folder: Path | None = None) -> Path:
    """Brings a ledger of an older revision to the newest in `folder`, after a verified copy beside it.

    Returns the copy. On any error the ledger is as it was. Raises LedgerError; LedgerTooNew where the ledger's
    revision is not one of these.
    """
    folder = folder or scripts()
    with translated(path), _writing(path) as connection:
        script = ScriptDirectory.from_config(_config(folder, connection))
        revision = connection.exec_driver_sql("SELECT version_num FROM alembic_version").scalar_one()
        if revision not in {known.revision for known in script.walk_revisions()}:
            raise LedgerTooNew(path, f"written by a newer program (revision {revision})")
        # The lock is held from before the copy to after the change: nothing can be written between the two.
        stamp = clock.utc().replace(":", "").replace(".", "").replace("-", "")
        copy = path.with_name(f"{path.name}.revision-{revision}.{stamp}")
        copy_verified(path, copy)
        raw = connection.connection.driver_connection
        assert isinstance(raw, sqlite3.Connection)
        before = row_counts(raw)
        command.upgrade(_config(folder, connection), "head")
        after = row_counts(raw)
        lost = [name for name, count in before.items() if name in after and after[name] < count]
        if trouble := troubles(raw) + [f"rows of {name} are gone" for name in lost]:
            raise LedgerDamaged(path, f"could not be brought up to date, and is as it was: {'; '.join(trouble)}")
    return copy


def check_migrations(folder: Path | None = None) -> list[str]:
    """How the tables that the revisions make differ from the tables in the code. Empty when they agree."""
    from tempfile import TemporaryDirectory

    from alembic.autogenerate import compare_metadata
    from alembic.migration import MigrationContext

    from benchlog.ledger.schema import Row

    with TemporaryDirectory() as empty:
        path = Path(empty) / "empty.ledger"
        path.touch()
        with _writing(path) as connection:
            command.upgrade(_config(folder or scripts(), connection), "head")
            context = MigrationContext.configure(connection, opts={"compare_type": True, "render_as_batch": True})
            return [repr(difference) for difference in compare_metadata(context, Row.metadata)]


def newest(folder: Path | None = None) -> str | None:
    """The newest revision in `folder`."""
    config = Config()
    config.set_main_option("script_location", str(folder or scripts()).replace("%", "%%"))
    return ScriptDirectory.from_config(config).get_current_head()


@contextmanager
def _writing(path: Path) -> Iterator[Connection]:
    # Foreign keys off, and before the transaction, where alone it has an effect: to alter a table is to copy and drop
    # it, and a drop deletes what hangs on its rows. What points to nothing is looked for at the end.
    engine = open_engine(path, foreign_keys=False).execution_options(**{WRITING: True})
    try:
        with engine.begin() as connection:
            yield connection
    finally:
        engine.dispose()


def _config(folder: Path, connection: Connection) -> Config:
    config = Config(stdout=io.StringIO())
    config.set_main_option("script_location", str(folder).replace("%", "%%"))
    config.attributes["connection"] = connection
    return config
