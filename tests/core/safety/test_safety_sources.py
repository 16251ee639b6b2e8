"""Each rule names a source that is written down, and nothing is written down that no rule uses."""

import re
from pathlib import Path

from core.cuffs.rules import RULES as CUFF_RULES
from core.safety.aftercare import WHEN_YES as AFTERCARE_RULES
from core.safety.sources import Source
from core.screening.before import WHEN_YES as BEFORE_RULES
from core.screening.grades import WHEN_YES as SCREENING_ANSWERS
from core.screening.rules import RULES as SCREENING_RULES

CORE = Path(__file__).parents[3] / "core"
TAGS = ("read", "second-hand", "common practice", "own caution", "from memory")


def rows() -> dict[str, list[str]]:
    lines = (CORE / "SOURCES.md").read_text(encoding="utf-8").splitlines()
    cells = [[cell.strip() for cell in line.strip("|").split("|")] for line in lines if line.startswith("| ")]
    return {row[0]: row[1:] for row in cells if row[0] != "id"}


def test_the_page_and_the_ids_are_the_same() -> None:
    assert set(rows()) == {source.value for source in Source}


def test_every_entry_says_what_is_taken_from_where_and_how_sure_that_is() -> None:
    for taken, source, tag in rows().values():
        assert taken
        assert source
        assert tag.startswith(TAGS)
        if source == "-":
            assert "read" not in tag.split()


def test_every_id_is_used_by_a_rule_or_a_limit() -> None:
    texts = [path.read_text(encoding="utf-8") for path in CORE.rglob("*.py") if path.name != "sources.py"]
    used = {name for text in texts for name in re.findall(r"\bSource\.([A-Z0-9_]+)", text)}
    assert used == {source.name for source in Source}


def test_every_rule_has_a_source() -> None:
    tables = [
        CUFF_RULES.values(),
        SCREENING_RULES.values(),
        (sources for _, sources in SCREENING_ANSWERS.values()),
        (sources for _, _, sources in AFTERCARE_RULES.values()),
        ((source,) for _, source in BEFORE_RULES.values()),
    ]
    found = [sources for table in tables for sources in table]
    assert len(found) > 80
    assert all(sources and set(sources) <= set(Source) for sources in found)
