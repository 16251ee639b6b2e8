"""The coach's side: the list of clients, the card, and what can be done from it."""

from collections.abc import Sequence

from conversations.protocol import Choice
from conversations.words.common import counted
from conversations.words.movements import NAMES
from conversations.words.report import DOWN, SURE, UNSURE, UP
from core.outcomes import Trend, Week
from core.plans import PAIN_CEILING, Plan, Scheme

SINCE = "{name} (since {day})"

# --- the list ---
# By core.digest.Need value.
REASONS = {
    "urgent": "an urgent alert is open",
    "open_alert": "an alert is open",
    "held": "on hold",
    "clearance": "waits for your clearance",
    "no_plan": "cleared, no plan yet",
    "pain": f"pain above {PAIN_CEILING}",
    "loads_off": "set 1 mostly out of range",
    "load_asked": "a load waits for your tap",
    "missed": "missed sessions",
    "quiet": "quiet for a week",
    "alerted": "had an alert this week",
    "screening_due": "health questions are due again",
    "review_due": "plan is due for a review",
}


def list_head(clients: int, needing: int) -> str:
    """What stands above the list of clients."""
    if needing == 0:
        return f"{counted(clients, 'client')}, nobody needs you."
    return f"{counted(clients, 'client')}, {needing} {'needs' if needing == 1 else 'need'} you."


LIST_PAGE = "Page {page} of {pages}."
LINE = "{name}: {state}"
PAUSED = "paused"
FINISHED = "plan finished"
DECLINED_STATE = "declined"
NOT_YET = "answering the first questions"
NEXT = "next {when}"
NOTHING_PLANNED = "nothing planned"
DONE = "{done} done"
DONE_OF = "{done} of {planned} done"
MORE_CLIENTS = "Next {number}"
EARLIER_CLIENTS = "Back"
WHICH = "Which one?"
WHICH_OF_MANY = "{count} fit, these are the first {shown}. Which one? Or a longer part of the name."
GONE = "That client is not here any more."
NOBODY = "I don't find a client by '{typed}'."
LONGEST_LINE = 60  # characters; about two lines on a phone
LONGEST_NAME = 24  # characters of a name on a button or line, so that what it is about is read too
LONGEST_SHOWN = 46  # characters of a name, with what tells two of one name apart
AND_MORE = " and {number} more"

# --- the card ---
CLEARED_FOR = "Cleared: {regions}{until}{closed}."
NOT_CLEARED = "Not cleared{closed}."
DECIDED = "{what} by {who}, {day}{on}{note}."
DECIDED_WHAT = {"cleared": "Cleared", "held": "Put on hold", "declined": "Declined"}
DECIDED_ON = ", on: {answers}"
DECIDED_NOTE = ". Note: {note}"
ON_HOLD = "On hold{until}{closed}."
DECLINED = "Declined{closed}."
UNTIL = " until {day}"
NO_FAILURE = "; no sets to failure"
CLOSED = "; closed: {limbs}"
GOAL = "Goal: {goal}."
PLAN = "Plan since {day}: {plan}"
NO_PLAN = "No plan."
RESTS = "Rests, closed limb: {movements}."
PLAN_FINISHED = "Plan finished {day}."
NEXT_AT = "Next: {when}."
PAUSED_UNTIL = "Paused{since} until {day}{why}."
FROM = " from {day}"
LAST_THREE = "Last sessions:"
NO_SESSION = "No session yet."
NO_SETS = "no sets"
STOPPED = "stopped"
UNDER_WAY = "under way"
PAIN = "pain {score}"
EFFORT = "effort {score}"
TRAINED_BEFORE = "trained hard elsewhere before"
WALKED = "walk {minutes:.0f} min"
ALERTS = "Open: {causes}."
WEEK_LOAD = "Last 7 days: weekly load {load:.0f} (effort x minutes){spread}."
SPREAD = ", monotony {monotony:.1f}, load x monotony {product:.0f}{alike}"
ALIKE = "; the days are much alike"
ALL_ALIKE = "; every day was the same"
TREND = "{movement} at {load}: set 1 {way} by {percent:.0f} %, {sure}."
AWAY = "{coach} is away; you stand in."
CLEARANCE = "Clearance"
NEW_PLAN = "New plan"
PAUSE = "Pause"
RESUME = "End the pause"
MESSAGE = "Message"
LOG = "Log"
THE_PLAN = "The plan"
MORE = "More"
SHOW_ALERT = "Alert: {cause}"
BACK_TO_CARD = "Back to {name}"
WHAT_ELSE = "{name}: what else?"
ABOUT_THE_PLAN = "{name}'s plan: what shall it be?"
LOG_HEAD = "What was done about {name}, newest first:"
LOG_LINE = "{when} {who}: {what}"
LOG_EMPTY = "Nothing yet."
OWN_LOG_HEAD = "What your coach did about you, newest first:"
OWN_LOG_MORE = "All of it, from the first day, stands in what 'my data' sends you."
# By stored names in core.facts.CoachDid.action; any other is shown as it is stored.
STOP_SESSION = "Stop {name}'s session"
STOP_WHOM = "Whose session?"
NOTHING_TO_STOP = "{name} is in no session now, so there is nothing to stop."
STOPPED_SESSION = "{name} is told: bands off, the session is over. If no word comes that they are off, you hear in 2 minutes."
CLIENT_STOPPED = "Your coach ends this session. Bands off now, both, if they are on."
DID = {
    "stopped_session": "stopped the session",
    "wrote": "wrote",
    "gave_plan": "gave a plan",
    "changed_plan": "changed the plan",
    "paused": "paused",
    "resumed": "ended the pause",
    "finished": "finished the plan",
    "handed_over": "handed over",
    "renamed": "renamed",
    "pulse_ceiling": "set the pulse to walk below",
    "pressure_estimate": "estimated the cuff pressure",
    "limits": "how often to train",
    "unseen_back": "wants the pale spot seen again",
    "reviewed": "reviewed the plan",
    "travel": "travel plan",
    "girth": "noted a girth",
    "gave_cue": "gave a cue",
    "asked_clip": "asked for a film",
    "held_until": "put on hold until",
    "changed_days": "changed the days",
    "overrode_limit": "changed the days past the usual limit",
    "decided_cleared": "cleared",
    "decided_legs_only": "cleared the legs only",
    "decided_arms_only": "cleared the arms only",
    "decided_held": "put on hold",
    "decided_held_until": "put on hold",
    "asked_again": "had the health questions asked again",
    "decided_declined": "decided against bands",
    "exported": "asked for a file of the records",
    "load_used": "used the new load",
    "load_kept": "kept the load",
    "loads_ask": "next loads: asks first",
    "loads_auto": "next loads: by itself",
    "alert_take": "took an alert",
    "alert_call": "noted a call",
    "call_note": "said on the phone",
    "alert_settle": "cleared to train after an alert",
    "alert_hold": "put on hold after an alert",
}

# --- pause, resume, finish ---
PAUSE_UNTIL = "Pause {name} until when? Like: two weeks, or until 3 January."
PAUSE_LENGTHS = (("One week", "one week"), ("Two weeks", "two weeks"), ("Four weeks", "four weeks"))
DAYS_UNCLEAR = "Which days? Like: two weeks, until 3 January, or from 3 to 10 January."
PAUSE_WHY = "Why? One line; {name} reads it."
PAUSE_REASONS = (
    ("Holiday", "a holiday"),
    ("Ill", "get well first"),
    ("Let it settle", "let it settle"),
    ("No reason", "-"),
)
PAUSE_SET = "{name} pauses. {days}. No reminders in that time. It ends by itself, or from the card."
PAUSE_FROM = " from {day}"
BECAUSE = " Your coach says: {why}."
CLIENT_PAUSED = (
    "You have a pause{since} until {day}.{because} No sessions and no reminders until then; I'll write when it goes on. "
    "If something hurts or worries you, write at any time."
)
CLIENT_GOES_ON = "Your pause is over. Welcome back; take the first session easy."
NO_PAUSE = "{name} has no pause."
RESUMED = "{name} goes on. They have been told, with the plan."
PAUSE_IS_OVER = "{name}'s pause is over; they have been told."
FINISH = "Finish the plan"
FINISH_SURE = "Finish {name}'s plan? They get a recap, and reminders end."
FINISH_YES = "Finish it"
FINISHED_UNUSED = "{name}'s plan ends before its first whole session; they know."
FINISHED_COACH = "{name}'s plan is finished; they have their recap. {review}"
REVIEW_NOW = "Time for the review: what was reached, and whether to go back to heavier loads."
REVIEW_EARLY = (
    "A review is due 6 to 8 weeks after the start, with the question of heavier loads; you can have it now."
)
SAME_PLAN_AGAIN = "Same plan again"
AGAIN_SENT = "{name} has the same plan again, at the loads reached."
NOTHING_TO_FINISH = "{name} has no plan to finish."
RECAP_HEAD = "This plan is done: {sessions}."
RECAP_LOAD = "{movement}: from {first} to {last}."
RECAP_UNUSED = "Your plan ends here, before its first whole session. Your coach says what comes next. No bands until then."
RECAP_END = "Well done. Your coach looks at it with you and says what comes next. No bands until then."

# --- next loads ---
NEXT_LOADS_ASK = "Next loads: ask me"
NEXT_LOADS_AUTO = "Next loads: by itself"
LOADS_ASK = "From now on I ask you before {name}'s load goes up. A lighter one holds at once."
LOADS_AUTO = "From now on {name}'s loads move by themselves."
LOAD_WAITS = "{name}: {movement} {was} → {use}? {because}"
LOAD_LOWERED = "{name}: {movement} {was} → {use} from now on. {because}"
USE = "Use {use}"
KEEP = "Keep {was}"
LOAD_OLD = "That one is old; {name}'s card shows what holds now."
LOAD_NOTED = "Noted: {name}, {movement} {load}."
LOAD_DECIDED = "Your coach has looked: {movement}, {load} next time."
COACH_DECIDES = "Your coach looks whether {use} is next."
COACH_CHOSE = "Your coach chose it."
COACH_KEEPS = "Your coach keeps it."
ASKED_LINE = "Waits for your tap: {movement} {was} → {use}."

# --- a new plan that another coach replaced ---
REPLACED = (
    "{by} has sent {name} another plan, in place of the one you sent on {when}. "
    "{by}'s holds now; nobody has trained by yours."
)
REPLACED_TOLD = (
    "It takes the place of the one {coach} sent on {when}. {coach} reads so, and may take it back."
)
TAKE_BACK = "Take mine back"
TAKEN_BACK = "{name} has your plan again."
TOOK_BACK = "taken back"
NOTHING_TO_TAKE_BACK = "{name} has that plan, or a later one of yours. The card shows what holds."

# --- own templates ---
SAVE_TEMPLATE = "Save as template"
TEMPLATE_NAME = "What shall this plan be called? It is offered first when you make a plan."
TEMPLATE_NAME_AGAIN = "A short name, please, like: knee after op."
TEMPLATE_OF_NOBODY = (
    "A name without {name}'s, please: a template stays when {name} is deleted. Like: knee after op."
)
TEMPLATE_SAVED = (
    "Saved as '{template}'. It is offered first when you make a plan; the loads are asked each time."
)
TEMPLATE_NO_CLIENT = "Whose plan? Open the client's card first, then: save as template and a name."
TEMPLATE_NO_PLAN = "{name} has no plan to save."

# --- another name ---
RENAME = "Rename"
RENAME_TO = "What shall {name} be called? They see it too. Like: {name} K."
RENAME_AGAIN = "A name, please, of at most 40 letters."
RENAMED = "{name} it is."

# --- a message ---
WRITE_TO_THEM = "It goes out word for word, so write it as {name} should read it, please. 'cancel' leaves it."
WRITE = "What shall I tell {name}? It goes out as your words."


def plan_short(plan: Plan) -> str:
    """The plan's movements on one line: "Goblet squat 12 kg, Walk 10 min"."""
    parts = []
    for one in plan.exercises:
        what = f"{one.walk_min} min" if one.scheme is Scheme.WALK else one.doing
        parts.append(f"{movement(one.movement)} {what}".strip())
    return ", ".join(parts)


def week_load(week: Week) -> str:
    """The load of seven days and how much alike the days were."""
    if week.monotony is None or week.load_x_monotony is None:
        spread = ALL_ALIKE
    else:
        alike = ALIKE if week.monotonous else ""
        spread = SPREAD.format(monotony=week.monotony, product=week.load_x_monotony, alike=alike)
    return WEEK_LOAD.format(load=week.load, spread=spread)


def trend(name: str, found: Trend) -> str:
    """How reps at equal load have moved; "": not at all."""
    if round(found.percent) == 0:
        return ""
    way, sure = (UP if found.percent > 0 else DOWN), (SURE if found.sure else UNSURE)
    percent = abs(found.percent)
    return TREND.format(movement=movement(name), load=found.load, way=way, percent=percent, sure=sure)


def cut(text: str, longest: int = LONGEST_LINE) -> str:
    """One line of at most so many characters, cut between words; a word or number half said is another one."""
    text = " ".join(text.split())
    if len(text) <= longest:
        return text
    whole, _, _ = text[:longest].rpartition(" ")
    kept = whole if len(whole) > longest // 2 else text[: longest - 1]
    return f"{kept.rstrip(' ,;:.')}…"


def whole_parts(name: str, parts: Sequence[str], longest: int = LONGEST_LINE) -> str:
    """ "Ruta: an alert is open, on hold and 2 more": as many parts as fit, at least one, none of them cut."""
    for number in range(len(parts), 0, -1):
        left = AND_MORE.format(number=len(parts) - number) if number < len(parts) else ""
        line = LINE.format(name=cut(name, LONGEST_SHOWN), state=", ".join(parts[:number]) + left)
        if len(line) <= longest or number == 1:
            return line
    return name


def movement(name: str) -> str:
    """A movement by its stored name, as people call it."""
    return NAMES.get(name, name.replace("_", " "))


def to_card(name: str, client: int) -> Choice:
    """The button that opens a client's card again."""
    return Choice(BACK_TO_CARD.format(name=name), f"menu:client:{client}")
