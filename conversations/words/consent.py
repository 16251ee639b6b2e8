"""What a client is told before anything else."""

OPENING = (
    "I help {coach} train you from a distance: light loads, bands on the upper arms or legs.",
    "Please read this. I'm no medical device and I don't diagnose; your own clinician and local rules come first. "
    "Nobody watches this chat live. In an emergency call your local emergency number, not me.",
    "Stored: your answers here, your sessions, how you feel after. Your coach sees them. This chat is not end-to-end "
    "encrypted.",
    "One rule for always: if I go quiet, take the bands off when the movement is done. Never wait for me.",
)
ASK = {
    "agree": "Do you agree to that?",
    "age": "How old are you, in years?",
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
WHICH_ZONE = "Which one is it?"
COMPANY = (("Alone", "alone"), ("With somebody", "with_somebody"))
