"""What is said when a typed answer was not clear: one short line, then the question comes again."""

from conversations.answers import Unclear, Why


def unclear(problem: Unclear) -> str:
    """The re-ask for one unclear answer."""
    match problem.reason:
        case Why.TOO_LOW | Why.TOO_HIGH | Why.NOT_WHOLE:
            return _about_the_size(problem)
        case Why.OPEN_ENDED | Why.DOES_NOT_KNOW | Why.HOW_MUCH:
            return ROUGHLY[problem.reason].format(about=_about(problem))
        case Why.NOT_AN_OPTION | Why.WHICH_OPTION:
            return _about_the_options(problem)
        case Why.DECIMAL_COMMA:
            return DECIMAL_COMMA.format(one=problem.options[0], two=problem.options[1])
        case _:
            return SIMPLE[problem.reason]


SIMPLE = {
    Why.EMPTY: "I need the number, please.",
    Why.NOT_A_NUMBER: "I couldn't read a number there. Just the number, please.",
    Why.SEVERAL: "I see more than one number. Which one is it?",
    Why.WHICH_SIDE: "Which side is which? Like this: 28 left 31 right.",
    Why.NO_UNIT: "Kilograms or pounds? Like this: 12 kg, or 25 lb.",
    Why.NOT_YES_OR_NO: "Yes, no or not sure?",
    Why.SAID_MORE: "Thanks. First just yes, no or not sure.",
    Why.NOT_A_PRESSURE: "I need both numbers as your monitor shows them. Like this: 128/82.",
    Why.NOT_BANDS: "I couldn't read the exercise bands. Each once, easiest first, like: bands: yellow, red, black.",
    Why.NOT_A_NAME: ("That is no name. Has nobody said yes yet? Then 'back', and hold for now."),
    Why.NOT_A_DAY: "I need a day to come. Like: two weeks, or until 3 January.",
    Why.NO_YEAR: "With its year, please: it stays on record, and a year too far would clear somebody for too long.",
    Why.WRONG_DAY: "I can't take that day here.",
    Why.MERE_OK: "Which one, please? Tap it.",
    Why.NO_REASON: "One line in your own words, please.",
    Why.PRESSURE_SWAPPED: "The upper number comes first, like 128/82. Once more, please.",
}


USUAL_REPS = 30  # of a first set
ROUGHLY = {
    Why.OPEN_ENDED: "Your best single number, please. A rough one is fine: about {about}.",
    Why.DOES_NOT_KNOW: "That's all right. What would you say? A rough number is fine: about {about}.",
    Why.HOW_MUCH: "How much is that as a number? A rough one is fine: about {about}.",
}
DECIMAL_COMMA = "Is that one dumbbell of {one}, or two, {two}? Type it like this: {one}, or like this: {two}."


def _about(problem: Unclear) -> int:
    """An example: the middle of what fits, else a usual count."""
    if problem.low is None or problem.high is None:
        return USUAL_REPS
    return int(problem.low + problem.high) // 2  # type: ignore[operator]  # both of one kind


def _about_the_size(problem: Unclear) -> str:
    if problem.reason is Why.NOT_WHOLE:
        return "Whole numbers only here, please."
    if problem.low is None or problem.high is None:
        return "That number doesn't fit here. Once more, please."
    return f"I need a number from {problem.low} to {problem.high}."


def _about_the_options(problem: Unclear) -> str:
    if problem.reason is Why.WHICH_OPTION:
        return "That could be more than one of these. Which one?"
    return f"One of these, please: {', '.join(problem.options)}."
