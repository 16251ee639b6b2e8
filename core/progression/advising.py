"""From a request to an advice: known client, cautions, choice by scheme, forecast, readings."""

from core.plans import FIXED_AIMS, OPEN_AIMS, Scheme
from core.progression.cautions import PAUSING, cautions, days_off
from core.progression.choosing import EXACT, Choice
from core.progression.client import Client, known, once
from core.progression.fixed_sets import fixed_chance, fixed_choice, fixed_expected, fixed_range
from core.progression.open_sets import open_chance, open_choice, open_expected, open_range
from core.progression.readings import readings, separating
from core.progression.records import Action, Advice, Because, Caution, Reading, Reason, Request


def advise(request: Request) -> Advice:
    """The load for the next session. Raises ValueError naming the field for input that cannot be right."""
    request = once(request)
    client = known(request)
    held = cautions(request)
    choice = _choice(request, client, held)
    expected, range_80, chance = _forecast(request, client, choice)
    read = _read(request, client)
    return Advice(
        use=client.places.names[choice.index],
        action=_action(client, choice, held),
        expected_reps=expected,
        first_set_80=range_80,
        chance_in_range=chance,
        because=_because(request, client, choice, held, expected[0]),
        readings=read,
        question=separating(read, client.last) if read else None,
        cautions=held,
    )


def _choice(request: Request, client: Client, held: tuple[Caution, ...]) -> Choice:
    if request.scheme is Scheme.FIXED:
        return fixed_choice(request, client, held)
    return open_choice(request, client, held)


def _forecast(
    request: Request, client: Client, choice: Choice
) -> tuple[tuple[int, ...], tuple[int, int], float]:
    at = choice.index
    if request.scheme is Scheme.FIXED:
        return fixed_expected(client, at), fixed_range(client, at), fixed_chance(client, at)
    return open_expected(client, at), open_range(client, at), open_chance(client, at)


def _read(request: Request, client: Client) -> tuple[Reading, ...]:
    """Fixed sets end at their number, so the pattern over sets says nothing there."""
    if not client.sessions or request.scheme is Scheme.FIXED:
        return ()
    return readings(client.last, client.expected_last)


def _action(client: Client, choice: Choice, held: tuple[Caution, ...]) -> Action:
    if choice.pause or PAUSING & set(held):
        return Action.PAUSE
    if not client.sessions:
        return Action.START
    move = client.places.x[choice.index] - client.places.place(client.last.used)
    if abs(move) < EXACT:
        return Action.HOLD
    return Action.RAISE if move > 0 else Action.LOWER


def _because(
    request: Request, client: Client, choice: Choice, held: tuple[Caution, ...], expected: int
) -> Because:
    aim = (FIXED_AIMS if request.scheme is Scheme.FIXED else OPEN_AIMS)[0]
    return Because(
        reason=choice.reason,
        caution=held[0] if held and choice.reason is Reason.CAUTION else None,
        was=client.last.used if client.sessions else None,
        use=client.places.names[choice.index],
        low=aim.low,
        high=aim.high,
        last_reps=client.last.reps[0] if client.sessions else None,
        expected=expected,
        days=days_off(request),
    )
