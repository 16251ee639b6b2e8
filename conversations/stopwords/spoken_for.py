"""Where a helper types for the client, "she" is the client: the words as the client would have said them."""

import re

# With `who` where the names go.
SAYS = r"\b(?:she|he|they|{who})(?: just| now)? (?:says?|said|tells me|is saying|complains)(?: that| of)?\b"
DOES = r"(?:is|are|hurts?|looks?|feels?|went|has)\b"  # after "mum's leg", which is not "mum is"
THEM = rf"\b(?:she|he|they|{{who}}|the client)\b(?!['’]s (?!got|been)\w+ {DOES})"
HERS = rf"\b(?:{{who}})['’]s (?=\w+ {DOES})"
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
    for wording, own in ((SAYS, ""), (HERS, "my "), (THEM, "I")):
        said = re.sub(wording.replace("{who}", who), own, said)
    said = THEIRS.sub("my", said)
    for one, other in AGREES:
        said = said.replace(one, other)
    return said.strip()
