"""What all tests share: nothing of theirs is left in the user's own folders."""

import os
import tempfile

# Set before anything is imported, so that commands started by tests inherit it.
os.environ["XDG_CACHE_HOME"] = tempfile.mkdtemp(prefix="festoon-tests-")
