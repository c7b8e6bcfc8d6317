"""The layers of an overlay of starts: axes, band and crowd behind; single lines, their words and cursors over them."""

from collections.abc import Mapping
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPen, QPixmap

from ui import curve_texts as texts
from ui import theme
from ui.charts import overlay_painting as painting
from ui.charts.crowd import Crowd
from ui.charts.cursors import Cursors
from ui.charts.overlay_lines import AMPS, VOLTS, Overlaid
from ui.charts.overlay_painting import Places, Sheet
from ui.charts.reduction import Floats
from ui.theme import Tokens

SECONDS = "s"


@dataclass(frozen=True, slots=True, kw_only=True)
class Layers:
    """`lead_ohm`: what the volts leave out. `held`: whether the keys move one of the cursors."""

    shown: Overlaid
    crowds: Mapping[str, Crowd]
    tokens: Tokens
    lead_ohm: float = 0.0
    cursors: Cursors | None = None
    held: bool = False

    def paint(self, painter: QPainter, sheets: dict[str, Sheet], behind: QPixmap) -> None:
        """All of it, over what `behind` made for these sheets."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.drawPixmap(0, 0, behind)
        for what, sheet in sheets.items():
            self._over(painter, what, sheet)
        if self.cursors is not None:
            self._cursors(painter, sheets, self.cursors)

    def behind(self, sheets: dict[str, Sheet], size: QSize, ratio: float) -> QPixmap:
        """What changes with the view alone: axes, band and crowd."""
        made = QPixmap(size * ratio)
        made.setDevicePixelRatio(ratio)
        made.fill(QColor(self.tokens.card))
        painter = QPainter(made)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        lowest = list(sheets)[-1]
        for what, sheet in sheets.items():
            painting.axes(painter, sheet, self.tokens, times=what == lowest, seconds=SECONDS)
            painter.save()
            painter.setClipRect(sheet.box)
            if what == AMPS and self.shown.band is not None and self.shown.band.t_s.size > 1:
                painting.band(painter, sheet, self.shown.band, self.tokens)
                painter.setPen(QPen(QColor(self.tokens.line), 1))
                for level in sheet.upward.ticks(painting.TICK_PX):
                    y = round(sheet.upward.px(level)) + 0.5
                    painter.drawLine(QPointF(sheet.box.left(), y), QPointF(sheet.box.right(), y))
            each = [(line.t_s, line.of(what, self.lead_ohm)) for line in self.shown.crowd]
            painting.crowd(painter, sheet, self.crowds[what], each, self.tokens.third)
            painter.restore()
        painter.end()
        return made

    def _over(self, painter: QPainter, what: str, sheet: Sheet) -> None:
        shown, tokens = self.shown, self.tokens
        painter.save()
        painter.setClipRect(sheet.box.adjusted(-3, -3, 3, 3))
        colour = tokens.amps if what == AMPS else tokens.volts
        picked = None if shown.picked is None else shown.crowd[shown.picked]
        pens = painting.pens(tokens, colour)
        layers = [(line, pens["before"]) for line in shown.before]
        layers += [
            (line, pens[name])
            for line, name in (
                (shown.mean if len(shown.crowd) > 1 else None, "mean"),
                (shown.capture, "capture"),
                (shown.filled_in, "filled in"),
                (picked, "picked"),
                (shown.live, "picked"),
            )
            if line is not None and line.t_s.size
        ]
        drawn: list[tuple[Floats, Floats]] = []
        for line, pen in layers:
            values = line.of(what, self.lead_ohm)
            if values.size:
                painter.setPen(pen)
                painting.line(painter, sheet, line.t_s, values)
                drawn.append((line.t_s, values))
        for one in (picked, shown.live):
            if one is not None and one.of(what).size:
                painting.dots(painter, sheet, one.t_s, one.of(what, self.lead_ohm), colour)
        painter.restore()
        self._words(painter, what, sheet, drawn)

    def _words(self, painter: QPainter, what: str, sheet: Sheet, drawn: list[tuple[Floats, Floats]]) -> None:
        shown, tokens, places = self.shown, self.tokens, Places(sheet=sheet, ground=self.tokens.card, lines=drawn)
        plain = theme.font(theme.SECOND_PX)
        painter.setFont(plain)
        trigger = sheet.across.px(0.0)
        if sheet.box.left() <= trigger <= sheet.box.right():
            painter.setPen(QPen(QColor(tokens.ink), 1, Qt.PenStyle.DashLine))
            painter.drawLine(QPointF(trigger, sheet.box.top()), QPointF(trigger, sheet.box.bottom()))
            if what == AMPS and shown.trigger:
                painter.setPen(QColor(tokens.second))
                wide = painter.fontMetrics().horizontalAdvance(shown.trigger)
                rect = QRectF(trigger + 8, sheet.box.top(), wide, 18)
                painter.drawText(rect, Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextDontClip, shown.trigger)
                places.taken.append(rect)
        painter.setPen(QColor(tokens.second))
        if what == VOLTS:
            words = texts.VOLTS_MOTOR_PANE if self.lead_ohm else texts.VOLTS_PANE
            right = QRectF(sheet.box.right() - 220, sheet.box.top() - 18, 220, 18)
            painter.drawText(right, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, words)
        elif not shown.crowd and not shown.single():
            painter.drawText(sheet.box, Qt.AlignmentFlag.AlignCenter, texts.OVERLAY_EMPTY)
        else:
            self._names(painter, places, plain)

    def _names(self, painter: QPainter, places: Places, plain: QFont) -> None:
        """Of the lines, each at its own. Those of single lines have to be there; the band's and the mean's may go."""
        shown, tokens = self.shown, self.tokens
        strong = theme.semibold(theme.SECOND_PX + 1)
        picked = None if shown.picked is None else shown.crowd[shown.picked]
        band, mean = shown.band, shown.mean if len(shown.crowd) > 1 else None
        if band is not None:
            places.lines += [(band.t_s, band.low), (band.t_s, band.high)]
        for line, name, font, ink in (
            (picked, None, strong, tokens.amps),
            (shown.live, None, strong, tokens.amps),
            (shown.capture, None, plain, tokens.ink),
            (shown.before[0] if shown.before else None, shown.before_name, plain, tokens.ink),
            (shown.filled_in, None, plain, tokens.second),
        ):
            if line is not None and (words := line.name if name is None else name):
                places.put(painter, words, font, ink, (line.t_s, line.amps), above=True, needed=True)
        for under, along in (
            (band, None if band is None else (band.t_s, band.low)),
            (mean, None if mean is None else (mean.t_s, mean.amps)),
        ):
            if under is not None and along is not None and under.name:
                places.put(painter, under.name, plain, tokens.second, along, above=False, needed=False)

    def _cursors(self, painter: QPainter, sheets: dict[str, Sheet], cursors: Cursors) -> None:
        top, bottom = next(iter(sheets.values())).box, list(sheets.values())[-1].box
        across = sheets[AMPS].across
        painter.setFont(theme.semibold(theme.SECOND_PX))
        for number, at_s in enumerate(cursors.both):
            x = across.px(at_s)
            if not top.left() - 1 <= x <= top.right() + 1:
                continue
            held = number == cursors.held and self.held
            painter.setPen(QPen(QColor(self.tokens.ink), 2.0 if held else 1.2))
            painter.drawLine(QPointF(x, top.top()), QPointF(x, bottom.bottom()))
            flag = QRectF(x - 9, bottom.bottom() - 18, 18, 18)
            painter.setBrush(QColor(self.tokens.ink))
            painter.drawRoundedRect(flag, 3, 3)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QColor(self.tokens.card))
            painter.drawText(flag, Qt.AlignmentFlag.AlignCenter, texts.CURSOR_LETTERS[number])
