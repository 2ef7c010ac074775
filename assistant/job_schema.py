"""The job book's tables, version by version: a file of any older version is brought up to the newest when it is opened.

Each step runs once, in its own transaction together with the number that says it was taken (SQLite's user_version).
"""

import sqlite3

APPLICATION = 0x46455354  # "FEST": tells a job book from any other SQLite file (PRAGMA application_id)

STEPS = (
    # 1: jobs and their turns. `summary` is empty while a job holds no piece; `words` is what is searched, case folded.
    """
    CREATE TABLE jobs (
        id INTEGER PRIMARY KEY, name TEXT, made REAL NOT NULL, changed REAL NOT NULL,
        summary TEXT NOT NULL DEFAULT '', words TEXT NOT NULL DEFAULT ''
    );
    CREATE TABLE turns (
        job INTEGER NOT NULL REFERENCES jobs(id) ON DELETE CASCADE, place INTEGER NOT NULL,
        said TEXT NOT NULL, at REAL NOT NULL, PRIMARY KEY (job, place)
    ) WITHOUT ROWID;
    """,
    # 2: jobs put away can come back, and the newest are found without looking through all.
    """
    ALTER TABLE jobs ADD COLUMN deleted REAL;
    CREATE INDEX newest ON jobs (changed DESC, id DESC) WHERE deleted IS NULL;
    """,
    # 3: quotes, with the figures given, the book's version and the house rules in force.
    """
    CREATE TABLE quotes (
        id INTEGER PRIMARY KEY, job INTEGER NOT NULL REFERENCES jobs(id) ON DELETE CASCADE,
        at REAL NOT NULL, figures TEXT NOT NULL, book TEXT NOT NULL, house TEXT NOT NULL
    );
    CREATE INDEX quotes_of ON quotes (job, at);
    """,
    # 4: what finished jobs really used, each for a lesson of the rule book; and what a job was last worked out by.
    """
    CREATE TABLE used (
        id INTEGER PRIMARY KEY, job INTEGER NOT NULL REFERENCES jobs(id) ON DELETE CASCADE, at REAL NOT NULL,
        lesson TEXT NOT NULL, kind TEXT NOT NULL, used REAL NOT NULL, expected REAL NOT NULL,
        low REAL NOT NULL, high REAL NOT NULL, said TEXT NOT NULL
    );
    ALTER TABLE jobs ADD COLUMN book TEXT NOT NULL DEFAULT '';
    ALTER TABLE jobs ADD COLUMN house TEXT NOT NULL DEFAULT '';
    """,
)
NEWEST = len(STEPS)


class NotAJobBook(Exception):
    """The file is SQLite's, but another program's, or of a newer festoon (`newer`)."""

    def __init__(self, *, newer: bool) -> None:
        super().__init__("newer" if newer else "another program's")
        self.newer = newer


def bring_up(connection: sqlite3.Connection, newest: int = NEWEST) -> None:
    """Make the tables, or bring those of an older version up to `newest`; NotAJobBook, sqlite3.Error.

    The connection is in autocommit mode. Two programs may do so at once: the second finds it done.
    """
    version = _version(connection)
    while version < newest:
        connection.execute("BEGIN IMMEDIATE")
        try:
            version = _version(connection)
            if version < newest:
                for statement in STEPS[version].split(";"):
                    connection.execute(statement)
                connection.execute(f"PRAGMA application_id = {APPLICATION}")
                connection.execute(f"PRAGMA user_version = {version + 1}")
                version += 1
            connection.execute("COMMIT")
        except BaseException:
            if connection.in_transaction:
                connection.execute("ROLLBACK")
            raise


def _version(connection: sqlite3.Connection) -> int:
    application = int(connection.execute("PRAGMA application_id").fetchone()[0])
    version = int(connection.execute("PRAGMA user_version").fetchone()[0])
    tables = int(connection.execute("SELECT count(*) FROM sqlite_master").fetchone()[0])
    if tables and application != APPLICATION:
        raise NotAJobBook(newer=False)
    if version > NEWEST:
        raise NotAJobBook(newer=True)
    return version
