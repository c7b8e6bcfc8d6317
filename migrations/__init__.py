"""The revisions of the ledger's tables, one file each. Run by benchlog.ledger.migrating, never from a command line."""
