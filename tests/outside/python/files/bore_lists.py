"""The bore list: JSON against its published schema, CSV against JSON, and what both must hold."""

import csv
import json
from pathlib import Path

from jsonschema import Draft202012Validator

from .tally import Tally

SCHEMA = Path("assets/schema/bore-list.schema.json")
# Columns of the CSV that stand in the JSON at the head, at the panel and at the bore.
HEAD = ["job", "drawing_number", "revision", "face_up"]
PANEL = ["invented", "open_stops", "fingerprint", "file", "box", "box_number", "quantity", "panel", "hand", "face", "width",
         "height", "thickness", "material", "edges", "zero", "sheet_zero"]
BORE = ["number", "u", "v", "x", "y", "diameter", "depth", "purpose", "pass", "layer"]
TEXTS = {"job", "drawing_number", "revision", "file", "box", "panel", "material", "purpose", "layer"}
FORMULA = ("=", "+", "-", "@")


def only(folder: Path, ending: str) -> Path:
    found = sorted(folder.glob(f"*.{ending}"))
    if len(found) != 1:
        raise SystemExit(f"{folder} holds {len(found)} files *.{ending}")
    return found[0]


def cell(value: object) -> str:
    """How a value of the JSON stands in the CSV, apostrophe apart."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return str(value)


def check_bore_lists(tally: Tally, title: str, folder: Path) -> dict:
    """Checks both lists of a folder and returns the JSON."""
    schema = json.loads(SCHEMA.read_text(encoding="utf-8"))
    Draft202012Validator.check_schema(schema)
    document = json.loads(only(folder, "json").read_bytes().decode("utf-8"))
    errors = [error.message for error in Draft202012Validator(schema).iter_errors(document)]
    tally.check("JSON against its schema", not errors, f"{title}: {errors[:3]}")
    for wrong in ({"version": 2}, {"unit": "in"}, {"extra": 1}):
        refused = not Draft202012Validator(schema).is_valid({**document, **wrong})
        tally.check("schema refuses what is wrong", refused, wrong)

    # newline="": the reader must see line ends inside quoted cells as they are.
    with only(folder, "csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    pairs = [(panel, bore) for panel in document["panels"] for bore in panel["bores"]]
    tally.check("CSV has a row for each bore", len(rows) == len(pairs), f"{title}: {len(rows)}")
    for row, (panel, bore) in zip(rows, pairs, strict=False):
        sources = {**dict.fromkeys(HEAD, document), **dict.fromkeys(PANEL, panel), **dict.fromkeys(BORE, bore)}
        tally.check("CSV has no other columns", set(row) == set(sources), set(row) ^ set(sources))
        for column, source in sources.items():
            found, value = row[column], source[column]
            if column == "depth" and value is None:
                tally.check("CSV equals JSON", found == "through" and source["through"], found)
            elif isinstance(value, (int, float)) and not isinstance(value, bool):
                tally.check("CSV equals JSON", float(found) == value, f"{title} {column}: {found} {value}")
            else:
                text = found
                if column in TEXTS:
                    safe = not found.lstrip().startswith(FORMULA)
                    tally.check("no cell is a formula", safe, f"{title} {column}: {found!r}")
                    text = found.removeprefix("'")
                tally.check("CSV equals JSON", text == cell(value), f"{title} {column}: {found!r} {value!r}")

    for panel in document["panels"]:
        mirrored = (panel["hand"] == "right") != (document["face_up"] == "outer")
        right = panel["width"] if document["zero_corner"].endswith("right") else 0.0
        upper = panel["height"] if document["zero_corner"].startswith("upper") else 0.0
        for bore in panel["bores"]:
            # u runs from the front edge, which is at the left hand but for a right side.
            x = (panel["width"] - bore["u"] if mirrored else bore["u"]) - right
            y = panel["height"] - bore["v"] - upper
            tally.near("x and y from u and v", bore["x"], x, 3e-6, title)
            tally.near("x and y from u and v", bore["y"], y, 3e-6, title)
    files = [panel["file"].casefold() for panel in document["panels"]]
    tally.check("file names differ", len(set(files)) == len(files), files)
    return document
