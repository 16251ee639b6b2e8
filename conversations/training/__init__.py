"""Around a session: the reminder, the questions before and after it, and when something is wrong."""
