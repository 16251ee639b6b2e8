"""Settings: what is missing or malformed is said at the start, one line each, and secrets are never shown."""

import re
from pathlib import Path

import pytest

from bot.config import Wrong, from_environment, misspelt

SECRET = "k" * 32
GOOD = {"CUFFLINE_TOKEN": "12:abc_DEF-3", "CUFFLINE_COACH": "1111,2222"}
HOOK = GOOD | {"CUFFLINE_WEBHOOK": "https://example.org/hook", "CUFFLINE_WEBHOOK_SECRET": SECRET}


def wrong_names(environment: dict[str, str]) -> list[str]:
    with pytest.raises(Wrong) as wrong:
        from_environment(environment)
    return [line.partition(":")[0] for line in wrong.value.lines]


def test_nothing_set_names_all_that_is_needed() -> None:
    assert wrong_names({}) == ["CUFFLINE_TOKEN", "CUFFLINE_COACH"]


def test_good_settings_are_read() -> None:
    config = from_environment(GOOD)
    assert config.coaches == (1111, 2222)
    assert (config.webhook, config.ping_url) == ("", "")
    assert config.db == Path("cuffline.db")


def test_a_webhook_is_read_with_its_listening_address() -> None:
    config = from_environment(HOOK | {"CUFFLINE_LISTEN": "[::1]:9000"})
    assert (config.webhook, config.listen, config.webhook_secret) == (
        "https://example.org/hook",
        ("::1", 9000),
        SECRET,
    )
    assert from_environment(HOOK).listen == ("127.0.0.1", 8443)


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("CUFFLINE_WEBHOOK", "http://example.org/hook"),
        ("CUFFLINE_WEBHOOK", "example.org"),
        ("CUFFLINE_WEBHOOK", "https://[bad"),
        ("CUFFLINE_WEBHOOK_SECRET", ""),
        ("CUFFLINE_WEBHOOK_SECRET", "k" * 31),
        ("CUFFLINE_WEBHOOK_SECRET", "k" * 257),
        ("CUFFLINE_WEBHOOK_SECRET", "k" * 40 + "!"),
        ("CUFFLINE_LISTEN", "8443"),
        ("CUFFLINE_LISTEN", "127.0.0.1:"),
        ("CUFFLINE_LISTEN", "127.0.0.1:65536"),
        ("CUFFLINE_PING_URL", "ping me"),
        ("CUFFLINE_API_URL", "https://[bad"),
        ("CUFFLINE_TZ", "Nowhere/Else"),
        ("CUFFLINE_DB", "/no/such/folder/x.db"),
        ("CUFFLINE_DB", "/"),
        ("CUFFLINE_COACH", "1111,coach"),
        ("CUFFLINE_TOKEN", "abc"),
    ],
)
def test_each_malformed_setting_is_named(name: str, value: str) -> None:
    assert wrong_names(HOOK | {name: value}) == [name]


def test_plain_http_is_only_for_a_server_on_this_machine() -> None:
    local = HOOK | {"CUFFLINE_WEBHOOK": "http://127.0.0.1:9/h", "CUFFLINE_API_URL": "http://127.0.0.1:8081"}
    assert from_environment(local).webhook == "http://127.0.0.1:9/h"


def test_settings_never_show_a_secret() -> None:
    shown = repr(from_environment(HOOK | {"CUFFLINE_PING_URL": "https://example.org/ping-me-1234"}))
    assert not any(secret in shown for secret in ("abc_DEF-3", SECRET, "ping-me-1234"))


@pytest.mark.parametrize(
    ("name", "value", "said"),
    [
        ("CUFFLINE_COACH", "1111; 2222", "'1111; 2222' is no number"),
        ("CUFFLINE_COACH", "1111,@mara", "'@mara' is no number"),
        ("CUFFLINE_TZ", "lisbon", "is Europe/Lisbon meant?"),
        ("CUFFLINE_TZ", "europe/lisbon", "is Europe/Lisbon meant?"),
        ("CUFFLINE_TZ", "New York", "is America/New_York meant?"),
    ],
)
def test_what_is_wrong_with_a_setting_is_shown(name: str, value: str, said: str) -> None:
    with pytest.raises(Wrong) as wrong:
        from_environment(GOOD | {name: value})
    assert said in wrong.value.lines[0]


def test_a_coach_named_twice_is_one_coach() -> None:
    assert from_environment(GOOD | {"CUFFLINE_COACH": "1111, 1111"}).coaches == (1111,)
    assert from_environment(GOOD | {"CUFFLINE_COACH": "1111,2222,1111"}).coaches == (1111, 2222)


def test_a_misspelt_name_is_found_and_every_setting_of_the_example_is_known() -> None:
    assert misspelt({"CUFFLINE_BACKUP": "/x", "HOME": "/"}) == [
        "CUFFLINE_BACKUP: there is no such setting; is CUFFLINE_BACKUPS meant?"
    ]
    example = (Path(__file__).parents[3] / "deploy" / "cuffline.env.example").read_text(encoding="utf-8")
    named = re.findall(r"CUFFLINE_[A-Z_]+", example)
    assert named
    assert misspelt(dict.fromkeys(named, "")) == []
