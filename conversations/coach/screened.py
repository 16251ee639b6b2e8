"""A finished screening as a coach reads it: what mattered first, each with its rule, the answers and the source."""

from collections.abc import Sequence

from conversations.words import clearing as words
from conversations.words.screening import RULES
from core.screening import Answers, Assessment, Finding, Question, category, preview
from core.screening.answers import pressure_of
from core.screening.questions import PRESSURE_QUESTIONS

Said = Sequence[tuple[str, str]]  # question and answer, by their stored names


def assessed(said: Said) -> Assessment:
    """What the rules make of stored answers; answers that no longer fit are left out."""
    answers = Answers()
    for name, answer in said:
        try:
            answers = answers.plus(Question(name), answer)
        except ValueError:  # a question or an answer of another release
            continue
    return preview(answers)


def findings(said: Said) -> dict[str, Finding]:
    """What the rules find in stored answers, by rule."""
    return {finding.rule: finding for finding in assessed(said).findings}


def mattered(rules: Sequence[str], said: Said) -> str:
    """A line for each rule that had something to say, the strictest first."""
    known = findings(said)
    return "\n".join(_line(rule, known.get(rule), dict(said)) for rule in rules) or words.NOTHING


def _line(rule: str, finding: Finding | None, said: dict[str, str]) -> str:
    called = RULES.get(rule, rule.replace("_", " "))
    if finding is None:
        return words.RULE.format(rule=called)
    answers = "; ".join(_answered(name, said[name]) for name in finding.answers if name in said)
    sources = ", ".join(words.SOURCES[source] for source in finding.sources)
    return words.RULE_WITH_SOURCE.format(rule=called, answers=answers, sources=sources)


def _answered(name: str, said: str) -> str:
    """One answer; a blood pressure with its published name."""
    reading = pressure_of(said) if name in PRESSURE_QUESTIONS else None
    if reading is None:
        return words.answered(name, said)
    called = words.CATEGORIES[category(*reading)]
    return words.answered(name, words.READING.format(said=said, category=called))


def short(age: str, said: Said) -> str:
    """ "74 years, 70 kg, 172 cm.": who it is, on a line of its own; "" where none of it is known."""
    known = {"age": age, **dict(said)}
    numbers = {name: known.get(name, "").removesuffix(".0") for name in words.SHORT}
    parts = [words.SHORT[name].format(number) for name, number in numbers.items() if number[:1].isdigit()]
    return f"{', '.join(parts)}.\n" if parts else ""


def rest(rules: Sequence[str], said: Said) -> str:
    """Answers other than "no" that no rule rests on."""
    known = findings(said)
    used = {name for rule in rules if rule in known for name in known[rule].answers}
    left = [(name, answer) for name, answer in said if name not in used and _matters(name, answer)]
    return "; ".join(_answered(name, answer) for name, answer in left)


def _matters(name: str, said: str) -> bool:
    """Whether an answer is worth a word; a group's "yes" stands with its details."""
    return said not in ("no", "") and name not in words.PLAIN_FACTS and (name[:4], said) != ("any_", "yes")


def all_answers(client_name: str, said: Said) -> str:
    """Every answer of the screening, a line each."""
    lines = [f"- {_answered(name, answer)}" for name, answer in said]
    return "\n".join([words.ALL_HEAD.format(name=client_name), *(lines or [words.NOTHING])])
