"""What can go wrong, by who can act on it. A supply's own errors live with the drivers; a bug stands apart."""


class Refused(Exception):
    """The operator asked for something that is not done. The text says what, with value, limit and unit."""


class LedgerError(Exception):
    """The ledger can't be used as asked. `path` is the file."""

    def __init__(self, path: object, what: str) -> None:
        super().__init__(f"{path}: {what}")
        self.path = str(path)
        self.what = what


class LedgerBusy(LedgerError):
    """Another program holds the ledger."""


class LedgerFull(LedgerError):
    """No space is left where the ledger lives."""


class LedgerReadOnly(LedgerError):
    """The file or its folder can't be written."""


class LedgerTooNew(LedgerError):
    """Written by a newer program."""


class LedgerDamaged(LedgerError):
    """Not a ledger, or no longer one that can be read."""


class JournalDamaged(Exception):
    """A journal whose head can't be read; nothing can be filed from it. The file is left where it is."""
