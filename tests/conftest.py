"""What all tests share: nothing of theirs is left in the user's own folders."""

import os
import tempfile

import pytest

# Set before anything is imported, so that commands started by tests inherit it.
for place in ("XDG_CACHE_HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME"):
    os.environ[place] = tempfile.mkdtemp(prefix="festoon-tests-")


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--long", action="store_true", help="the long form of every test that has one")
