"""Names and words in letters that no font has: no boxes, a number instead, and whoever makes the picture reads it."""

import warnings
from collections.abc import Iterator

import pytest

from bot.making import fonts
from bot.making.charts import weekly_chart
from bot.report import drawn
from conversations.words import report as words
from core.store import people
from tests.bot.report.test_report_by_chat import trains_once
from tests.practice import COACH, Practice

SYRIAC = "\u0710\u0712"  # in no font of matplotlib's
NOWHERE = "王芳"


@pytest.fixture(autouse=True)
def only_what_comes_with_matplotlib(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Whatever fonts the machine has: no CJK letters."""
    fonts._font_with.cache_clear()
    usual = fonts._fonts()[:1]
    monkeypatch.setattr(fonts, "_fonts", lambda: usual)
    yield
    fonts._font_with.cache_clear()


@pytest.mark.parametrize(
    ("name", "shown"),
    [
        ("Rūta Žąsienė", "Rūta Žąsienė"),
        ("Ольга", "Ольга"),
        ("Ruta 🌸", "Ruta"),
        ("Ruta 😀", "Ruta 😀"),
        ("🌸🌸", "#3"),
        (NOWHERE, "#3"),
        (f"Li {NOWHERE}", "#3"),
    ],
)
def test_a_name_is_written_where_there_are_letters_for_it_else_the_number(name: str, shown: str) -> None:
    assert fonts.named(name, "#3") == shown


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("knee is calm", "knee is calm"),
        (f"plan of {NOWHERE} for May", "plan of … for May"),
        ("good 🌸 day", "good day"),
    ],
)
def test_words_without_letters_are_a_gap_and_other_signs_are_left_out(text: str, shown: str) -> None:
    assert " ".join(fonts.writable(text).split()) == shown


def test_a_font_of_the_machine_that_has_the_letters_is_asked_for(monkeypatch: pytest.MonkeyPatch) -> None:
    other = ("Other", "other.ttf")
    monkeypatch.setattr(fonts, "_fonts", lambda: ((fonts.USUAL, "usual.ttf"), other))
    monkeypatch.setattr(fonts, "_has", lambda file, sign: (file == "other.ttf") == (sign in NOWHERE))
    fonts._font_with.cache_clear()
    assert fonts.named(NOWHERE, "#3") == NOWHERE
    assert fonts.families({"name": NOWHERE, "notes": ["plain"]}) == [fonts.USUAL, "Other"]
    assert fonts.families(["plain"]) == [fonts.USUAL]


def test_a_file_that_is_no_font_has_no_letters() -> None:
    assert not fonts._has(__file__, "a")
    assert not fonts._has("/nowhere.ttf", "a")


def test_no_font_of_boxes_is_taken_for_one_with_letters() -> None:
    assert not any(family.startswith(fonts.BOXES) for family, _ in fonts._fonts())


def panel(name: str) -> dict[str, object]:
    """One client's panel."""
    return {
        "title": f"{name}: curl",
        "days": ["2026-03-02"],
        "reps": [31],
        "doing": [f"{NOWHERE} band"],
        "low": [25],
        "high": [40],
        "code": "Client #3",
    }


def test_a_chart_is_drawn_without_a_box(recwarn: pytest.WarningsRecorder) -> None:
    """Matplotlib warns of every glyph that it draws as a box."""
    warnings.simplefilter("always")
    assert weekly_chart({"panels": [panel(NOWHERE)]}) == weekly_chart({"panels": [panel("Client #3")]})
    assert [one for one in recwarn if "Glyph" in str(one.message)] == []


def test_the_page_is_drawn_without_a_box_and_the_chat_says_who_it_is(practice: Practice) -> None:
    trains_once(practice)
    store = practice.stage.engine.store
    with store.transaction():
        people.rename(store, practice.client, NOWHERE)
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        practice.types(COACH, f"report {NOWHERE}")
    said = words.CODED.format(code=f"Client #{practice.client}", name=NOWHERE)
    assert any(text.endswith(said) for text in practice.heard(COACH))


def test_an_ordinary_name_needs_no_word_about_it(practice: Practice) -> None:
    trains_once(practice)
    practice.types(COACH, "report ruta")
    assert not any("no font" in text for text in practice.heard(COACH))


def test_both_kinds_of_page_are_drawn_with_any_words(practice: Practice) -> None:
    from bot.engine.numbers import reports

    trains_once(practice)
    engine = practice.stage.engine
    body = reports.body_of(engine, people.by_id(engine.store, practice.client), engine.clock())
    assert body is not None
    body |= {"name": NOWHERE, "plan": f"{NOWHERE} $x$", "coach": "🌸", "notes": [f"{SYRIAC} 🌸 {NOWHERE}"]}
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        assert drawn(body, "pdf").startswith(b"%PDF")
        assert drawn(body, "png").startswith(b"\x89PNG")
