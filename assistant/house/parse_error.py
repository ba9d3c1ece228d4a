"""What the YAML parser complains about, said for the author of a file: what is wrong and what to write
instead.
"""

from __future__ import annotations

from assistant.house.encoding import position
from assistant.house.place import Problem

_SAID = (
    ("found unexpected ':'", "a space or a value is missing after a colon; write 'name: value'"),
    ("maximum nesting depth", "nested far too deep; a tree file needs fewer than ten levels"),
    (
        "mapping values are not allowed",
        "a ': ' stands where no name can be; put the whole text in quotes, or check the indent",
    ),
    ("cannot start any token", "text can't start with this character; put it in quotes"),
    (
        "could not find expected ':'",
        "a name without its colon, or a line that is indented too little; write 'name: value'",
    ),
    ("did not find expected key", "this line does not fit in here; check the indent and closed quotes above"),
    ("expected <block end>", "this line does not fit in here; check the indent and closed quotes above"),
    ("did not find expected '-'", "a list goes on with '- ' in the same column"),
    ("expected ',' or ']'", "a list in [ ] needs a comma between its items and a ] at its end"),
    ("expected ',' or '}'", "fields in { } need a comma between them and a } at their end"),
    ("did not find expected node", "a value is missing here, or a [ or { before it is not closed"),
    ("expected the node content", "a value is missing here, or a [ or { before it is not closed"),
    ("unexpected end of stream", "a quote is not closed"),
    ("document separator", "a quote is not closed before the line '---'"),
    (
        "unknown escape",
        "an unknown escape after the backslash; write \\\\ for a backslash, or use single quotes",
    ),
    ("hexdecimal", "an escape such as \\x41 is not complete"),
    ("hexadecimal", "an escape such as \\x41 is not complete"),
    ("invalid Unicode character", "this escape names no character"),
    ("tag", "a tag (a word after !) can't be used; put the text in quotes"),
    ("directive", "remove the lines that start with %; they have no meaning here"),
    ("incompatible YAML document", "remove the lines that start with %; they have no meaning here"),
    ("anchor", "an anchor or alias (& or *) can't be used; put the text in quotes"),
    ("alias", "an anchor or alias (& or *) can't be used; put the text in quotes"),
    ("block entry", "a list item ('- ') can't stand here; start the list on a line of its own"),
    ("sequence entries", "a list item ('- ') can't stand here; start the list on a line of its own"),
    ("mapping keys are not allowed", "a '? ' can't stand here; put the text in quotes"),
    ("expected <document start>", "the file goes on after its fields have ended; check the indent"),
    (
        "did not find expected <document start>",
        "the file goes on after its fields have ended; check the indent",
    ),
    ("block scalar", "after | or > the text starts on the next line, indented"),
    ("indentation", "the indent of this line does not fit"),
)


def sentence(error: Exception, text: str, file: str) -> Problem:
    """The parser's error as a problem at its place. Never raises."""
    mark = getattr(error, "problem_mark", None) or getattr(error, "context_mark", None)
    heard = " ".join(str(getattr(error, "problem", None) or error).split())
    if "end of stream" in heard or "document separator" in heard:
        # What was never closed ends at the end of the file; the author must look where it began.
        mark = getattr(error, "context_mark", None) or mark
    if mark is not None:
        # At the end of the stream the parser counts one line more than there are.
        line, column = min((mark.line + 1, mark.column + 1), position(text, len(text)))
    else:
        at = getattr(error, "position", None)
        line, column = position(text, min(at, len(text))) if isinstance(at, int) and at >= 0 else (1, 1)
    context = str(getattr(error, "context", None) or "")
    for words, said in _SAID:
        if words in heard:
            return Problem(file, line, column, "yaml", said + _since(error, context))
    return Problem(
        file, line, column, "yaml", f"this can't be read as YAML ({heard[:200]}); check quotes and indent"
    )


def _since(error: Exception, context: str) -> str:
    """Where the thing began that is not closed: the author must look there, not at the place of the error."""
    start, end = getattr(error, "context_mark", None), getattr(error, "problem_mark", None)
    if start is None or end is None or "while" not in context or start.line == end.line:
        return ""
    return f" (it began on line {start.line + 1})"
