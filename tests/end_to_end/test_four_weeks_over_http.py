"""Plans built by chat and four weeks of training, every call over HTTP; the coach's export is all that is counted from."""

import contextlib
import csv
import io
import re
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from bot.cli import main
from bot.play import COACH, START
from bot.play.stage import Stage
from tests.end_to_end.conftest import DAYS

Row = dict[str, str]


@dataclass
class Exported:
    """What the coach read, the report's sentences, and the folder of the export."""

    digest: str
    report: str
    folder: Path

    def rows(self, table: str) -> list[Row]:
        """A file of the export, as a spreadsheet reads it."""
        with (self.folder / f"{table}.csv").open(encoding="utf-8-sig", newline="") as file:
            return list(csv.DictReader(file))

    def newest(self, table: str) -> list[Row]:
        """Without those that a later row replaces."""
        rows = self.rows(table)
        replaced = {row["replaces"] for row in rows}
        return [row for row in rows if row["id"] not in replaced]

    def lately(self, table: str, at: str = "at") -> list[Row]:
        """Those of the last seven days."""
        since = START + timedelta(days=DAYS - 7)
        return [row for row in self.newest(table) if datetime.fromisoformat(row[at]) >= since]

    def number(self, pattern: str) -> int:
        """A number of the digest."""
        found = re.search(pattern, self.digest)
        assert found is not None, self.digest
        return int(found[1])


@pytest.fixture(scope="module")
def exported(four_weeks: Stage, tmp_path_factory: pytest.TempPathFactory) -> Exported:
    stage = four_weeks
    folder = tmp_path_factory.mktemp("four-weeks")
    assert main(["export", str(folder / "out"), "--db", str(stage.engine.store.path)]) == 0
    said = io.StringIO()
    with contextlib.redirect_stdout(said):
        assert main(["report", "ruta", "--db", str(stage.engine.store.path)]) == 0
    history = [message.text for message in stage.phones[COACH].history]
    assert any(text.startswith("Report on Ruta") for text in history)
    digest = [text for text in history if text.startswith("Your week.")][-1]
    return Exported(digest, said.getvalue(), folder / "out")


def test_sessions_of_the_digest_are_those_of_the_export(exported: Exported) -> None:
    ended = [row for row in exported.lately("session_ended") if row["why"] in ("done", "time")]
    assert exported.number(r"Sessions: (\d+) of") == len(ended) > 0


def test_the_digests_share_in_range_is_that_of_the_exported_sets(exported: Exported) -> None:
    firsts = [row for row in exported.lately("set_done") if row["set_no"] == "1" and row["aim_low"]]
    ranged = [row for row in firsts if int(row["aim_low"]) < int(row["aim_high"])]
    good = sum(int(row["aim_low"]) <= int(row["reps"]) <= int(row["aim_high"]) for row in ranged)
    assert exported.number(r"Set 1 in range: (\d+)%") == round(100 * good / len(ranged))


def test_loads_moved_in_the_digest_are_those_of_the_export(exported: Exported) -> None:
    moved = [row for row in exported.lately("load_moved") if row["applied"] == "1"]
    assert exported.number(r"Loads moved: (\d+)") == sum(row["was"] != row["use"] for row in moved)


def test_the_report_counts_the_sessions_and_reps_of_sessions_csv(exported: Exported) -> None:
    mine = [row for row in exported.rows("sessions") if row["client"] == "Ruta"]
    for movement in {row["movement"] for row in mine}:
        sets = [row for row in mine if row["movement"] == movement]
        sessions, reps = len({row["session"] for row in sets}), sum(int(row["reps"]) for row in sets)
        assert f"{movement}: {sessions} sessions, {reps} reps" in exported.report


def test_days_and_loads_in_sessions_csv_are_the_clients_own(exported: Exported) -> None:
    zones = {row["id"]: row["zone"] for row in exported.rows("person")}
    done = {
        (
            row["person"],
            datetime.fromisoformat(row["done_at"]).astimezone(ZoneInfo(zones[row["person"]])).date(),
        )
        for row in exported.newest("set_done")
    }
    shown = {(row["client_id"], date.fromisoformat(row["date"])) for row in exported.rows("sessions")}
    assert shown == done
