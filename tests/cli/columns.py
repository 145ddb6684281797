"""columns.py WIDTH - whether no line of standard input is wider on a screen."""
import sys
import unicodedata


def width(line):
    return sum(0 if unicodedata.combining(c) else 2 if unicodedata.east_asian_width(c) in "WF" else 1 for c in line)


limit = int(sys.argv[1])
wide = [line for line in sys.stdin.buffer.read().decode("utf-8").splitlines() if width(line) > limit]
for line in wide:
    print(line)
sys.exit(bool(wide))
