"""What a client is told before anything else."""

OPENING = (
    "I help {coach} train you from a distance: light loads, bands on the upper arms or legs.",
    "Please read this. I'm no medical device and I don't diagnose; your own clinician and local rules come first. "
    "Nobody watches this chat live. In an emergency call your local emergency number, not me.",
    "Stored: your answers here, how to reach you and whom to ring, your sessions, how you feel after. Your coach sees "
    "them. This chat is not end-to-end encrypted.",
    "One rule for always: if I go quiet, take the bands off when the movement is done. Never wait for me.",
)
ASK = {
    "agree": "Do you agree to that?",
    "age": "How old are you, in years?",
    "guardian": (
        "You are under 18, so a parent or guardian agrees, too. Are they with you now, have they read this, and "
        "do they agree?"
    ),
    "zone": "Where do you live? A city or a country, like Lisbon; sharing your location works too.",
    "emergency_number": "What number do you call in an emergency where you live? Like 112.",
    "phone": "Your phone number, so that your coach can ring you? Or skip.",
    "address": "Where do you train, so that help would find you? Street and town. Or skip.",
    "emergency_contact": "Who should be rung if something is wrong? Name and number. Or skip.",
    "company": "When you train, are you alone?",
    "helper": "Does somebody type for you? Their name, or No.",
}
GO_BY = "I go by {zone}; 'back' if that is not yours.\n{question}"
SKIP = "Skip"
DISAGREED = "All right. Then we don't begin, and I keep nothing but your no. Your coach can tell you more."
WITHDRAWN = "All right. Then we stop here. What you told me until now is still stored; 'delete me' erases it."
GUARDIAN_FIRST = (
    "All right. Then we wait, and nothing is kept but that. Come back together with your parent or guardian: write "
    "anything, and we go on."
)
LEFT = "All right, we leave it there. Write anything, and we go on."
# By how it came that there is no consent (stored names): what the client's next words get, the button under it, and
# what the coach is told.
WITHOUT = {
    "refused": "You said no to keeping your answers, so we stop here. Changed your mind?",
    "withdrawn": "You took back your yes to keeping your answers, so we stop here. Changed your mind?",
    "guardian": "We wait for your parent or guardian. Are they with you now?",
    "unfinished": "We hadn't finished the first questions.",
}
AGREE_AFTER_ALL = "I agree after all"
GO_ON = {
    "refused": AGREE_AFTER_ALL,
    "withdrawn": AGREE_AFTER_ALL,
    "guardian": "They are here",
    "unfinished": "Go on",
}
COACH_TOLD = {
    "refused": (
        "{name} said no to keeping their answers, so nothing began. Their choice; a kind word from you may help. They "
        "can change their mind in their chat at any time."
    ),
    "withdrawn": (
        "{name} took back their yes to keeping their answers. No training until they agree again, which they can in "
        "their chat. What is stored stays until it is deleted."
    ),
    "guardian": "{name} is under 18 and waits for a parent or guardian to agree. They can go on in their chat then.",
}
TAKEN_BACK = (
    "All right. No training and no reminders from now on; if bands are on, take them off. What you told me until now "
    "is still stored; 'delete me' erases it."
)
ALWAYS = ("delete me", "my data", "help")  # what goes on without consent
TAKES_BACK = (
    "i take back my consent",
    "i take my consent back",
    "i withdraw my consent",
    "withdraw consent",
    "take back consent",
    "i no longer agree",
    "i don't agree any more",
    "i do not agree any more",
    "i don't agree anymore",
)
WHICH_ZONE = "Which one is it?"
NO_SUCH_PLACE = "I don't know that place. The nearest big city or the capital, please; or tap if your clock shows the same time."
AS_COACH = "Same time as {city}"
CONTACT_NUMBER = "And the number of {name}?"
HELPER_NAME = "What is their name?"
COMPANY_TYPED = (("yes", "alone"), ("no", "with_somebody"), ("i am alone", "alone"), ("i'm alone", "alone"))
COMPANY = (("Alone", "alone"), ("With somebody", "with_somebody"), ("Skip", "skip"))
