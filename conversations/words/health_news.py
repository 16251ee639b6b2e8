"""Health news told between sessions."""

ASK = (
    "Thank you for saying so. Is that about you, and new since the health questions? Then they come once more before "
    "the next band. Unwell right now? Say what it is."
)
YES = "Yes"
NO = "No"
NOT_NEWS = "Good. Then all stays as it is."
NOT_NEWS_SEND = "Good. Then all stays as it is. Shall I send what you wrote to {coach}?"
