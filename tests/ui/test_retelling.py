"""Finished sentences told in another language, by a catalogue of a few."""

from ui.retelling import Retelling

RETELLING = Retelling(
    {
        "it came free": "es kam frei",
        "%1, kept turning, and started again from rest (%2)": "%1, drehte weiter und lief wieder an (%2)",
        "%1 %2 %3, above the %4's ceiling of %5 %6": "%1 %2 %3, über dem Grenzwert (%4) von %5 %6",
        "the winding may be at": "die Wicklung kann sein auf",
        "motor": "Motor",
        "the file is damaged": "die Datei ist beschädigt",
        "it moved and stopped again;": "es bewegte sich und stand wieder;",
        "%1 to %2": "%1 bis %2",
        "peak": "Spitze",
        "No diode seen.": "Keine Diode zu sehen.",
        "Swap the leads back.": "Tauschen Sie die Leitungen zurück.",
    }
)
told = RETELLING.told


def test_a_whole_sentence_is_known_with_any_first_letter_and_with_or_without_its_full_stop() -> None:
    assert told("it came free") == "es kam frei"
    assert told("It came free.") == "Es kam frei."


def test_what_stands_at_a_place_is_told_as_well_and_figures_stay() -> None:
    assert told("it came free, kept turning, and started again from rest (0.12 A)") == (
        "es kam frei, drehte weiter und lief wieder an (0.12 A)"
    )
    assert told("the winding may be at 130 °C, above the motor's ceiling of 120 °C") == (
        "die Wicklung kann sein auf 130 °C, über dem Grenzwert (Motor) von 120 °C"
    )


def test_joined_sentences_are_told_one_by_one() -> None:
    assert told("No diode seen. Swap the leads back.") == "Keine Diode zu sehen. Tauschen Sie die Leitungen zurück."
    assert told("it moved and stopped again; it came free") == "es bewegte sich und stand wieder; es kam frei"


def test_a_path_before_what_is_wrong_with_it_stays_as_it_is() -> None:
    assert told("/srv/harbour.db: the file is damaged") == "/srv/harbour.db: die Datei ist beschädigt"


def test_a_name_before_its_figure_is_told() -> None:
    assert told("peak 1.77 A") == "Spitze 1.77 A"


def test_a_short_template_takes_figures_only() -> None:
    assert told("2 to 4") == "2 bis 4"
    assert told("taken to the harbour") == "taken to the harbour"


def test_what_is_not_known_stays_whatever_it_is() -> None:
    for text in (
        "",
        " ",
        "hums, does not turn",
        "%1",
        "(((",
        "a. " * 900,
        "at a: b, c (d; " * 40,
        "; : , and",
        "\u0000",
        "⟦x⟧",
    ):
        assert told(text) == text
