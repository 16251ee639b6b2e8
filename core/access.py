"""Who may do what: one table, asked before anything is done. What is not in it is refused."""

from enum import StrEnum


class Actor(StrEnum):
    """Who asks, seen from the client it is about."""

    STRANGER = "stranger"
    CLIENT = "client"  # about themselves
    COACH = "coach"  # about themselves
    OWN_COACH = "own_coach"
    STAND_IN = "stand_in"  # of the client's coach, for now
    OTHER_COACH = "other_coach"
    SECOND_CONTACT = "second_contact"


class Action(StrEnum):
    """What can be asked for."""

    REDEEM = "redeem"
    TALK = "talk"
    TRAIN = "train"
    INVITE = "invite"
    SEE_CLIENT = "see_client"
    CLEAR = "clear"
    PLAN = "plan"
    RELAY = "relay"
    TAKE_ALERT = "take_alert"
    DIGEST = "digest"
    HAND_OVER = "hand_over"
    MOVE_DAYS = "move_days"  # when sessions are, and on which clock
    COVER = "cover"  # name a stand-in
    EXPORT = "export"  # records as a file, of whomever SEE_CLIENT allows


# What a coach may do about themselves is nothing to do with somebody's client.
OWN_AFFAIRS = frozenset({Action.INVITE, Action.TALK, Action.DIGEST, Action.COVER, Action.EXPORT})
CLIENTS_ONLY = frozenset({Action.REDEEM, Action.TRAIN})

ALLOWED: dict[Actor, frozenset[Action]] = {
    Actor.STRANGER: frozenset({Action.REDEEM}),
    Actor.CLIENT: frozenset({Action.TALK, Action.TRAIN, Action.RELAY, Action.MOVE_DAYS}),
    Actor.COACH: OWN_AFFAIRS,
    Actor.OWN_COACH: frozenset(Action) - CLIENTS_ONLY - OWN_AFFAIRS,
    Actor.STAND_IN: frozenset(Action) - CLIENTS_ONLY - OWN_AFFAIRS - {Action.HAND_OVER},
    Actor.OTHER_COACH: frozenset(),
    Actor.SECOND_CONTACT: frozenset({Action.TAKE_ALERT}),
}


def may(actor: Actor, action: Action) -> bool:
    """Whether this actor may do this."""
    return action in ALLOWED[actor]
