"""The same words where only one band is on: nobody asks about "them" who put on one."""

from conversations.words import session as words

ONE = {
    words.TIGHTNESS: "How tight is it, 0 to 10?",
    words.FEELING: "How does it feel? A reddish skin is fine.",
    words.FIT_AGAIN: "{name}. Fit the band anew: {place}, snug, {target} out of 10 tight. Tap when that's done.",
    words.LOOSE_AGAIN: "A bit loose. Open it, close it a touch tighter, and tap.",
    words.OFF_NOW: "Band off now. Shake the limb loose. Tap when it is off.",
    words.OFF_ALREADY: "Off already? Tap when it is off.",
}


def of_bands(text: str, bands: int) -> str:
    """`text` as it is said of so many bands."""
    return ONE[text] if bands == 1 else text
