"""The day after, answered in words of one's own: "a bit sore but ok", "yes all fine dear"."""

from conversations.answers.lexing import vocabulary, words

WELL = vocabulary("fine good ok okay great well normal")
SORE = vocabulary("sore soreness stiff achy")
# Beside these nothing is said that somebody should read; any other word, a "not" above all, makes the line unclear.
BESIDE_WELL = vocabulary(
    "yes no all im i am its it is everything everythings feel feeling felt just only very quite really thanks thank you dear love",
    "coach today now here this morning good nothing",
)
BESIDE_SORE = (
    BESIDE_WELL
    | WELL
    | vocabulary(
        "a bit little slightly still but and my the in both are leg legs thigh thighs calf calves arm arms upper muscle",
        "muscles from walk walking",
    )
)


def how_in_words(text: str) -> str | None:
    """ "fine" or "sore", as the buttons have them; None: something else was said as well, or neither."""
    said = set(words(text).replace(".", " ").replace("'", "").split())
    if said & SORE and said <= SORE | BESIDE_SORE:
        return "sore"
    return "fine" if said & WELL and said <= WELL | BESIDE_WELL else None
