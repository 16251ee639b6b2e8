"""Bands go on: asked for, waited for, and after a while without a word counted as if they were on."""

import re
from dataclasses import replace
from datetime import datetime

from conversations.answers import Unclear, Why
from conversations.prose import is_prose
from conversations.protocol import Choice, Effect, Record, Said, Say, Turn
from conversations.session.state import Phase, State, banded_limbs, say, turn
from conversations.stopwords import read
from conversations.words import session as words
from conversations.words.one_band import of_bands
from core.facts import NOT_ON, BandsOff, BandsOn, SessionEnded

TOO_EARLY = "too_early"  # they went on before they were asked for, stored
SAYS_ON = re.compile(r"\b(?:onn?|yes|yep|done|ready|loosened|ok(?:ay)?)\b", re.IGNORECASE)
SAYS_NOT = re.compile(
    r"\b(?:not|no|off|isn'?t|aren'?t|can'?t|cannot|wait|hold on|later|yet|how|where|which|what)\b|\?",
    re.IGNORECASE,
)
NOT_ON_YET = re.compile(r"\b(?:not|no|nope|off|later|yet|isn'?t|aren'?t|stopped|wait)\b", re.IGNORECASE)
LETTER = re.compile(r"(?:on:|\bband\s+)([A-Za-z])\b")
NAMES_BANDS_ON = re.compile(
    r"\b(?:bands?|cuffs?|straps?|both|they|they'?re)\b.*\bon\b|^\W*on\W*$", re.IGNORECASE
)
NOT_ON_BUTTON = Choice(words.NOT_ON_LABEL, "off")


def ask(state: State) -> Say:
    """To put them on; whether they are, where nobody said so; or to fit them anew where they are on already."""
    if state.maybe_on:
        return say(words.MAYBE_ON, _id(state), *_buttons(state), NOT_ON_BUTTON)
    region, limb = state.doing.region, words.LIMBS[banded_limbs(state)[0]].lower()
    text = _to_put_on(state) if state.on_at is None else of_bands(words.FIT_AGAIN, len(banded_limbs(state)))
    text = text.format(name=state.name, limb=limb, place=words.PLACE[region], target=words.TARGET[region])
    return say(text + _mark(state), _id(state), *_buttons(state), picture=f"fit_{region}")


def _to_put_on(state: State) -> str:
    """A pair of bands, or one for one-sided work; after a check that failed a little looser."""
    text = words.BAND_ON if len(banded_limbs(state)) == 1 else words.BANDS_ON
    return words.LOOSER + text if state.failed_checks and state.spell > 1 else text


def _id(state: State) -> str:
    return f"on.{state.spell_id}"


def _letters(state: State) -> tuple[str, ...]:
    return state.brief.bands.get(state.doing.region, ())


def _buttons(state: State) -> tuple[Choice, ...]:
    """One button; with several bands to choose from, one for each."""
    letters = _letters(state)
    if len(letters) < 2:
        return (Choice(words.BANDS_ON_LABEL, "on"),)
    return tuple(Choice(words.BAND_ON_LABEL.format(letter=letter), f"on:{letter}") for letter in letters)


def _mark(state: State) -> str:
    """Where the band of last time is closed."""
    letter = state.brief.last_band.get(state.doing.region, "") or next(iter(_letters(state)), "")
    mark = state.brief.marks.get(letter, "")
    return f" {words.MARK.format(letter=letter, mark=mark)}" if mark else ""


def _band(state: State, text: str) -> str:
    """The letter of the band that is on: as said, else that of last time, else the only one."""
    letters = _letters(state)
    said = LETTER.search(text)
    if said is not None and said[1].upper() in letters:
        return said[1].upper()
    last = state.brief.last_band.get(state.doing.region, "")
    return last if last in letters else next(iter(letters), "")


def said(state: State, event: Said) -> Turn[State] | None:
    """They are on: None, the check follows with `put_on`; or they are not yet. Raises `Unclear`."""
    if state.maybe_on and "?" not in event.text and NOT_ON_YET.search(event.text):
        return _not_on(state, event.at)
    if SAYS_NOT.search(event.text) or not _answers_on(event.text):
        raise Unclear(Why.NOT_AN_OPTION, options=(words.BANDS_ON_LABEL,))
    return None


def _answers_on(text: str) -> bool:
    """ "Yes", "on both legs", "they're on"; "a red patch on my leg" is no word about bands."""
    says = SAYS_ON.search(text)
    tells = is_prose(text) or bool(read(text).heard)  # of a sign, though it is denied
    return says is not None and (not text[: says.start()].strip() or names_bands_on(text) or not tells)


def put_on(state: State, event: Said) -> tuple[State, tuple[Effect, ...]]:
    """They are on. A new fit without taking them off, and bands counted as on already, keep their clock."""
    state = replace(state, band=_band(state, event.text), maybe_on=False, worn=True)
    if state.on_at is not None:
        return state, ()
    return _counted(state, event.at)


def _counted(state: State, at: datetime) -> tuple[State, tuple[Effect, ...]]:
    """From here on their time runs."""
    limit_s = state.doing.limit_min * 60
    fact = BandsOn(at, state.brief.session, state.spell_id, state.doing.region, limit_s)
    return replace(state, on_at=at), (Record(fact),)


def no_word(state: State, now: datetime) -> Turn[State]:
    """Asked to put them on, and no word: they may be on, since the moment when that was asked."""
    since = state.fit_at or state.heard_at or now
    state, effects = _counted(replace(state, maybe_on=True, asked_quiet_at=now), since)
    return turn(state, ask(state), effects=effects)


def _not_on(state: State, at: datetime) -> Turn[State]:
    """They were not on: their clock stops, and the question stays open."""
    fact = BandsOff(at, state.brief.session, state.spell_id, NOT_ON)
    state = replace(state, on_at=None, maybe_on=False, spell=state.spell + 1, fit_at=at)
    return turn(state, say(words.NOT_ON_YET, _id(state), *_buttons(state)), effects=(Record(fact),))


def never_on(state: State, at: datetime) -> Turn[State]:
    """No band was ever on in this session: it is over, and there is nothing to ask about."""
    session, spell = state.brief.session, state.spell_id
    facts = (BandsOff(at, session, spell, NOT_ON), SessionEnded(at, session, NOT_ON))
    return Turn(None, (Say(words.NEVER_ON),), tuple(Record(fact) for fact in facts))


def says_on(text: str) -> bool:
    """Whether words that nobody asked for say that bands are on."""
    return names_bands_on(text) and SAYS_NOT.search(text) is None


def names_bands_on(text: str) -> bool:
    """Whether bands are named, and then "on"."""
    return NAMES_BANDS_ON.search(text) is not None


def too_early(state: State, at: datetime) -> tuple[State, tuple[Effect, ...]]:
    """On while they are to stay off: counted, and to come off again first."""
    state = replace(state, phase=Phase.OFF, spell=state.spell + 1, why=TOO_EARLY, off_at=None, worn=True)
    return _counted(state, at)
