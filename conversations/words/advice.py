"""One plain sentence for each reason the load model can give, and the questions that tell readings apart."""

from core.progression import Because, Caution, Question, Reason
from core.resistance import shown
from core.walking import WalkReason


def sentence(because: Because) -> str:
    """Why this load, in one line for client and coach."""
    template = CAUTIONS[because.caution] if because.caution is not None else REASONS[because.reason]
    return template.format(
        was=shown(because.was) if because.was is not None else "",
        use=shown(because.use) if because.use is not None else "",
        low=because.low,
        high=because.high,
        last=because.last_reps,
        expected=because.expected,
        days=because.days,
    )


REASONS = {
    Reason.START_FROM_MAX: "We begin near 30% of your best single lift; {use} comes closest.",
    Reason.START_AS_PLANNED: "{use} is where your coach wants you to begin.",
    Reason.START_LIGHTEST: "Your strength here is not known yet, so begin with the lightest: {use}.",
    Reason.SECOND_GENTLE: "Your second time stays gentle: {use}, and stop with reps left.",
    Reason.TOO_MANY: "{last} reps is more than this load should allow; {use} should bring about {expected}.",
    Reason.TOO_FEW: "{last} reps is short of {low}-{high}; {use} should bring about {expected}.",
    Reason.CLIMBING: "Your reps are climbing, so up a little: {use} should bring about {expected}.",
    Reason.SLIDING: "Your reps have been sliding, so down a little: {use} should bring about {expected}.",
    Reason.IN_RANGE: "{use} fits: expect about {expected} in set 1, inside {low}-{high}.",
    Reason.HIGH_ONCE: "{last} reps is a lot, but the next step may be too much: {use} once more, about {expected} in set 1.",
    Reason.LOW_ONCE: "{last} reps is short of {low}-{high}, but one day says little: {use} once more, about {expected}.",
    Reason.BEST_REACHABLE: "Of what you have, {use} comes closest: expect about {expected} in set 1.",
    Reason.STEP_TOO_LARGE: "The next step up is too big: stay with {use} and slow the reps, 2 up and 2 down.",
    Reason.HALF_OF_MAX: "{use} is the most we use at half of your best single lift; time to test that again.",
    Reason.TOP_OF_EQUIPMENT: "{use} is the most you have; slow the reps, 2 up and 2 down.",
    Reason.BOTTOM_OF_EQUIPMENT: "{use} is the least you have; your coach will look at an easier variation.",
    Reason.ALL_TWICE: "All 75 clean twice in a row with reps to spare, so up by the smallest step: {use}.",
    Reason.ALL_ONCE: "Good work; once more all 75 clean with reps to spare at {use}, and then we go up.",
    Reason.NO_SPARE: "All 75 clean. With 3 more in you after set 4, twice in a row, we go up; for now {use}.",
    Reason.NOT_ALL: "Stay with {use} until all 75 are clean.",
    Reason.CAUTION: "No raise today: {use}.",
}

CAUTIONS = {
    Caution.PAIN_HIGH: "The pain was too high to train on. Rest this one; your coach will look at it first.",
    Caution.PAIN_ABOVE_CEILING: "The pain was above your limit, so no more load: {use}. Stop if it hurts.",
    Caution.PAIN_RAISED: "The pain went up since the time before, so no more load for now: {use}.",
    Caution.PAIN_NOT_SETTLED: "The joint has not settled yet, so no more load for now: {use}.",
    Caution.STOPPED: "The last session stopped early, so take it easier this time: {use}.",
    Caution.ILL: "After being ill, come back easy: {use}.",
    Caution.LAYOFF: "{days} days off: come back easy with {use}.",
    Caution.MISSED_WEEK: "{days} days since the last time: no raise today, {use}.",
    Caution.CHECK_NOT_RIGHT: "The band check was not right, or it was another band, so the load does not go up: {use}.",
    Caution.BANDS_LOOSE: "The bands were loose last time, so those reps don't raise the load: {use}.",
    Caution.BANDS_TIGHT: "The bands were tight last time; get the fit right before the load changes: {use}.",
    Caution.ROUGH_COUNT: "Last time's count was a rough one, so the load stays put: {use}.",
    Caution.TRAINED_ELSEWHERE: "You came to it tired, so last time moves no load: {use}.",
    Caution.REPS_FAST: "The reps ran fast last time; 2 up, 2 down before the load goes up: {use}.",
}

QUESTIONS = {
    Question.HOW_TIGHT_AT_THE_END: "How tight were the bands at the end, 0 to 10?",
    Question.COULD_DO_MORE: "Could you have done more clean reps in set 1? How many?",
    Question.HOW_LONG_WAS_THE_REST: "How long was the rest before set 2, in seconds?",
    Question.WERE_ALL_CLEAN: "Were all those reps clean, top to bottom?",
    Question.HOW_WAS_THE_DAY: "Anything heavy the day before, or a short night?",
}

WALKS = {
    "not_all": "Walk the whole {use} once before it gets longer.",
    WalkReason.GENTLE_DONE: "A gentle start, done. Keep the pace easy: {use}.",
    WalkReason.MORE_MINUTES: "That went well, so a minute more: {use}.",
    WalkReason.SECOND_BOUT: "Ten minutes stand, so a second round after five minutes without bands: {use}.",
    WalkReason.FASTER: "Four weeks at this pace, so half a kilometre an hour faster: {use}.",
    WalkReason.HOLD_WEEKS: "Stay at {use}; the pace goes up every four weeks.",
    WalkReason.HOLD_HARD: "That was hard enough, so the same again: {use}.",
    WalkReason.HOLD_CEILING: "Stay at {use}: faster would be more than half of what you can.",
    WalkReason.HOLD_TOP: "{use} is as fast as walking with bands goes here.",
}
