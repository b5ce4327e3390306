//! Checks that have another name today.

/// The name of today for the name of a check in version 1.
pub(super) fn of_today(name: &str) -> &str {
    match name {
        "door-past-its-place" => "reveal-out-of-range",
        "door-meets-ceiling" => "door-hits-ceiling",
        "door-meets-obstacle" => "door-hits-obstacle",
        "door-meets-neighbour" => "door-hits-neighbour",
        "fitting-meets-shelf" => "fitting-hits-shelf",
        "top-edge-meets-panel" => "top-edge-hits-panel",
        "box-too-low" => "opening-too-short",
        "frame-before-fitting" => "frame-blocks-fitting",
        other => other,
    }
}
