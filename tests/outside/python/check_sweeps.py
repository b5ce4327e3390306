"""Holds what a door sweeps over against its poses, with shapely: nothing stands out of the hulls by
more than the bulge, and the distance to a block is that of the poses, on the safe side by no more
than the bulge (and the path tolerance)."""

import json
import sys

from shapely import STRtree
from shapely.geometry import Polygon, box

checked = 0
for line in open(sys.argv[1], encoding="utf-8"):
    case = json.loads(line)
    poses = [Polygon(corners) for corners in case["poses"]]
    bulge = max(piece["bulge"] for piece in case["pieces"])
    hulls = STRtree([Polygon(it["hull"]).buffer(it["bulge"] + 1e-6) for it in case["pieces"]])
    tree = STRtree(poses)
    for pose in poses:
        inside = hulls.query(pose, predicate="within")
        assert len(inside) > 0, f"{case['name']}: a pose stands out of the sweep: {pose}"
    for it in case["blocks"]:
        (left, low), (right, high) = it["block"]
        block = box(left, low, right, high)
        true = poses[tree.nearest(block)].distance(block)
        # A thousandth of the way between two poses: less than 1.5 mm.
        least, most = true - case["tolerance"] - 2 * bulge - 1.5, true - case["tolerance"] + 1e-6
        assert max(least, 0) <= it["gap"] <= max(most, 0), f"{case['name']}: {it}, true {true}"
        checked += 1
assert checked > 0
print(f"{checked} blocks agree")
