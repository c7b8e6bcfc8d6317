"""The window's tests need no screen."""

import os

os.environ["QT_QPA_PLATFORM"] = "offscreen"
