"""Several names in one column are read by one function."""

import ast
from pathlib import Path

import pytest

from core.stored_names import names_in

ROOT = Path(__file__).parent.parent.parent
MAY = {"core/stored_names.py", "bot/config.py"}  # the environment is typed by people, with spaces
TYPED = ("conversations/answers", "conversations/dates", "conversations/equipment/loads.py")


@pytest.mark.parametrize(
    ("stored", "names"),
    [("", ()), ("numb", ("numb",)), ("numb,slow_refill", ("numb", "slow_refill")), (",arms,", ("arms",))],
)
def test_names_keep_their_order_and_nothing_is_no_name(stored: str, names: tuple[str, ...]) -> None:
    assert names_in(stored) == names


def test_nobody_else_splits_a_stored_list() -> None:
    files = [file for top in ("bot", "core", "conversations") for file in (ROOT / top).rglob("*.py")]
    assert files
    found = [
        str(file.relative_to(ROOT))
        for file in files
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8")))
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Attribute)
        and node.func.attr == "split"
        and [getattr(one, "value", None) for one in node.args] == [","]
    ]
    assert [name for name in found if name not in MAY and not name.startswith(TYPED)] == []
