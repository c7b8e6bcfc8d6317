"""A demo ledger of an invented harbour workshop: `python -m demo_db FILE`, or `build`."""

from demo_db.building import build

__all__ = ["build"]
