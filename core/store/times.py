"""Times at rest: integer milliseconds since 1970 UTC. Aware datetimes everywhere else."""

from datetime import UTC, datetime, timedelta

EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
MILLISECOND = timedelta(milliseconds=1)


def ms(moment: datetime) -> int:
    """Milliseconds since 1970 UTC, rounded down. Raises ValueError for a naive time."""
    if moment.tzinfo is None:
        raise ValueError("moment: a time needs its zone")
    return (moment - EPOCH) // MILLISECOND


def due_ms(value: datetime | None) -> int | None:
    """A due time rounded up, None for None: what is due then is not a fraction of a millisecond early."""
    return None if value is None else -(-(value - EPOCH) // MILLISECOND)


def moment(milliseconds: int) -> datetime:
    """The UTC time of stored milliseconds."""
    return EPOCH + milliseconds * MILLISECOND


def maybe_ms(value: datetime | None) -> int | None:
    """`ms`, with None for None."""
    return None if value is None else ms(value)


def maybe_moment(milliseconds: int | None) -> datetime | None:
    """`moment`, with None for None."""
    return None if milliseconds is None else moment(milliseconds)
