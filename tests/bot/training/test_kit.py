"""Bands by letter: listed by the client, used in the session."""

import pytest

from bot.engine.training import kit
from conversations.answers import Unclear
from conversations.client.band_line import Line, plainly_gone, read_line, says_gone
from conversations.words import band_list as words
from core.facts import BandOwned, CuffChecked, Detail
from core.plans import Region
from core.store import facts
from tests.practice import CLIENT, COACH, START, Practice


def owns(practice: Practice, *letters: str) -> None:
    """The client has these bands for the legs."""
    store = practice.stage.engine.store
    with store.transaction():
        for letter in letters:
            band = BandOwned(START, letter, Region.LEGS, 7.5, "the third hole" if letter == "A" else "")
            facts.put(store, practice.client, band, START)


def test_a_band_is_listed_with_its_letter_place_width_girth_and_mark(practice: Practice) -> None:
    practice.types(CLIENT, "bands")
    for answer in ("A", "Upper legs", "7.5 cm", "55"):
        practice.types(CLIENT, answer)
    assert "5.5 cm tighter than the limb" in practice.newest(CLIENT).text  # 10 % of 55 cm
    practice.types(CLIENT, "third hole")
    (band,) = facts.current(practice.stage.engine.store, BandOwned, practice.client)
    assert (band.letter, band.region, band.width_cm, band.mark) == ("A", Region.LEGS, 7.5, "third hole")
    practice.types(CLIENT, "bands")
    assert "A: Upper legs, 7.5 cm wide, closes at third hole" in practice.newest(CLIENT).text


def test_with_one_band_its_mark_is_said_and_nothing_more_is_asked(practice: Practice) -> None:
    owns(practice, "A")
    practice.in_a_set()
    assert any("Band A closes at the third hole." in text for text in practice.heard(CLIENT))
    checked = facts.current(practice.stage.engine.store, CuffChecked, practice.client)
    assert {one.band for one in checked} == {"A"}


def test_another_band_than_last_time_is_checked_from_scratch_and_raises_nothing(practice: Practice) -> None:
    owns(practice, "A", "B")
    store = practice.stage.engine.store
    with store.transaction():
        last = CuffChecked(START, "old", "1.1", 1, "left_leg", 6, "under_2", None, "fine", "go", "", "A")
        facts.put(store, practice.client, last, START)
    practice.types(CLIENT, "start")
    practice.taps(CLIENT, "No")
    for _ in range(12):
        labels = [label for row in practice.newest(CLIENT).buttons for label, _ in row]
        if "On: band B" in labels:
            break
        wanted = ("No", "0", "Off in under 10 seconds", "Heard it", "Done")
        practice.taps(CLIENT, next(label for label in wanted if label in labels))
    practice.taps(CLIENT, "On: band B")
    practice.taps(CLIENT, "6")
    for label in ("Under 2 seconds", "Under 2 seconds", "Fine"):
        practice.taps(CLIENT, label)
    assert any("Another band than last time" in text for text in practice.heard(CLIENT)[-3:])
    now = [one for one in facts.current(store, CuffChecked, practice.client) if one.session != "old"]
    assert {(one.band, one.because) for one in now} == {("B", "another_band")}


def test_the_coach_sees_the_bands_the_last_one_used_and_who_is_there(practice: Practice) -> None:
    owns(practice, "A", "B")
    store = practice.stage.engine.store
    with store.transaction():
        last = CuffChecked(START, "old", "1.1", 1, "left_leg", 6, "under_2", None, "fine", "go", "", "A")
        for fact in (last, Detail(START, "company", "with_somebody"), Detail(START, "helper", "Tomas")):
            facts.put(store, practice.client, fact, START)
    practice.types(COACH, "ruta")
    practice.taps(COACH, "More")
    practice.taps(COACH, "Bands and company")
    assert practice.newest(COACH).text.splitlines() == [
        "Ruta trains with:",
        "A: Upper legs, 7.5 cm wide, closes at the third hole (the last one used)",
        "B: Upper legs, 7.5 cm wide",
        "When training: with somebody, Tomas types for them.",
    ]


def test_a_coach_of_a_client_without_bands_reads_how_they_are_listed(practice: Practice) -> None:
    practice.types(COACH, "ruta")
    practice.taps(COACH, "More")
    practice.taps(COACH, "Bands and company")
    assert "the client writes 'bands'" in practice.newest(COACH).text


def test_a_lost_band_comes_off_the_list_and_the_next_one_is_checked_from_scratch(practice: Practice) -> None:
    owns(practice, "A", "B")
    practice.types(CLIENT, "bands")
    practice.taps(CLIENT, "One is lost or broken")
    practice.taps(CLIENT, "B")
    assert practice.newest(CLIENT).text.startswith("Band B is off the list.")
    practice.types(CLIENT, "bands")
    assert "B:" not in practice.newest(CLIENT).text
    assert kit.bands(practice.stage.engine, practice.client)["legs"] == ("A",)


@pytest.mark.parametrize("line", ["remove band B", "B is lost", "lost B", "I lost band B"])
def test_a_lost_band_is_named_in_words(practice: Practice, line: str) -> None:
    owns(practice, "A", "B")
    practice.types(CLIENT, "bands")
    practice.types(CLIENT, line)
    assert kit.bands(practice.stage.engine, practice.client)["legs"] == ("A",)


def test_which_of_several_is_lost_is_asked_and_none_leaves_them(practice: Practice) -> None:
    owns(practice, "A", "B")
    practice.types(CLIENT, "bands")
    practice.types(CLIENT, "I lost a band")
    assert practice.newest(CLIENT).text == words.WHICH_GONE
    practice.types(CLIENT, "none")
    assert words.LETTER in practice.newest(CLIENT).text
    assert kit.bands(practice.stage.engine, practice.client)["legs"] == ("A", "B")


@pytest.mark.parametrize(
    ("line", "read"),
    [
        ("A legs 10 cm", Line("A", Region.LEGS, 10)),
        ("a, upper legs, 7,5cm wide", Line("A", Region.LEGS, 7.5)),
        ("Band C for my arms, 50 mm", Line("C", Region.ARMS, 5)),
        ("B", Line("B")),
        ("B thighs", Line("B", Region.LEGS)),
        ("A legs 10 cm third hole", Line("A", Region.LEGS, 10, "third hole")),
    ],
)
def test_a_band_is_read_from_one_line(line: str, read: Line) -> None:
    assert read_line(line) == read


@pytest.mark.parametrize(
    "line", ["a new band", "legs 10 cm", "7", "É", "A legs 90 cm", "A legs 1.9 cm", "Z\u0351"]
)
def test_what_names_no_band_is_asked_again(line: str) -> None:
    with pytest.raises(Unclear):
        read_line(line)


def test_a_whole_line_is_said_back_and_only_the_rest_is_asked(practice: Practice) -> None:
    practice.types(CLIENT, "bands")
    practice.types(CLIENT, "A legs 10 cm third hole")
    practice.taps(CLIENT, "Skip")
    assert practice.newest(CLIENT).text.startswith(
        "Band A is noted: Upper legs, 10 cm wide, closes at third hole."
    )
    (band,) = facts.current(practice.stage.engine.store, BandOwned, practice.client)
    assert (band.letter, band.region, band.width_cm, band.mark) == ("A", Region.LEGS, 10, "third hole")


def test_back_from_the_girth_forgets_the_whole_line(practice: Practice) -> None:
    practice.types(CLIENT, "bands")
    for said in ("A legs 10 cm", "back", "B"):
        practice.types(CLIENT, said)
    assert practice.newest(CLIENT).text == words.REGION


def test_a_lost_band_may_be_told_out_of_the_blue(practice: Practice) -> None:
    owns(practice, "A", "B")
    practice.types(CLIENT, "I lost band B")
    assert practice.newest(CLIENT).text.startswith("Band B is off the list.")
    practice.types(CLIENT, "I lost my band")
    assert practice.newest(CLIENT).text.startswith("Band A is off the list.")
    practice.types(CLIENT, "I lost my band")
    assert practice.newest(CLIENT).text == "Shall I send that to Coach?"


@pytest.mark.parametrize(
    "line",
    [
        "the feeling under my band is gone",
        "I lost the feeling below the band",
        "my band is gone blue",
        "lost it, band",
    ],
)
def test_what_may_be_a_sign_is_never_taken_for_a_lost_band(practice: Practice, line: str) -> None:
    owns(practice, "A")
    practice.types(CLIENT, line)
    assert says_gone(line) is None
    assert not any("off the list" in text or text == words.WHICH_GONE for text in practice.heard(CLIENT))


@pytest.mark.parametrize(
    "line", ["My band B is gone.", "I've lost the band B", "remove band B", "don't have band B anymore"]
)
def test_a_lost_band_is_told_in_a_whole_line(line: str) -> None:
    assert plainly_gone(line)
