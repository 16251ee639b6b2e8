"""What a client is told before anything else."""

OPENING = (
    "Hello {name}. I help {coach} train you from a distance: light loads, bands on the upper arms or legs.",
    "Please read this. I'm no medical device and I don't diagnose; your own clinician and local rules come first. "
    "Nobody watches this chat live. In an emergency call your local emergency number, not me.",
    "Stored: your answers here, your sessions, how you feel after. Your coach sees them. This chat is not end-to-end "
    "encrypted.",
    "One rule for always: if I go quiet, take the bands off when the movement is done. Never wait for me.",
)
ASK = {
    "agree": "Do you agree to that?",
    "age": "How old are you, in years?",
    "guardian": (
        "You are under 18, so a parent or guardian agrees, too. Are they with you now, have they read this, and "
        "do they agree?"
    ),
    "zone": "Where do you live? A city or a time zone, like Lisbon.",
    "emergency_number": "What number do you call in an emergency where you live? Like 112.",
    "phone": "Your phone number, so that your coach can ring you? Or skip.",
    "address": "Where do you train, so that help would find you? Street and town. Or skip.",
    "emergency_contact": "Who should be rung if something is wrong? Name and number. Or skip.",
    "company": "When you train, are you alone?",
    "helper": "Does somebody type for you? Their name, or No.",
}
SKIP = "Skip"
DISAGREED = "All right. Then we don't begin and nothing is kept. Your coach can tell you more."
WITHDRAWN = "All right. Then we stop here. What you told me until now is still stored; ask your coach to have it deleted."
GUARDIAN_FIRST = (
    "All right. Then we wait, and nothing is kept. Come back together with your parent or guardian; your coach "
    "can invite you again."
)
WHICH_ZONE = "Which one is it?"
NO_SUCH_PLACE = "I don't know that place. The nearest big city, please, or a zone like Europe/Lisbon."
COMPANY = (("Alone", "alone"), ("With somebody", "with_somebody"), ("Skip", "skip"))
