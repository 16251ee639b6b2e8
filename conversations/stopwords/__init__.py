"""What a client's message says that cannot wait for the next question: stop, pain, numbness, emergencies."""

from conversations.stopwords.kinds import Heard, Kind, Reading, Sense
from conversations.stopwords.reader import read

__all__ = ["Heard", "Kind", "Reading", "Sense", "read"]
