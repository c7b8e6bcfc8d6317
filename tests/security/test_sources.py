"""What the program's own sources never do: run text as code, unpickle, use a shell, listen beyond loopback."""

import ast
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
SOURCES = sorted(
    p for room in ("benchlog", "drivers", "ui", "demo_db", "migrations") for p in (ROOT / room).rglob("*.py")
)
MODULES = {"pickle", "marshal", "shelve", "dill", "yaml", "jsonpickle", "http", "xmlrpc", "socketserver", "code"}
CALLS = {"eval", "exec", "compile", "__import__", "os.system", "os.popen", "os.execv", "os.execvp", "yaml.load"}
LISTENING = {"bind", "listen", "create_server", "start_server", "create_unix_server"}
SERVER = "drivers/simulated/serve.py"


def misuses(text: str, name: str) -> list[str]:
    """Every place of a source that does what it must not."""
    found = []
    for node in ast.walk(ast.parse(text)):
        where = f"{name}:{getattr(node, 'lineno', 0)}"
        if isinstance(node, ast.Import):
            found += [f"{where} import {a.name}" for a in node.names if a.name.split(".")[0] in MODULES]
        if isinstance(node, ast.ImportFrom) and (node.module or "").split(".")[0] in MODULES:
            found.append(f"{where} from {node.module}")
        if isinstance(node, ast.Call):
            called = ast.unparse(node.func)
            if called in CALLS or called.endswith((".allow_pickle", ".setHtml")):
                found.append(f"{where} {called}")
            if any(k.arg in ("shell", "allow_pickle") and ast.unparse(k.value) != "False" for k in node.keywords):
                found.append(f"{where} {called} with a shell or pickles")
            listens = isinstance(node.func, ast.Attribute) and node.func.attr in LISTENING
            # sqlalchemy's event.listen listens to no port
            if listens and called != "event.listen" and not (name == SERVER and "127.0.0.1" in ast.unparse(node)):
                found.append(f"{where} {called}")
    return found


def test_no_source_runs_text_unpickles_uses_a_shell_or_listens_beyond_loopback() -> None:
    assert len(SOURCES) > 100
    names = [str(path.relative_to(ROOT).as_posix()) for path in SOURCES]
    assert SERVER in names
    assert [m for path, name in zip(SOURCES, names, strict=True) for m in misuses(path.read_text("utf-8"), name)] == []


@pytest.mark.parametrize(
    "text",
    [
        "import pickle",
        "from marshal import loads",
        "eval('1')",
        "os.system('x')",
        "subprocess.run('x', shell=True)",
        "socket.create_server(('0.0.0.0', 1))",
        "s.bind(('127.0.0.1', 1))",
        "np.load(f, allow_pickle=True)",
    ],
)
def test_the_look_at_the_sources_sees_each_of_them(text: str) -> None:
    assert misuses(text, "benchlog/x.py")
