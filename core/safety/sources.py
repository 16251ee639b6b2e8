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
    # screening
    NASCIMENTO_2022 = "nascimento-2022"
    EXCLUSION_LIST = "exclusion-list"
    VTE_ORTHOPAEDIC = "vte-orthopaedic"
    VTE_EUROPEAN = "vte-european"
    CAPRINI = "caprini"
    ACSM_2015 = "acsm-2015"
    ACC_AHA_2017 = "acc-aha-2017"
    TABATA_2016 = "tabata-2016"
    KACIN_2015 = "kacin-2015"
    PRESSURE_LOOK = "pressure-look"
    SCREENING_CAUTION = "screening-caution"
    CLOSED_LIMBS = "closed-limbs"
    GUARDIAN = "guardian"
    NOT_SURE = "not-sure"
    ASK_AGAIN = "ask-again"
    BEFORE_SESSION = "before-session"
