#!/usr/bin/env bash
# Sets everything up and runs lint, types, import contracts and all tests.
# Arguments go to pytest (for example tests/core -k refill).
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/setup.sh" dev

# What is compiled is kept: else each worker and each real process compiles all of it again, half a minute together.
unset PYTHONDONTWRITEBYTECODE

bin=.venv/bin
if ! "$bin/python" -c 'import sqlcipher3' 2>/dev/null; then
    "$bin/python" -m pip install --quiet --disable-pip-version-check --only-binary sqlcipher3 -e ".[encrypted]" ||
        echo "No ready-made SQLCipher for this machine: its tests are skipped." >&2
fi
checks="$(mktemp)"
trap 'rm -f "$checks"' EXIT

static_checks() {
    "$bin/ruff" check . && "$bin/ruff" format --check . && "$bin/mypy" && "$bin/lint-imports"
}

# The static checks run beside the tests; their output waits so that the two do not mix.
static_checks >"$checks" 2>&1 &
static=$!
# Three on two cores: some tests wait for a real process and leave their core idle.
tests=0
"$bin/python" -m pytest -n 3 "$@" || tests=$?
static_status=0
wait "$static" || static_status=$?
cat "$checks"
if [ "$tests" -ne 0 ] || [ "$static_status" -ne 0 ]; then
    echo "not green: tests exit $tests, static checks exit $static_status" >&2
    exit 1
fi
