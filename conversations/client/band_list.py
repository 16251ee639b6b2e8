"""The client's own bands: a letter on each, where it goes, how wide it is, and where it is closed.

A figure for one band says nothing about another: another band means a check from scratch and no raise that day.
"""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from conversations.answers import Unclear, Why, centimetres, choice
from conversations.form import Form, Outcome, dialogue
from conversations.protocol import Choice, Effect, Record, Said, Say
from conversations.words import band_list as words
from core.facts import BandOwned, Measured
from core.plans import Region
from core.pressure import Limb, overlap_cm

WIDTHS_CM = (2, 25)
GIRTHS_CM = (15, 100)
LONGEST_MARK = 60  # characters
LIMB_OF = {Region.ARMS: Limb.ARM, Region.LEGS: Limb.LEG}
REGIONS = tuple(Choice(label, region.value) for region, label in words.REGIONS.items())
SKIP = Choice(words.SKIP, "skip")


@dataclass(frozen=True, slots=True)
class Brief:
    """Bands known so far: letter -> line as the client reads it."""

    owned: dict[str, str]


@dataclass(frozen=True, slots=True)
class Draft:
    """Answers; None: not asked yet. `girth` 0: not measured; a fit mark "": none."""

    letter: str | None = None
    region: Region | None = None
    width: float | None = None
    girth: float | None = None
    mark: str | None = None


def missing(brief: Brief, draft: Draft) -> str | None:
    """The next question."""
    return next(
        (step for step in ("letter", "region", "width", "girth", "mark") if getattr(draft, step) is None),
        None,
    )


def ask(brief: Brief, draft: Draft, step: str) -> Say:
    """Its words."""
    match step:
        case "letter":
            known = "".join(f"{letter}: {line}\n" for letter, line in sorted(brief.owned.items()))
            free = [letter for letter in "ABCDEF" if letter not in brief.owned][:2]
            return Say(
                f"{known}{words.LETTER}", tuple(Choice(one, one) for one in (*sorted(brief.owned), *free))
            )
        case "region":
            return Say(words.REGION, REGIONS)
        case "width":
            return Say(words.WIDTH)
        case "girth":
            return Say(words.GIRTH[draft.region or Region.LEGS], (SKIP,))
        case _:
            return Say(_ask_mark(draft), (SKIP,))


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
            if len(text) != 1 or not text.isalpha() or not text.isascii():
                raise Unclear(Why.NOT_AN_OPTION, options=("A", "B", "C"))
            return replace(draft, letter=text.upper())
        case "region":
            return replace(draft, region=Region(choice(text, REGIONS)))
        case "width":
            return replace(draft, width=float(centimetres(text, *WIDTHS_CM)))
        case "girth":
            return replace(draft, girth=0.0 if _skips(text) else float(centimetres(text, *GIRTHS_CM)))
        case _:
            return replace(draft, mark="" if _skips(text) else _line(text))


def _skips(text: str) -> bool:
    return text.lower() in ("skip", words.SKIP.lower(), "no", "none")


def _line(text: str) -> str:
    line = " ".join(text.split())
    if not line or len(line) > LONGEST_MARK:
        raise Unclear(Why.EMPTY)
    return line


def noted(brief: Brief, draft: Draft, step: str, answer: Said) -> tuple[Effect, ...]:
    """The band is a fact once it is whole; a girth at once."""
    if step == "girth" and draft.girth and draft.region is not None:
        return (Record(Measured(answer.at, f"left_{LIMB_OF[draft.region]}", draft.girth)),)
    if step != "mark" or draft.region is None:
        return ()
    band = BandOwned(answer.at, str(draft.letter), draft.region, draft.width or 0.0, draft.mark or "")
    return (Record(band),)


def finish(brief: Brief, draft: Draft, at: datetime) -> Outcome:
    """Thanks, and how to add another."""
    return Outcome((Say(words.NOTED.format(letter=draft.letter)),))


FORM: Form[Brief, Draft] = Form(
    start=lambda brief: Draft(),
    missing=missing,
    ask=ask,
    fill=fill,
    finish=finish,
    noted=noted,
    lapse=timedelta(hours=12),
)
DIALOGUE = dialogue("band_list", Brief, Draft, FORM)
