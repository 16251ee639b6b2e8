"""Clearance, bands and alerts."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

from bot.engine import buttons, due, recording, turns
from bot.engine.joining import clearances
from bot.engine.safety import alerts, stopping
from core.cuffs.limbs import ALL
from core.facts import BandsOff
from core.safety import escalation
from core.store import duties, threads
from tests.simulation.planted.planting import bug, nothing


@bug(clearances, "now")
def clearance_never_read(right: Any) -> Any:
    return lambda engine, client: replace(right(engine, client), limbs=ALL, why=None)


@bug(duties, "watch")
def watch_not_written(right: Any) -> Any:
    return nothing


@bug(duties, "unwatch")
def watch_never_ended(right: Any) -> Any:
    return nothing


@bug(duties, "called")
def watch_ends_with_the_first_call(right: Any) -> Any:
    return lambda store, entry, next_at: duties.unwatch(store, entry.person, entry.session, entry.spell)


@bug(duties, "called")
def second_call_hours_later(right: Any) -> Any:
    return lambda store, entry, next_at: right(store, entry, next_at + timedelta(hours=3))


@bug(due, "_kind")
def bands_too_long_and_no_alert(right: Any) -> Any:
    def kind(*args: Any) -> Any:
        return due.CallKind.FIRST

    return kind


@bug(buttons, "safe_bound")
def bands_counted_from_processing(right: Any) -> Any:
    return lambda engine, button, incoming, now: now


@bug(recording, "record")
def bands_off_not_stored(right: Any) -> Any:
    def record(engine: Any, person: int, fact: Any, message: Any = None) -> None:
        if isinstance(fact, BandsOff):
            duties.unwatch(engine.store, person, fact.session, fact.spell)
        else:
            right(engine, person, fact, message)

    return record


@bug(duties, "alert_sent")
def escalation_stops_after_the_first(right: Any) -> Any:
    return lambda store, alert, next_at: right(store, alert, None)


@bug(escalation, "_whom")
def second_contact_never_told(right: Any) -> Any:
    return lambda rounds: (escalation.Who.COACH,)


@bug(alerts, "send")
def alert_in_a_later_commit(right: Any) -> Any:
    def send(engine: Any, alert_id: int) -> None:
        alert = duties.alert_by_id(engine.store, alert_id)
        if alert is not None and alert.calls == 0 and engine.clock() <= alert.raised_at:
            duties.alert_sent(engine.store, alert_id, engine.clock() + timedelta(seconds=30))
            return
        right(engine, alert_id)

    return send


@bug(alerts, "raise_alert")
def counted_into_a_settled_alert(right: Any) -> Any:
    def raise_alert(engine: Any, person: int, *rest: Any) -> None:
        row = engine.store.row("SELECT id FROM alert WHERE person = ? ORDER BY id DESC LIMIT 1", [person])
        if row is None:
            right(engine, person, *rest)
        else:
            duties.again(engine.store, row["id"], engine.clock())

    return raise_alert


@bug(alerts, "raise_alert")
def alert_forgotten(right: Any) -> Any:
    return nothing


@bug(stopping, "stopped")
def stop_words_unread(right: Any) -> Any:
    return lambda *args: False


@bug(turns, "barred")
def gate_skipped(right: Any) -> Any:
    return lambda *args, **named: None


@bug(threads, "button")
def anybodys_button(right: Any) -> Any:
    def button(store: Any, token: str, person: int) -> Any:
        row = store.row("SELECT * FROM button WHERE token = ?", [token])
        return row and threads.Button(person, row["thread"], row["question"], row["value"])

    return button
