"""What may be typed for the buttons of a session."""

from core.safety.pain import Where

WARM_TYPED = (
    ("the same", "same"),
    ("feels the same", "same"),
    ("same as before", "same"),
    ("yes as before", "same"),
    ("as warm as before", "same"),
    ("yes", "same"),
    ("yes both", "same"),
    ("yes to both", "same"),
    ("normal", "same"),
    ("warm", "same"),
    ("no difference", "same"),
    ("no change", "same"),
    ("not different", "same"),
    ("not cooler", "same"),
)

FEELING_TYPED = (
    ("ok", "fine"),
    ("okay", "fine"),
    ("good", "fine"),
    ("all good", "fine"),
    ("fien", "fine"),
    ("fine thanks", "fine"),
    ("reddish", "fine"),
    ("a bit reddish", "fine"),
    ("a bit red", "fine"),
    ("reddish but fine", "fine"),
    ("pink", "fine"),
    ("warm", "fine"),
    ("tight but ok", "fine"),
    ("tight but fine", "fine"),
    ("snug", "fine"),
    ("slid", "slid"),
    ("it slid down", "slid"),
    ("slipped", "slid"),
    ("it slipped", "slid"),
    ("one slipped", "slid"),
    ("a band slipped", "slid"),
    ("the band slipped", "slid"),
    ("the band slipped down", "slid"),
)

HURTS_TYPED = (
    ("burn", Where.MUSCLE.value),
    ("a burn", Where.MUSCLE.value),
    ("it burns", Where.MUSCLE.value),
    ("muscle", Where.MUSCLE.value),
    ("joint", Where.JOINT.value),
    ("knee", Where.JOINT.value),
    ("elbow", Where.JOINT.value),
    ("shoulder", Where.JOINT.value),
    ("band", Where.BAND.value),
    ("elsewhere", Where.ELSEWHERE.value),
)

GO_ON_TYPED = (
    "yes",
    "ok",
    "okay",
    "k",
    "yep",
    "yeah",
    "going on",
    "go",
    "continue",
    "going",
    "ready",
    "i'm fine",
    "fine",
    "all good",
)
