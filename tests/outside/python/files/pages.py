"""The drilling sheets: PDF by pdfplumber, pypdf and poppler, PNG by Pillow, SVG by an XML parser."""

import re
import subprocess
import tempfile
import xml.etree.ElementTree as ET
from decimal import ROUND_HALF_EVEN, Decimal
from pathlib import Path

import numpy as np
import pdfplumber
import pypdf
from PIL import Image, ImageFilter

from .bore_lists import only
from .tally import Tally

POINTS = 72 / 25.4  # points to the millimetre, exactly
TOLERANCE = 0.02  # mm of paper
DPI = 150
SVG = "{http://www.w3.org/2000/svg}"
# Holes are drawn at least this wide, mm of paper; the sheet says that very small ones are enlarged.
LEAST_DIAMETER = 1.2
# ISO 216 and ASME Y14.1 (8.5 x 11 in), and the frame on them as x, y, width, height in mm from the
# lower left corner: ISO 5457 for A sizes, restated second-hand; half an inch for Letter, no source.
FRAMES = {
    (210.0, 297.0): (20.0, 10.0, 180.0, 277.0),
    (297.0, 210.0): (20.0, 10.0, 267.0, 190.0),
    (215.9, 279.4): (12.7, 12.7, 190.5, 254.0),
    (279.4, 215.9): (12.7, 12.7, 254.0, 190.5),
}
# ISO 7200 fields, restated second-hand, as the sheets name them.
FIELDS = ["Legal owner", "Document type", "Identification number", "Date of issue", "Drawn by", "Approved by",
          "Sheet", "Drilling sheet"]


class Page:
    """One page of the PDF in millimetres, origin at its upper left corner, y down."""

    def __init__(self, page) -> None:
        self.page = page
        self.width, self.height = float(page.width) / POINTS, float(page.height) / POINTS
        # Letters of words that read from the right would join those of the lines that they cross.
        level = page.filter(lambda item: item["object_type"] != "char" or abs(item["matrix"][1]) < 0.01)
        self.words = level.extract_words()
        self.text = " ".join(word["text"] for word in self.words)
        self.rects = [self.box(rect) for rect in page.rects if rect["stroke"]]
        self.lines = [self.box(line) for line in page.lines]
        # A circle comes as four Bezier curves or two, closed; other outlines of curves are filled.
        round_ones = [c for c in page.curves if c["stroke"] and not c["fill"] and len(c["pts"]) >= 6]
        self.circles = [self.circle(curve) for curve in round_ones]

    @staticmethod
    def box(item) -> tuple[float, float, float, float, float]:
        """x, y, width, height, pen."""
        x, y = item["x0"] / POINTS, item["top"] / POINTS
        return x, y, item["x1"] / POINTS - x, item["bottom"] / POINTS - y, item["linewidth"] / POINTS

    @classmethod
    def circle(cls, item) -> tuple[float, float, float]:
        """Centre and diameter."""
        x, y, width, height, _ = cls.box(item)
        if abs(width - height) > TOLERANCE:
            raise SystemExit(f"a curve of {width} by {height} mm is no circle")
        return x + width / 2, y + height / 2, width

    def rect(self, width: float, height: float, pen: float) -> list[tuple[float, ...]]:
        """The rectangles of this size and pen."""
        return [
            rect
            for rect in self.rects
            if abs(rect[2] - width) < TOLERANCE and abs(rect[3] - height) < TOLERANCE and abs(rect[4] - pen) < 0.01
        ]

    def outline(self, width: float, height: float) -> list[tuple[float, float, float, float]]:
        """x, y, width, height where four lines of the outline's pen bound a panel of this size."""
        drawn = [line for line in self.lines if abs(line[4] - 0.5) < 0.01]
        upright = [line for line in drawn if line[2] < TOLERANCE and abs(line[3] - height) < TOLERANCE]
        level = [line for line in drawn if line[3] < TOLERANCE and abs(line[2] - width) < TOLERANCE]
        near = lambda a, b: abs(a - b) < TOLERANCE
        return [
            (left[0], top[1], width, height)
            for left in upright
            for top in level
            if near(left[0], top[0])
            and near(left[1], top[1])
            and any(near(right[0], left[0] + width) and near(right[1], left[1]) for right in upright)
            and any(near(low[1], top[1] + height) and near(low[0], left[0]) for low in level)
        ]

    def scale(self) -> float | None:
        """The one scale in the title block, as a ratio."""
        low = (self.height - 60) * POINTS
        found = {word["text"] for word in self.words if word["top"] > low and re.fullmatch(r"1:\d+", word["text"])}
        return 1 / int(found.pop()[2:]) if len(found) == 1 else None

    def rows(self) -> list[list[str]]:
        """Words that stand on one line, from left to right."""
        lines: list[list] = []
        for word in sorted(self.words, key=lambda it: it["bottom"]):
            # A point of difference is far less than the pitch of any lines.
            if not lines or word["bottom"] - lines[-1][0]["bottom"] > 1:
                lines.append([])
            lines[-1].append(word)
        return [[word["text"] for word in sorted(line, key=lambda it: it["x0"])] for line in lines]


def check_document(tally: Tally, title: str, folder: Path, document: dict) -> list[str]:
    """What the PDF says of itself; returns its bookmarks."""
    reader = pypdf.PdfReader(only(folder, "pdf"))
    bookmarks = [(mark.title, reader.get_destination_page_number(mark)) for mark in reader.outline]
    order = [page for _, page in bookmarks] == list(range(len(reader.pages)))
    tally.check("a bookmark for each page", order, f"{title}: {bookmarks}")
    tally.check("PDF has a title", document["job"] in (reader.metadata.title or ""), reader.metadata)
    tally.check("PDF has an author", bool(reader.metadata.author), reader.metadata)
    check_fonts(tally, title, reader)
    names = [name for name, _ in bookmarks]
    for panel in document["panels"]:
        # A name of hundreds of letters is cut short; the panel's own name never is.
        begins, ends = plain(panel["box"])[:20], f": {panel['panel']}"
        whole = f"{panel['box']}{ends}"
        cut = len(panel["box"]) > 60
        found = [name for name in names if (begins in plain(name) and name.endswith(ends) if cut else name == whole)]
        tally.check("a page for each panel", bool(found), f"{title}: {panel['box'][:40]}: {panel['panel']}")
    return names


def plain(text: str) -> str:
    """Letters and digits alone."""
    return re.sub(r"[^0-9A-Za-z]", "", text)


def check_pages(tally: Tally, title: str, folder: Path, document: dict, with_pictures: bool) -> None:
    path = only(folder, "pdf")
    bookmarks = check_document(tally, title, folder, document)
    pictures = {ending: sorted(folder.glob(f"*.{ending}"), key=number_of) for ending in ("png", "svg")}
    for ending in ("png", "svg") if with_pictures else ("svg",):
        found = len(pictures[ending])
        tally.check(f"one {ending.upper()} for each page", found == len(bookmarks), f"{title}: {found}")
    with pdfplumber.open(path) as pdf:
        for panel in document["panels"]:
            wanted = f"{panel['box']}: {panel['panel']}"
            at = bookmarks.index(wanted)
            page = Page(pdf.pages[at])
            where = f"{title}, page {at + 1}"
            rows = page.rows()
            if at + 1 < len(bookmarks) and bookmarks[at + 1] == f"{wanted}, hole table":
                rows += Page(pdf.pages[at + 1]).rows()
            places = check_bores(tally, where, page, panel)
            check_table(tally, where, rows, panel)
            check_paper(tally, where, page)
            check_svg(tally, where, pictures["svg"][at], page, places)
            if with_pictures:
                check_png(tally, where, pictures["png"][at], page)
    if with_pictures:
        check_render(tally, title, path, pictures["png"])


def number_of(path: Path) -> int:
    return int(path.name.split("-")[0])


def check_fonts(tally: Tally, title: str, reader: pypdf.PdfReader) -> None:
    seen: dict[str, bool] = {}

    def look(resources) -> None:
        for font in (resources or {}).get("/Font", {}).values():
            font = font.get_object()
            for inner in font.get("/DescendantFonts", [font]):
                descriptor = inner.get_object().get("/FontDescriptor", {})
                descriptor = descriptor.get_object() if descriptor else {}
                held = any(f"/FontFile{kind}" in descriptor for kind in ("", "2", "3"))
                seen[str(font["/BaseFont"])] = held and "/ToUnicode" in font
        for form in (resources or {}).get("/XObject", {}).values():
            look(form.get_object().get("/Resources"))

    for page in reader.pages:
        look(page["/Resources"].get_object())
    tally.check("the PDF has fonts", bool(seen), title)
    for name, held in seen.items():
        subset = re.match(r"/[A-Z]{6}\+", name) is not None
        tally.check("fonts are embedded, cut down and give their text", held and subset, f"{title}: {name}")


def check_bores(tally: Tally, where: str, page: Page, panel: dict) -> list[tuple[float, float, float]]:
    """Every hole's circle against the list; returns the places, mm of paper."""
    scale = page.scale()
    if not tally.check("title block names one scale", scale is not None, where):
        return []
    outlines = page.outline(panel["width"] * scale, panel["height"] * scale)
    if not tally.check("one outline at scale", len(outlines) == 1, f"{where}: {outlines}"):
        return []
    tally.check("the sheet gives the fingerprint of the list", panel["fingerprint"] in page.text, where)
    left, top, width, height = outlines[0]
    places = []
    for bore in panel["bores"]:
        along = width - bore["u"] * scale if panel["hand"] == "right" else bore["u"] * scale
        x, y, size = left + along, top + bore["v"] * scale, max(bore["diameter"] * scale, LEAST_DIAMETER)
        places.append((x, y, size))
        near = [c for c in page.circles if max(abs(c[0] - x), abs(c[1] - y), abs(c[2] - size)) <= TOLERANCE]
        tally.check("a hole's circle within 0.02 mm of paper", bool(near), f"{where}: bore {bore['number']} at {x:.3f} {y:.3f}")
    zero = (left + width if panel["hand"] == "right" else left, top)
    # Circles beside the outline belong to dimension lines and to the key picture.
    inside = [
        c
        for c in page.circles
        if left - TOLERANCE <= c[0] <= left + width + TOLERANCE and top - TOLERANCE <= c[1] <= top + height + TOLERANCE
    ]
    for x, y, size in inside:
        known = [zero, *((px, py) for px, py, _ in places)]
        belongs = any(max(abs(x - px), abs(y - py)) <= TOLERANCE for px, py in known)
        tally.check("no circle without a hole", belongs, f"{where}: {x:.3f} {y:.3f} {size:.3f}")
    return places


def tenth(value: float) -> str:
    return str(Decimal(str(round(value, 6))).quantize(Decimal("0.1"), ROUND_HALF_EVEN))


def check_table(tally: Tally, where: str, rows: list[list[str]], panel: dict) -> None:
    text = " ".join(" ".join(row) for row in rows)
    for bore in panel["bores"]:
        depth = "through" if bore["depth"] is None else tenth(bore["depth"])
        place = [str(bore["number"]), tenth(bore["u"]), tenth(bore["v"])]
        drill = [tenth(bore["diameter"]), depth]
        whole = any(row[i : i + 5] == place + drill for row in rows for i in range(len(row)))
        # Rows of shelf bores have their drill in a caption above.
        short = any(row[i : i + 3] == place for row in rows for i in range(len(row)))
        caption = f"Ø{drill[0]}, depth {drill[1]}:" in text
        tally.check("a row of the hole table for each bore", whole or (short and caption), f"{where}: {place + drill}")


def check_paper(tally: Tally, where: str, page: Page) -> None:
    paper = next((p for p in FRAMES if abs(p[0] - page.width) < 0.01 and abs(p[1] - page.height) < 0.01), None)
    if not tally.check("paper of a known size", paper is not None, f"{where}: {page.width} {page.height}"):
        return
    x, y, width, height = FRAMES[paper]
    frames = page.rect(width, height, 0.7)
    at = frames and abs(frames[0][0] - x) < TOLERANCE and abs(frames[0][1] - (paper[1] - y - height)) < TOLERANCE
    tally.check("frame", len(frames) == 1 and at, f"{where}: {frames}")
    # 180 x 36 mm at the lower right; the full width where the frame is hardly wider.
    blocks = page.rect(180.0 if width > 220 else width, 36.0, 0.7)
    corner = blocks and (blocks[0][0] + blocks[0][2], blocks[0][1] + blocks[0][3])
    at = corner and abs(corner[0] - x - width) < TOLERANCE and abs(corner[1] - paper[1] + y) < TOLERANCE
    tally.check("title block", len(blocks) == 1 and at, f"{where}: {blocks}")
    for field in FIELDS:
        tally.check("fields of the title block as text", field in page.text, f"{where}: {field}")
    tally.check("the sheet says that the demo is invented", "Invented" in page.text, where)
    tally.check("scale bar of 100 mm", len(page.rect(100.0, 1.6, 0.25)) == 1, where)


def check_svg(tally: Tally, where: str, path: Path, page: Page, places: list[tuple[float, float, float]]) -> None:
    root = ET.parse(path).getroot()
    tally.check("SVG in an SVG element", root.tag == f"{SVG}svg", where)
    for side, length in (("width", page.width), ("height", page.height)):
        value = root.get(side, "")
        fits = value.endswith("mm") and abs(float(value[:-2]) - length) < 0.01
        tally.check("SVG in real millimetres", fits, f"{where}: {side} {value}")
    box = [float(part) for part in root.get("viewBox", "").split()]
    unit = [box[2] - float(root.get("width")[:-2]), box[3] - float(root.get("height")[:-2])]
    tally.check("a unit of the SVG is a millimetre", unit == [0, 0], f"{where}: {box}")
    loose = [child.tag for child in root if child.tag not in (f"{SVG}g", f"{SVG}title", f"{SVG}rect")]
    tally.check("everything is in the group of a layer", not loose, f"{where}: {loose}")
    groups = root.findall(f"{SVG}g")
    tally.check("every group names its layer", all(group.get("class") for group in groups), where)
    ids = [group.get("id") for group in groups if group.get("id")]
    tally.check("ids are unique", len(ids) == len(set(ids)), f"{where}: {ids}")
    bores = [circle for group in groups if group.get("class") == "bores" for circle in group.iter(f"{SVG}circle")]
    found = sorted((float(c.get("cx")), float(c.get("cy")), 2 * float(c.get("r"))) for c in bores)
    same = len(found) == len(places) and all(
        abs(a - b) <= TOLERANCE for f, p in zip(found, sorted(places), strict=True) for a, b in zip(f, p, strict=True)
    )
    tally.check("the holes of the SVG are those of the list", same, f"{where}: {len(found)} {len(places)}")


def check_png(tally: Tally, where: str, path: Path, page: Page) -> None:
    with Image.open(path) as picture:
        picture.load()
        # The header counts whole pixels to the metre: 5906 of them are 150.0124 dpi.
        dpi = picture.info.get("dpi", (0, 0))
        tally.check("PNG's physical size", max(abs(d - DPI) for d in dpi) < 0.02, f"{where}: {dpi}")
        size = (round(page.width / 25.4 * DPI), round(page.height / 25.4 * DPI))
        tally.check("PNG's size in pixels", picture.size == size, f"{where}: {picture.size} {size}")
        dark = np.asarray(picture.convert("L")) < 200
    bars = page.rect(100.0, 1.6, 0.25)
    if not bars:
        return
    x, y, width, height, pen = bars[0]
    pixels = DPI / 25.4
    # Along the upper edge of the bar, which is drawn with a pen of its own width.
    expected = (width + pen) * pixels
    lengths = []
    for row in range(int((y - 0.3) * pixels), int((y + 0.3) * pixels) + 1):
        run, start = 0, int((x - 2) * pixels)
        for column in range(start, int((x + width + 2) * pixels)):
            run = run + 1 if dark[row, column] else 0
            lengths.append(run)
    longest = max(lengths)
    tally.check("PNG's scale bar in pixels", abs(longest - expected) <= 1.5, f"{where}: {longest}, not {expected:.1f}")


def check_render(tally: Tally, title: str, path: Path, pictures: list[Path]) -> None:
    """Poppler's picture of the PDF against the program's own: every dark pixel of one has ink of the other near."""
    with tempfile.TemporaryDirectory() as folder:
        stem = Path(folder) / "page"
        subprocess.run(["pdftoppm", "-r", str(DPI), "-gray", "-png", str(path), str(stem)], check=True)
        renders = sorted(Path(folder).glob("*.png"))
        tally.check("poppler renders every page", len(renders) == len(pictures), f"{title}: {len(renders)}")
        for render, own in zip(renders, pictures, strict=False):
            with Image.open(render) as one, Image.open(own) as two:
                size = (max(one.width, two.width), max(one.height, two.height))
                pair = []
                for picture in (one, two):
                    canvas = Image.new("L", size, 255)
                    canvas.paste(picture.convert("L"), (0, 0))
                    pair.append(canvas)
            shares = []
            for picture, other in (pair, pair[::-1]):
                dark = np.asarray(picture) < 96
                near = np.asarray(other.filter(ImageFilter.MinFilter(5))) < 224
                shares.append(float((dark & ~near).sum()) / max(int(dark.sum()), 1))
            tally.check("two renderers agree", max(shares) < 0.002, f"{title}, {own.name}: {shares}")
            # The same measure must see a picture that lies 5 mm aside.
            moved = np.roll(np.asarray(pair[1]), round(5 / 25.4 * DPI), axis=1)
            near = np.asarray(Image.fromarray(moved).filter(ImageFilter.MinFilter(5))) < 224
            dark = np.asarray(pair[0]) < 96
            tally.check("the measure sees a shift", (dark & ~near).sum() > 0.1 * dark.sum(), f"{title}, {own.name}")
