"""The played alert: every round, the client told, the second contact takes it, a day later it is closed."""

import pytest

from bot.play import play_alert

STORY = (
    "Ruta: my left foot is numb",
    "cuffline > Coach: Ruta: tingling or numb",
    "cuffline > Ruta: Bands off now.",
    "Ruta: [Bands are off]",
    "18:09:27  cuffline > Second: Ruta: tingling or numb · not answered yet (2)",
    "18:19:27  cuffline > Ruta: Your coach could not be reached yet.",
    "Second: [I am on it]",
    "cuffline > Coach: Second is on it",
    "Tue 03 Mar 18:35:07  cuffline > Second: Still open since you took it",
    "cuffline > Ruta: Your coach has looked at it.",
)


def test_the_whole_chain_is_played_in_order(capsys: pytest.CaptureFixture[str]) -> None:
    assert play_alert() == 0
    printed, at = capsys.readouterr().out, 0
    for line in STORY:
        assert line in printed[at:], line
        at = printed.index(line, at)
