"""A disk that is full and a folder that takes no files: a message, and nothing left behind."""

import os
import subprocess
from pathlib import Path

from .tally import Tally


def check_folders(tally: Tally, program: Path, job: Path, folder: Path) -> None:
    tiny = folder / "tiny"
    tiny.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", str(tiny)]
    if os.geteuid() == 0 and subprocess.run(mount, capture_output=True, check=False).returncode == 0:
        try:
            for command in (["bores"], ["sheets", "--pdf"], ["sheets", "--svg"]):
                refused(tally, program, command, job, tiny, "disk has room")
        finally:
            subprocess.run(["umount", str(tiny)], check=True)
    else:
        print("a full disk: left out, no right to mount a tiny one; tests/cli.rs has a limit on file sizes")
    # /proc takes no files, not even from an administrator.
    for command in (["bores"], ["sheets", "--svg"]):
        refused(tally, program, command, job, Path("/proc"), "cannot be written to; choose another folder")


def refused(tally: Tally, program: Path, command: list[str], job: Path, out: Path, words: str) -> None:
    arguments = [str(program), command[0], str(job), "--out", str(out), *command[1:]]
    result = subprocess.run(arguments, capture_output=True, text=True, check=False)
    where = f"{' '.join(command)} into {out}: {result.returncode} {result.stderr}"
    tally.check("a write that fails ends with 2", result.returncode == 2, where)
    tally.check("a write that fails says why", words in result.stderr, where)
    left = [name for name in os.listdir(out) if "flapwright" in name or name.endswith((".dxf", ".svg", ".pdf"))]
    tally.check("a write that fails leaves nothing", not left, left)
