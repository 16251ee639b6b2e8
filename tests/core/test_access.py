"""The one table of who may do what."""

from core.access import ALLOWED, Action, Actor, may


def test_every_actor_is_in_the_table_and_strangers_can_only_redeem() -> None:
    assert set(ALLOWED) == set(Actor)
    assert [action for action in Action if may(Actor.STRANGER, action)] == [Action.REDEEM]
    assert not may(Actor.OTHER_COACH, Action.SEE_CLIENT)
