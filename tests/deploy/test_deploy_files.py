"""The files that put cuffline on a machine: what this machine can check of them."""

import os
import re
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest
from packaging.requirements import Requirement

from bot.clocks import steady

DEPLOY = Path(__file__).parents[2] / "deploy"
UNITS = ("cuffline@.service", "cuffline-backup@.service")
SETTINGS = ("config.py", "database/keyed.py", "watchdog.py")  # modules that read the environment
MOST_EXPOSED = 1.5  # of 10, as systemd-analyze counts
PIN = re.compile(
    r"^([A-Za-z0-9._-]+)==([^ ;]+)[^\\]*\\\n((?:    --hash=sha256:[0-9a-f]{64}(?: \\)?\n)+)", re.MULTILINE
)

systemd = pytest.mark.skipif(not shutil.which("systemd-analyze"), reason="no systemd here")


def run(*command: object, **environment: str) -> subprocess.CompletedProcess[str]:
    line = [str(word) for word in command]
    return subprocess.run(line, capture_output=True, text=True, env=os.environ | environment, timeout=60)


def pins(name: str = "constraints.txt") -> dict[str, str]:
    text = (DEPLOY / name).read_text()
    found = {match[1]: match[2] for match in PIN.finditer(text)}
    assert len(found) == text.count("=="), "a pin without a hash"
    return found


def test_all_that_the_program_needs_is_pinned_with_hashes_in_the_range_it_asks_for() -> None:
    asked = tomllib.loads((DEPLOY.parent / "pyproject.toml").read_text())
    needed = [
        Requirement(text) for text in asked["project"]["dependencies"] + asked["build-system"]["requires"]
    ]
    pinned = pins()
    assert needed
    for one in needed:
        assert one.specifier.contains(pinned[one.name.lower()]), one


def test_the_optional_library_is_pinned_apart() -> None:
    asked = tomllib.loads((DEPLOY.parent / "pyproject.toml").read_text())
    [needed] = map(Requirement, asked["project"]["optional-dependencies"]["encrypted"])
    assert list(pins("constraints-encrypted.txt")) == [needed.name]
    assert needed.specifier.contains(pins("constraints-encrypted.txt")[needed.name])
    assert needed.name not in pins()


@systemd
@pytest.mark.parametrize("unit", UNITS)
def test_a_unit_is_hardly_exposed(unit: str) -> None:
    found = run("systemd-analyze", "security", "--offline=true", "--no-pager", DEPLOY / unit)
    exposure = re.search(r"exposure level for .*: ([0-9.]+)", found.stdout)
    assert exposure is not None, found
    assert float(exposure[1]) <= MOST_EXPOSED


KEPT_IN = "ProtectSystem=strict ProtectHome=yes NoNewPrivileges=yes PrivateTmp=yes CapabilityBoundingSet= UMask=0077"


@pytest.mark.parametrize("unit", UNITS)
def test_a_unit_writes_in_its_own_folder_only_and_gains_no_rights(unit: str) -> None:
    """Each alone would leave the exposure below its limit."""
    lines = lines_of(unit)
    assert [line for line in KEPT_IN.split() if line not in lines] == []
    assert any(line.startswith(("User=", "DynamicUser=")) for line in lines)


def test_the_bot_sees_which_start_of_the_machine_this_is() -> None:
    """systemd.exec(5): ProcSubset=pid hides all of /proc but processes. A restart then counts time anew."""
    assert steady.BOOT_ID.is_relative_to("/proc/sys")
    assert "ProcSubset=pid" not in lines_of("cuffline@.service")


@systemd
@pytest.mark.parametrize("unit", [*UNITS, "cuffline-backup@.timer"])
def test_systemd_understands_every_line_of_a_unit(unit: str, tmp_path: Path) -> None:
    for name in (*UNITS, "cuffline-backup@.timer"):
        text = (DEPLOY / name).read_text()
        text = re.sub(r"ExecStart=\S+", "ExecStart=/bin/true", text)
        text = re.sub(r"Documentation=.*\n|EnvironmentFile=.*\n", "", text)  # not installed here
        (tmp_path / name).write_text(text)
    found = run("systemd-analyze", "verify", "--man=no", tmp_path / unit.replace("@", "@practice"))
    assert (found.returncode, found.stderr) == (0, "")


def test_the_watchdog_of_the_unit_restarts_within_90_s() -> None:
    text = (DEPLOY / "cuffline@.service").read_text()
    silent, rest = (
        int(re.findall(rf"^{name}=(\d+)$", text, re.MULTILINE)[0]) for name in ("WatchdogSec", "RestartSec")
    )
    assert silent + rest < 90
    assert "Restart=always" in text
    assert "Type=notify" in text


def test_the_nightly_copy_knows_the_key_of_an_encrypted_database() -> None:
    bot, copy = (
        re.findall(r"^EnvironmentFile=.*$", (DEPLOY / unit).read_text(), re.MULTILINE) for unit in UNITS
    )
    assert bot == copy != []


@pytest.mark.skipif(not shutil.which("nginx") or not shutil.which("openssl"), reason="no nginx here")
def test_the_proxy_example_is_understood(tmp_path: Path) -> None:
    key, cert = tmp_path / "key.pem", tmp_path / "cert.pem"
    made = run(
        *(
            "openssl",
            "req",
            "-x509",
            "-newkey",
            "rsa:2048",
            "-nodes",
            "-days",
            "2",
            "-subj",
            "/CN=bot.example.org",
        ),
        *("-keyout", key, "-out", cert),
    )
    assert made.returncode == 0, made.stderr
    text = (DEPLOY / "nginx.conf").read_text()
    text = re.sub(r"/etc/ssl/\S+/fullchain.pem", str(cert), text)
    text = re.sub(r"/etc/ssl/\S+/privkey.pem", str(key), text)
    whole = tmp_path / "nginx.conf"
    whole.write_text(
        f"pid {tmp_path}/pid;\nerror_log stderr;\nevents {{}}\nhttp {{\naccess_log off;\n{text}\n}}\n"
    )
    found = run("nginx", "-t", "-c", whole, "-p", tmp_path)
    assert found.returncode == 0, found.stderr
    assert "warn" not in found.stderr


@pytest.mark.parametrize("script", sorted(DEPLOY.glob("*.sh")), ids=lambda path: path.name)
def test_every_script_parses(script: Path) -> None:
    assert run("bash", "-n", script).returncode == 0


def test_the_image_and_the_units_know_the_same_settings() -> None:
    config = "".join((DEPLOY.parent / "bot" / name).read_text() for name in SETTINGS)
    known = set(re.findall(r'"(CUFFLINE_[A-Z_]+)"', config))
    for name in (*UNITS, "Containerfile", "compose.yaml", "cuffline.env.example", "nginx.conf"):
        used = set(re.findall(r"CUFFLINE_[A-Z_]+", (DEPLOY / name).read_text()))
        assert used <= known, name


@pytest.fixture
def program(tmp_path: Path) -> str:
    """A `cuffline` as the scripts expect it: beside a `python`."""
    folder = tmp_path / "bin"
    folder.mkdir()
    (folder / "python").symlink_to(sys.executable)
    starter = folder / "cuffline"
    starter.write_text(f'#!/bin/sh\ncd "{DEPLOY.parent}" && exec "{sys.executable}" -m bot "$@"\n')
    starter.chmod(0o755)
    return str(starter)


@pytest.fixture
def practice(tmp_path: Path, program: str) -> Path:
    """A database with something in it."""
    played = tmp_path / "practice.db"
    code = (
        "import sys; from pathlib import Path; from datetime import UTC, datetime\n"
        "from core.store.connection import Store; from core.store import people\n"
        "from core.store.people import Role\n"
        "store = Store(Path(sys.argv[1])); now = datetime(2026, 3, 2, tzinfo=UTC)\n"
        "coach = people.add(store, 1001, 'Coach', Role.COACH, 'Europe/Lisbon', now)\n"
        "people.add(store, 2001, 'Ruta', Role.CLIENT, 'Europe/Lisbon', now, coach)\n"
        "store.close()\n"
    )
    made = subprocess.run(
        [sys.executable, "-c", code, str(played)], cwd=DEPLOY.parent, capture_output=True, text=True
    )
    assert made.returncode == 0, made.stderr
    return played


def test_a_second_copy_is_made_and_restored_for_practice(
    practice: Path, program: str, tmp_path: Path
) -> None:
    copies = tmp_path / "second disk"
    done = run("bash", DEPLOY / "backup.sh", copies, CUFFLINE=program, CUFFLINE_DB=str(practice))
    assert done.returncode == 0, done.stderr
    assert "Ruta" in done.stdout
    assert done.stdout.endswith("restore drill: good\n")
    [copy] = copies.glob("practice-*.db")
    assert copy.stat().st_mode & 0o077 == 0


def test_the_drill_fails_on_a_copy_that_was_damaged(practice: Path, program: str, tmp_path: Path) -> None:
    copy = tmp_path / "copy.db"
    made = run(program, "backup", copy, CUFFLINE_DB=str(practice))
    assert made.returncode == 0, made.stderr
    assert run("bash", DEPLOY / "restore-drill.sh", copy, CUFFLINE=program).returncode == 0
    content = bytearray(copy.read_bytes())
    content[content.index(b"Ruta")] ^= 1
    copy.write_bytes(content)
    assert run("bash", DEPLOY / "restore-drill.sh", copy, CUFFLINE=program).returncode != 0


def test_old_second_copies_go_and_new_ones_stay(practice: Path, program: str, tmp_path: Path) -> None:
    """Whoever is erased is told 30 days, and the next run comes a day later."""
    copies = tmp_path / "copies"
    copies.mkdir()
    ages = {"practice": 40, "practice-x": 5, "other": 40, "practice-29": 29, "practice-28": 28}
    for name, days in ages.items():
        path = copies / f"{name}-20260101T000000Z.db"
        path.write_bytes(b"")
        at = path.stat().st_mtime - days * 86_400
        os.utime(path, (at, at))
    done = run("bash", DEPLOY / "backup.sh", copies, CUFFLINE=program, CUFFLINE_DB=str(practice))
    assert done.returncode == 0, done.stderr
    left = {name for name in ages if (copies / f"{name}-20260101T000000Z.db").exists()}
    assert left == {"practice-x", "other", "practice-28"}


def lines_of(name: str) -> list[str]:
    """Of a file in `deploy`, without remarks."""
    text = (DEPLOY / name).read_text()
    return [line.strip() for line in text.splitlines() if not line.strip().startswith("#")]


def test_the_image_runs_as_nobody_special_with_one_volume_and_a_health_check() -> None:
    """What no test here can build: the words that make it so."""
    last = lines_of("Containerfile")
    last = last[max(at for at, line in enumerate(last) if line.startswith("FROM ")) :]
    assert [line for line in last if line.startswith("USER ")] == ["USER cuffline"]
    assert any("useradd --uid 10001" in line for line in last)
    assert [line for line in last if line.startswith("VOLUME ")] == ["VOLUME /data"]
    assert sum(line.startswith("HEALTHCHECK --") for line in last) == 1
    assert any("CUFFLINE_ALIVE_FILE=/tmp/alive" in line for line in last)
    assert any("/tmp/alive" in line for line in last if line.startswith("CMD ["))


def test_the_image_installs_pinned_libraries_only() -> None:
    installs = [line for line in lines_of("Containerfile") if "pip install" in line]
    assert len(installs) == 3
    assert all("--require-hashes" in line or "--no-deps --no-build-isolation ." in line for line in installs)


def test_the_container_has_a_read_only_root_and_no_rights() -> None:
    compose = lines_of("compose.yaml")
    for line in ("read_only: true", "cap_drop: [ALL]", 'security_opt: ["no-new-privileges:true"]'):
        assert line in compose
    assert compose[compose.index("volumes:") + 1] == "- data:/data"
    assert not any(line.startswith("ports:") for line in compose)
    assert "restart: always" in compose
