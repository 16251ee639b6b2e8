"""`cuffline advise`: one JSON object a line in, one a line out."""

import json
import re
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest

from bot.advise import main
from conversations.words.advice import CAUTIONS, QUESTIONS, REASONS
from core.progression import Caution, Question, Reason

PRESS: dict[str, Any] = {
    "id": "a1",
    "movement": "press",
    "scheme": "open",
    "resistance": {"kind": "load", "unit": "kg", "available": [10, 12.5, 15], "one_rm": 42},
    "sessions": [
        {"date": "2026-01-05", "used": 12.5, "reps": [27, 12], "reps_left": [4, 4]},
        {"date": "2026-01-08", "used": 12.5, "reps": [26, 12], "reps_left": [4, 4]},
        {
            "date": "2026-01-11", "used": 12.5, "reps": [31, 16, 8], "tightness": 7, "refill_s": 2,
            "rest_s": [30, 30], "pain": 1, "effort": 8,
        },
    ],
}  # fmt: skip
PUSH_UP: dict[str, Any] = {
    "id": 7,
    "movement": "push-up",
    "scheme": "fixed",
    "resistance": {
        "kind": "bodyweight",
        "body_mass_kg": 78,
        "rungs": [{"name": "hands high", "fraction": 0.41}, {"name": "floor"}],
    },
    "sessions": [],
}


def run(*lines: Any) -> tuple[int, list[dict[str, Any]]]:
    text = "\n".join(line if isinstance(line, str) else json.dumps(line) for line in lines)
    out = BytesIO()
    code = main(BytesIO(text.encode()), out)
    return code, [json.loads(line) for line in out.getvalue().splitlines()]


def test_a_line_is_answered_with_everything_the_contract_names() -> None:
    code, (answer,) = run(PRESS)
    assert code == 0
    assert set(answer) == {
        "id", "use", "action", "expected_reps", "first_set_80", "chance_in_range", "readings", "because",
    }  # fmt: skip
    assert (answer["id"], answer["use"], answer["action"]) == ("a1", 12.5, "hold")
    assert len(answer["expected_reps"]) == 3
    low, high = answer["first_set_80"]
    assert low <= answer["expected_reps"][0] <= high
    assert answer["readings"][0]["name"] == "load_right"
    assert answer["because"].startswith("12.5 kg fits")


def test_a_rung_comes_back_by_its_name() -> None:
    code, (answer,) = run(PUSH_UP)
    assert (code, answer["id"], answer["use"], answer["action"]) == (0, 7, "hands high", "start")


def test_pounds_come_back_as_they_were_typed() -> None:
    pounds = json.loads(json.dumps(PRESS))
    pounds["resistance"] |= {"unit": "lb", "available": [27.55, 22.1, 33.07], "one_rm": 92}
    for session in pounds["sessions"]:
        session["used"] = 27.55
    assert run(pounds)[1][0]["use"] in (22.1, 27.55, 33.07)


def wrong(**changes: Any) -> dict[str, Any]:
    return json.loads(json.dumps(PRESS)) | changes


def wrong_session(**changes: Any) -> dict[str, Any]:
    return wrong(sessions=[PRESS["sessions"][0] | changes])


def wrong_rack(**changes: Any) -> dict[str, Any]:
    return wrong(resistance=PRESS["resistance"] | changes)


BAD = [
    (wrong(scheme="pyramid"), "scheme"),
    (wrong(movement=""), "movement"),
    (wrong_rack(available=[]), "available"),
    (wrong_rack(available=[float("nan")]), "available"),
    (wrong_rack(available=[-5]), "available"),
    (wrong_rack(available=[0]), "available"),
    (wrong_rack(unit="stone"), "unit"),
    (wrong_rack(one_rm=float("nan")), "one_rm"),
    (wrong_rack(one_rm=-1), "one_rm"),
    (wrong_session(reps=[]), "reps"),
    (wrong_session(reps=[-1]), "reps"),
    (wrong_session(reps=[10_000]), "reps"),
    (wrong_session(reps=[float("nan")]), "reps"),
    (wrong_session(reps=[31.5]), "reps"),
    (wrong_session(reps=[True]), "reps"),
    (wrong_session(used="floor"), "used"),
    (wrong_session(used=float("inf")), "used"),
    (wrong_session(used=-1), "used"),
    (wrong_session(tightness=float("nan")), "tightness"),
    (wrong_session(pain=99), "pain"),
    (wrong_session(date="yesterday"), "date"),
    (wrong(sessions=PRESS["sessions"][::-1]), "date"),
    (wrong(resistance=PUSH_UP["resistance"]), "used"),
    (wrong_rack(available=["10"]), "available"),
    (wrong_rack(available=[1e300]), "available: 1e+300"),
    (wrong_rack(available=[1e-300]), "available: 1e-300"),
    (wrong_rack(one_rm=1e6), "one_rm"),
    (wrong_rack(one_rm=float("inf")), "one_rm: inf"),
    (wrong_session(used=1e-320), "used"),
    (wrong_session(used=1e9), "used"),
    (wrong_session(rest_s=[30, 30, 30]), "rest_s"),
    (wrong_session(rest_s=[-30]), "rest_s"),
    (wrong_session(refill_s=float("inf")), "refill_s: inf"),
    (wrong_session(tightness=float("nan")), "tightness: nan"),
    (wrong_session(date="9999-12-31"), "date"),
    (wrong_session(date="0001-01-01"), "date"),
    (wrong(today="9999-12-31"), "today"),
    (wrong(today="2026-01-01"), "today"),
]


@pytest.mark.parametrize(("line", "named"), BAD)
def test_a_wrong_line_names_its_field_and_the_rest_goes_on(line: dict[str, Any], named: str) -> None:
    code, answers = run(line, PUSH_UP)
    assert code == 1
    assert answers[0]["id"] == "a1"
    assert named in answers[0]["error"]
    assert answers[1]["action"] == "start"


@pytest.mark.parametrize(
    "line", ["{", "nonsense", "[]", "12", '"text"', "{}", '{"id": [1]}', "\x00", "[" * 3000]
)
def test_a_line_that_is_no_question_is_answered_all_the_same(line: str) -> None:
    code, answers = run(line, PRESS)
    assert code == 1
    assert answers[0]["error"]
    assert answers[1]["id"] == "a1"


@pytest.mark.parametrize(
    "line",
    [
        '{"id": "\\ud800", "movement": "x"}',
        '{"id": 1, "movement": "x", "scheme": "\\ud800"}',
        '{"id": 1, "unknown": ' + "[" * 200_000,
        '{"id": ' + "9" * 6_000 + "}",
        "x" * 3_000_000,
    ],
)
def test_half_characters_depths_and_huge_lines_stop_nothing(line: str) -> None:
    code, answers = run(line, PRESS)
    assert code == 1
    assert answers[0]["error"]
    assert answers[1]["id"] == "a1"


def test_what_is_no_json_is_called_so() -> None:
    assert run("hello")[1] == [
        {"id": None, "error": "line: this is no JSON (Expecting value: line 1 column 1 (char 0))"}
    ]


def test_loads_come_back_exactly_as_typed() -> None:
    for typed in (13, 12.5, 0.75, 1.25):
        line = {**PUSH_UP, "resistance": {"kind": "load", "unit": "kg", "available": [typed]}}
        assert run(line)[1][0]["use"] == typed


def test_bytes_that_are_no_text_are_answered_all_the_same() -> None:
    out = BytesIO()
    assert main(BytesIO(b"\xff\xfe\n"), out) == 1
    assert json.loads(out.getvalue())["error"]


def test_empty_lines_are_passed_over() -> None:
    assert run("", PRESS, "  ")[0] == 0
    assert len(run("", PRESS, "  ")[1]) == 1


def test_every_reason_caution_and_question_has_its_sentence() -> None:
    assert set(REASONS) == set(Reason)
    assert set(CAUTIONS) == set(Caution)
    assert set(QUESTIONS) == set(Question)
    for text in (*REASONS.values(), *CAUTIONS.values(), *QUESTIONS.values()):
        assert text.count("\n") == 0
        assert text.endswith((".", "?"))


def test_the_example_in_the_readme_is_true() -> None:
    text = (Path(__file__).parents[3] / "README.md").read_text()
    asked = re.search(r"echo '(.*)' \| cuffline advise", text)
    told = re.search(r'^\{"id":1,"use".*$', text, re.MULTILINE)
    assert asked is not None
    assert told is not None
    (answer,) = run(asked[1])[1]
    assert {**answer, "readings": []} == json.loads(told[0].replace("[...]", "[]"))


def with_key(where: tuple[str | int, ...], key: str, value: Any) -> dict[str, Any]:
    """The line with one more key, or with a key in the place of the one that it misspells."""
    line = json.loads(json.dumps(PRESS))
    inner = line
    for step in where:
        inner = inner[step]
    inner[key] = value
    return line  # type: ignore[no-any-return]


@pytest.mark.parametrize(
    ("where", "key"),
    [
        ((), "sesions"),
        ((), "openlast"),
        (("resistance",), "one_rep_max"),
        (("sessions", 0), "rep"),
        (("sessions", 2), "rep_left"),
        (("sessions", 2), "Pain"),
    ],
)
def test_a_key_that_is_not_known_is_named_and_the_rest_goes_on(
    where: tuple[str | int, ...], key: str
) -> None:
    code, (wrong, good) = run(with_key(where, key, 1), PRESS)
    assert code == 1
    assert set(wrong) == {"id", "error"}
    assert f"`{key}`" in wrong["error"]
    assert "use" in good


def test_a_misspelt_key_is_named_rather_than_the_one_that_is_missing() -> None:
    line = with_key(("sessions", 0), "rep", [27, 12])
    del line["sessions"][0]["reps"]
    _, (wrong,) = run(line)
    assert "unknown field `rep`" in wrong["error"]
    assert "sessions[0]" in wrong["error"]


def test_an_unknown_key_beside_a_number_that_is_none_is_an_error_too() -> None:
    _, (wrong,) = run(json.dumps(with_key((), "sesions", [])).replace('"one_rm": 42', '"one_rm": NaN'))
    assert "error" in wrong


def test_a_rung_has_no_other_keys() -> None:
    line = json.loads(json.dumps(PUSH_UP))
    line["resistance"]["rungs"][0]["fracton"] = 0.4
    _, (wrong,) = run(line)
    assert "`fracton`" in wrong["error"]
