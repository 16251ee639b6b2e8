"""Parts of the body and what they do wrong in other languages, in the classes of `classes.py` and `signs.py`.

Every rule whose classes a language has is read in it; words of two languages never make a sign together. Accents need
not be typed. A word that is also an English one stands here only where its company is not English.
"""

from conversations.stopwords.lexicon.languages import (
    french,
    german,
    italian,
    lithuanian,
    polish,
    portuguese,
    russian,
    spanish,
)

LANGUAGES = {
    "de": german.CLASSES,
    "es": spanish.CLASSES,
    "fr": french.CLASSES,
    "it": italian.CLASSES,
    "pt": portuguese.CLASSES,
    "pl": polish.CLASSES,
    "lt": lithuanian.CLASSES,
    "ru": russian.CLASSES,
}
