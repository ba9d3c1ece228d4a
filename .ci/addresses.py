"""Fails on a web address in any text file of the project: it must work, and read, without a network.

The names of XML and schema vocabularies look like addresses but are only names that standards fixed; nobody
fetches them.
"""

import re
import subprocess
import sys
from pathlib import Path

ADDRESS = re.compile(r"[A-Za-z][A-Za-z0-9+.-]*:" + "//" + r"[^\s\"'<>)\]]*")
NAMES = [
    re.compile(r"xmlns(:\w+)?=\\?[\"']" + "http:" + r"//www\.w3\.org/[\w/]+\\?[\"']"),
    re.compile(r"\"\$schema\": \"" + "https:" + r"//json-schema\.org/draft/2020-12/schema\""),
]


def main():
    """Prints file, line and address of each; gives the exit code."""
    listed = subprocess.run(["git", "ls-files", "-z"], capture_output=True, check=True).stdout.split(b"\0")
    files = found = 0
    for name in sorted(entry.decode() for entry in listed if entry):
        path = Path(name)
        data = path.read_bytes() if path.is_file() else b""
        if b"\0" in data[:8192]:
            continue  # a picture or a font
        files += 1
        for number, line in enumerate(data.decode("utf-8", "replace").splitlines(), 1):
            for pattern in NAMES:
                line = pattern.sub("", line)
            for address in ADDRESS.findall(line):
                found += 1
                print(f"{name}:{number}: {address}: say what is meant by its title, number and year instead")
    print(f"{files} text files, {found} web addresses")
    return 1 if found or not files else 0


if __name__ == "__main__":
    sys.exit(main())
