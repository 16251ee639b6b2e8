"""One script, without accents: how words are compared, the client's and those of the lexicon."""

import unicodedata

# Cyrillic and Greek letters that look like Latin ones (Unicode Technical Standard 39, confusables).
LOOKALIKES = str.maketrans("асеһіјкмнорѕтухοαρτυνι", "acehijkmhopstyxoaptuvi")
BARRED = str.maketrans("łøđı", "lodi")  # letters that come apart into no letter and accent
ACCENTS = range(0x0300, 0x0370)  # Unicode block "Combining Diacritical Marks"


def folded(text: str) -> str:
    """Small letters without accents, Latin where a letter looks like a Latin one."""
    apart = unicodedata.normalize("NFKD", text).casefold()
    bare = "".join(letter for letter in apart if ord(letter) not in ACCENTS)
    return unicodedata.normalize("NFKC", bare).translate(BARRED).translate(LOOKALIKES)
