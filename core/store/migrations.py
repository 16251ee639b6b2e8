"""The schema, as named steps, never edited once released. A change is one more function at the end."""

from typing import Any

from sqlite_utils import Database
from sqlite_utils.migrations import Migrations

migrations = Migrations("cuffline")

Columns = dict[str, Any]


def _table(
    db: Database, name: str, columns: Columns, *, pk: str = "id", maybe: str = "", refs: str = ""
) -> None:
    """A STRICT table; every column is NOT NULL but those in `maybe`; `refs` are "column:table" pairs."""
    db.table(name).create(
        columns,
        pk=pk,
        not_null=set(columns) - set(maybe.split()) - {pk},
        foreign_keys=[(column, table, "id") for column, table in (pair.split(":") for pair in refs.split())],
        strict=True,
    )


def _facts(db: Database, name: str, columns: Columns, maybe: str = "") -> None:
    """A table of facts with its view: `current_NAME` hides what a later row replaced."""
    common = {"id": int, "person": int, "noted_at": int, "message": int, "replaces": int}
    _table(db, name, {**common, **columns}, maybe=f"message replaces {maybe}", refs="person:person")
    ordered = [c for c in ("person", "session", "screening") if c in {**common, **columns}]
    db.table(name).create_index(ordered)
    db.execute(f"CREATE INDEX idx_{name}_replaces ON {name} (replaces) WHERE replaces IS NOT NULL")
    db.execute(f"CREATE INDEX idx_{name}_message ON {name} (person, message) WHERE message IS NOT NULL")
    db.create_view(
        f"current_{name}",
        f"SELECT * FROM {name} AS f "
        f"WHERE NOT EXISTS (SELECT 1 FROM {name} AS later WHERE later.replaces = f.id)",
    )


@migrations()
def m001_people(db: Database) -> None:
    person = {
        "id": int,
        "chat": int,
        "name": str,
        "role": str,
        "coach": int,
        "zone": str,
        "created_at": int,
        "unreachable_at": int,
    }
    _table(db, "person", person, maybe="chat coach unreachable_at", refs="coach:person")
    db.table("person").create_index(["chat"], unique=True)
    invitation = {
        "id": int,
        "hash": str,
        "coach": int,
        "name": str,
        "made_at": int,
        "expires_at": int,
        "used_by": int,
        "used_at": int,
    }
    _table(db, "invitation", invitation, maybe="used_by used_at", refs="coach:person used_by:person")
    db.table("invitation").create_index(["hash"], unique=True)


@migrations()
def m002_talk(db: Database) -> None:
    thread = {
        "id": int,
        "person": int,
        "dialogue": str,
        "brief": str,
        "state": str,
        "wake_at": int,
        "floor": int,
        "begun_at": int,
        "failures": int,
        "question": str,
    }
    _table(db, "thread", thread, maybe="state wake_at question", refs="person:person")
    db.execute("CREATE INDEX idx_thread_live ON thread (person, floor) WHERE state IS NOT NULL")
    db.execute("CREATE INDEX idx_thread_wake ON thread (wake_at) WHERE wake_at IS NOT NULL")
    button = {
        "token": str,
        "person": int,
        "thread": int,
        "question": str,
        "value": str,
        "made_at": int,
    }
    _table(db, "button", button, pk="token", maybe="thread question", refs="person:person thread:thread")
    db.table("button").create_index(["made_at"])
    inbox = {
        "update_id": int,
        "body": str,
        "received_at": int,
        "handled_at": int,
        "failed": str,
        "person": int,
        "message": int,
        "thread": int,
    }
    _table(db, "inbox", inbox, pk="update_id", maybe="handled_at failed person message thread body")
    db.execute("CREATE INDEX idx_inbox_open ON inbox (received_at) WHERE handled_at IS NULL")
    db.execute("CREATE INDEX idx_inbox_message ON inbox (person, message) WHERE message IS NOT NULL")
    outbox = {
        "id": int,
        "person": int,
        "chat": int,
        "priority": int,
        "kind": str,
        "body": str,
        "created_at": int,
        "not_before": int,
        "attempts": int,
        "sent_at": int,
        "dropped": str,
        "message": int,
        "thread": int,
        "question": str,
    }
    _table(
        db,
        "outbox",
        outbox,
        maybe="person sent_at dropped message thread question body",
        refs="person:person",
    )
    db.execute(
        "CREATE INDEX idx_outbox_waiting ON outbox (chat, priority, id) "
        "WHERE sent_at IS NULL AND dropped IS NULL"
    )
    db.execute("CREATE INDEX idx_outbox_message ON outbox (chat, message) WHERE message IS NOT NULL")


@migrations()
def m003_duties(db: Database) -> None:
    watch = {
        "id": int,
        "person": int,
        "session": str,
        "spell": str,
        "region": str,
        "on_at": int,
        "limit_s": int,
        "calls": int,
        "next_at": int,
    }
    _table(db, "watch", watch, refs="person:person")
    db.table("watch").create_index(["person", "session", "spell"], unique=True)
    db.table("watch").create_index(["next_at"])
    alert = {
        "id": int,
        "person": int,
        "cause": str,
        "tier": str,
        "said": str,
        "told": str,
        "raised_at": int,
        "last_at": int,
        "count": int,
        "calls": int,
        "next_at": int,
        "taken_by": int,
        "taken_at": int,
        "settled_at": int,
        "settled_how": str,
    }
    _table(
        db,
        "alert",
        alert,
        maybe="next_at taken_by taken_at settled_at settled_how",
        refs="person:person taken_by:person",
    )
    db.execute("CREATE INDEX idx_alert_next ON alert (next_at) WHERE next_at IS NOT NULL")
    db.execute("CREATE INDEX idx_alert_open ON alert (person) WHERE settled_at IS NULL")
    planned = {
        "id": int,
        "person": int,
        "dialogue": str,
        "about": str,
        "due_at": int,
        "made_at": int,
        "done_at": int,
        "failures": int,
    }
    _table(db, "planned", planned, maybe="done_at", refs="person:person")
    db.execute("CREATE INDEX idx_planned_due ON planned (due_at) WHERE done_at IS NULL")
    db.execute("CREATE INDEX idx_planned_person ON planned (person, dialogue) WHERE done_at IS NULL")
    _table(db, "setting", {"name": str, "value": str}, pk="name")


@migrations()
def m004_facts(db: Database) -> None:
    session = {"at": int, "session": str}
    _facts(db, "agreed", {"at": int, "text": str})
    _facts(db, "detail", {"at": int, "name": str, "value": str})
    _facts(db, "screening_answer", {"at": int, "screening": str, "question": str, "answer": str})
    _facts(db, "screening_done", {"at": int, "screening": str, "tier": str, "closed": str, "because": str})
    cleared = {
        "at": int,
        "screening": str,
        "decision": str,
        "regions": str,
        "by": int,
        "until": int,
        "note": str,
    }
    _facts(db, "cleared", cleared, maybe="until")
    _facts(db, "plan_given", {"at": int, "plan": str, "by": int, "why": str})
    _facts(db, "session_started", {**session, "number": int, "plan": str})
    _facts(db, "session_ended", {**session, "why": str})
    _facts(db, "answered", {**session, "part": str, "question": str, "answer": str})
    _facts(db, "bands_on", {**session, "spell": str, "region": str, "limit_s": int})
    _facts(db, "bands_off", {**session, "spell": str, "why": str})
    cuff = {
        "spell": str,
        "check_no": int,
        "limb": str,
        "tightness": int,
        "refill": str,
        "refill_s": float,
        "feeling": str,
        "verdict": str,
        "because": str,
        "band": str,
    }
    _facts(db, "cuff_checked", {**session, **cuff}, maybe="tightness refill_s")
    one_set = {
        "exercise_no": int,
        "movement": str,
        "set_no": int,
        "side": str,
        "doing": str,
        "reps": int,
        "rough": int,
        "done_at": int,
        "rest_s": float,
        "tightness": int,
        "loose": int,
        "reps_left": int,
    }
    _facts(db, "set_done", {**session, **one_set}, maybe="rest_s tightness reps_left")
    _facts(db, "walk_done", {**session, "exercise_no": int, "minutes": float, "kmh": float})
    _facts(db, "rated", {**session, "what": str, "part": str, "score": int, "where": str})
    moved = {
        "movement": str,
        "was": str,
        "use": str,
        "action": str,
        "because": str,
        "applied": int,
        "expected": str,
    }
    _facts(db, "load_moved", {**session, **moved})
    _facts(db, "noticed", {"at": int, "kind": str, "said": str})
    _facts(db, "coach_did", {"at": int, "by": int, "action": str, "note": str})


@migrations()
def m005_calendar_changed(db: Database) -> None:
    changed = {"at": int, "when": str, "by": int, "said": str, "limit": str, "note": str}
    _facts(db, "calendar_changed", changed)


@migrations()
def m006_causes(db: Database) -> None:
    """One set of names for causes and for the questions after a session (`core/safety/`)."""
    for old, new in CAUSES_RENAMED.items():
        db.execute("UPDATE alert SET cause = ? WHERE cause = ?", [new, old])
    known = ", ".join("?" * len(CAUSES_KNOWN))
    db.execute(f"UPDATE alert SET cause = 'something_wrong' WHERE cause NOT IN ({known})", list(CAUSES_KNOWN))
    db.execute("UPDATE alert SET tier = 'weekly' WHERE tier = 'week'")
    db.execute(
        "UPDATE planned SET about = replace(about, '\"48h\"', '\"two_days\"') WHERE dialogue = 'morning'"
    )
    # The morning's signs have new names: an open one ends, and the next session's questions ask anyway.
    db.execute("UPDATE thread SET state = NULL, wake_at = NULL WHERE dialogue = 'morning'")


CAUSES_RENAMED = {
    "said_stop": "stopped",
    "said_nerve": "nerve",
    "said_circulation": "circulation",
    "said_faint": "faint",
    "said_emergency": "emergency",
    "said_hurts": "hurts",
    "said_tight": "too_tight",
    "said_injury": "injury",
    "said_urine": "urine",
    "said_swelling": "swelling",
    "bands_too_long": "bands_on",
    "went_quiet": "quiet_set",
    "hurt_in_session": "bands_hurt",
    "two_failed_checks": "checks_failed",
    "anything_new": "today_changed",
    "not_well_today": "unwell",
    "no_morning_reply": "no_reply",
    "pain_not_settled": "pain_paused",
    "numb_next_day": "numb_morning",
    "sore_out_of_proportion": "sore",
    "muscles_swollen": "muscle_signs",
    "other_next_day": "other_after",
    "one_sided_swelling": "clot_signs",
    "dark_urine": "urine",
    "breathless": "signs_after",
    "fainted": "signs_after",
}
CAUSES_KNOWN = frozenset(CAUSES_RENAMED.values()) | frozenset(
    "something_wrong not_better unseen_refill pain_before drill_failed pain_after numb_after weakness "
    "pressure_emergency".split()
)


@migrations()
def m007_coach(db: Database) -> None:
    _facts(db, "paused", {"at": int, "since": int, "until": int, "by": int, "why": str})
    _facts(db, "plan_ended", {"at": int, "by": int, "why": str})
    _facts(db, "travelling", {"at": int, "since": int, "until": int, "by": int})
    _facts(db, "stand_in", {"at": int, "stand_in": int, "since": int, "until": int})
    _facts(db, "template_saved", {"at": int, "name": str, "plan": str})
    for column in ("aim_low", "aim_high", "expected"):
        db.table("set_done").add_column(column, int)


@migrations()
def m008_measured(db: Database) -> None:
    _facts(db, "measured", {"at": int, "limb": str, "girth_cm": float})


@migrations()
def m009_clearance_limits(db: Database) -> None:
    db.table("cleared").add_column("limits", str, not_null_default="")


@migrations()
def m010_bands(db: Database) -> None:
    _facts(db, "band_owned", {"at": int, "letter": str, "region": str, "width_cm": float, "mark": str})


@migrations()
def m011_found_by_index(db: Database) -> None:
    """What each message asks of a table that grows for ever must not read all of it."""
    waits = "WHERE sent_at IS NULL AND dropped IS NULL"
    db.execute(f"CREATE INDEX idx_outbox_order ON outbox (priority, id) {waits}")
    db.execute(f"CREATE INDEX idx_outbox_next ON outbox (chat, id) {waits}")
    db.execute("CREATE INDEX idx_outbox_thread ON outbox (thread) WHERE thread IS NOT NULL")
    db.table("outbox").create_index(["chat", "id"])
    db.execute("CREATE INDEX idx_inbox_person ON inbox (person, received_at) WHERE person IS NOT NULL")
    db.execute("CREATE INDEX idx_planned_done ON planned (person, dialogue) WHERE done_at IS NOT NULL")
    db.table("thread").create_index(["person", "floor"])
    db.table("alert").create_index(["person", "raised_at"])
    db.table("person").create_index(["coach"])


@migrations()
def m012_newest_facts_by_index(db: Database) -> None:
    """The newest facts of a person are found without reading all the years before."""
    for name in ("answered", "cuff_checked", "rated", "session_started", "session_ended", "walk_done"):
        db.table(name).create_index(["person", "at"])
    for name in ("set_done", "load_moved"):
        db.table(name).create_index(["person", "movement", "at"])


@migrations()
def m013_newest_words(db: Database) -> None:
    """What was said when the same alert was raised again: a repeated alert must not show old words only."""
    db.table("alert").add_column("newest", str, not_null_default="")


@migrations()
def m014_old_letters_by_index(db: Database) -> None:
    """What is to be forgotten is found without reading all letters. A new row is in the index of words only."""
    gone = "(sent_at IS NOT NULL OR dropped IS NOT NULL)"
    for what, kept in (("words", "body IS NOT NULL"), ("ids", "body IS NULL")):
        db.execute(
            f"CREATE INDEX idx_inbox_old_{what} ON inbox (handled_at) WHERE {kept} AND handled_at IS NOT NULL"
        )
        db.execute(
            f"CREATE INDEX idx_outbox_old_{what} ON outbox (coalesce(sent_at, not_before)) WHERE {kept} AND {gone}"
        )


@migrations()
def m015_erased_by_index(db: Database) -> None:
    """A person's rows go without reading everybody's, and so does the look whether a row still names them."""
    for table, column, some in ERASED_BY:
        db.execute(f"CREATE INDEX idx_{table}_of_{column} ON {table} ({column}) {some}")
    # Only messages of strangers are in it: others have a person before they are handled.
    db.execute(
        "CREATE INDEX idx_inbox_of_nobody ON inbox (handled_at)"
        " WHERE person IS NULL AND handled_at IS NOT NULL AND body IS NOT NULL"
    )


@migrations()
def m016_maybe_out(db: Database) -> None:
    """A letter that was on its way when the program was killed may have been read, though nobody wrote that down."""
    db.execute("ALTER TABLE outbox ADD COLUMN maybe_out INTEGER")


# SQLite takes no index with a condition that the column's own NOT NULL makes idle.
ERASED_BY = (
    ("outbox", "person", "WHERE person IS NOT NULL"),
    ("button", "person", ""),
    ("button", "thread", "WHERE thread IS NOT NULL"),
    ("planned", "person", ""),
    ("alert", "taken_by", "WHERE taken_by IS NOT NULL"),
    ("invitation", "coach", ""),
    ("invitation", "used_by", "WHERE used_by IS NOT NULL"),
)
