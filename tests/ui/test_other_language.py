"""Every sentence the window shows is in the catalogue: with each wrapped in ⟦ ⟧ nothing unwrapped is left but data."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QAbstractTableModel, QModelIndex, Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QComboBox,
    QLabel,
    QLineEdit,
    QMenu,
    QTextBrowser,
    QWidget,
)

from benchlog.board.calculators import calculate
from benchlog.board.markings import readings
from benchlog.errors import LedgerError, Refused
from benchlog.ledger.store import Ledger
from benchlog.money import parse_money
from benchlog.records import Stage
from tests.conftest import RunVirtually, events_of
from tests.ui import fake_script
from tests.ui.conftest import Desk
from tests.ui.lot_desk import LotDesk
from tests.words import ROOT, gathered, sentences_of
from ui import texts, translating
from ui.main_window import CURVES_ROOM, HELP_ROOM, HISTORY_ROOM, SETTINGS_ROOM
from ui.retelling import told
from ui.translating import Message, constants_of, strings_of, wanted_language

DATA = (
    *("harbour.db", "TCPIP::192.0.2.7::5025::SOCKET", "Bilge pump", "hums, does not turn", "Deutsch", "English"),
    *("Cabin fan", "cold start", "Mira", "Harbour Workshop,Simulated bench supply"),
)
"""What a person typed, or a supply called itself."""
WRAPPED = re.compile(r"⟦[^⟦⟧]*⟧")
_PLACE = re.compile(r"(%\d+|\{[^}]*\})")
_WORD = re.compile(r"[^\W\d_]{3,}")


def wrapped(message: Message) -> Message:
    """Its words in brackets, its places outside of them: what stands there has to be wrapped by itself."""
    parts = _PLACE.split(message.source)
    words = "".join(
        f"⟦{one}⟧" if number % 2 == 0 and re.search(r"\w", one) else one for number, one in enumerate(parts)
    )
    return Message(context=message.context, source=message.source, about=message.about, translation=words)


@pytest.fixture(scope="module")
def catalogue() -> list[Message]:
    invented = Path(fake_script.__file__).read_text(encoding="utf-8")
    script = [Message(context="script", source=source) for source in sentences_of(invented)]
    return [wrapped(message) for message in (*gathered(), *script)]


@pytest.fixture
def other_language(catalogue: list[Message]) -> Iterator[None]:
    translating.speak(catalogue)
    yield
    translating.speak(())


@pytest.fixture
def foreign_desk(other_language: None, request: pytest.FixtureRequest) -> Desk:
    desk = request.getfixturevalue("desk")
    assert isinstance(desk, Desk)
    return desk


def shown_by(widget: QWidget) -> Iterator[str]:
    """What a person can read of one widget, and what is read out of it."""
    yield widget.toolTip()
    yield widget.accessibleName()
    yield widget.accessibleDescription()
    match widget:
        case QLabel() | QAbstractButton():
            yield widget.text()
        case QLineEdit():
            yield widget.placeholderText()
        case QTextBrowser():
            yield widget.toPlainText()
        case QComboBox():
            yield from (widget.itemText(index) for index in range(widget.count()))
        case QAbstractItemView():
            model = widget.model()
            columns = model.columnCount(QModelIndex()) if isinstance(model, QAbstractTableModel) else 1
            for column in range(columns):
                yield str(model.headerData(column, Qt.Orientation.Horizontal) or "")
                for row in range(model.rowCount(QModelIndex())):
                    yield str(model.index(row, column).data() or "")


def unwrapped(text: str, data: tuple[str, ...]) -> str:
    """What is left of a text when everything wrapped, and every piece of data, is taken out of it."""
    text = re.sub(r"<[^>]*>", " ", text)
    text = re.sub(r"⟦[^⟦⟧]*…$|(?:^|\s)/\S+", " ", text)  # elided; a path
    while WRAPPED.search(text):
        text = WRAPPED.sub(" ", text)
    for piece in data:
        text = text.replace(piece, " ")
    return text


def left_over(root: QWidget, *data: str) -> dict[str, str]:
    found = {}
    for widget in (root, *root.findChildren(QWidget)):
        for text in shown_by(widget):
            rest = unwrapped(text, (*DATA, *data))
            if _WORD.search(rest):
                found[text] = f"{type(widget).__name__} {widget.objectName()}"
    for menu in root.findChildren(QMenu):
        for action in menu.actions():
            if menu.parentWidget() is not None and _WORD.search(unwrapped(action.text(), DATA)):
                found[action.text()] = "QAction"
    return found


def test_a_job_and_every_room_show_no_sentence_that_is_not_in_the_catalogue(foreign_desk: Desk) -> None:
    desk = foreign_desk
    found = left_over(desk.window.stages)
    desk.begin_probe()
    desk.until_over()
    for begin in ("recovery_start", "proof_start"):
        desk.session._go_on()
        desk.click(begin)
        found |= left_over(desk.window)
        desk.until_over()
        found |= left_over(desk.window)
    desk.session.go_to(Stage.CLOSE)
    for room in (CURVES_ROOM, HISTORY_ROOM, SETTINGS_ROOM, HELP_ROOM):
        desk.session.show_room(room)
        desk.session.browsing.settle()
        found |= left_over(desk.window)
    assert found == {}


def test_a_lot_with_limits_shows_no_sentence_that_is_not_in_the_catalogue(
    other_language: None, lot_desk: LotDesk
) -> None:
    lot_desk.with_limits()
    found = left_over(lot_desk.window)
    lot_desk.measure("S-1", "free")
    assert found | left_over(lot_desk.window) == {}


@pytest.mark.parametrize("scenario", ["stuck-soft", "open", "diode"])
def test_what_real_runs_say_is_in_the_catalogue(
    other_language: None, run_virtually: RunVirtually, scenario: str
) -> None:
    run = run_virtually(scenario)
    said = [run.result.reason]
    for event in events_of(run):
        said += [event.text, *(str(event.values[name]) for name in ("why", "name") if event.values.get(name))]
    left = {text: told(text) for text in said if _WORD.search(unwrapped(told(text), (*DATA, scenario)))}
    assert left == {}


def test_what_the_ledger_refuses_is_in_the_catalogue(other_language: None, ledger: Ledger, tmp_path: Path) -> None:
    no_ledger = tmp_path / "photo.db"
    no_ledger.write_bytes(b"no ledger" * 200)
    refused: list[str] = []
    for attempt in (
        lambda: Ledger.open(no_ledger),
        lambda: Ledger.open(tmp_path),
        lambda: ledger.job(7),
        lambda: parse_money("much"),
        lambda: calculate("divider", {}),
        lambda: readings("?!", capacitor=False),
    ):
        with pytest.raises((LedgerError, Refused)) as error:
            attempt()
        refused.append(str(error.value))
    kept = (str(no_ledger), str(tmp_path), "harbour.db", "much")
    assert [text for text in refused if _WORD.search(unwrapped(told(text), kept))] == []


def test_the_record_stays_in_its_own_language(foreign_desk: Desk) -> None:
    desk = foreign_desk
    desk.take_in()
    desk.make_safe()
    desk.session.running.hand_step("turned")
    job = desk.session.bench.job
    assert job is not None
    assert job.load_state == "dry, uncoupled"
    kept = " ".join(entry.text for entry in desk.ledger.entries(job.id))
    assert "⟦" not in kept
    assert "by hand: turned" in kept


def test_english_comes_back_as_it_was(catalogue: list[Message]) -> None:
    before = {name: list(strings_of(value)) for name, value in constants_of(texts)}
    translating.speak(catalogue)
    assert texts.OUTPUT_OFF == "⟦Output off⟧"
    assert texts.STOP_PRESSED == "output off was pressed"
    translating.speak(())
    assert {name: list(strings_of(value)) for name, value in constants_of(texts)} == before
    assert told("it came free") == "it came free"


def test_the_desktops_language_is_taken_where_there_is_a_catalogue_for_it() -> None:
    assert wanted_language("de") == "de"
    assert wanted_language("en") == "en"
    assert wanted_language("xx") == "en"


def test_no_sentence_is_kept_from_before_the_window_is_put_into_its_language() -> None:
    """At import, as a default or in a class: such a sentence would stay English."""
    early = [
        f"{path.relative_to(ROOT)}: {ast.unparse(node)}"
        for path in sorted((ROOT / "ui").rglob("*.py"))
        for node in at_import(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.value.id.endswith("texts")
        if not re.search(r"_UNIT|MOST_|USED_NAMES|JOB_FIELDS", ast.unparse(node))
    ]
    assert early == []


def at_import(tree: ast.AST) -> Iterator[ast.AST]:
    """What is worked out as a module is read: everything but the inside of functions."""
    for node in ast.iter_child_nodes(tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda):
            for default in (*node.args.defaults, *node.args.kw_defaults):
                if default is not None:
                    yield from ast.walk(default)
        else:
            yield node
            yield from at_import(node)
