"""The one question after the recap."""

ABOUT = "One question about the {name}, so that I read the numbers right. {both} {question}"
NONE_LEFT = "No, that was all"
THANKS = "Thanks, that helps."
CHANGED = "With that, next time, {name}: {use}. {why}"
