"""Prints the confusion matrix: python -m tests.conversations.stopwords"""

from tests.conversations.stopwords.table import lines, matrix, score


def main() -> None:
    """The table, then the part that was written after the reader."""
    for name, table in (("table", lines()), ("held out", lines(held_out=True))):
        found = score(table)
        print(f"{name}: {found.lines} phrases; rows wanted, columns read\n{matrix(table)}")
        print(
            f"red flags missed {len(found.missed)}, read as less {len(found.weaker)}; "
            f"false stops {len(found.false)} of {found.innocent} ({found.false_percent:.1f} %)"
        )
        for line in found.wrong:
            print(f"  {line.wanted:<11} read as {line.got:<11} {line.text}")


if __name__ == "__main__":
    main()
