"""The report on one client, for the client or a referring clinician: plain words, what is sure and what is not."""

from datetime import date

from conversations.words.common import counted
from core.outcomes import Change
from core.report import Movement, Report
from core.resistance import TEMPO_MARK

TITLE = "Training with bands: {name}"
SUBTITLE = "{first} to {last}   ·   plan: {plan}   ·   goal: {goal}   ·   coach: {coach}"
CAUTION = (
    "A training record, not a medical document: it diagnoses nothing and advises no treatment. "
    "What the client's own clinician says comes first."
)
MOST_MOVEMENTS = 4  # with a sentence and a chart of their own; a page holds no more
IN_SHORT = "In short"
NOTES = "Notes"
EARLIER_NOTES = "{count} earlier notes are left out here."
NO_NOTES = "None."
SOURCES_HEAD = "Where limits and ranges come from"
SOURCES = (
    "Range wanted in set 1 of open sets (25-40), tightness 6-7 of 10, refill within about 3 s: common practice, no source; "
    "a band pressing on the artery lengthened refill beyond 2.88 s in Shinozaki et al. 2023 (Prehosp Disaster Med). "
    "Fixed sets 30/15/15/15: Patterson et al. 2019 (Front Physiol 10:533). Expected range: this program's own model of "
    "the client's earlier sessions; four counts in five should fall in it. Pain counts as changed from 2 points or 30 %: "
    "Farrar et al. 2001 (Pain 94:149). A change of reps is clear beyond what days that differ by 12 % (own judgement, no "
    "source) give 19 times in 20. A girth counts as "
    "changed above 2.8 % (two measurements, 1 % error each, from memory). Effort 0-10: as the client rates it; effort x "
    "minutes: Foster et al. 2001 (JSCR 15:109); monotony: mean daily load over its standard deviation."
)

ATTENDANCE_TITLE = "Sessions a week"
DONE, PLANNED = "done", "planned"
PAIN_TITLE = "Pain, 0-10"
PAIN_PARTS = ("before", "after", "next morning")
NO_PAIN = "No pain rating yet."
NO_SESSIONS = "No session planned yet."
MOVEMENTS_TITLE = "Clean reps in set 1"
LEGEND = "shaded: range wanted   ·   grey bar: expected, 4 times in 5   ·   open circle: outside it (fixed sets: below)"
MORE_MOVEMENTS = "and {count} more: {names}"

CAME = "Came to {done} of {planned} planned sessions{stopped}."
TRAINED = "{sessions} done{stopped}; no fixed days."
STOPPED_ONE = ", one of them stopped early"
STOPPED = ", {count} of them stopped early"
LOADS = "{name}: {sessions}, {reps} reps, {loads}"
LOAD_SAME = "at {load}"
LOAD_MOVED = "{first} to {last}"
BODY_WEIGHT = "body weight"
AT_EQUAL = "; set 1 {way} by {percent:.0f} % at {load}, {sure}"
UNCHANGED = "; set 1 at {load} as before"
UP, DOWN = "up", "down"
SURE = "a clear change"
UNSURE = "not yet a clear change"
RANGES = "Set 1 fell within the range wanted {in_range} of {ranged} times"
FULL = "Fixed sets: set 1 was done in full {full} of {fixed} times."
EXPECTED = ", within the expected range {as_expected} of {expected} times"
WALKED = "Walks with bands: {walks}, {minutes:.0f} min in all."
PAIN_WAS = "Pain before sessions: {first:.1f} at first, {last:.1f} lately; {change}."
PAIN_CHANGE = {
    Change.UP: "more, by the published rule",
    Change.DOWN: "less, by the published rule",
    Change.NONE: "no change that counts by the published rule",
}
PAIN_NONE = "No pain in {sessions}; asked {when}."
# By the field of core.report.Pain.
PAIN_ASKED = {"before": "before", "after": "after", "morning": "in the days after"}
PAIN_HIGHEST = "Highest pain on record: {score} of 10."
EFFORT = "Effort after sessions: {effort:.1f} of 10 on average."
WEEK_LOAD = "Weekly load (effort x minutes): {load:.0f} in the last seven days{mean}{spread}."
MEAN_WEEK = ", {mean:.0f} a week on average"
SPREAD = "; monotony {monotony:.1f}, load x monotony {product:.0f}"
ALL_ALIKE = "; every day was the same"
CHECKS = (
    "Bands were checked {looks} times (each limb counts): {passed} fine, {loosened} loosened first, {stopped} taken off"
    "{unseen}{tightness}."
)
NO_PROOF = "A usual refill alone does not prove that a band sits right."
UNSEEN = ", {unseen} without a refill that can be seen"
TIGHTNESS = "; felt tightness {tightness:.1f} of 10"
NO_CHECKS = "No band check on record."
NO_GIRTH = "Girth: not measured."
GIRTH = "Girth, {limb}: {first:.1f} cm on {first_day}, {last:.1f} cm on {last_day}; {change}."
GIRTH_CHANGE = {
    Change.UP: "larger, beyond measuring error",
    Change.DOWN: "smaller, beyond measuring error",
    Change.NONE: "no change beyond measuring error",
}

FILE = "report-{name}.pdf"
CODE = "Client #{number}"  # where the name cannot be written
CODED = "{code} in the picture is {name}: I have no font for these letters."
CAPTION = "Report on {name}, {first} to {last}. A training record, not a medical document."
CAPTION_OWN = "Your report, {first} to {last}. A training record, not a medical document."
NOTHING_YET = "There is nothing to report on {name} yet."
NOTHING_YET_OWN = "There is nothing to report yet."
REPORT = "Report"
NOTE_CLEARED = "Cleared for {regions}{until}{note}"
NOTE_UNTIL = " until {day}"
NOTE_ALERT = "Alert: {cause}{settled}"
NOTE_SETTLED = " (settled)"
NOTE_PAUSE = "Pause until {day}{why}"
NOTE_LIMIT = "Usual limit set aside: {limit}. {note}"
LIMITS = {
    "sessions_a_week": "more than 3 sessions in seven days",
    "hours_apart": "less than 36 h between sessions",
    "walks_a_day": "more than one walk a day",
}


def in_short(made: Report) -> list[str]:
    """The sentences of the page, most important first."""
    lines = [_attendance(made), *(_movement(one) for one in made.movements[:MOST_MOVEMENTS])]
    lines += _ranges(made)
    if made.walks:
        lines.append(WALKED.format(walks=made.walks, minutes=made.walk_minutes))
    return [*lines, *_pain(made), *_effort(made), *_week_load(made), *_checks(made), *_girths(made)]


def _attendance(made: Report) -> str:
    stopped = {0: "", 1: STOPPED_ONE}.get(made.stopped, STOPPED.format(count=made.stopped))
    if made.planned:
        return CAME.format(done=made.done, planned=made.planned, stopped=stopped)
    return TRAINED.format(sessions=counted(made.sessions + made.stopped, "session"), stopped=stopped)


def _movement(one: Movement) -> str:
    first, last = _load(one.first_load), _load(one.last_load)
    loads = LOAD_SAME.format(load=first) if first == last else LOAD_MOVED.format(first=first, last=last)
    text = LOADS.format(name=one.name, sessions=counted(one.sessions, "session"), reps=one.reps, loads=loads)
    if one.percent is not None:
        text += _trend(_load(one.at_load), one.percent, one.sure)
    return f"{text}."


def _load(stored: str) -> str:
    """What was lifted: "12 kg"; of a rung its last part, since the first names the movement again."""
    variation = stored.removesuffix(f", {TEMPO_MARK}")
    return (variation.rpartition(", ")[2] or BODY_WEIGHT) + stored[len(variation) :]


def _trend(load: str, percent: float, sure: bool) -> str:
    if round(percent) == 0:
        return UNCHANGED.format(load=load)
    way = UP if percent > 0 else DOWN
    return AT_EQUAL.format(load=load, way=way, percent=abs(percent), sure=SURE if sure else UNSURE)


def _ranges(made: Report) -> list[str]:
    ranged = sum(one.ranged for one in made.movements)
    expected = sum(one.expected for one in made.movements)
    fixed = sum(one.fixed for one in made.movements)
    full = [FULL.format(full=sum(one.full for one in made.movements), fixed=fixed)] if fixed else []
    if not ranged:
        return full
    text = RANGES.format(in_range=sum(one.in_range for one in made.movements), ranged=ranged)
    if expected:
        known = sum(one.as_expected for one in made.movements)
        text += EXPECTED.format(as_expected=known, expected=expected)
    return [f"{text}.", *full]


def _no_pain(made: Report) -> str:
    """Only what was asked counts as "no pain"."""
    asked = [
        said for name, said in PAIN_ASKED.items() if any(getattr(day, name) is not None for day in made.pain)
    ]
    return PAIN_NONE.format(sessions=counted(len(made.pain), "session"), when=", ".join(asked))


def _pain(made: Report) -> list[str]:
    scores = [
        score for day in made.pain for score in (day.before, day.after, day.morning) if score is not None
    ]
    if not scores:
        return [NO_PAIN]
    if not any(scores):
        return [_no_pain(made)]
    lines = [PAIN_HIGHEST.format(score=max(scores))]
    trend = made.pain_trend
    if trend is not None:
        change = PAIN_CHANGE[trend.change]
        lines.insert(0, PAIN_WAS.format(first=trend.first, last=trend.last, change=change))
    return [" ".join(lines)]


def _effort(made: Report) -> list[str]:
    return [] if made.effort is None else [EFFORT.format(effort=made.effort)]


def _week_load(made: Report) -> list[str]:
    week = made.last_week
    if week is None:
        return []
    mean = "" if made.mean_week is None else MEAN_WEEK.format(mean=made.mean_week)
    if not week.load:
        spread = ""
    elif week.monotony is None:
        spread = ALL_ALIKE
    else:
        spread = SPREAD.format(monotony=week.monotony, product=week.load_x_monotony)
    return [WEEK_LOAD.format(load=week.load, mean=mean, spread=spread)]


def _checks(made: Report) -> list[str]:
    found = made.checks
    if not found.looks:
        return [NO_CHECKS]
    tight = "" if found.tightness is None else TIGHTNESS.format(tightness=found.tightness)
    line = CHECKS.format(
        looks=found.looks,
        passed=found.passed,
        loosened=found.loosened,
        stopped=found.stopped,
        unseen=UNSEEN.format(unseen=found.unseen) if found.unseen else "",
        tightness=tight,
    )
    return [line, NO_PROOF]


def _girths(made: Report) -> list[str]:
    lines = [
        GIRTH.format(
            limb=one.limb,
            first=one.first_cm,
            last=one.last_cm,
            first_day=day(one.first_day),
            last_day=day(one.last_day),
            change=GIRTH_CHANGE[one.change],
        )
        for one in made.girths
    ]
    return lines or [NO_GIRTH]


def day(iso: str) -> str:
    """ "5 January 2026"."""
    on = date.fromisoformat(iso)
    return f"{on.day} {on:%B %Y}"
