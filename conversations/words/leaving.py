"""A client wants to be deleted: what goes, what the practice must keep, twice asked."""

ASK = (
    "Delete everything I keep about you: answers, sessions, loads, messages? It can't be undone, and you can't train "
    "with me after it. Want a copy first? Say no here and type 'my data'.\n{kept}\n"
    "Safety copies run out within 30 days. What stands in this chat on your phone, and in your coach's, only you "
    "two can delete."
)
NOTHING_KEPT = "Nothing is kept back."
MUST_KEEP = (
    "Your coach's practice must keep its record for {years} years: your name, health answers, sessions and what your "
    "coach decided stay until {day}, then they go too. Phone, address, contacts and messages go now."
)
CHOICES = (("Yes, delete it", "yes"), ("No, keep it", "no"))
SURE = "Really? Type the word delete, and it's done."
KEEP = ("No, keep it", "no")
WORD = "delete"
NOTHING_DELETED = "Nothing is deleted."
GOODBYE = (
    "All of it goes in the next minutes, at the latest within a day, and the last traces inside the file within a day "
    "after that. Thank you for training with us. Anything that hurts or worries you: your own clinician, please."
)
GOODBYE_KEEPS = (
    "Phone, address, contacts and messages go in the next minutes, at the latest within a day, and their last traces "
    "inside the file within a day after that; the record that must be kept goes on {day}. Thank you for training with "
    "us. Anything that hurts or worries you: your own clinician, please."
)
COACH = (
    "{name} has asked to be deleted. What is kept here about them goes now, at the latest within a day. Please delete what stands "
    "about them in this chat, too, and in every export you keep."
)
COACH_KEEPS = (
    "{name} has asked to be deleted. Contacts and messages go now, at the latest within a day; the record you must keep stays "
    "until {day}. Please delete what stands about them in this chat, too."
)
COACH_ALERT = "An alert about them is still open: if you have to reach them, do it now. Phone {phone}."
NOT_NOW = "First finish the session, or stop it. Then type 'delete me' again."
