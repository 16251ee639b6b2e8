"""A plan as stored text (versioned JSON), and back."""

import msgspec

from core.plans import Plan


def plan_to_text(plan: Plan) -> str:
    """The plan as JSON."""
    return msgspec.json.encode(plan).decode()


def plan_from_text(text: str) -> Plan:
    """A stored plan. Raises ValueError when the text is no plan."""
    try:
        return msgspec.json.decode(text, type=Plan)
    except msgspec.MsgspecError as problem:
        raise ValueError(f"plan: {problem}") from None
