"""Rows of what is kept, made once: a press while a run is on must not build a long list anew."""

from collections.abc import Callable, Hashable, Sequence

from PySide6.QtWidgets import QVBoxLayout, QWidget


class RowStack(QWidget):
    """Shows rows in the order given. A row is known by its key; what changes in it belongs into the key."""

    def __init__(self, spacing: int) -> None:
        super().__init__()
        self._rows: dict[Hashable, QWidget] = {}
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(spacing)

    def show_rows(self, rows: Sequence[tuple[Hashable, Callable[[], QWidget]]]) -> None:
        """Those that stay keep their order among each other."""
        wanted = {key for key, _ in rows}
        for key in [key for key in self._rows if key not in wanted]:
            gone = self._rows.pop(key)
            self._column.removeWidget(gone)
            gone.hide()
            gone.deleteLater()
        for place, (key, make) in enumerate(rows):
            if key not in self._rows:
                self._rows[key] = make()
                self._column.insertWidget(place, self._rows[key])

    def count(self) -> int:
        return len(self._rows)
