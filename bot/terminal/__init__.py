"""What is typed in a terminal: one module a command, each with `main(options) -> exit code`.

`bot.cli` parses and imports only the module it needs, so that `cuffline run` starts fast. Exit codes: 0 good,
1 it ran and something is wrong, 2 wrong use or settings. A user's mistake raises `Wrong` with clear lines.
"""
