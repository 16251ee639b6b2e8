"""The coach makes a plan: template, loads owned, starting loads, side, days; every part may be changed."""
