"""Days and times change: what was understood, limits, and the line for the other side."""

from core.calendar.limits import Limit

WHAT = "What shall change? Like: move thursday to friday, skip this week, or mon and thu 7pm from 3 jan."
NOTHING_THEN = "Nothing is planned then. {next}"
NEXT = "Next: {when}."
NO_NEXT = "No session is planned."
HAS_ONE = "There is a session on {day} already. Move that one, or name another day."
ORDER = "How do you write dates? 3/4 is:"
ORDERS = (("3 April", "dd/mm"), ("4 March", "mm/dd"))
WHICH = "Which one do you mean?\n{readings}"
NEITHER = "Something else"
RIGHT = "{told}. Right?"
YES = "Yes"
NO = "No, something else"
LEAVE = "Leave it as it is"
LEAVE_TYPED = ("leave it", "no leave it", "no, leave it", "never mind", "nevermind", "forget it", "as it was")
NO_MORE_TYPED = ("no", "nope", "n", "nothing", "no thanks", "no thank you")  # where no day could be read
AFTER_SESSION = "Kept. After the session I ask you about your days. Now we go on."
LEFT = "All right, everything stays as it was."
DONE = "Good, noted."
DAYS_MEANWHILE = "The days were changed while I asked, so once more, as they are now."

MOVES = "{was} moves to {to}"
STAYS = "The session is on {to} already; nothing changes"
FREE = "No session on {days}"
FREE_FROM_TO = "No sessions from {first} to {last} ({count} of them: {days})"
MORE = "One more session: {to}"
WEEKLY = "{rhythm}; the first is {first}"
UNTIL_THEN = "; until then it stays as it is"
TRIP = "{there} from {first} to {last}, then {home} again; sessions keep their hour on the clock there"
FROM_NOW_ON = "{there} from now on; sessions keep their hour on the clock there"
# Where somebody is, and no clock changes by it.
ON_THAT_CLOCK = "That is {here}, as now: nothing changes, the days stay as they are"
SAME_CLOCK = "{there} and {here} show the same then: nothing changes, the days stay as they are"
NO_EQUIPMENT = "{told}. No equipment there? The travel plan goes without."
NOTHING_CHANGES = "{told}."

# By core.calendar.limits.Limit value.
LIMITS = {
    Limit.SESSIONS_A_WEEK: "That makes more than {most} sessions in seven days for the same limbs.",
    Limit.HOURS_APART: "That leaves less than {apart} hours between two sessions of the same limbs.",
    Limit.WALKS_A_DAY: "That makes more than one walk with bands on a day.",
}
ADVISE_OTHER = "{told}. {limit} Muscles need the time between. Another time, or shall I ask your coach?"
OTHER_TIME = "Another time"
ASK_COACH = "Ask my coach"
ASKED_COACH = "I've asked your coach. Until they answer, everything stays as it was."
COACH_MAY = "{told}. {limit} All the same?"
COACH_WISH = "{name} would like: {told}. {limit} All the same?"
ALL_THE_SAME = "Yes, all the same"
NOTE = "One line on why, for the record."
DECLINED = "Your coach would rather keep the usual time between sessions. Your days stay as they were."

CLIENT_CHANGED = "{name} changed days: {told}."
COACH_CHANGED = "Your coach changed your days: {told}."
FOR_WHOM = "For whom? Like: {name}: {text}"
UNREAD = 'I couldn\'t read a day or time for {name} there. Shall I send it to {name} as your words? "{text}"'
ON_THE_ROAD = "I go by {there} now. Next: {when}."
