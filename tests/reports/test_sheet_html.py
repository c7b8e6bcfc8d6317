"""The sheet as HTML: one file, well formed, nothing outside asked for, nothing that was typed is obeyed."""

from html.parser import HTMLParser
from xml.etree import ElementTree

import numpy as np

from benchlog.records import Attached, Item
from benchlog.reports.curves import draw
from benchlog.reports.drawing import svg
from benchlog.reports.regions import Paper, Region
from benchlog.reports.sheet_html import html_of
from tests.reports.sheets import NASTY, charge, curve, job, sheet, told

# Source: the HTML standard, "void elements".
VOID = {"meta", "col", "img", "br", "hr", "link", "input"}


class Page(HTMLParser):
    """Its text, its elements, and whether every one that opens is closed."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.said: list[str] = []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        self.said.append(data)

    @property
    def words(self) -> str:
        return " ".join(" ".join(self.said).split())


def nasty_page() -> Page:
    item = Item(kind=NASTY, make=NASTY, model=NASTY, serial=NASTY)
    made = sheet(
        job=job(complaint=NASTY, item=item, owner=NASTY, cause=NASTY, tag=NASTY), charges=(charge(1, 1, NASTY),)
    )
    return Page(html_of(told(made, currency=NASTY)))


def test_every_element_is_closed_and_what_was_typed_comes_back_as_text() -> None:
    page = nasty_page()
    assert not page.open
    assert page.words.count(NASTY) >= 6


def test_nothing_typed_becomes_an_element_and_no_script_is_there() -> None:
    kinds = {tag for tag, _ in nasty_page().elements}
    assert kinds == {tag for tag, _ in Page(html_of(told(sheet()))).elements}
    assert not kinds & {"script", "iframe", "object", "link", "base", "form"}


def test_nothing_outside_is_asked_for() -> None:
    text = html_of(told(sheet()))
    for tag, attributes in Page(text).elements:
        assert not {"src", "href", "action"} & attributes.keys(), tag
        assert not any(name.startswith("on") for name in attributes)
    assert "url(" not in text
    assert "default-src 'none'" in text
    assert text.replace("http://www.w3.org/2000/svg", "").find("http") == text.find("http-equiv")


def test_a_curve_is_an_svg_of_its_own_that_reads_as_xml_and_tells_itself_in_words() -> None:
    root = ElementTree.fromstring(svg(draw(curve(), most_volts=12.0, most_amps=1.5)))
    assert root.tag == "{http://www.w3.org/2000/svg}svg"
    assert "volts and amps as read back" in root.attrib["aria-label"]
    words = {element.text for element in root.iter() if element.tag.endswith("text")}
    assert words >= {"volts", "amps", "ceiling 12 V", "kick 1"}
    lines = [element.attrib["points"].split() for element in root.iter() if element.tag.endswith("polyline")]
    assert max(map(len, lines)) > 10


def test_before_and_after_are_on_the_same_axes() -> None:
    both = told(sheet()).blocks
    tops = []
    for block in both:
        drawing = getattr(block, "drawing", None)
        if drawing is not None:
            root = ElementTree.fromstring(svg(drawing))
            tops.append([e.text for e in root.iter() if (e.text or "").endswith((" V", " A"))])
    assert len(tops) == 2
    assert tops[0] == tops[1]


def test_numbers_have_the_mark_of_the_place_and_paper_its_size() -> None:
    text = html_of(told(sheet(), Region(decimal=",", paper=Paper.LETTER)), Paper.LETTER)
    assert "2,05 Ω (2,00 Ω to 2,10 Ω)" in text.replace("\u00a0", " ")
    assert "57,50" in text
    assert "It held 3,81\u00a0V." in text
    assert "size: letter" in text


def test_a_photo_is_inside_the_file_only_where_it_was_asked_for() -> None:
    photo = Attached(
        id=1, utc="", sha256="", name=NASTY, media_type="image/png", size=1, thumbnail=b"\x89PNG\r\n\x1a\n" + bytes(8)
    )
    images = [a for tag, a in Page(html_of(told(sheet(photos=(photo,))))).elements if tag == "img"]
    assert [str(image["src"])[:22] for image in images] == ["data:image/png;base64,"]
    assert "<img" not in html_of(told(sheet()))


def test_a_demonstration_is_marked_and_nothing_else_is() -> None:
    assert "DEMO" in Page(html_of(told(sheet(demo=True)))).words
    assert "DEMO" not in html_of(told(sheet()))


def test_a_run_without_a_single_number_still_makes_a_page() -> None:
    empty = curve(samples=100)
    lost = type(empty.volts)(t_s=np.array([]), values=np.array([]))
    made = type(empty)(run=empty.run, volts=lost, amps=lost)
    assert not Page(html_of(told(sheet(before=made, after=None)))).open
