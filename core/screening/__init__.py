"""Who may train with bands, on which limbs, and who decides. The program routes; it never diagnoses."""

from core.screening.answers import Answers, missing
from core.screening.assessment import Assessment, Due, News, after, assess, due, preview
from core.screening.before import Route, Routed, Today, missing_today, route_today
from core.screening.clearance import (
    Clearance,
    Consent,
    Refusal,
    Restriction,
    Ruling,
    refusal,
    restrictions,
)
from core.screening.grades import Finding, Tier
from core.screening.pressure import Category, category
from core.screening.questions import GROUPS, Form, Question, form_of

__all__ = [
    "GROUPS",
    "Answers",
    "Assessment",
    "Category",
    "Clearance",
    "Consent",
    "Due",
    "Finding",
    "Form",
    "News",
    "Question",
    "Refusal",
    "Restriction",
    "Route",
    "Routed",
    "Ruling",
    "Tier",
    "Today",
    "after",
    "assess",
    "category",
    "due",
    "form_of",
    "missing",
    "missing_today",
    "preview",
    "refusal",
    "restrictions",
    "route_today",
]
