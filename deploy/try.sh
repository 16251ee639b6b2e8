#!/usr/bin/env bash
# Sets everything up and opens the practice room: cuffline with both chats in one page, no token, no network.
# Arguments go to `cuffline try` (for example --port 8100 --open).
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/setup.sh" ""
exec .venv/bin/cuffline try "$@"
