# Sourced by try.sh and test.sh: goes to the project's root and makes .venv ready.
# Usage: source setup.sh [EXTRA]   (EXTRA: an optional-dependencies group of pyproject.toml)
# Installs only when pyproject.toml changed since the last time, so a second run starts at once.
# pip's own settings (index, proxy, cache) are honoured: nothing here overrides them.

cd "$(dirname "${BASH_SOURCE[0]}")/.." || exit 1
extra="${1:-}"

find_python() {
    local candidate
    for candidate in "${PYTHON:-}" python3.13 python3.12 python3.11 python3 python; do
        [ -n "$candidate" ] && command -v "$candidate" >/dev/null 2>&1 || continue
        if "$candidate" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null; then
            echo "$candidate"
            return
        fi
    done
}

if [ ! -x .venv/bin/python ]; then
    python="$(find_python)"
    if [ -z "$python" ]; then
        echo "cuffline needs Python 3.11 or newer; set PYTHON=/path/to/python and try again." >&2
        exit 1
    fi
    "$python" -m venv .venv || {
        rm -rf .venv
        echo "Could not make .venv (on Debian: apt install python3-venv)." >&2
        exit 1
    }
fi

stamp=".venv/installed${extra:+-$extra}"
if ! cmp -s pyproject.toml "$stamp"; then
    echo "Installing cuffline into .venv (once; about a minute) ..."
    .venv/bin/python -m pip install --quiet --disable-pip-version-check \
        -e ".${extra:+[$extra]}" || exit 1
    cp pyproject.toml "$stamp"
fi
