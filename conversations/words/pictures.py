"""Words in pictures: short, because they are read on a phone at arm's length."""

from core.plans import OPEN_AIMS

CHART_TITLE = f"Clean reps in set 1\n(shaded: {OPEN_AIMS[0]}, wanted for open sets; open circle: outside)"
CHART_UNIT = "reps"

BAND_ARM = "Band: high on the\nupper arm"
ELBOW = "elbow"
PALM = "Press the palm 5 s,\nlet go, count"
BAND_LEG = "Band: high on the\nupper thigh"
ABOVE_KNEE = "Press the lower thigh,\njust above the kneecap,\n5 s. Let go, count"
KNEECAP = "kneecap"
