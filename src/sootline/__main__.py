"""`python -m sootline` is the same as `sootline`."""

import sys

from sootline.cli.main import main

sys.exit(main())
