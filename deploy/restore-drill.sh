#!/usr/bin/env bash
# Restores a backup into an empty place and looks whether a practice could go on from it. Touches nothing else.
# Usage: restore-drill.sh BACKUP   exit 0: it could; anything else: it could not, and why is said.
set -euo pipefail
here="$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")"
cuffline="${CUFFLINE:-$here/../.venv/bin/cuffline}"
backup="$(readlink -f "${1:?say which backup}")"

umask 077
place="$(mktemp -d)"
trap 'rm -rf "$place"' EXIT
export CUFFLINE_DB="$place/restored.db"

"$cuffline" restore "$backup"
findings="$("$cuffline" check --offline --json || true)"  # a bare place has no backups of its own; that one may be wrong
if printf '%s' "$findings" | "$(dirname "$cuffline")/python" -c '
import json, sys
wrong = [one for one in json.load(sys.stdin) if one["what"] in ("database", "zones") and not one["ok"]]
sys.exit("\n".join(one["says"] for one in wrong) or None)
'; then
    "$cuffline" clients
    echo "restore drill: good"
else
    echo "restore drill: FAILED for $backup" >&2
    exit 1
fi
