"""What a support bundle says of the screen: numbers and the names of Qt's own parts, nothing of what is on it."""

from PySide6.QtCore import qVersion
from PySide6.QtGui import QFontMetricsF, QGuiApplication
from PySide6.QtWidgets import QApplication


def screen_facts() -> dict[str, object]:
    """To be asked in the window's thread, and handed to `benchlog.support.bundle` as `screen`."""
    style = QApplication.style()
    font = QApplication.font()
    return {
        "qt": qVersion(),
        "platform": QGuiApplication.platformName(),
        "style": style.objectName() if style is not None else "",
        "font height px": QFontMetricsF(font).height(),
        "font size pt": font.pointSizeF(),
        "screens": [
            {
                "size px": f"{screen.size().width()} x {screen.size().height()}",
                "device pixels a pixel": screen.devicePixelRatio(),
                "logical dpi": round(screen.logicalDotsPerInch(), 1),
                "physical dpi": round(screen.physicalDotsPerInch(), 1),
                "refresh Hz": round(screen.refreshRate(), 1),
            }
            for screen in QGuiApplication.screens()
        ],
    }
