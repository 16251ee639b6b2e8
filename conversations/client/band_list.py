"""The client's own bands: a letter on each, where it goes, how wide it is, and where it is closed.

A figure for one band says nothing about another: another band means a check from scratch and no raise that day.
"""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from conversations.answers import Unclear, Why, centimetres, choice
from conversations.client.band_line import LONGEST_MARK, WIDTHS_CM, read_line, says_gone
from conversations.form import Form, Outcome, dialogue, with_answer
from conversations.protocol import Choice, Do, Effect, Record, Said, Say
from conversations.words import band_list as words
from core.facts import BandOwned, Measured
from core.plans import Region
from core.pressure import Limb, overlap_cm

GIRTHS_CM = (15, 100)
LIMB_OF = {Region.ARMS: Limb.ARM, Region.LEGS: Limb.LEG}
REGIONS = tuple(Choice(label, region.value) for region, label in words.REGIONS.items())
SKIP = Choice(words.SKIP, "skip")
ONE_IS_GONE = Choice(words.ONE_IS_GONE, "gone")
NONE_IS = Choice(words.NONE_IS, "none")


@dataclass(frozen=True, slots=True)
class Brief:
    """Bands known so far: letter -> line as the client reads it."""

    owned: dict[str, str]


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `girth` 0: not measured; a fit mark "": none.

    `gone`: the letter of the band that is no more, "": one is, and it is asked which.
    """

    letter: str | None = None
    region: Region | None = None
    width: float | None = None
    girth: float | None = None
    mark: str | None = None
    gone: str | None = None


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    if draft.gone is not None:
        return None if draft.gone else "gone"
    return next(
        (step for step in ("letter", "region", "width", "girth", "mark") if getattr(draft, step) is None),
        None,
    )


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    match step:
        case "letter":
            known = "".join(f"{letter}: {line}\n" for letter, line in sorted(brief.owned.items()))
            return Say(f"{known}{words.LETTER}", _letters(brief))
        case "gone":
            return Say(words.WHICH_GONE, (*_owned(brief), NONE_IS))
        case "region":
            return Say(words.REGION, REGIONS)
        case "width":
            return Say(words.WIDTH)
        case "girth":
            return Say(words.GIRTH[draft.region or Region.LEGS], (SKIP,))
        case _:
            return Say(_ask_mark(draft), (SKIP,))


def _owned(brief: Brief) -> tuple[Choice, ...]:
    return tuple(Choice(one, one) for one in sorted(brief.owned))


def _letters(brief: Brief) -> tuple[Choice, ...]:
    """The bands that are known, two free letters, and the way to take one off the list."""
    free = [letter for letter in "ABCDEF" if letter not in brief.owned][:2]
    return (*_owned(brief), *(Choice(one, one) for one in free), *((ONE_IS_GONE,) if brief.owned else ()))


def _ask_mark(draft: Draft) -> str:
    if not draft.girth or draft.region is None:
        return words.MARK
    closer = overlap_cm(draft.girth, limb=LIMB_OF[draft.region])
    return f"{words.START.format(closer=closer)} {words.MARK}"


def fill(brief: Brief, draft: Draft, step: str, answer: Said) -> Draft:
    """One more answer. Raises `Unclear`."""
    text = answer.text.strip()
    match step:
        case "letter":
            return _letter(brief, text)
        case "gone":
            return _gone(brief, choice(text, (*_owned(brief), NONE_IS)))
        case "region":
            return replace(draft, region=Region(choice(text, REGIONS)))
        case "width":
            return replace(draft, width=float(centimetres(text, *WIDTHS_CM)))
        case "girth":
            return replace(draft, girth=0.0 if _skips(text) else float(centimetres(text, *GIRTHS_CM)))
        case _:
            return replace(draft, mark="" if _skips(text) else _line(text))


def _letter(brief: Brief, text: str) -> Draft:
    """A band by its letter, with whatever was said of it at once; or one that is gone. Raises `Unclear`."""
    if brief.owned and text in (ONE_IS_GONE.value, ONE_IS_GONE.label):
        return Draft(gone="")
    gone = says_gone(text) if brief.owned else None
    if gone is not None:
        return _gone(brief, gone)
    line = read_line(text)
    return Draft(line.letter, line.region, line.width, mark=line.mark)


def _gone(brief: Brief, letter: str) -> Draft:
    """A letter of no band of theirs is asked about; of one band it is that one."""
    if letter == NONE_IS.value:
        return Draft()
    if letter not in brief.owned:
        letter = next(iter(brief.owned)) if len(brief.owned) == 1 and not letter else ""
    return Draft(gone=letter)


def _skips(text: str) -> bool:
    return text.lower() in ("skip", words.SKIP.lower(), "no", "none")


def _line(text: str) -> str:
    line = " ".join(text.split())
    if not line or len(line) > LONGEST_MARK:
        raise Unclear(Why.EMPTY)
    return line


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """The band is a fact once it is whole; a girth at once."""
    if draft.region is None:
        return ()
    girth = Measured(answer.at, f"left_{LIMB_OF[draft.region]}", draft.girth or 0.0)
    band = BandOwned(answer.at, str(draft.letter), draft.region, draft.width or 0.0, draft.mark or "")
    return (
        *((Record(girth),) if step == "girth" and draft.girth else ()),
        *((Record(band),) if missing(brief, draft) is None else ()),
    )


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """What stands on the list now, and how to change it."""
    if draft.gone:
        return Outcome(
            (Say(words.GONE.format(letter=draft.gone)),), (Do("band_gone", {"letter": draft.gone}),)
        )
    assert draft.region is not None, "a band is finished once all of it is known"
    line = words.line(draft.region, draft.width or 0.0, draft.mark or "")
    return Outcome((Say(words.NOTED.format(letter=draft.letter, line=line)),))


def forget(draft: Draft, step: str) -> Draft:
    """`back`: the letter may have come with all the rest."""
    return Draft() if step in ("letter", "gone") else with_answer(draft, step, None)


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    forget=forget,
    lapse=timedelta(hours=12),
)
DIALOGUE = dialogue("band_list", Brief, Draft, FORM)
