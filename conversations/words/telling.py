"""The client writes to the coach."""

YOUR_COACH = "your coach"
TELL = "What shall I pass on to {coach}? The next line you type goes to them. 'cancel' leaves it."
