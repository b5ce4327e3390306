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

from files.archive import check_archive
from files.bore_lists import check_bore_lists
from files.drawings import check_drawings
from files.folders import check_folders
from files.pages import check_document, check_pages
from files.tally import Tally

DEMO = Path("assets/demo/houseboat-galley.ron")


def odd(text: str) -> str:
    """The job with names that try to leave the folder, to break a file or to hide each other."""
    for plain, name in [
        ("mugs", "../../mugs/=1+1"),
        ("plates", "=SUM(A1) \\u{1F6A2}"),
        ("spices", "@\\u{202E}secips\\u{202C}" + "x" * 300),
        ("charts", "=SUM(A1) \\u{1F6A2}"),
    ]:
        if f'name: "{plain}"' not in text:
            raise SystemExit(f"the demo has no box {plain}")
        text = text.replace(f'name: "{plain}"', f'name: "{name}"', 1)
    return text


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
    demo = DEMO.read_text(encoding="utf-8")
    slip = DEMO.with_name("houseboat-galley-tweaked.ron").read_text(encoding="utf-8")
    jobs = {"A4": demo, "Letter": demo.replace("paper: A4", "paper: Letter"), "odd names": odd(demo), "slip": slip}
    panels = ["--pages", "panels"]
    with tempfile.TemporaryDirectory() as name:
        for title, text in jobs.items():
            folder = Path(name) / title
            folder.mkdir()
            job = folder / "job.ron"
            job.write_text(text, encoding="utf-8")
            run(program, "bores", job, "--out", folder / "bores")
            document = check_bore_lists(tally, title, folder / "bores")
            check_drawings(tally, title, folder / "bores", document)
            if title == "A4":
                options = ["--zero", "upper-right", "--face-up", "outer", "--layers", "{purpose} {diameter} to {depth}"]
                run(program, "bores", job, "--out", folder / "turned", *options)
                turned = check_bore_lists(tally, "turned", folder / "turned")
                check_drawings(tally, "turned", folder / "turned", turned)
                run(program, "sheets", job, "--out", folder / "sheets", "--pdf", "--svg", "--png", "--dpi", "150", *panels)
                check_pages(tally, title, folder / "sheets", document, with_pictures=True)
            elif title == "Letter":
                run(program, "sheets", job, "--out", folder / "sheets", "--pdf", "--svg", *panels)
                check_pages(tally, title, folder / "sheets", document, with_pictures=False)
            elif title == "odd names":
                run(program, "sheets", job, "--out", folder / "sheets", "--pdf", *panels)
                check_document(tally, title, folder / "sheets", document)
        # A sign that the font lacks is refused there: tests of `export`.
        check_archive(tally, program, odd(demo).replace("\\u{1F6A2}", "\u00df"), Path(name))
        check_folders(tally, program, DEMO, Path(name))
    return tally.close()


if __name__ == "__main__":
    os.environ.pop("DISPLAY", None)
    sys.exit(main())
