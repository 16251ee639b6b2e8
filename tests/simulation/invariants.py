"""What must always hold, looked at after every event. Read from the store, never from the code's own rules.

Each check is one method; it raises `Violation` with a line that says what is wrong. Marks (`_new`) keep a
check to the rows that came since the last look. What depends on the time is looked at every time, the rest
where what it reads was written since (`Fate.changed`), words were heard, or the process started anew.
"""

import itertools
import json
from collections import defaultdict
from collections.abc import Callable
from datetime import datetime, timedelta
from sqlite3 import Row
from typing import TYPE_CHECKING, Any

from core.store.times import moment, ms
from tests.simulation.diary import Key
from tests.simulation.world import COACH, SECOND, Violation

if TYPE_CHECKING:
    from tests.simulation.world import Process, World

ALWAYS: frozenset[str] = frozenset()
BANDS = {"bands_on", "bands_off", "watch"}
GRACE = timedelta(seconds=30)  # from a due time to its effect, in calm weather
SLOW_LINE = timedelta(minutes=3)  # until a letter is out, with refusals and time-outs
THIRD_CALL = timedelta(minutes=2)  # bands: after the limit, the coach must know
ROUNDS = ((timedelta(minutes=5), 2), (timedelta(minutes=15), 3))  # an alert of now: by then, so many sendings
NO_BURST = timedelta(minutes=11)  # two late sendings are 5 min apart
MAYBE_ON = timedelta(minutes=5)  # asked to put bands on and no word: they are counted as on
LONGEST_SILENCE = timedelta(hours=5)  # between two sendings of an open alert
NOT_YOURS = "That button isn't for this chat."
PASSED = ("go", "ease")
TWICE_PLANNED = (
    "SELECT person, json_extract(about, '$.session_day') AS day FROM planned WHERE dialogue = 'reminding'"
    " AND done_at IS NULL AND json_extract(about, '$.again') IS NULL GROUP BY 1, 2 HAVING count(*) > 1"
)
FORGOTTEN_BLOCK = (
    "SELECT name FROM person AS p WHERE unreachable_at IS NULL AND EXISTS (SELECT 1 FROM outbox WHERE person = p.id"
    " AND dropped = 'blocked' AND created_at > (SELECT coalesce(max(received_at), 0) FROM inbox WHERE person = p.id))"
)
TIMED = ("set", "rest", "pause", "break", "walk")


class Watchman:
    """Looks at one world."""

    def __init__(self, world: "World") -> None:
        self.world = world
        self.marks: dict[str, int] = defaultdict(int)
        self.seen: Process | None = None  # the process at the last look
        self.unanswered: set[int] = set()  # updates that the phones made and nobody has dealt with
        self.acknowledged: set[str] = set()
        self.sendings: dict[int, list[tuple[int, datetime]]] = defaultdict(list)  # alert -> (chat, when)
        self.told: dict[str, int] = defaultdict(
            int
        )  # how often the coach heard that a client blocked the bot
        self.happened: set[str] = set()
        self.posted: dict[int, datetime] = {}  # letters that overtake others, and when they were first seen
        self.whom = {COACH}  # an alert goes to one of these at once
        self.banded = True  # whether anybody had bands on at the last look
        # A check, and what makes it necessary; without any of that it is looked at every time.
        self.checks: tuple[tuple[Callable[[], None], frozenset[str]], ...] = (
            (self.updates_are_handled, frozenset({"inbox", "INSERT outbox"})),
            (self.confirmed_updates_are_kept, ALWAYS),
            (self.sets_are_what_was_said, frozenset({"set_done", "inbox", "heard"})),
            (self.no_set_without_clearance_and_check, frozenset({"bands_on", "set_done"})),
            (self.bands_are_watched_until_off, ALWAYS),
            (self.alerts_go_out, frozenset({"INSERT outbox", "alert"})),
            (self.alerts_go_on, ALWAYS),
            (self.flags_have_alerts, ALWAYS),
            (self.dialogues_and_facts_agree, frozenset({"thread", "set_done"})),
            (self.one_session_at_a_time, frozenset({"thread"})),
            (self.timers_are_kept, frozenset({"thread"})),
            (self.nobody_oversleeps, ALWAYS),
            (self.one_reminder_a_day, frozenset({"thread"})),
            (self.talks_begin, ALWAYS),
            (self.reminders_go_on, frozenset({"person", "planned"})),
            (self.coach_knows_who_blocked, frozenset({"INSERT outbox", "person"})),
            (self.letters_leave, ALWAYS),
            (self.one_effect_for_one_update, frozenset({"INSERT outbox"})),
        )

    @property
    def now(self) -> datetime:
        """The wall clock."""
        return self.world.clock.now()

    def rows(self, sql: str, *values: Any) -> list[Row]:
        """A query."""
        return self.world.store.rows(sql, values)

    def look(self) -> None:
        """All of it."""
        if self.world.store.connection.in_transaction:
            raise Violation("an event ended inside an open transaction")
        self.happened = self._happened()
        for check, needed_by in self.checks:
            if not needed_by or needed_by & self.happened:
                check()

    def _happened(self) -> set[str]:
        """What was written since the last look, as "INSERT outbox" and as "outbox"; after a start everything was."""
        changed = self.world.fate.changed
        happened = {one.rpartition(" ")[2] for one in changed} | changed
        if self.seen is not self.world.process:
            self.seen = self.world.process
            happened |= {what for _, needed_by in self.checks for what in needed_by}
            self.banded = True
        changed.clear()
        return happened

    def _new(self, name: str, sql: str) -> list[Row]:
        """Rows of `sql` (with one mark for the last id seen) since the last look."""
        rows = self.rows(sql, self.marks[name])
        if rows:
            self.marks[name] = max(row["id"] for row in rows)
        return rows

    def _calm_for(self, due: datetime, grace: timedelta = GRACE) -> bool:
        """Whether `due` is long past and nothing disturbed the process since."""
        return not self._disturbed() and max(due, self.world.calm_since) + grace < self.now

    def _disturbed(self) -> bool:
        return self.world.line.down or self.world.line.weather.lost_before == 1

    # --- updates ---
    def updates_are_handled(self) -> None:
        """No update breaks a dialogue; each known person's words and taps get an answer."""
        numbers = self.world.line.numbers
        self.unanswered.update(numbers[self.marks["made"] :])
        self.marks["made"] = len(numbers)
        handled = "SELECT * FROM inbox WHERE update_id IN (SELECT value FROM json_each(?)) AND handled_at IS NOT NULL"
        for row in self.rows(handled, json.dumps([*self.unanswered])):
            self.unanswered.discard(row["update_id"])
            if row["failed"] is not None:
                raise Violation(f"update {row['update_id']} failed:\n{self.world.tracebacks.last}")
            if row["person"] is not None:
                self._answered(row)
        self.marks["letters"] = self.rows("SELECT max(id) AS id FROM outbox")[0]["id"] or 0

    def _answered(self, row: Row) -> None:
        body = json.loads(row["body"])
        if "edited_message" in body:
            return
        chat = (body.get("message") or body["callback_query"])["from"]["id"]
        found = self.rows(
            "SELECT body FROM outbox WHERE chat = ? AND id > ? AND kind != 'answer'",
            chat,
            self.marks["letters"],
        )
        if "chat_instance" in str(body) and "message" not in body["callback_query"]:
            self._refused(found, chat)
        if not found:
            said = body.get("message", {}).get("text") or body.get("callback_query", {}).get("data")
            raise Violation(f"no answer to {said!r} of {chat}")

    def one_effect_for_one_update(self) -> None:
        """An update that came twice was dealt with once, and in its turn: so each tap is acknowledged."""
        rows = self._new("acknowledged", "SELECT * FROM outbox WHERE id > ? AND kind = 'answer' ORDER BY id")
        for row in rows:
            query = json.loads(row["body"])["query"]
            if query in self.acknowledged:
                raise Violation(f"tap {query} of {row['chat']} was dealt with twice")
            self.acknowledged.add(query)
            if int(query) < self.marks[f"tap of {row['chat']}"]:
                raise Violation(f"tap {query} of {row['chat']} was dealt with after a later one")
            self.marks[f"tap of {row['chat']}"] = int(query)

    def _refused(self, letters: list[Row], chat: int) -> None:
        if not any(NOT_YOURS in row["body"] for row in letters):
            raise Violation(f"a forged button of {chat} was obeyed: {[row['body'] for row in letters]}")

    def confirmed_updates_are_kept(self) -> None:
        """What the server was told to forget is in the inbox."""
        for number in self.world.line.confirmed:
            if not self.rows("SELECT 1 FROM inbox WHERE update_id = ?", number):
                raise Violation(f"update {number} was confirmed to the server and is not kept")
        self.world.line.confirmed.clear()

    # --- sets ---
    def sets_are_what_was_said(self) -> None:
        """A set exists once, with a count its client said; a confirmed count is there."""
        for client in self.world.everybody:
            if client.diary.wrong:
                raise Violation(f"{client.name} heard a count they never said: {client.diary.wrong[0]!r}")
            stored = self._stored(client.person, client.name)
            for key, reps in stored.items():
                said = client.diary.may_be(key)
                if reps not in said:
                    raise Violation(f"{client.name} {key}: stored {reps}, said {sorted(said)}")
            for key in client.diary.must_be():
                if key not in stored:
                    raise Violation(f"{client.name} {key}: confirmed and not stored")

    def _stored(self, person: int, name: str) -> dict[Key, int]:
        found: dict[Key, int] = {}
        for row in self.rows("SELECT * FROM current_set_done WHERE person = ?", person):
            key = Key(row["session"], row["exercise_no"], row["set_no"], row["side"])
            if key in found:
                raise Violation(f"{name} {key}: stored twice")
            found[key] = row["reps"]
        return found

    def no_set_without_clearance_and_check(self) -> None:
        """Bands go on, and sets are done, only by cleared people without an open alert, after a passed check."""
        for row in self._new("bands_on", "SELECT * FROM bands_on WHERE id > ? ORDER BY id"):
            self._cleared(row["person"], row["noted_at"], "bands on")
            self._no_alert(row)
            client = next(one for one in self.world.everybody if one.person == row["person"])
            latest = max(client.asked_on, default=None)
            client.asked_on.clear()
            if moment(row["noted_at"]) - moment(row["at"]) >= MAYBE_ON:  # no word: counted from the question
                continue
            if latest is None or (row["at"] > ms(latest) and not self.world.clock.was_set):
                raise Violation(
                    f"bands on at {moment(row['at'])}; the question that was tapped is of {latest}"
                )
        for row in self._new("set_done", "SELECT * FROM set_done WHERE id > ? ORDER BY id"):
            self._cleared(row["person"], row["done_at"], "a set")
            self._checked(row)

    def _cleared(self, person: int, at: int, what: str) -> None:
        if self.world.clock.was_set:  # stored times no longer tell what came first
            return
        rows = self.rows(
            "SELECT * FROM cleared WHERE person = ? AND noted_at <= ? ORDER BY id DESC LIMIT 1", person, at
        )
        if not rows or not rows[0]["regions"] or (rows[0]["until"] or at + 1) <= at:
            raise Violation(f"{what} without clearance of person {person} at {moment(at)}")

    def _no_alert(self, row: Row) -> None:
        if self.world.clock.was_set:
            return
        open_then = self.rows(
            "SELECT * FROM alert WHERE person = ? AND tier = 'now' AND raised_at < ?"
            " AND (settled_at IS NULL OR settled_at > ?)",
            row["person"],
            row["noted_at"],
            row["noted_at"],
        )
        if open_then:
            raise Violation(f"bands on with an open alert: {dict(open_then[0])}")

    def _checked(self, row: Row) -> None:
        if self.world.clock.was_set:
            return
        last = self.rows(
            "SELECT verdict FROM cuff_checked WHERE person = ? AND session = ? AND spell LIKE ? AND at <= ?"
            " AND (spell, check_no) = (SELECT spell, check_no FROM cuff_checked WHERE person = ?"
            " AND session = ? AND spell LIKE ? AND at <= ? ORDER BY id DESC LIMIT 1)",
            *(2 * (row["person"], row["session"], f"{row['exercise_no']}.%", row["done_at"])),
        )
        if not last or any(one["verdict"] not in PASSED for one in last):
            raise Violation(f"a set without a passed check: {dict(row)}")

    # --- bands ---
    def bands_are_watched_until_off(self) -> None:
        """Bands that are on are watched; too long on, the coach is told."""
        if not self.banded and not BANDS & self.happened:
            return
        on = self.rows(
            "SELECT n.*, w.next_at, w.calls FROM current_bands_on AS n LEFT JOIN watch AS w USING (person, session, spell)"
            " WHERE NOT EXISTS (SELECT 1 FROM bands_off AS f WHERE f.person = n.person"
            " AND f.session = n.session AND f.spell = n.spell)"
        )
        self.banded = bool(on)
        for row in on:
            if row["next_at"] is None:
                raise Violation(f"bands on and nobody watches: {dict(row)}")
            due = moment(row["at"]) + timedelta(seconds=row["limit_s"]) + THIRD_CALL
            put_off = row["calls"] < 3 and moment(row["next_at"]) > max(due, self.now) + GRACE
            if put_off and not self.world.clock.was_set:
                raise Violation(f"a call about bands is put off until {moment(row['next_at'])}: {dict(row)}")
            if self._calm_for(due) and not self._told_since(row):
                raise Violation(f"bands on for too long and nobody told: {dict(row)}")
        watched = self.rows("SELECT count(*) AS n FROM watch")[0]["n"]
        if watched > len(on):
            raise Violation(f"{watched} watches for {len(on)} pairs of bands that are on")

    def _told_since(self, row: Row) -> bool:
        since = row["at"]
        return bool(self.rows("SELECT 1 FROM alert WHERE person = ? AND last_at >= ?", row["person"], since))

    # --- alerts ---
    def alerts_go_out(self) -> None:
        """An alert of `now` goes out in its own commit."""
        for row in self._new("outbox", "SELECT * FROM outbox WHERE id > ? AND priority = 0 ORDER BY id"):
            self._note_sending(row)
        for row in self._new("alert", "SELECT * FROM alert WHERE id > ? ORDER BY id"):
            told = {chat for chat, _ in self.sendings[row["id"]]}
            if row["tier"] == "now" and not self.whom & told:
                raise Violation(f"an alert that went to nobody: {dict(row)}")

    def alerts_go_on(self) -> None:
        """It reaches a second human after 5 min, and never falls silent."""
        open_ones = "SELECT * FROM alert WHERE tier = 'now' AND taken_by IS NULL AND settled_at IS NULL"
        for row in self.rows(open_ones):
            self._escalates(row)

    def _note_sending(self, row: Row) -> None:
        """A new alert speaks for itself, a repeat for all whose numbers its first button has."""
        self.posted[row["id"]] = self.now
        body = json.loads(row["body"])
        for _, token in (body.get("buttons") or [])[:1]:
            found = self.rows("SELECT value FROM button WHERE token = ? AND value LIKE 'alert:%'", token)
            for one in found:
                named = [int(number) for number in one["value"].rpartition(":")[2].split("+")]
                for number in named if "not answered yet" in body["text"] else named[:1]:
                    self.sendings[number].append((row["chat"], moment(row["created_at"])))

    def _escalates(self, row: Row) -> None:
        sendings, raised = self.sendings[row["id"]], moment(row["raised_at"])
        if row["next_at"] is None or moment(row["next_at"]) > self.now + LONGEST_SILENCE:
            raise Violation(f"nobody answered and it does not go on: {dict(row)}")
        if self._calm_for(moment(row["next_at"])):
            raise Violation(f"an alert is overdue: {dict(row)}")
        rounds = len({at for _, at in sendings})
        # Late sendings do not come in a burst, so a disturbed escalation gets its minutes.
        grace = 2 * GRACE if self.world.calm_since <= raised else NO_BURST + GRACE
        for after, least in ROUNDS:
            if self._calm_for(raised + after, grace) and rounds < least:
                raise Violation(f"after {after} an alert went out {rounds} times: {dict(row)}")
            if self._calm_for(raised + after, grace) and SECOND not in [chat for chat, _ in sendings]:
                raise Violation(f"after {after} the second contact knows nothing: {dict(row)}")

    def flags_have_alerts(self) -> None:
        """Red-flag words that were dealt with have an alert."""
        for client in self.world.everybody:
            for message in list(client.flags):
                handled = self.rows(
                    "SELECT handled_at FROM inbox WHERE handled_at IS NOT NULL AND body LIKE ?",
                    f'%"message_id": {message},%',
                )
                if not handled:
                    continue
                client.flags.remove(message)
                at = handled[0]["handled_at"]
                fresh = (
                    "SELECT 1 FROM alert WHERE person = ? AND last_at = ? AND coalesce(settled_at, ?) >= ?"
                )
                if not self.rows(fresh, client.person, at, at, at):
                    raise Violation(f"a red flag of {client.name} without an alert (message {message})")

    # --- dialogues ---
    def dialogues_and_facts_agree(self) -> None:
        """What a live session remembers as counted is stored, and nothing else of that movement."""
        for row in self._sessions():
            state = json.loads(row["state"])
            exercise = state.get("exercise", 0)
            sides = state["brief"]["exercises"][exercise].get("sides", ["both"])
            stored = self.rows(
                "SELECT set_no, side, reps FROM current_set_done WHERE person = ? AND session = ?"
                " AND exercise_no = ?",
                row["person"],
                state["brief"]["session"],
                exercise + 1,
            )
            remembered = {
                (one["no"], side, reps)
                for one in state.get("counted", [])
                for side, reps in zip(sides, one.get("reps", []), strict=False)
            }
            if remembered != {tuple(one) for one in stored}:
                raise Violation(
                    f"the session remembers {remembered}, stored is {[tuple(one) for one in stored]}"
                )

    def one_session_at_a_time(self) -> None:
        """Nobody is in two sessions, or in the questions before one and in another."""
        rows = self.rows(
            "SELECT person, group_concat(dialogue) AS what FROM thread WHERE state IS NOT NULL"
            " AND dialogue IN ('before', 'session') GROUP BY person HAVING count(*) > 1"
        )
        for row in rows:
            raise Violation(f"person {row['person']} is in two sessions at once: {row['what']}")

    def timers_are_kept(self) -> None:
        """A phase that ends by the clock has its time in the store."""
        for row in self._sessions():
            phase = json.loads(row["state"]).get("phase")
            if phase in TIMED and row["wake_at"] is None:
                raise Violation(f"a session in phase {phase} that nothing will wake")

    def nobody_oversleeps(self) -> None:
        """No timer is overdue."""
        late = "SELECT * FROM thread WHERE wake_at IS NOT NULL AND wake_at <= ? AND state IS NOT NULL"
        for row in self.rows(late, ms(self.now - GRACE)):
            if self._calm_for(moment(row["wake_at"])):
                raise Violation(f"a {row['dialogue']} of person {row['person']} overslept")

    def _sessions(self) -> list[Row]:
        return self.rows("SELECT * FROM thread WHERE dialogue = 'session' AND state IS NOT NULL")

    def one_reminder_a_day(self) -> None:
        """A planned reminder comes once for its day."""
        rows = self.rows(
            "SELECT person, json_extract(brief, '$.session_day') AS day FROM thread WHERE dialogue = 'reminding'"
            " AND NOT coalesce(json_extract(brief, '$.again'), 0)"
        )
        days = [(row["person"], row["day"]) for row in rows]
        if len(set(days)) < len(days):
            raise Violation(f"reminded twice of one day: {sorted(days)}")

    def talks_begin(self) -> None:
        """No planned talk is overdue."""
        overdue = "SELECT * FROM planned WHERE done_at IS NULL ORDER BY due_at LIMIT 1"
        for row in self.rows(overdue):
            if self._calm_for(moment(row["due_at"])):
                raise Violation(f"a planned {row['dialogue']} is overdue: {dict(row)}")

    def reminders_go_on(self) -> None:
        """Whoever has a plan with days has a next reminder, and for each session one."""
        without = self.rows(
            "SELECT * FROM person WHERE role = 'client' AND id NOT IN (SELECT person FROM planned"
            " WHERE dialogue = 'reminding' AND done_at IS NULL)"
        )
        for row in without:
            raise Violation(f"{row['name']} has a plan with days and no next reminder")
        for row in self.rows(TWICE_PLANNED):
            raise Violation(f"person {row['person']} will be reminded twice of {row['day']}")

    def coach_knows_who_blocked(self) -> None:
        """Somebody who blocked the bot: the coach was told, once."""
        for row in self._new("told", f"SELECT id, body FROM outbox WHERE id > ? AND chat = {COACH}"):
            for client in self.world.everybody:
                self.told[client.name] += f"{client.name} can't be reached" in row["body"]
        for client in self.world.everybody:
            if self.told[client.name] > client.blocks:
                heard = self.told[client.name]
                raise Violation(f"the coach heard {heard} times that {client.name} blocked the bot")
        for row in self.rows("SELECT * FROM person WHERE role = 'client' AND unreachable_at IS NOT NULL"):
            told = "SELECT 1 FROM outbox WHERE chat = ? AND created_at >= ? AND body LIKE ?"
            if not self.rows(told, COACH, row["unreachable_at"], f"%{row['name']} can't be reached%"):
                raise Violation(f"{row['name']} blocked the bot and the coach does not know")

    # --- letters ---
    def letters_leave(self) -> None:
        """With the network up nothing waits for long."""
        if self._disturbed():
            return
        waiting = "SELECT * FROM outbox WHERE sent_at IS NULL AND dropped IS NULL AND created_at <= ?"
        for row in self.rows(waiting, ms(self.now - SLOW_LINE)):
            if self._calm_for(moment(row["created_at"]), SLOW_LINE):
                raise Violation(f"a letter waits since {moment(row['created_at'])}: {row['body']}")

    def at_the_end(self, erased: bool = False) -> None:
        """Calm again: nothing waits, nothing is lost. `erased`: somebody's words are gone as they wished."""
        waiting = self.rows("SELECT * FROM outbox WHERE sent_at IS NULL AND dropped IS NULL")
        if waiting:
            raise Violation(f"{len(waiting)} letters never left: {waiting[0]['body']}")
        kept = self.rows(
            "SELECT count(*) AS n, sum(handled_at IS NULL) AS open, count(failed) AS bad FROM inbox"
        )[0]
        made = len(self.world.line.numbers)
        if (kept["n"] != made and not erased) or kept["open"] or kept["bad"]:
            raise Violation(
                f"{made} updates were made, {kept['n']} kept, {kept['open']} not dealt with, {kept['bad']} failed"
            )
        self._in_order()
        self._delivered()
        for row in self.rows(FORGOTTEN_BLOCK):
            raise Violation(
                f"{row['name']} has blocked the bot, has not written since, and nobody knows any more"
            )

    def _delivered(self) -> None:
        """A letter that is called sent is on the phone; one that was dropped had a reason that never passes."""
        phones = self.world.line.phones
        shown = {chat: {message.id for message in phone.history} for chat, phone in phones.items()}
        for row in self.rows("SELECT * FROM outbox WHERE kind != 'answer'"):
            phone = phones[row["chat"]]
            if row["dropped"] not in (None, "blocked"):
                raise Violation(f"a letter was dropped ({row['dropped']}): {row['body']}")
            if row["dropped"] is None and row["message"] not in shown[row["chat"]]:
                raise Violation(
                    f"a letter counts as sent and is not on the phone of {phone.name}: {row['body']}"
                )

    def _in_order(self) -> None:
        rows = self.rows(
            "SELECT chat, id, message FROM outbox WHERE priority > 0 AND message IS NOT NULL ORDER BY chat, id"
        )
        for earlier, later in itertools.pairwise(rows):
            if earlier["chat"] == later["chat"] and earlier["message"] > later["message"]:
                raise Violation(f"letters of {later['chat']} out of order: {earlier['id']}, {later['id']}")
        overtaken = self.rows(
            "SELECT a.id AS alert, n.id AS other, n.sent_at AS at FROM outbox AS a JOIN outbox AS n USING (chat)"
            " WHERE a.priority = 0 AND n.priority > 0 AND n.message < a.message AND n.sent_at > a.created_at"
        )
        for (
            row
        ) in overtaken:  # a letter bears the time of what was said, so that it may look older than it is
            if row["at"] > ms(self.posted[row["alert"]]) and not self.world.clock.was_set:
                raise Violation(f"letter {row['other']} overtook the alert {row['alert']}")
