"""Where a helper types for the client, "she" is the client: the words as the client would have said them."""

import re

SAYS = re.compile(
    r"\b(?:she|he|they|{who})(?: just| now)? (?:says?|said|tells me|is saying|complains)(?: that| of)?\b"
)
THEM = r"\b(?:she|he|they|{who}|the client)\b(?!['’]s (?!got|been)\w+ (?:is|are|hurts?|looks?|feels?|went|has)\b)"
FAMILY = (
    r"(?:my |our )?(?:mum|mom|mam|mother|dad|father|grandma|granny|gran|nan|nana|grandmother|grandpa|grandad|granddad"
    r"|grandfather|aunt|auntie|uncle|wife|husband|partner|sister|brother)"
)
THEIRS = re.compile(r"\b(?:her|his|their)\b")
AGREES = (("I has", "I have"), ("I is", "I am"), ("I's", "I am"), ("I’s", "I am"), ("I doesn't", "I don't"))


def in_first_person(text: str, name: str) -> str:
    """ "She can't breathe" of somebody named `name` as "I can't breathe"; other words stay."""
    who = f"{FAMILY}|{re.escape(name.casefold())}"
    said = text.casefold()
    said = re.sub(SAYS.pattern.replace("{who}", who), "", said)
    said = re.sub(rf"\b(?:{who})['’]s (?=\w+ (?:is|are|hurts?|looks?|feels?|went|has)\b)", "my ", said)
    said = re.sub(THEM.replace("{who}", who), "I", said)
    said = THEIRS.sub("my", said)
    for one, other in AGREES:
        said = said.replace(one, other)
    return said.strip()
