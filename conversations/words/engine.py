"""Words that belong to no dialogue: strangers, buttons of yesterday, failures, absences."""

from collections.abc import Set

from conversations.words import exporting
from core.calendar.limits import Limit

STRANGER = (
    "Hello. This bot only talks with people whom a coach has invited. If you have an invitation, type its code "
    "here. Your own number is {number}; a coach may ask for it. In an emergency call your local emergency number."
)
YOUR_NUMBER = "Your number is {number}. This bot has no coach yet: whoever runs it puts a coach's number into its settings."
STRANGER_UNWELL = (
    "I can't help you here: nobody reads this chat. Call your local emergency number now, or a doctor. If you wear "
    "bands, take them off."
)
CODE_WRONG = (
    "That code doesn't work. Is every letter right? Copying it is surest, or tap the link. It may also be used already or "
    "be older than 72 hours: then ask your coach for a new one."
)
HERE_ALREADY = (
    "You're here already, so that invitation stays unused: give it to whoever it is meant for. If another coach is to "
    "look after you, ask your own; they can hand you over."
)
HERE_ALREADY_COACH = (
    "That invitation is good and still unused. It is for a client, to be typed or opened in their own chat with me; "
    "to try it out, take a second account."
)
TOO_FAST = "That was a lot at once. Wait a minute, then go on; what you write until then I don't read. 'stop' always works."
NOT_FORWARDED = "That one is forwarded, so I don't take it as yours. Type it yourself, please."
NOT_FORWARDED_MEDIA = "That one is forwarded, so I don't take it as yours. Send me your own, please."
CODE_LENGTH = (
    "That isn't the whole code: it has {whole} letters and figures, I count {count}. Copy it once more, please; spaces "
    "don't matter."
)
MORE_BUTTONS = "And the rest:"
PRIVATE_ONLY = "I only talk in a private chat."
INLINE_BUTTON = "I only talk in a private chat: open it"  # at most 64 characters
WELCOME = "Hello {name}. {coach} invited you."
JOINED = (
    "{name} has joined with your invitation. Here they are called {called}, number {number}. "
    "Somebody else? Put them on hold and tell whoever runs this."
)
FAILED = "Sorry, that went wrong on my side (number {number}). Nothing you said is lost. Please try again."
FAILED_BANDS = (
    "Bands off now, please. Something went wrong on my side (number {number}); your coach has been told. "
    "Nothing you said is lost."
)
FAILED_OPERATOR = "cuffline could not deal with a message from {who}. Number for whoever runs it: {number}."
CANNOT_KEEP = (
    "If bands are on, take them off now, please. I can't write anything down just now, so don't train with me until "
    "I say so. Something wrong? Call your coach, or your local emergency number."
)
CANNOT_KEEP_COACH = (
    "I can't write anything down just now. {name} may be in the middle of a session: please call them."
)
CANNOT_KEEP_OTHER_COACH = (
    "I can't write anything down just now, so nobody is looked after until I can. What you sent is not lost; whoever "
    "runs me has been told."
)
CANNOT_KEEP_OPERATOR = (
    "cuffline can't write its database ({problem}). Nothing is confirmed and nothing is lost, but nobody is looked "
    "after until it can: make room on the disk. `cuffline check` says more."
)
KEPT_AGAIN = "I can write again. What you sent meanwhile comes now; I'll answer."
DAMAGED_OPERATOR = (
    "cuffline's database is damaged ({problem}). Stop the bot and go back to a backup: `cuffline check`, then "
    "`cuffline restore FILE`."
)
DAMAGED_SINCE_OPERATOR = (
    "cuffline's database says another thing than before where nothing ever changes ({problem}): look at the disk. "
    "The last good backup is {file}; stop the bot and `cuffline restore` it. You hear this every day until that is "
    "done or that file is deleted."
)
NO_BACKUP_OPERATOR = "cuffline could not make a backup ({problem})."
CROWDED_OPERATOR = (
    "Another program fetches messages with cuffline's token, so some never get here, also those about pain. Is there an "
    "old bot, or a second one? Stop it, or have the token made anew and put it into the settings here."
)
NO_CARE_OPERATOR = (
    "cuffline could not look after its database just now ({problem}). Everything else goes on; `cuffline check` says more, "
    "and the log has the details."
)
NOT_REACHED_OPERATOR = (
    "The server cannot reach cuffline's webhook ({problem}): {count} of its messages wait, and clients get no answer. Look "
    "at the proxy and its certificate, or take the CUFFLINE_WEBHOOK lines out and start again: then messages are fetched."
)
NOT_WIPED_OPERATOR = (
    "Somebody's records are erased, but cuffline could not wipe what is left of them inside the file yet ({problem}). "
    "It tries again every hour. It needs as much free space on the disk as the database takes, and a fifth more."
)
FINISHED = "That one is finished."
NOT_YOURS = "That button isn't for this chat."
BARRED = {
    "no_consent": "Without your yes to keeping your answers there is no training here.",
    "not_screened": "First come the health questions.",
    "not_cleared": "Your coach has your answers and looks at them. You'll hear here as soon as you are cleared.",
    "declined": (
        "Your coach decided that bands are not for you now, so there is no session to start. Ask them, or your own "
        "clinician, about other ways to train."
    ),
    "held": "Your coach has put training on hold. You'll hear here when it goes on.",
    "do_not_start": (
        "Going by your answers, bands are not for you now. Your coach has them and will write; your own clinician "
        "knows other ways to train."
    ),
    "clearance_over": "Your clearance has run out. Your coach will look at it; no bands until then.",
    "limb_closed": "Your coach closed a limb that this session would put a band on. Write 'start' for what is left.",
    "open_alert": "Your coach first needs to look at what you told me. No bands until then.",
    "no_second_contact": "Your coach still has to say who else gets an alarm. No bands until then.",
    "paused": "You have a pause. Training goes on when it is over, or when your coach says so.",
    "no_plan": "There is no plan for you yet. Your coach will send one.",
    "plan_rests": "Your plan puts bands where they may not go now, so it rests. Your coach will send another one.",
}
BARRED_NOW = {
    "limb_closed": "Bands off now, please: your coach closed that limb for bands. No harm done; we stop here.",
    "paused": "Training is paused now. If bands are on, take them off.",
    "no_second_contact": "Training waits for your coach. If bands are on, take them off now.",
    "no_consent": "If bands are on, take them off now.",
    "not_screened": "Training is on hold. If bands are on, take them off now.",
    "not_cleared": "Training is on hold. If bands are on, take them off now.",
    "declined": "Your coach has ended the training with bands. If bands are on, take them off now.",
    "held": "Training is on hold. If bands are on, take them off now.",
    "do_not_start": "Training is on hold. If bands are on, take them off now.",
    "clearance_over": "Your clearance has run out. If bands are on, take them off now.",
    "open_alert": "If bands are on, take them off now. We go on when your coach has looked at it.",
}
TOO_SOON = {
    Limit.HOURS_APART: "The same limbs trained less than {apart} hours ago. Better wait, unless your coach said otherwise.",
    Limit.SESSIONS_A_WEEK: "That would be more than {most} times in a week. Better wait, unless your coach said otherwise.",
    Limit.WALKS_A_DAY: "You walked with bands today already. Once a day is enough, unless your coach said otherwise.",
}
ASK_AGAIN = (
    "If that has passed, I can ask you the health questions once more; your coach looks at the new answers."
)
ASK_AGAIN_LABEL = "Ask me again"
CLIENT_MENU = "What would you like?"
CLIENT_MENU_CHOICES = (
    ("Start a session", "menu:start"),
    ("My plan", "menu:plan"),
    ("Write to my coach", "menu:coach"),
)
SEND_IT = "Shall I send that to {coach}?"
WHERE_IS = (
    "I don't know what time it is in {place}. Which bigger city keeps the same? Like: I am in Lisbon. Or shall I send that to "
    "{coach}?"
)
SEND_KEPT = 'In the session you wrote: "{text}". Shall I send that to {coach}?'
SENT_ALREADY = "That one is sent already."
SEND_IT_LABEL = "Send it"
CLIENT_HELP = (
    "In an emergency call {number}.\n"
    "Something wrong? Bands off, and say what it is.\n\n"
    "Answer with the buttons, or type. You can type:\n"
    "- stop: ends a session at any time, bands off first\n"
    "- coach, and what you want to say: goes to your coach\n"
    "- start: a session\n"
    "- back: the last question again\n"
    "- move thursday to friday: changes your days\n"
    "- plan, calendar, report, bands, settings\n"
    "- card: for emergencies\n"
    "- sound: a beat to train by\n"
    "- log: what your coach did\n"
    "- my data: everything kept about you\n"
    "- delete me: erases it"
)
COACH_NAME = "Coach"  # until the coach has written: then their own first name
COACH_MENU = "What would you like?"
COACH_WENT_NOWHERE = (
    "That went nowhere: whom is it for? 'to Name: your words' sends it; after an alert 'call noted: your words' keeps it "
    "in that client's log."
)
COACH_MENU_CHOICES = (
    ("Invite a client", "menu:invite"),
    ("My clients", "menu:clients"),
    ("This week", "menu:digest"),
    (exporting.MENU, "menu:export"),
)
COACH_HELP = (
    "You can type:\n"
    "- a name, or a part of it: that client's card\n"
    "- clients: all of them, who needs you first\n"
    "- alerts: what is open, with its buttons\n"
    "- to Name: your words\n"
    "- stop Name: ends a session under way, bands off first\n"
    "- Name: move thursday to friday\n"
    "- report Name: a page about them\n"
    "- week: the week in numbers\n"
    "- invite: an invitation for a new client\n"
    "- stand-in: hands your clients to another coach for dates\n"
    "- export: the records of all, as tables for a spreadsheet\n"
    "- settings: your own"
)
NO_CLIENTS = "No clients yet. 'invite' makes an invitation."
# The client reads it as it is, forwarded by the coach: "me" would be the coach.
INVITATION = "For {name}: forward this.\n{link}\nOr: open the chat with {chat} and type {code}. It works once, within 72 hours."
THIS_BOT = "this bot"
SENT_TO_COACH = "Sent to {coach}."
TELL_IN_SESSION = "Begin the line with 'coach' and write on: it goes out at once, and we go on here."
# Questions of the menu that would take a session's next count for their answer, and what to type for them.
AFTER_SESSION = {
    "settings": "settings",
    "details": "my details",
    "travelling": "travelling",
    "bands": "bands",
    "screening": "menu",
}
LATER_THAT = "Let's finish the session first. Then write '{typed}' again."
NO_COACH = "You have no coach here just now, so I can't pass that on. Something wrong? Call {number}."
STILL_OPEN = (
    "{told}\n\nYour coach was told on {time}{taken}. No training until they have looked. Worse, or something new? Type it "
    "here, or call {number}."
)
NOT_TAKEN = ""
TAKEN_BY = ", and {coach} is on it"
EMERGENCY_NUMBERS = frozenset(
    {"112", "911", "999", "000", "111", "110", "119", "995", "15", "144", "118", "061"}
)
CALL_YOURSELF = (
    "Yes: call {number} now, on the phone. I can't call for you, and nobody is watching this chat. Unlock the door, sit "
    "or lie down, get somebody to you."
)
NO_THANKS_NEEDED = "You're welcome."
THANKS = frozenset(
    "thanks thank thx thnx ty tysm cheers ta danke gracias merci grazie obrigado obrigada ačiū aciu dziękuję dziekuje "
    "спасибо tack dank 🙏 ❤".split()
)
# What may stand around a word of thanks.
BESIDE_THANKS = frozenset(
    "you u so very much a lot many kindly dear love darling mate friend buddy sir madam coach doc ok okay great good all "
    "for that this the your help everything reminder reminding asking again always really truly my oh ah well schön schon "
    "sehr vielen mille beaucoup muito muchas tante labai bardzo большое bless god".split()
)
LAUGHS = frozenset("haha hahaha lol 😀 😂 🙂 😊".split())  # answered without a hello
PARTINGS = frozenset({"bye", "goodbye"})
SALUTES = LAUGHS | PARTINGS | frozenset("hi hello hey heya hiya 👋 ☀".split())
HOW_ARE_YOU = frozenset({"how", "are", "you"})
DAYTIMES = frozenset("morning evening afternoon night".split())  # a greeting only together with "good"
BESIDE_GREETINGS = frozenset(
    "good day to you and coach there dear how are u today lovely nice beautiful weather what a it is its have see ya".split()
)
GREETED = "{hello}The question above is still open; answer when you like."
GREETED_BANDED = "{hello}Your bands are on, so the question above first, please."
GREETED_RESTING = "{hello}I call you when it goes on."


def hello(said: Set[str]) -> str:
    """A greeting back, in the same words for the time of day; nothing for a laugh."""
    daytime = next(iter(sorted(said & DAYTIMES)), "")
    if daytime:
        return f"Good {daytime}. "
    if said & PARTINGS:
        return "Bye. "
    return "" if said <= LAUGHS else "Hello. "


IDLE_MEDIA = {
    "photo": "I can't look at pictures. Tell me in words what it shows; if it is about a sign on your body, say which.",
    "sticker": "Nice one. Words I can read; 'menu' shows what I can do.",
    "voice": "I can't listen; tap or type. Something wrong?",
    "video": "I can't watch videos. Tell me in words what it shows.",
    "file": "I can't open files. Type it, please.",
    "other": "I can't read that one. Type it, please.",
}
FROM_CLIENT = "{name}: {text}"
FROM_COACH = "From your coach: {text}"
ONE_AT_A_TIME = "Not sent: one client at a time, please. Like: 'to Nora: your words'."
SEND_WORDS = 'Shall I send "{text}" to {name}?'
SENT_TO = "Sent to {name}."
NOT_SENT = (
    "Not sent: I don't find one client by that name. Write: 'to Nora: your words'. 'clients' lists them all."
)
NO_SUCH_CLIENT = "I don't find one client by that name."
TO_WAITS = "{name} is in a session; it goes out when the bands are off."
TO_SLEEPS = "It is quiet hours for {name}; it goes out at {until} there."
COACH_SLEEPS = (
    "Sent to {coach}, who gets it when their quiet hours are over. If something feels wrong, say so here, for example "
    "'numb' or 'pain': that reaches them at once. In an emergency call {number}."
)
CHANGED_SET = "Set {n} is {reps} now."
FIXED_SET = "{name}, set {n}{side}: {reps} now, not {was}."
COUNTED_SET = "{name}, set {n}{side}: {reps}, noted."
SAME_SET = "{name}, set {n}{side} is {reps} already."
NEXT_SAME = "The next load stays as it was."
LATE_COUNT = "{reps} came before I asked this. Is it a set's count? Tap, else just go on."
WHICH_UNCOUNTED = "{reps}: of which set? Tap, else just go on."
LATE_LABEL = "{name}: set {n} is {reps}"
WHICH_MOVEMENT = "Of which movement?"
MOVEMENT_SET = "{name}: set {n}, {was}"
NO_SUCH_SET = "The last session has no set {n} on record."
BOTH_SIDES = "That one was done one side at a time. Say which, like: set {n} 28 left, or 28 left 31 right."
STOP_TAPPED = "Stop (button)"  # as the coach reads it; the stop words read it, too
TIME_UP = (
    "{minutes} minutes: bands off now, please. Tap when they are off.",
    "Bands still on? Off now, please, and tap.",
    "Take the bands off now. I'm telling your coach.",
    "Are the bands off? If not: off now. Tap when they are. I go on telling your coach until then.",
)
TIME_UP_AWAY = "I was away. If bands are still on, take them off now, and tap."
TIME_UP_LABEL = "Bands are off"
ON_MEANWHILE = "Bands off first, please, and tap. They go on only when I ask for them; the question above comes after that."
ON_UNASKED = "Bands off first, please, and tap. Then write 'start': I ask how you are, and we check them together before any rep."
NEVER_ON_LABEL = "They were never on"
TIME_UP_THANKS = "Good. Bands are off."
BANDS_SILENT = 'no answer to "bands off now"'
ALONE = (
    "You are the only one who gets alerts. Better: have a second coach added by whoever runs this. "
    "Until then nobody trains, unless you say so here."
)
ALONE_LABEL = "I am alone"
ALONE_NOTED = "Noted: alerts reach you only. Keep your phone near."


CLEAR_ONE = "Clear: {cause}"
# "hold ruta": the first word typed, and the button of the card that it stands for.
ABOUT_TYPED = {
    "hold": "hold",
    "pause": "pause",
    "resume": "resume",
    "message": "message",
    "write": "message",
    "tell": "message",
    "log": "log",
    "change": "change",
    "plan": "the_plan",
    "more": "more",
    "report": "report",
    "bands": "kit",
    "film": "ask_clip",
    "clip": "ask_clip",
    "review": "review",
    "emergency": "emergency",
    "card": "client",
    "clearance": "clearing",
}
IS_ON_HOLD = "on hold."
LOOK_AT_CLEARANCE = "Look at clearance"
CLEARANCE = "Clearance"
NEW_PLAN = "New plan"
START = "Start a session"
NOT_FINISHED = "{name} has not finished the questions yet."
UNREACHABLE = "{name} can't be reached by chat any more (blocked or left)."
ON_HOLD = "Your coach has put training on hold. You'll hear more from them."
CLEARED = "You're cleared for: {regions}. Your coach sends your plan next."
DECLINED = (
    "Your coach decided that bands are not for you now. Ask them, or your own clinician, about what is."
)
HELD = "Training is on hold for now. Your coach will write."
HELD_UNTIL = "Training is on hold. On {day} your coach looks again, and writes to you."
HOLD_OVER = "{name} was on hold until today. What now?"
FIRST_THIS = "Before the next session I need this one answer. Then write 'start' again."
PLAN_FOR_YOU = "Your plan: {plan}"
PLAN_INSTEAD = "This plan holds now, not the one you got before: {plan}"
PLAN_FROM_NEXT = "From your next session on: {plan}"
PLAN_NO_DAYS = "No days are set yet; your coach sets them, and until then you choose."
PLAN_NEXT = "Next time: {when}. I'll remind you. Or tap when you want to begin."
CLIENT_LINE = "{name}: {state}"
AWAY_TOO_LONG = "I was away for {hours} hours. If I owed you an answer, please write it again."

# Whole labels, typed: what each means, by role.
TYPED: dict[str, dict[str, str]] = {
    "client": {label.casefold(): value for label, value in CLIENT_MENU_CHOICES},
    "coach": {label.casefold(): value for label, value in (*COACH_MENU_CHOICES, (ALONE_LABEL, "menu:alone"))}
    | {"i'm alone": "menu:alone", "im alone": "menu:alone"}
    | dict.fromkeys(("i am back", "i'm back", "im back", "back again", "i am back again"), "menu:i_am_back"),
}
IN_SESSION = "You are in a session already. We go on where we were."
IN_SESSION_BANDED = "You are in a session, and your bands may be on. Take them off if anything feels wrong. We go on where we were."
RESTARTED = "I was away for a moment. We go on where we were."
RESTARTED_BANDED = "I was away for a moment. If your bands are on and anything feels wrong, take them off. We go on where we were."
