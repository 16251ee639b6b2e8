"""Every strange string as the answer to every question: `python -m tests.bench.strangers [DIALOGUE...]`.

Each is typed freely and as a reply. Prints how many were tried, how many raised, what was made of a string that nobody
would read so, and which question no stored state shows.
"""

import sys
import time

from conversations.catalogue import CATALOGUE
from tests.conversations.every_question import all_questions
from tests.conversations.stored_states import stored_questions
from tests.strangers.naughty import STRINGS, wrong


def main() -> int:
    """0: nothing raised and nothing was silently wrong."""
    questions = [one for one in all_questions() if not sys.argv[1:] or one.dialogue in sys.argv]
    began, raised, misread = time.perf_counter(), 0, 0
    for question in questions:
        for text in STRINGS:
            try:
                found = wrong(question, text)
            except Exception as problem:
                raised += 1
                print(f"{question.dialogue} {question.step} {text[:40]!a}: {problem!r}")
                continue
            misread += bool(found)
            if found:
                print(f"{question.dialogue} {question.step} {text[:40]!a}: {found[0]}")
    took = time.perf_counter() - began
    tried = 2 * len(questions) * len(STRINGS)
    print(
        f"{len(questions)} questions x {len(STRINGS)} strings, typed and as a reply: {tried} answers, {took:.0f} s"
    )
    # A session's questions about counts are not put again after a restart; a test holds its phases and fields.
    new = {(one.dialogue, one.step) for one in questions if one.dialogue != "session"} - sampled()
    print(f"{raised} raised, {misread} silently wrong; questions without a stored sample: {sorted(new)}")
    return 1 if raised or misread or new else 0


def sampled() -> set[tuple[str, str]]:
    """The questions that the stored states show."""
    samples = (one for dialogue in CATALOGUE.values() for one in stored_questions(dialogue))
    return {(one.dialogue, one.step) for one in samples}


if __name__ == "__main__":
    sys.exit(main())
