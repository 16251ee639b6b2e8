#!/usr/bin/env bash
# A copy of the database in a second place (best: another disk), opened, checked and restored once for practice.
# Usage: backup.sh FOLDER   (CUFFLINE_DB names the database; copies older than KEEP_DAYS, 30, go)
# The running bot makes hourly copies beside the database by itself; this one is for the day the disk dies.
set -euo pipefail
here="$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")"
cuffline="${CUFFLINE:-$here/../.venv/bin/cuffline}"
folder="${1:?say in which folder the copies are kept}"
: "${CUFFLINE_DB:?set CUFFLINE_DB to the database}"

umask 077
mkdir -p "$folder"
name="$(basename "${CUFFLINE_DB%.db}")"
file="$folder/$name-$(date -u +%Y%m%dT%H%M%SZ).db"
"$cuffline" backup "$file"
"$here/restore-drill.sh" "$file"
# The next run is a day away, give or take an hour: what would be too old by then goes now.
oldest_minutes=$(((${KEEP_DAYS:-30} - 1) * 24 * 60 - 120))
find "$folder" -maxdepth 1 -type f -name "$name-*.db*" -mmin "+$oldest_minutes" -delete
