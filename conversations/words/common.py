"""Words every dialogue shares."""

ALREADY_NOTED = "Already noted."
TOO_LATE = "That question is behind us, so that changed nothing; 'back' asks the last one again. We are at:"
BEFORE_ASKED = "“{said}” came before I asked this, so I left it out."
HOW_TO_GO_BACK = "That can be put right: 'back' asks the question before again, as often as you type it."
NOTHING_TO_GO_BACK_TO = "That was the first question."
CANCELLED = "All right, we leave it there. Nothing is lost; write whenever you like."
STILL_THERE = "Still here when you are. We were at:"
NO_WORD_YET = "I have no word from you yet."  # where it may be bad news: no "when you are ready" there
CHANGED = "Changed to: {said}"
YES = "Yes"
NO = "No"
NOT_SURE = "Not sure"
STOP = "Stop"

# Instead of words: by conversations.protocol.Media value.
NOT_WORDS = {
    "photo": "I can't read pictures. Tap a button or type your answer, please.",
    "sticker": "Nice one. Tap a button or type your answer, please.",
    "voice": "I can't listen; tap or type, please. Something wrong? Tap Stop or type stop.",
    "video": "I can't watch videos here. Tap a button or type your answer, please.",
    "file": "I can't open files. Tap a button or type your answer, please.",
    "location": "I don't need to know where you are just now. Tap a button or type your answer, please.",
    "other": "I can't read that one. Tap a button or type your answer, please.",
}


def counted(number: int, what: str, many: str = "") -> str:
    """ "1 session", "2 sessions"; `many` where an s is not enough."""
    return f"{number} {what}" if number == 1 else f"{number} {many or what + 's'}"
