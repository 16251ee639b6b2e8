"""The shape of the house: what may import what, and what stands at the top."""

import ast
from pathlib import Path

ROOT = Path(__file__).parent.parent
TOP_LEVEL = set(
    ["README.md", "DEVELOPERS.md", "pyproject.toml", "bot", "core", "conversations", "tests", "deploy"]
)
EFFECTS = set(
    [
        "telegram",
        "tornado",
        "apscheduler",
        "asyncio",
        "sqlite3",
        "sqlite_utils",
        "httpx",
        "aiohttp",
        "time",
        "socket",
    ]
)


def sources(package: str) -> list[Path]:
    found = sorted((ROOT / package).rglob("*.py"))
    assert found, f"no files under {package}: the check would pass on nothing"
    return found


def imported(path: Path) -> set[str]:
    names: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            names.add(node.module)
    return names


def roots(path: Path) -> set[str]:
    return {name.split(".")[0] for name in imported(path)}


def test_the_top_level_is_what_the_readme_promises() -> None:
    listing = [p for p in ROOT.iterdir() if not p.name.startswith(".") and not p.name.endswith(".egg-info")]
    visible = {p.name for p in listing if p.name != "__pycache__"}
    assert visible == TOP_LEVEL


def test_dialogues_hold_no_effects() -> None:
    for path in sources("conversations"):
        assert not roots(path) & EFFECTS, path


def test_rules_hold_no_effects_outside_the_store() -> None:
    for path in sources("core"):
        if "store" not in path.parts:
            assert not roots(path) & EFFECTS, path


def test_nobody_asks_the_wall_clock_outside_the_clock() -> None:
    forbidden = ("datetime.now(", "time.time(", "utcnow(", "date.today(", "datetime.today(")
    for package in ("core", "conversations", "bot"):
        for path in sources(package):
            if path.name in ("clock.py", "steady.py"):
                continue
            text = path.read_text(encoding="utf-8")
            assert not [word for word in forbidden if word in text], path
