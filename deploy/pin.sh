#!/usr/bin/env bash
# Renews deploy/constraints.txt: the versions that the tests ran with in .venv, with the hashes of all their files.
# Run it after `bash deploy/test.sh` was green with the versions you want; then run the tests and commit the file.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/setup.sh" dev

tools="$(mktemp -d)"
trap 'rm -rf "$tools"' EXIT
.venv/bin/python -m venv "$tools/venv"
"$tools/venv/bin/python" -m pip install --quiet --disable-pip-version-check pip-tools
.venv/bin/python -m pip freeze --exclude-editable >"$tools/tested.txt"
CUSTOM_COMPILE_COMMAND="bash deploy/pin.sh" "$tools/venv/bin/pip-compile" --quiet --generate-hashes --strip-extras \
    --all-build-deps --allow-unsafe --no-annotate \
    --no-emit-index-url --no-emit-find-links --no-emit-trusted-host \
    --constraint "$tools/tested.txt" --output-file "$tools/constraints.txt" pyproject.toml
cp "$tools/constraints.txt" deploy/constraints.txt

# The optional library apart, so that a machine without a ready-made file of it can leave it out.
sed -n '/^encrypted = \[/,/^\]/s/^ *"\([^"]*\)".*/\1/p' pyproject.toml >"$tools/encrypted.in"
CUSTOM_COMPILE_COMMAND="bash deploy/pin.sh" "$tools/venv/bin/pip-compile" --quiet --generate-hashes --no-annotate \
    --no-emit-index-url --no-emit-find-links --no-emit-trusted-host \
    --output-file "$tools/encrypted.txt" "$tools/encrypted.in"
cp "$tools/encrypted.txt" deploy/constraints-encrypted.txt
grep -c '==' deploy/constraints.txt
