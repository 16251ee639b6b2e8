"""Alerts, escalation, the morning after, pain: who must know what, and when."""
