"""Several stored names in one column: "numb,slow_refill"."""


def names_in(stored: str) -> tuple[str, ...]:
    """The names in their order; (): none."""
    return tuple(name for name in stored.split(",") if name)
