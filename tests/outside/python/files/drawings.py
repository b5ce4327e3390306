"""DXF, read by ezdxf."""

from pathlib import Path

import ezdxf
from ezdxf import units

from .tally import Tally

# Places agree to this, mm.
TOLERANCE = 1e-6


def extended(entity) -> dict:
    """Extended data as names and values."""
    values = [tag.value for tag in entity.get_xdata("FLAPWRIGHT")]
    return dict(zip(values[::2], values[1::2], strict=True))


def check_drawings(tally: Tally, title: str, folder: Path, document: dict) -> None:
    names = {path.name for path in folder.glob("*.dxf")}
    tally.check("one DXF for each panel", names == {panel["file"] for panel in document["panels"]}, names)
    for panel in document["panels"]:
        check_panel(tally, f"{title}, {panel['file']}", folder / panel["file"], document, panel)


def check_panel(tally: Tally, title: str, path: Path, document: dict, panel: dict) -> None:
    drawing = ezdxf.readfile(path)
    auditor = drawing.audit()
    tally.check("DXF audit without errors", not auditor.errors, f"{title}: {[e.message for e in auditor.errors]}")
    tally.check("DXF audit without fixes", not auditor.fixes, f"{title}: {[e.message for e in auditor.fixes]}")
    tally.check("DXF in millimetres", drawing.units == units.MM and drawing.header["$MEASUREMENT"] == 1, title)
    space = drawing.modelspace()

    outlines = list(space.query("LWPOLYLINE"))
    if tally.check("one outline", len(outlines) == 1, title):
        outline = outlines[0]
        tally.check("outline is closed", outline.closed, title)
        tally.check("outline's layer says which edges", outline.dxf.layer == f"outline {panel['edges']}", title)
        points = [(x, y) for x, y, *_ in outline.get_points()]
        left = -panel["width"] if document["zero_corner"].endswith("right") else 0.0
        low = -panel["height"] if document["zero_corner"].startswith("upper") else 0.0
        right, high = left + panel["width"], low + panel["height"]
        corners = [(left, low), (right, low), (right, high), (left, high)]
        far = max(abs(a - b) for p, q in zip(points, corners, strict=True) for a, b in zip(p, q, strict=True))
        tally.near("outline's corners", far, 0.0, TOLERANCE, title)
        data = extended(outline)
        said = "drilled face up" if document["face_up"] == "inner" else "drilled face down, mirrored"
        tally.check("outline says how it lies", data["lies"] == said, data)
        tally.check("outline names its face", data["face"] == panel["face"], data)
        tally.near("outline gives the thickness", data["thickness"], panel["thickness"], TOLERANCE, title)

    circles = list(space.query("CIRCLE"))
    by_number = {extended(circle)["number"]: circle for circle in circles}
    numbers = {bore["number"] for bore in panel["bores"]}
    tally.check("one circle for each bore", len(circles) == len(panel["bores"]) and set(by_number) == numbers, title)
    for bore in panel["bores"]:
        circle = by_number[bore["number"]]
        where = f"{title}, bore {bore['number']}"
        tally.near("circle's place", circle.dxf.center.x, bore["x"], TOLERANCE, where)
        tally.near("circle's place", circle.dxf.center.y, bore["y"], TOLERANCE, where)
        tally.check("circle's place", circle.dxf.center.z == 0, where)
        tally.near("circle's diameter", 2 * circle.dxf.radius, bore["diameter"], TOLERANCE, where)
        tally.check("circle's layer", circle.dxf.layer == bore["layer"], where)
        tally.check("circle's layer exists", bore["layer"] in drawing.layers, where)
        data = extended(circle)
        if bore["depth"] is None:
            tally.check("depth in the extended data", data["depth"] == "through", where)
            tally.check("depth in the layer's name", "through" in bore["layer"], where)
        else:
            tally.near("depth in the extended data", data["depth"], bore["depth"], TOLERANCE, where)
            tally.check("depth in the layer's name", f"{round(bore['depth'], 4):g} deep" in bore["layer"], where)
        tally.check("face in the extended data", data["face"] == panel["face"], where)
        tally.near("u and v in the extended data", data["u"], bore["u"], TOLERANCE, where)
        tally.near("u and v in the extended data", data["v"], bore["v"], TOLERANCE, where)

    operations: dict[str, set] = {}
    for bore in panel["bores"]:
        key = (bore["diameter"], bore["depth"], bore["pass"])
        operations.setdefault(bore["layer"].casefold(), set()).add(key)
    alone = all(len(keys) == 1 for keys in operations.values())
    tally.check("a layer holds one operation", alone, f"{title}: {operations}")
    words = " ".join(text.dxf.text for text in space.query("TEXT"))
    tally.check("words name the face and the zero corner", panel["face"] in words and panel["zero"] in words, words)
    tally.check("words say that the demo is invented", "Invented" in words, words)
    tally.check("words give the fingerprint", panel["fingerprint"] in words, words)
    stop = "DO NOT DRILL" in words
    tally.check("words say that a stop is open", stop == (panel["open_stops"] > 0), f"{title}: {words}")
