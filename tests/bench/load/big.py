"""A store with years of a large practice in it, beside an empty one."""

import asyncio
import json
import statistics
import time
from datetime import datetime, timedelta
from pathlib import Path

from bot.database import wiping
from bot.engine.core import FORGOTTEN_AT_ONCE
from bot.engine.numbers import weeks
from core.store import duties, erasure, forgetting, people, settings
from core.store.connection import Store
from core.store.times import ms
from tests.bench.load.dialogue import COACH, FIRST_CLIENT, practice
from tests.bench.load.talk import Talk, config_for, start

FRESH = 200  # clients of the store that is empty but for them
TALKS = 100_000
DIGEST_CLIENTS = 1_000
SETS_A_SESSION = 4
LETTERS = 20  # a session, in and as many out
FORGETTING_STEPS = 200
PAUSE_S = 0.02  # between two commits while a file is wiped
ASKED = (("before", "new"), ("before", "fever"), ("before", "heavy"), ("session", "drill"))


def filled(file: Path, sets: int, clients: int, now: datetime | None = None) -> Store:
    """Sets and sessions twice a week up to yesterday, a month of letters, and planned talks of the weeks to come."""
    now = now or start()
    store = Store(file, synchronous="OFF")
    practice(store, clients, now, coaches=max(1, clients // DIGEST_CLIENTS))
    ids = [row["id"] for row in store.rows("SELECT id FROM person WHERE role = 'client' ORDER BY id")]
    with store.transaction():
        for number in range(sets // clients // SETS_A_SESSION):
            _session(store, ids, number, now - timedelta(days=1 + 3.5 * number))
            if number <= 8:
                _letters(store, ids, number, ms(now - timedelta(days=1 + 3.5 * number)))
        for number in range(max(1, TALKS // clients)):
            at = now + timedelta(days=1 + number)
            about = json.dumps({"at": at.isoformat(), "name": at.isoformat()})
            store.connection.executemany(
                "INSERT INTO planned (person, dialogue, about, due_at, made_at, failures)"
                " VALUES (?, 'reminding', ?, ?, 0, 0)",
                [(client, about, ms(at)) for client in ids],
            )
    store.execute("PRAGMA synchronous = FULL")
    return store


def _session(store: Store, ids: list[int], number: int, at: datetime) -> None:
    named, when = f"h{number}", ms(at)
    store.connection.executemany(
        "INSERT INTO session_started (person, noted_at, at, session, number, plan) VALUES (?, ?, ?, ?, ?, '')",
        [(client, when, when, named, number) for client in ids],
    )
    store.connection.executemany(
        "INSERT INTO session_ended (person, noted_at, at, session, why) VALUES (?, ?, ?, ?, 'done')",
        [(client, when, when, named) for client in ids],
    )
    store.connection.executemany(
        "INSERT INTO set_done (person, noted_at, at, session, exercise_no, movement, set_no, side, doing, reps,"
        " rough, done_at, loose, aim_low, aim_high) VALUES (?, ?, ?, ?, 1, 'goblet_squat', ?, 'both', '10 kg', 25, 0, ?, 0,"
        " 20, 40)",
        [(client, when, when, named, one, when) for client in ids for one in range(1, 1 + SETS_A_SESSION)],
    )
    store.connection.executemany(
        'INSERT INTO rated (person, noted_at, at, session, what, part, score, "where")'
        " VALUES (?, ?, ?, ?, ?, 'after', 1, 'muscle')",
        [(client, when, when, named, what) for client in ids for what in ("effort", "pain")],
    )
    store.connection.executemany(
        "INSERT INTO answered (person, noted_at, at, session, part, question, answer)"
        " VALUES (?, ?, ?, ?, ?, ?, 'no')",
        [(client, when, when, named, part, asked) for client in ids for part, asked in ASKED],
    )
    store.connection.executemany(
        "INSERT INTO cuff_checked (person, noted_at, at, session, spell, check_no, limb, tightness, refill,"
        " refill_s, feeling, verdict, because, band)"
        " VALUES (?, ?, ?, ?, '1.1', 1, ?, 6, 'under_2', NULL, 'fine', 'go', '', '')",
        [(client, when, when, named, limb) for client in ids for limb in ("left_leg", "right_leg")],
    )
    store.connection.executemany(
        "INSERT INTO load_moved (person, noted_at, at, session, movement, was, use, action, because, applied,"
        " expected) VALUES (?, ?, ?, ?, 'goblet_squat', '10 kg', '10 kg', 'hold', '', 1, '25 13')",
        [(client, when, when, named) for client in ids],
    )
    store.connection.executemany(
        "INSERT INTO thread (person, dialogue, brief, floor, begun_at, failures) VALUES (?, 'session', '{}', 1, ?, 0)",
        [(client, when) for client in ids],
    )


def _letters(store: Store, ids: list[int], number: int, when: int) -> None:
    """As a session leaves them: the words of the last 14 days, ids before that."""
    first, said = number * len(ids) * LETTERS, number <= 3
    update = '{"update_id": 1, "message": {"message_id": 1, "text": "31"}}' if said else None
    letter = '{"text": "one", "buttons": []}' if said else None
    store.connection.executemany(
        "INSERT INTO inbox (update_id, body, received_at, handled_at, person, message) VALUES (?, ?, ?, ?, ?, ?)",
        [
            (10**9 + first + n, update, when, when, ids[n % len(ids)], first + n)
            for n in range(len(ids) * LETTERS)
        ],
    )
    letters = [
        (ids[n % len(ids)], FIRST_CLIENT + n % len(ids), letter, when, when, when, first + n)
        for n in range(len(ids) * LETTERS)
    ]
    store.connection.executemany(
        "INSERT INTO outbox (person, chat, priority, kind, body, created_at, not_before, attempts, sent_at, message)"
        " VALUES (?, ?, 1, 'message', ?, ?, ?, 0, ?, ?)",
        letters,
    )


def forgetting_ms(store: Store) -> tuple[float, float]:
    """Of the processor, for a step of forgetting old letters: the median and the 99th of 100, a commit each."""
    took = []
    for _ in range(FORGETTING_STEPS):
        began = time.process_time()
        with store.transaction():
            assert forgetting.step(store, start() + timedelta(days=3), FORGOTTEN_AT_ONCE)
        took.append(1000 * (time.process_time() - began))
    return statistics.median(took), statistics.quantiles(took, n=100)[98]


def erasing_ms(store: Store) -> tuple[float, float]:
    """Of the processor and by the clock, for a client's erasure: the medians of nine."""
    clients = store.rows("SELECT id FROM person WHERE role = 'client' ORDER BY id DESC LIMIT 9")
    took = []
    for row in clients:
        worked, began = time.process_time(), time.perf_counter()
        with store.transaction():
            erasure.erase(store, row["id"])
        took.append((time.process_time() - worked, time.perf_counter() - began))
    worked, waited = zip(*took, strict=True)
    return 1000 * statistics.median(worked), 1000 * statistics.median(waited)


async def wiping_s(store: Store) -> tuple[float, float, float]:
    """Seconds of the processor and by the clock, and the longest for which nobody was answered."""
    worked, began = time.process_time(), time.perf_counter()
    task = asyncio.ensure_future(wiping.wipe(store))
    longest, last = 0.0, began
    while not task.done():
        await asyncio.sleep(PAUSE_S)
        with store.transaction():
            settings.put(store, "awake_at", str(last))
        longest, last = max(longest, time.perf_counter() - last - PAUSE_S), time.perf_counter()
    await task
    return time.process_time() - worked, time.perf_counter() - began, longest


def costs_ms(stores: list[Store], rounds: int, sessions: int) -> list[list[float]]:
    """Per store: ms an update in each burst, the stores in turn; the first round warms up and is left out."""
    talks = [Talk(store, config_for(store), start()) for store in stores]
    found = [[_burst_ms(talk, sessions) for talk in talks] for _ in range(rounds + 1)]
    return [[burst[place] for burst in found[1:]] for place in range(len(stores))]


def ratio(ones: list[float], others: list[float]) -> float:
    """The median ratio of neighbouring bursts."""
    return statistics.median(one / other for one, other in zip(ones, others, strict=True))


def empty(file: Path) -> Store:
    """Clients who have done nothing yet."""
    store = Store(file)
    practice(store, FRESH, start())
    return store


def _burst_ms(talk: Talk, sessions: int) -> float:
    talk.spent_s, talk.updates = 0.0, 0
    for _ in range(sessions):
        talk.session()
    return 1000 * talk.spent_s / talk.updates


def finding_due_ms(store: Store) -> float:
    """What the program asks after each batch: the earliest due time, and the talks that are due."""
    took = []
    for _ in range(200):
        began = time.perf_counter()
        duties.next_due(store)
        duties.due_talks(store, start())
        took.append(1000 * (time.perf_counter() - began))
    return statistics.median(took)


def digest_s(store: Store) -> tuple[int, float]:
    """Clients of the first coach, and seconds for their digest."""
    talk = Talk(store, config_for(store), start())
    coach = people.by_chat(store, COACH)
    assert coach is not None
    began = time.perf_counter()
    weeks.digest_of(talk.engine, coach, start())
    return len(people.clients_of(store, coach.id)), time.perf_counter() - began
