"""python -m planlang."""

import sys

from planlang.cli import main

sys.exit(main())
