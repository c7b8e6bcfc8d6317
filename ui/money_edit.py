"""A field for an amount of money, in whatever way people write one."""

from PySide6.QtWidgets import QLineEdit

from benchlog.errors import Refused
from benchlog.money import parse_money, show_money
from ui import retelling, theme


class MoneyEdit(QLineEdit):
    """Empty is None. What is typed stays as it is typed."""

    def __init__(self, name: str, accessible: str) -> None:
        super().__init__()
        self.setObjectName(name)
        self.setAccessibleName(accessible)
        self.setFont(theme.font())
        self.setMinimumHeight(theme.TOUCH_PX - 4)
        self.setMaxLength(40)

    def cents(self) -> int | None:
        """None where it is empty, or no amount: see problem()."""
        try:
            return parse_money(self.text()) if self.text().strip() else None
        except Refused:
            return None

    def problem(self) -> str:
        """What is wrong with it; "" where nothing is."""
        try:
            self.text().strip() and parse_money(self.text())
        except Refused as refusal:
            return retelling.told(str(refusal))
        return ""

    def put(self, cents: int | None) -> None:
        self.setText("" if cents is None else show_money(cents))
