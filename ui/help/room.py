"""The help: topics at the left, the text of one at the right, and a line that searches all of them. Offline."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QSize, Qt, QUrl, Signal
from PySide6.QtGui import QResizeEvent, QTextBlockFormat, QTextCursor, QTextDocument, QTextFormat
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QListWidget, QListWidgetItem, QTextBrowser, QVBoxLayout, QWidget

from ui import texts, theme
from ui.help.pages import Topic, found, markdown
from ui.pieces import Chooser, button

LIST_PX, NARROW_PX = 208, 620
LINE_PERCENT = 128


class HelpRoom(QWidget):
    """`back` to where one was. `picked` when another topic is shown, however it came."""

    back = Signal()
    picked = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.topic = Topic.INTAKE
        self._written = False
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addLayout(self._top())
        self.list = QListWidget()
        self.list.setObjectName("help_topics")
        self.list.setAccessibleName(texts.HELP_TOPICS)
        self.list.setProperty("look", "rows")
        self.list.setFont(theme.font())
        self.list.setFixedWidth(LIST_PX)
        self.page = QTextBrowser()
        self.page.setObjectName("help_page")
        self.page.setAccessibleName(texts.HELP)
        self.page.setFont(theme.font())
        self.page.setOpenLinks(False)
        self.page.document().setDocumentMargin(18)
        self.page.anchorClicked.connect(self._follow)
        row = QHBoxLayout()
        row.setSpacing(12)
        row.addWidget(self.list)
        row.addWidget(self.page, 1)
        column.addLayout(row, 1)
        for topic in Topic:
            item = QListWidgetItem(texts.HELP_TITLES[topic.value])
            item.setData(Qt.ItemDataRole.UserRole, topic.value)
            item.setSizeHint(QSize(0, theme.TOUCH_PX - 6))
            self.list.addItem(item)
            self.topics.addItem(texts.HELP_TITLES[topic.value], topic.value)
        self.list.currentItemChanged.connect(lambda now, _: self._pick(now))
        self.topics.activated.connect(lambda index: self.show_topic(Topic(self.topics.itemData(index))))

    def _top(self) -> QHBoxLayout:
        self.topics = Chooser("help_topic", texts.HELP_TOPICS)
        self.search = QLineEdit()
        self.search.setObjectName("help_search")
        self.search.setAccessibleName(texts.HELP_SEARCH)
        self.search.setPlaceholderText(texts.HELP_SEARCH)
        self.search.setFont(theme.font())
        self.search.setMinimumHeight(theme.TOUCH_PX)
        self.search.setClearButtonEnabled(False)
        self.search.textChanged.connect(self._search)
        self.back_button = button(texts.BACK_FROM_HERE, "help_back", accessible=texts.BACK_NAME)
        self.back_button.clicked.connect(self.back)
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(self.topics, 1)
        row.addWidget(self.search, 2)
        row.addWidget(self.back_button)
        return row

    def changeEvent(self, event: QEvent) -> None:
        """Links keep the colour that they were written in."""
        super().changeEvent(event)
        if event.type() is QEvent.Type.PaletteChange and self._written:
            self._search(self.search.text())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        narrow = self.width() < NARROW_PX
        self.list.setVisible(not narrow)
        self.topics.setVisible(narrow)

    def show_topic(self, topic: Topic) -> None:
        """From its beginning; a search is over."""
        self.topic = topic
        for part in (self.search, self.list, self.topics):
            part.blockSignals(True)
        self.search.clear()
        self.list.setCurrentRow(list(Topic).index(topic))
        self.topics.setCurrentIndex(list(Topic).index(topic))
        for part in (self.search, self.list, self.topics):
            part.blockSignals(False)
        self._show(markdown(topic))
        self.page.setAccessibleName(texts.HELP_PAGE.format(title=texts.HELP_TITLES[topic.value]))
        self.picked.emit(topic)

    def _pick(self, item: QListWidgetItem | None) -> None:
        if item is not None:
            self.show_topic(Topic(str(item.data(Qt.ItemDataRole.UserRole))))

    def _follow(self, link: QUrl) -> None:
        name = link.path()
        if link.scheme() == "help" and name in {topic.value for topic in Topic}:
            self.show_topic(Topic(name))

    def _search(self, typed: str) -> None:
        if not typed.strip():
            self._show(markdown(self.topic))
            return
        self._show(_results(typed, found(typed)))

    def _show(self, text: str) -> None:
        self._written = True
        self.page.setMarkdown(text)
        _space(self.page.document())
        self.page.moveCursor(QTextCursor.MoveOperation.Start)


def _space(document: QTextDocument) -> None:
    """Lines with air between them, and headings in the window's own sizes."""
    sizes = {1: theme.SENTENCE_PX, 2: theme.BODY_PX + 2}
    cursor = QTextCursor(document)
    block = document.begin()
    while block.isValid():
        level = block.blockFormat().headingLevel()
        cursor.setPosition(block.position())
        cursor.select(QTextCursor.SelectionType.BlockUnderCursor)
        made = QTextBlockFormat()
        made.setLineHeight(LINE_PERCENT, QTextBlockFormat.LineHeightTypes.ProportionalHeight.value)
        made.setTopMargin(18.0 if level > 1 else 0.0)
        made.setBottomMargin(6.0)
        QTextCursor(block).mergeBlockFormat(made)
        if level:
            words = block.begin().fragment().charFormat()
            words.clearProperty(QTextFormat.Property.FontSizeAdjustment)  # Markdown's own, which outweighs a size
            words.setFont(theme.semibold(sizes.get(level, theme.BODY_PX)))
            words.setFontUnderline(words.isAnchor())
            cursor.setCharFormat(words)
        block = block.next()


def _results(typed: str, passages: Sequence[tuple[Topic, str]]) -> str:
    if not passages:
        return texts.HELP_NOTHING
    lines: list[str] = []
    last = None
    for topic, passage in passages:
        if topic is not last:
            lines.append(f"## [{texts.HELP_TITLES[topic.value]}](help:{topic.value})")
            last = topic
        lines.append(passage)
    return "\n\n".join(lines)
