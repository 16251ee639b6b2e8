"""One client's plan in numbers, for the client or a referring clinician: pure arithmetic over facts."""

from core.report.body import checks, girths, pain_days, pain_trend
from core.report.kinds import Checks, First, GirthTrend, Movement, Pain, PainTrend, Range, Report, Taken, Week
from core.report.moving import movements
from core.report.whole import report, weeks

__all__ = [
    "Checks",
    "First",
    "GirthTrend",
    "Movement",
    "Pain",
    "PainTrend",
    "Range",
    "Report",
    "Taken",
    "Week",
    "checks",
    "girths",
    "movements",
    "pain_days",
    "pain_trend",
    "report",
    "weeks",
]
