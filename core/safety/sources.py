"""Where each rule comes from, as ids. What they stand for is written in core/SOURCES.md."""

from enum import StrEnum


class Source(StrEnum):
    """One entry of core/SOURCES.md. Stored with findings: add, never rename."""

    # published
    SHINOZAKI_2023 = "shinozaki-2023"
    SCHRIGER_1988 = "schriger-1988"
    BELL_2018 = "bell-2018"
    BIELITZKI_2023 = "bielitzki-2023"
    AIS_CUFF_TIME = "ais-cuff-time"
    # common practice, own caution, memory
    REFILL_PRACTICE = "refill-practice"
    TIGHTNESS_PRACTICE = "tightness-practice"
    COLOUR_PRACTICE = "colour-practice"
    NERVE_MEMORY = "nerve-memory"
    BAND_SITE = "band-site"
    LOOSE_BANDS = "loose-bands"
    UNSEEN_REFILL = "unseen-refill"
    BAND_CHANGE = "band-change"
    CHECKS_AGAIN = "checks-again"
    CUFF_CALLS = "cuff-calls"
    QUIET_SET = "quiet-set"
