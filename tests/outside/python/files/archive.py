"""An archive PDF, read by Apache PDFBox Preflight, which knows the file format PDF/A-1b."""

import subprocess
from pathlib import Path

from .tally import Tally

JARS = [Path("/usr/share/java") / f"{name}.jar" for name in ("preflight", "pdfbox2", "fontbox2", "xmpbox", "commons-logging", "javax.activation", "jaxb-api")]
READER = ["java", "-cp", ":".join(map(str, JARS)), "org.apache.pdfbox.preflight.Validator_A1b"]
ALL_PAGES = "cover,boxes,panels,cut-list,bore-list,fittings,templates"


def check_archive(tally: Tally, program: Path, job: str, folder: Path) -> None:
    """Every kind of page of a job (its text) as an archive PDF; then its plain PDF, which must be refused."""
    missing = [str(jar) for jar in JARS if not jar.exists()]
    if missing:
        raise SystemExit(f"Preflight is missing (apt packages: see .ci/run): {missing}")
    if 'date_of_issue: ""' not in job:
        raise SystemExit("the job has a date of issue already")
    file = folder / "archive.ron"
    file.write_text(job.replace('date_of_issue: ""', 'date_of_issue: "2026-03-04"'), encoding="utf-8")
    for pages in (ALL_PAGES, "cover"):
        for options in (["--archive"], []):
            out = folder / f"{pages.count(',')} {options}"
            command = [program, "sheets", file, "--out", out, "--pages", pages, *options]
            subprocess.run([str(word) for word in command], check=True, capture_output=True)
            said = preflight(out / "archive.pdf")
            is_archive = said == []
            tally.check("an archive PDF is what it says, a plain PDF is not", is_archive == bool(options), f"{pages} {options}: {said[:5]}")


def preflight(file: Path) -> list[str]:
    """What Preflight holds against a file; nothing when it is PDF/A-1b."""
    result = subprocess.run([*READER, str(file)], capture_output=True, text=True, check=False)
    lines = [line for line in (result.stdout + result.stderr).splitlines() if line.strip()]
    if f"The file {file.name} is a valid PDF/A-1b file" in result.stdout:
        return []
    return lines or [f"ends with {result.returncode} and says nothing"]
