"""What the window stands on, looked at before anything of it is built: the Qt libraries, and a display.

A thing that is missing is one line that names it and says how to get it, not a traceback or an abort.
"""

import re
from collections.abc import Callable, Mapping
from pathlib import Path

from ui import texts

EX_UNAVAILABLE = 69

DEBIAN_PACKAGES = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libOpenGL.so.0": "libopengl0",
    "libGLX.so.0": "libglx0",
    "libxkbcommon.so.0": "libxkbcommon0",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-image.so.0": "libxcb-image0",
    "libxcb-render-util.so.0": "libxcb-render-util0",
    "libxcb-shape.so.0": "libxcb-shape0",
    "libxcb-xkb.so.1": "libxcb-xkb1",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libfreetype.so.6": "libfreetype6",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libgthread-2.0.so.0": "libglib2.0-0",
    "libX11.so.6": "libx11-6",
    "libX11-xcb.so.1": "libx11-xcb1",
}
"""By the name the loader misses. Source: the packages of Debian 12."""

_OF_X = ("libxcb-", "libxkbcommon", "libX11")
_MISSING = re.compile(r"(lib[\w.+-]+\.so[\w.]*): cannot open shared object file")


def missing_qt(load: Callable[[], object]) -> str | None:
    """One line where Qt can't be loaded, else None."""
    try:
        load()
    except ModuleNotFoundError:
        return texts.NO_QT
    except ImportError as error:
        found = _MISSING.search(str(error))
        if found is None:
            return texts.NO_LIBRARY_UNKNOWN.format(what=error)
        library = found[1]
        package = DEBIAN_PACKAGES.get(library)
        if package is None:
            return texts.NO_LIBRARY_UNKNOWN.format(what=library)
        return texts.NO_LIBRARY.format(library=library, package=package)
    return None


def missing_plugin(
    environment: Mapping[str, str], platform: str, plugin: Path, load: Callable[[str], object]
) -> str | None:
    """One line where the plugin that draws on an X display can't be loaded, else None.

    Qt would end the program with an abort. `plugin` is its file, `load` what loads a library by file or name.
    """
    chosen = environment.get("QT_QPA_PLATFORM") or ("wayland" if environment.get("WAYLAND_DISPLAY") else "xcb")
    if not platform.startswith("linux") or not chosen.startswith("xcb") or not plugin.exists():
        return None
    try:
        load(str(plugin))
    except OSError as error:
        # The loader names only the first; a person wants to install them all at once.
        first = _MISSING.search(str(error))
        missing = {first[1]} if first is not None else set()
        missing |= {library for library in DEBIAN_PACKAGES if library.startswith(_OF_X) and not _loads(library, load)}
        if not missing or not missing <= DEBIAN_PACKAGES.keys():
            return texts.NO_LIBRARY_UNKNOWN.format(what=error)
        packages = sorted({DEBIAN_PACKAGES[library] for library in missing})
        return texts.NO_LIBRARY.format(library=", ".join(sorted(missing)), package=" ".join(packages))
    return None


def _loads(library: str, load: Callable[[str], object]) -> bool:
    try:
        load(library)
    except OSError:
        return False
    return True


def missing_display(environment: Mapping[str, str], platform: str) -> str | None:
    """One line where Qt would abort for want of a display, else None."""
    if not platform.startswith("linux"):
        return None
    named = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")
    return None if any(environment.get(name) for name in named) else texts.NO_DISPLAY
