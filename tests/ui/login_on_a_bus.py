"""A login manager that is not one: on a private bus it tells of sleep, "sleep" or "awake" for each line of its input.

`python -m tests.ui.login_on_a_bus ADDRESS`. Source of the names: org.freedesktop.login1.
"""

import sys

from PySide6.QtCore import QCoreApplication, QSocketNotifier
from PySide6.QtDBus import QDBusConnection, QDBusMessage

SERVICE, PATH, MANAGER = "org.freedesktop.login1", "/org/freedesktop/login1", "org.freedesktop.login1.Manager"


def main(address: str) -> None:
    application = QCoreApplication([])
    bus = QDBusConnection.connectToBus(address, "manager")
    assert bus.registerService(SERVICE)

    def read() -> None:
        line = sys.stdin.readline().strip()
        if not line:
            application.quit()
            return
        signal = QDBusMessage.createSignal(PATH, MANAGER, "PrepareForSleep")
        signal.setArguments([line == "sleep"])
        bus.send(signal)

    orders = QSocketNotifier(sys.stdin.fileno(), QSocketNotifier.Type.Read)
    orders.activated.connect(lambda *_: read())
    print("ready", flush=True)
    application.exec()


if __name__ == "__main__":
    main(sys.argv[1])
