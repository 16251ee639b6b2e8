"""`python -m bot` is `cuffline`."""

import sys

from bot.cli import main

sys.exit(main())
