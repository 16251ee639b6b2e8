"""What a client's message says that cannot wait for the next question: stop, pain, numbness, emergencies."""

from conversations.stopwords.causes import cause_of
from conversations.stopwords.kinds import Heard, Kind, Reading, Sense
from conversations.stopwords.reader import read

__all__ = ["Heard", "Kind", "Reading", "Sense", "cause_of", "read"]
