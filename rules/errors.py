"""What can be wrong with a book, as a value and as an exception."""


class BookError(Exception):
    """One mistake in a book: where it stands, what is wrong and how to mend it.

    str() gives one plain sentence, "tables.toml, [table_height]: the range runs 30, 29, 30; write low <= typical
    <= high."
    """

    def __init__(self, file: str, block: str, what: str, mend: str) -> None:
        self.file, self.block, self.what, self.mend = file, block, what, mend
        place = f"{file}, [{block}]" if block else file
        super().__init__(f"{place}: {what}; {mend}.")

    def __reduce__(self) -> tuple[type["BookError"], tuple[str, str, str, str]]:
        return BookError, (self.file, self.block, self.what, self.mend)
