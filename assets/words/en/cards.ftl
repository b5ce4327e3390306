### Cards that cannot be right, and slips of typing on them. All are clauses: no capital, no full stop.

which-number =
    .named = { $name }
    .of-pivot = { $pivot }, { $way }
    .edge-of-leaf = an edge of leaf { $number } from the top

no-motion =
    .joint-missing = the joint between the leaves has no place
    .unknown-size = the card has no size { $size }
    .number-missing = { $number } is missing for size { $size }
    .not-finite = { $number } is not a number
    .too-large = { $number } is { $value }, out of range
    .end-angle = end angle { $angle }°: it must be above 0°, at most { $most }°
    .kind-and-bodies = opening kind { $kind }, motion numbers of a { $bodies }
    .leaf-count = a { $kind } needs { $needed ->
            [one] 1 leaf
           *[other] { $needed } leaves
        }; this door has { $found }
    .empty-leaf = leaf { $number } from the top has no height or no thickness
    .no-length = { $arm }: no length, both pivots are in one place
    .pivot-in-panel = { $pivot }: { $above } inside the panel above
    .cannot-close = { $link } cannot close at { $at } open
    .arms-in-line = both arms line up with their pivots at { $at } open
    .pose-out-of-range = row { $row } of the table of poses: a number is out of range
    .poses-missing = the table of poses is empty
    .first-pose-not-closed = row 1 of the table of poses is not the closed door
    .poses-not-rising = row { $row } of the table of poses opens no further
    .one-pose = the table of poses has one row only
    .poses-end-early = the last pose, row { $row }, ends before the end angle
    .no-material = there is no material { $name }
    .not-positive = { $number } is { $value }; it must be above 0

no-drive =
    .stretched = strut { $by } too short: { $length } needed, at most { $extended }
    .crushed = strut { $by } too long: { $length } needed, at least { $compressed }
    .number = { $what } is { $value }, out of range
    .spring-missing = the spring table is empty
    .spring-out-of-range = row { $row } of the spring table: a number is out of range
    .spring-not-rising = row { $row } of the spring table is at no greater angle

mend =
    .choose-size = choose a size of the card
    .add-number = add it on the card
    .type-again = type it again
    .kind-or-numbers = change the opening kind or the motion numbers
    .door-or-card = change the door or choose another card
    .give-joint = give the place of the joint
    .check-edges = check the door's edges
    .check-pivots = check the pivots
    .lower-pivot = move the pivot down, below the panel
    .move-pivots = move the pivots or end the motion before that angle
    .add-poses = give the closed pose and at least one more
    .closed-pose-first = make the first row 0°, no shift
    .sort-rows = sort the rows by angle
    .reach-end = add rows or lower the end angle
    .add-material = add the material or choose another
    .type-moments = type the spring's moments
    .longer-strut = move an anchor or take a longer strut
    .shorter-strut = move an anchor or take a shorter strut

slip =
    .small = { $what } { $value } is small; usual are { $least } to { $most }
    .small-in-inches = { $what } { $value } is small; usual are { $least } to { $most }. It is { $instead } if inches were typed for millimetres
    .large = { $what } { $value } is large; usual are { $least } to { $most }
    .large-in-millimetres = { $what } { $value } is large; usual are { $least } to { $most }. It is { $instead } if millimetres were typed for inches
    .hole = no size is rated between { $from } and { $to } at a height of { $height }
    .inside = size { $outer } is rated for everything that size { $inner } is
    .order = size { $size } is rated for { $carries } in the middle, size { $before } before it for { $before_carries }
    .settings = size { $size } at { $at }°: { $weakest } at the weakest setting, { $strongest } at the strongest
    .body = the body runs from { $from } to { $to } for size { $size }
    .bore-outside = the bore is { $at } { $way } for size { $size }; the body runs from { $from } to { $to }
    .arm-backwards = size { $size }: pivot { $in_box } back in the box, { $on_door } on the door; the arm would reach from front to back
    .strut-in-front = the strut's anchor in the box is { $at } back, in front of the side
    .no-motion = size { $size }, door { $height } high: { $why }
    .no-drive = size { $size }, door { $height } high and { $mass }: { $why }
    .cannot-hold = size { $size } cannot hold its largest door ({ $height }, { $mass }) open: closing moment { $closing } against { $opening } of the strongest setting and { $friction } of friction

slip-remedy =
    .unit = check the unit on the data sheet
    .loads = compare the loads of these sizes with the data sheet
    .same-numbers = one of them may have the numbers of the other
    .order = put the sizes in order from light to heavy
    .settings-exchanged = weakest and strongest may be exchanged
    .top-and-bottom = top and bottom may be exchanged
    .front-and-back = front and back may be exchanged
    .front-and-back-or-box-and-door = front and back may be exchanged, or box and door
    .bore-and-body = compare bore and body with the data sheet
    .pivots = compare the pivots with the data sheet
    .strut = compare the strut with the data sheet
    .load-and-spring = compare load and spring with the data sheet, and whether they are for a pair or for one piece
