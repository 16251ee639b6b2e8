"""Every strange string as the answer to every question: `python -m tests.bench.strangers`.

Prints how many answers were tried, how many raised, and what was made of a string that nobody would read so.
"""

import sys
import time

from tests.strangers.naughty import STRINGS, all_questions, wrong


def main() -> int:
    """0: nothing raised and nothing was silently wrong."""
    questions = all_questions()
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
    tried = len(questions) * len(STRINGS)
    print(f"{len(questions)} questions x {len(STRINGS)} strings = {tried} answers in {took:.0f} s")
    print(f"{raised} raised, {misread} silently wrong")
    return 1 if raised or misread else 0


if __name__ == "__main__":
    sys.exit(main())
