"""A line that takes a quantity the way people type it: "0.5", "0,5", "500m", "500 mA", whatever the locale.

Not a spin box: Qt's drops the decimal mark of the other locale, and 0.5 V becomes 5 V.
"""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QWidget

from benchlog.quantities import parse, show
from ui import texts, theme


class QuantityEdit(QLineEdit):
    """`value()` is in SI base units; None where the line is empty or not a number. `wrong()` tells the two apart."""

    value_changed = Signal()

    def __init__(self, unit: str, name: str, parent: QWidget | None = None, *, optional: bool = False) -> None:
        super().__init__(parent)
        self.unit = unit
        self.optional = optional
        self.setAccessibleName(texts.QUANTITY_NAME.format(name=name, unit=unit))
        self.setPlaceholderText(texts.OPTIONAL if optional else unit)
        self.setMinimumHeight(theme.TOUCH_PX - 4)
        self.textChanged.connect(self._judge)
        self.editingFinished.connect(self._tidy)

    def value(self) -> float | None:
        try:
            found = parse(self.text(), self.unit)
        except ValueError:
            return None
        return found if found > 0 else None

    def wrong(self) -> bool:
        """Something is typed that is no quantity above zero, or nothing where something must be."""
        return self.value() is None and not (self.optional and not self.text().strip())

    def put(self, value: float | None) -> None:
        self.setText("" if value is None else show(value, self.unit))

    def _judge(self) -> None:
        typed_wrong = bool(self.text().strip()) and self.value() is None
        self.setProperty("wrong", typed_wrong)
        self.setToolTip(texts.NOT_A_QUANTITY.format(unit=self.unit) if typed_wrong else "")
        self.style().unpolish(self)
        self.style().polish(self)
        self.value_changed.emit()

    def _tidy(self) -> None:
        value = self.value()
        if value is not None:
            tidy = show(value, self.unit)
            # Shown only where it says the same: 12.345 V must not silently become 12.3 V.
            if parse(tidy, self.unit) == value:
                self.setText(tidy)
