"""The sound to train by."""

from core.beat import Pattern, rests_at

BUTTON = "Sound to train by"
FILE = "beat.wav"
NOTHING = "There is no sound for your plan: a beat is for movements with reps."
TITLE = "{names}: beat"
CAPTION = (
    "{names}: {reps} reps, {up} s up (high tone), {down} s down (low tone), {rest} s rest with three beeps before the "
    "next set. It plays with the screen locked."
)
EARLIER = "Form gone before the end of a set? Stop there, and jump ahead to its rest: {rests}."
STILL = "The sound only keeps the beat. Bands off when I say so, or when something is wrong. {breaths}"
BREATHS = "No message? Six slow breaths, then go."


def title(names: list[str]) -> str:
    """What the phone's player shows."""
    return TITLE.format(names=" and ".join(names))


def caption(pattern: Pattern, names: list[str]) -> str:
    """What is in it, and how to use it."""
    half = f"{pattern.tempo_s / 2:g}"
    reps = ", ".join(str(count) for count in pattern.reps)
    said = " and ".join(names)
    lines = [CAPTION.format(names=said, reps=reps, up=half, down=half, rest=pattern.rest_s)]
    rests = ", ".join(_clock(at) for at in rests_at(pattern))
    lines += [EARLIER.format(rests=rests)] if rests else []
    return "\n".join([*lines, STILL.format(breaths=BREATHS)])


def _clock(seconds: float) -> str:
    """2:44, as a player shows it."""
    return f"{int(seconds) // 60}:{int(seconds) % 60:02}"
