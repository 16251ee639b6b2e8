"""One script, without accents: how words are compared, the client's and those of the lexicon."""

import re
import unicodedata

# Cyrillic and Greek letters that look like Latin ones (Unicode Technical Standard 39, confusables).
LOOKALIKES = str.maketrans("асеһіјкмнорѕтухοαρτυνι", "acehijkmhopstyxoaptuvi")
BARRED = str.maketrans({"ł": "l", "ø": "o", "đ": "d", "ı": "i", "œ": "oe", "æ": "ae"})  # no letter and accent
NOT = re.compile(r"\bне\b")  # would look like "he"
ACCENTS = range(0x0300, 0x0370)  # Unicode block "Combining Diacritical Marks"


def folded(text: str) -> str:
    """Small letters without accents, Latin where a letter looks like a Latin one."""
    apart = unicodedata.normalize("NFKD", text).casefold()
    apart = NOT.sub("ne", apart)
    bare = "".join(letter for letter in apart if ord(letter) not in ACCENTS)
    return unicodedata.normalize("NFKC", bare).translate(BARRED).translate(LOOKALIKES)
