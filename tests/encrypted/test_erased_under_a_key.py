"""Erasure and forgetting in an encrypted practice: no decrypted page and no log holds a trace."""

import asyncio
import shutil
from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest

from bot.database import wiping
from core.store import forgetting, inbox, mail, people
from core.store.converting import is_plain
from core.store.mail import Letter
from tests.encrypted.conftest import DIGITS
from tests.encrypted.pages import decrypted
from tests.practice import CLIENT, COACH, START, Practice, PracticeOnFile

MARK = "Zmarkerq"
pytestmark = pytest.mark.skipif(not shutil.which("openssl"), reason="no openssl to decrypt single pages with")


@pytest.fixture
def practice(key: object) -> Iterator[Practice]:
    """A client called by the marker, who wrote to the coach and was answered."""
    made = PracticeOnFile()
    assert not is_plain(file_of(made))
    people.rename(made.stage.engine.store, made.client, MARK)
    made.types(CLIENT, f"coach, {MARK} is here")
    made.types(COACH, f"to {MARK}: call me")
    yield made
    made.stage.close()


def file_of(practice: Practice) -> Path:
    return Path(practice.stage.engine.store.path)


def pages(practice: Practice) -> bytes:
    """All pages of the file, its log in them."""
    practice.stage.engine.store.rows("PRAGMA main.wal_checkpoint(TRUNCATE)")
    assert file_of(practice).with_name(f"{file_of(practice).name}-wal").stat().st_size == 0
    return decrypted(file_of(practice), DIGITS)


def test_after_delete_me_no_page_holds_the_client(practice: Practice) -> None:
    for said in ("cancel", "delete me", "yes", "delete"):
        practice.types(CLIENT, said)
    assert MARK.encode() in pages(practice), "the control: pages can be decrypted"
    practice.later(minutes=2)
    assert people.by_chat(practice.stage.engine.store, CLIENT) is None
    asyncio.run(wiping.wipe(practice.stage.engine.store))
    assert MARK.encode() not in pages(practice)


def test_words_of_letters_that_are_forgotten_are_overwritten(practice: Practice) -> None:
    store, letter = practice.stage.engine.store, Letter(COACH, {"text": "Qforgottenz"})
    mail.sent(store, mail.post(store, letter, START), 10**6, START)
    inbox.receive(store, 10**12, {"text": "Qforgottenz"}, START)
    inbox.handled(store, 10**12, START)
    assert b"Qforgottenz" in pages(practice), "the control"
    while forgetting.step(store, START + forgetting.BODIES_KEPT + timedelta(days=1), 100):
        pass
    assert b"Qforgottenz" not in pages(practice)
