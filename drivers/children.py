"""How a process of this program's own is started.

By the interpreter where there is one; a built program has none, and starts itself with a first argument that says which
part it is to be. The entry point of the build reads it before anything else is imported.
"""

import sys

CHILD = "--child"


def command(module: str, *arguments: str) -> list[str]:
    """What Popen takes to run that module. Never the folder it is called from: `-P`."""
    if getattr(sys, "frozen", False):
        return [sys.executable, CHILD, module, *arguments]
    return [sys.executable, "-P", "-m", module, *arguments]
