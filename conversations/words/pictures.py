"""Words in pictures: short, because they are read on a phone at arm's length."""

CHART_TITLE = "Clean reps in set 1\n(shaded: the range wanted; open circle: outside it)"
CHART_GENTLE = "\n(small point: a gentle set, with reps left)"
CHART_PART = "\n{shown} of {count}: who needs you first; the others on their cards"
CHART_UNIT = "reps"

BAND_ARM = "Band: high on the\nupper arm"
ELBOW = "elbow"
PALM = "Press the palm 5 s,\nlet go, count"
BAND_LEG = "Band: high on the\nupper thigh"
ABOVE_KNEE = "Press the lower thigh,\njust above the kneecap,\n5 s. Let go, count"
KNEECAP = "kneecap"


def chart_title(shown: int, count: int, *, gentle: bool = False) -> str:
    """What the points are, and how many of the panels there is room for."""
    part = CHART_PART.format(shown=shown, count=count) if shown < count else ""
    return CHART_TITLE + CHART_GENTLE * gentle + part
