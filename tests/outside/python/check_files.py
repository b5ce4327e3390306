"""Reads every file that the program writes with readers that had no part in writing it.

    python check_files.py path/to/flapwright

Run from the root of the repository. README.md says what is compared. Each check adds to a count of
passes; the last line is `N passed, M failed`, and the exit code is 1 when anything fails.
"""

import argparse
import os
import subprocess
import sys
import tempfile
from pathlib import Path

from files.bore_lists import check_bore_lists
from files.drawings import check_drawings
from files.folders import check_folders
from files.pages import check_pages
from files.tally import Tally

DEMO = Path("assets/demo/houseboat-galley.ron")


def variants(folder: Path) -> list[tuple[str, Path]]:
    """The demo job on two papers, with names that try to break a file, and with a slip in it."""
    text = DEMO.read_text(encoding="utf-8")
    jobs = [("A4", text), ("Letter", text.replace("paper: A4", "paper: Letter"))]
    odd = text
    for plain, name in [
        ("mugs", "../../mugs/=1+1"),
        ("plates", "=SUM(A1) \\u{1F6A2}"),
        ("spices", "@\\u{202E}secips\\u{202C}" + "x" * 300),
        ("charts", "=SUM(A1) \\u{1F6A2}"),
    ]:
        if f'name: "{plain}"' not in odd:
            raise SystemExit(f"the demo has no box {plain}")
        odd = odd.replace(f'name: "{plain}"', f'name: "{name}"', 1)
    jobs.append(("odd names", odd))
    tweaked = DEMO.with_name("houseboat-galley-tweaked.ron").read_text(encoding="utf-8")
    jobs.append(("with a slip", tweaked))
    made = []
    for number, (name, job) in enumerate(jobs):
        path = folder / f"job{number}.ron"
        path.write_text(job, encoding="utf-8")
        made.append((name, path))
    return made


def run(program: Path, *arguments: object) -> subprocess.CompletedProcess:
    words = [str(program), *map(str, arguments)]
    result = subprocess.run(words, capture_output=True, text=True, encoding="utf-8", check=False)
    if result.returncode != 0:
        raise SystemExit(f"{' '.join(words)} ends with {result.returncode}: {result.stderr}")
    return result


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawTextHelpFormatter)
    parser.add_argument("program", type=Path)
    program = parser.parse_args().program.resolve()
    tally = Tally()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        for number, (title, job) in enumerate(variants(folder)):
            out = folder / f"out{number}"
            run(program, "bores", job, "--out", out)
            turned = folder / f"turned{number}"
            run(program, "bores", job, "--out", turned, "--zero", "upper-right", "--face-up", "outer",
                "--layers", "drill {diameter} / {depth}".replace(" /", " to") + " {purpose}")
            sheets = folder / f"sheets{number}"
            run(program, "sheets", job, "--out", sheets, "--pdf", "--svg", "--png", "--dpi", "150")
            lists = check_bore_lists(tally, title, out)
            check_drawings(tally, title, out, lists)
            other = check_bore_lists(tally, f"{title}, turned", turned)
            check_drawings(tally, f"{title}, turned", turned, other)
            check_pages(tally, title, sheets, lists)
        check_folders(tally, program, DEMO, folder)
    return tally.close()


if __name__ == "__main__":
    os.environ.pop("DISPLAY", None)
    sys.exit(main())
