"""What the numbers of a session look like, in words for the client and for the coach."""

from collections.abc import Sequence

from core.progression import Explanation, Reading

# After "The numbers look as if".
AS_IF = {
    Explanation.LOAD_RIGHT: "the load fits",
    Explanation.LOAD_LIGHT: "the load is on the light side",
    Explanation.LOAD_HEAVY: "the load is on the heavy side",
    Explanation.BANDS_LOOSE: "the bands were loose",
    Explanation.BANDS_TIGHT: "the bands were tight",
    Explanation.STOPPED_SHORT: "you stopped with reps left",
    Explanation.REST_LONG: "the rests ran long",
    Explanation.COUNT_UNCLEAN: "not every rep counted was a clean one",
}
SHORT = {
    Explanation.LOAD_RIGHT: "load right",
    Explanation.LOAD_LIGHT: "load light",
    Explanation.LOAD_HEAVY: "load heavy",
    Explanation.BANDS_LOOSE: "bands loose",
    Explanation.BANDS_TIGHT: "bands tight",
    Explanation.STOPPED_SHORT: "stopped short",
    Explanation.REST_LONG: "rest too long",
    Explanation.COUNT_UNCLEAN: "unclean reps counted",
}
# These are said with the next load anyway.
ABOUT_THE_LOAD = frozenset({Explanation.LOAD_RIGHT, Explanation.LOAD_LIGHT, Explanation.LOAD_HEAVY})
LIKELY = 0.5  # of all explanations together, before one is said by itself; own judgement, no source
WORTH_SAYING = 0.15  # for the coach; own judgement, no source

ONE = "{name}: the numbers look as if {one}."
TWO = "The numbers look as if {one}, or {two}."
FOR_COACH = "{name}, the last numbers: {readings}."


def one_line(name: str, ranked: Sequence[Reading]) -> str:
    """What the client reads after a movement; "": nothing beyond the load, or nothing that is likely."""
    if not ranked or ranked[0].odds < LIKELY or ranked[0].name in ABOUT_THE_LOAD:
        return ""
    return ONE.format(name=name, one=AS_IF[ranked[0].name])


def both(either: Sequence[str]) -> str:
    """The two that are too close to call, by their stored names; "": not known which."""
    return TWO.format(one=AS_IF[Explanation(either[0])], two=AS_IF[Explanation(either[1])]) if either else ""


def coach_line(name: str, ranked: Sequence[Reading]) -> str:
    """ "Goblet squat, the last numbers: bands loose 62 %, load light 30 %."; "": the load is right."""
    if ranked and ranked[0].name is Explanation.LOAD_RIGHT and ranked[0].odds >= LIKELY:
        return ""
    said = [f"{SHORT[one.name]} {100 * one.odds:.0f} %" for one in ranked if one.odds >= WORTH_SAYING]
    return FOR_COACH.format(name=name, readings=", ".join(said)) if said else ""
