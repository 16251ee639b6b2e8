"""`cuffline try --db FILE` opened a second time: nobody has to say hello again."""

from bot.practice_room import known
from tests.practice import CLIENT, OTHER, Practice


def test_only_somebody_who_never_wrote_says_hello() -> None:
    practice = Practice()
    store = practice.stage.engine.store
    assert not known(store, CLIENT)
    assert not known(store, OTHER)
    practice.types(CLIENT, "hello")
    assert known(store, CLIENT)
