"""What a client's message says that cannot wait for the next question: stop, pain, numbness, emergencies.

Read in three steps. Phrases (`lexicon/red_flags.py`, `lesser.py`, `foreign.py`) and pairs of classes (`lexicon/classes.py`,
`signs.py`, `languages/`) are looked for in each clause, once slips are mended and harmless wordings taken out; each that is
found has a sense (`senses.py`: now, denied, over, ...); and what no question could read is asked about unless it is
harmless (`unread.py`, `lexicon/small_talk.py`).

A new way to say something is a word in its class; a new sign is a rule of two classes; a phrase is for words whose order
matters; a language is a module of classes in `lexicon/languages/`, and phrases in `foreign.py`.
"""

from conversations.stopwords.causes import cause_of
from conversations.stopwords.kinds import Heard, Kind, Reading, Sense
from conversations.stopwords.reader import read

__all__ = ["Heard", "Kind", "Reading", "Sense", "cause_of", "read"]
