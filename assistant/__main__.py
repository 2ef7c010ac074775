"""`python -m assistant` is the command `festoon`."""

import sys

from assistant.cli import main

sys.exit(main())
