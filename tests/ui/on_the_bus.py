"""A program that holds the computer awake as the window does, and says when it is told of sleep: by lines, for a test.

`python -m tests.ui.on_the_bus`, with DBUS_SYSTEM_BUS_ADDRESS set.
"""

import sys

from PySide6.QtCore import QCoreApplication, QObject, QSocketNotifier

from ui.awake_login import login_here


def main() -> None:
    application = QCoreApplication([])
    login = login_here(QObject(application))
    assert login is not None
    login.sleeps.connect(lambda: print("sleeps", flush=True))
    does = {"hold": login.hold, "let sleep": login.let_sleep, "release": login.release}

    def read() -> None:
        line = sys.stdin.readline().strip()
        if line in does:
            does[line]()
        else:
            application.quit()

    orders = QSocketNotifier(sys.stdin.fileno(), QSocketNotifier.Type.Read)
    orders.activated.connect(lambda *_: read())
    print("listens" if login.listens else "deaf", flush=True)
    application.exec()


if __name__ == "__main__":
    main()
