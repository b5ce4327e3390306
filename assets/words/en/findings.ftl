### What checks say of a job. The place stands before each headline, so no headline repeats it.
### At most 15 words with the place; what explains it is a reason, in a text of its own.

## Bores

bores-off-fitting =
    .off = { $off } of { $all } bores off the fitting, up to { $worst }
    .missing = { $missing } of the { $all } bores for the fitting { $missing ->
            [one] is
           *[other] are
        } missing
    .also-missing = { $missing ->
            [one] 1 bore is
           *[other] { $missing } bores are
        } missing.
    .uneven = The bores of one fitting differ by { $by }; no adjustment takes that up.
    .no-adjustment = The fitting has no adjustment in that direction.
    .beyond-adjustment = That is { $times } times what the fitting can be adjusted by.
    .within-adjustment = Adjusting the fitting takes it up and uses { $share } of its travel.
    .bore = Bore { $bore } ({ $purpose }, { $side } fitting): { $way }
    .leaf-bore = { $leaf }, bore { $bore } ({ $purpose }, { $side } fitting): { $way }
    .no-bore = No bore for { $purpose } of the { $side } fitting
    .no-leaf-bore = { $leaf }: no bore for { $purpose } of the { $side } fitting
    .adjusts = The fitting adjusts the door from { $sideways_least } to { $sideways_greatest } sideways and from { $up_least } to { $up_greatest } up.
    .seen-from-front = Left and right are seen from the front; the back of the door is drawn mirrored.

bore-breaks-through =
    .through = { $bores ->
            [one] 1 bore
           *[other] { $bores } bores
        } { $depth } deep in { $thickness }: { $bores ->
            [one] breaks
           *[other] break
        } through, { $over } too deep
    .thin = { $bores ->
            [one] 1 bore
           *[other] { $bores } bores
        } { $depth } deep in { $thickness }: { $wood_left_before_the_point } left beyond the drill point
    .point-lead = A drill point { $lead } long is counted.

bore-near-edge =
    .cuts = bore { $bore } ({ $purpose }) cuts the { $edge } by { $by }
    .near = bore { $bore } ({ $purpose }) leaves { $wood_to_the_edge } to the { $edge }; at least { $wanted } wanted

bores-collide =
    .touch = bores { $first } ({ $first_purpose }) and { $second } ({ $second_purpose }) run into each other
    .near = bores { $first } ({ $first_purpose }) and { $second } ({ $second_purpose }): { $wood_between } between, at least { $wanted } wanted

bore-misses-member =
    .into-infill = bore { $bore } ({ $purpose }) reaches { $by } into the groove or the { $infill }

bore-not-in-this-material =
    .not-on-card = { $bores ->
            [one] 1 bore
           *[other] { $bores } bores
        } in { $material }; the card gives none for it

edge-distance-outside-card =
    .too-near = bore { $bore } ({ $purpose }), { $distance } from the { $edge } edge: { $under } under the least ({ $least })
    .too-far = bore { $bore } ({ $purpose }), { $distance } from the { $edge } edge: { $over } over the most ({ $greatest })

off-the-grid =
    .below = the fitting's bores lie { $below_the_grid } below the grid of the shelf bores

chain =
    .widths = the sides and the clear width
    .overlay-and-reveal = { $door }: { $edge } overlay and reveal
    .reveals-and-width = { $door }: reveals and width

rounding-drift =
    .drifts = { $wrong } of { $all } sums no longer { $wrong ->
            [one] comes
           *[other] come
        } out in 1/64 in; drift { $largest_drift }
    .sum = { $what }: { $parts } against { $whole }

side-not-symmetric =
    .differ = left and right side do not mirror each other; they need two set-ups
    .alone = { $left ->
            [one] 1 bore
           *[other] { $left } bores
        } at the left only, { $right ->
            [one] 1 bore
           *[other] { $right } bores
        } at the right only.

side-hinge-bores-on-lift-door =
    .cups = { $cups_at_the_side ->
            [one] 1 bore
           *[other] { $cups_at_the_side } bores
        } near its side edges that the lift fitting does not use
    .was-side-hung = They are up to { $largest } across. Was the door made to turn on side hinges?
    .cup = Bore { $bore } ({ $purpose }): { $diameter } across, { $from_edge } from the edge, { $down } down

## Recorded panels

bore-place =
    .blind = { $diameter } across, { $depth } deep, at u { $u }, v { $v }
    .through = { $diameter } across, through, at u { $u }, v { $v }

panel-differs =
    .size = its { $what } is { $was } and must be { $is }
    .moved = { $bores ->
            [one] 1 bore is
           *[other] { $bores } bores are
        } needed elsewhere (bore { $furthest }: { $way })
    .deeper = { $bores ->
            [one] 1 bore is
           *[other] { $bores } bores are
        } needed at another depth (bore { $furthest }: { $way })
    .missing = { $bores ->
            [one] 1 bore is
           *[other] { $bores } bores are
        } missing
    .surplus = { $bores ->
            [one] 1 bore is
           *[other] { $bores } bores are
        } no longer needed
    .redrill = bore { $bore } ({ $purpose }): needed { $way }; plug { $was }; drill { $is }
    .drill = missing ({ $purpose }): drill { $is }
    .plug = bore { $bore } ({ $purpose }): no longer needed; plug { $was }
    .sheet-moved = bore { $bore } ({ $purpose }): needed { $way }; the sheet says { $was }; now it is { $is }
    .sheet-missing = missing ({ $purpose }): now it is { $is }
    .sheet-surplus = bore { $bore } ({ $purpose }): no longer needed; the sheet says { $was }

drilled-panel-differs =
    .differs = is drilled, but { $first }
    .gone = a panel marked as drilled ({ $bores ->
            [one] 1 bore
           *[other] { $bores } bores
        }) no longer exists

stale-sheet =
    .out-of-date = its sheet is outdated: { $first }
    .revision = It was issued at revision { $revision }.
    .export-again = Export the sheet again.

mirrored-pair-differs =
    .apart = looks like { $other }, but a bore lies { $largest_difference } elsewhere
    .other-count = looks like { $other }, but has { $bores ->
            [one] 1 bore
           *[other] { $bores } bores
        }, not { $others }
    .other-diameters = looks like { $other }, but its bores have other diameters

## The closed door and its box

frame-blocks-fitting =
    .in-front = at the { $sides } the frame stands { $frame_before_the_fitting } in front of the fitting

reveal-out-of-range =
    .no-gap = the { $edge } edge has a gap of { $gap }; it does not go in
    .misses = the { $edge } edge misses its panel by { $by }
    .just-misses = the { $edge } edge ends where its panel begins
    .no-gap-below = the gap to the door below is { $gap }; they cannot both close
    .past = the { $edge } edge stands { $by } past its panel

doors-overlap =
    .overlap = lies over { $other } by { $across } across and { $up } up
    .crowd =
        { $boxes ->
            [one] one more box hangs
           *[other] { $boxes } more boxes hang
        } in this place, not compared with it

leaf-has-no-size =
    .nothing = its { $what } comes out as { $size }; nothing is left to cut
    .frame-takes-all = its { $what } comes out as { $size }; its frame alone takes { $taken_by_the_frame }

box-too-shallow =
    .less = clear depth { $clear_depth }: { $under } under the least for { $fitting } ({ $least_clear_depth })

opening-too-short =
    .less = clear height { $clear_height }: { $under } under the least for { $fitting } ({ $least_clear_height })

linkage-cannot-close =
    .no-motion = { $why }
    .mend = What to do: { $mend }.

glass-needs-safety-glass =
    .plain = { $thickness_of_the_glass } { $glass }; safety glass is recommended in a door that opens overhead
    .ask = Ask your glass supplier and your local codes.

gap-catches-fingers =
    .catches = the gap { $between } opens from { $least } to { $widest }, catching fingers
    .widths = It is { $closed } when closed; widths from { $from } to { $to } catch fingers.
    .guard = Follow the fitting's own instructions on guarding it; this is no judgement under any standard.

wide-door-sags =
    .sags = when open it sags by up to { $sag }; the limit is { $limit }
    .span = Its supports are { $span } apart; the limit is one { $ratio }th of that.

wall-fixing-reminder =
    .loaded = loaded, it can weigh { $loaded_mass }; have the fixing and the wall checked
    .parts = Box { $body }, doors { $doors }, load on shelves and bottom { $load }.

uneven-reveals =
    .differ = its { $edge } reveal is { $own }, { $others } at { $other }: { $difference_of_the_reveals } apart
    .limit = The limit is { $limit }.

## The travel of the door

door-hits-ceiling =
    .hits = hits the ceiling when opened { $from }: { $over } too high
    .near = only { $left_below_the_ceiling } free below the ceiling; at least { $wanted } wanted
    .heights = It needs { $needs } above the floor; the ceiling is at { $ceiling }.

door-hits-neighbour =
    .body = { $hits } box { $other } when opened { $met_at }
    .door = { $hits } { $other } (closed) when opened { $met_at }
    .handle = { $hits } the handle of { $other } when opened { $met_at }

door-hits-obstacle =
    .hits = { $hits } { $obstacle } when opened { $at }
    .near = { $comes } within { $gap } of { $obstacle } when opened { $at }
    .wanted = At least { $wanted } is wanted.

open-doors-meet =
    .hits = { $hits } { $other } (open) when opened { $met_at }

open-door-at-head-height =
    .in-the-way = when open, { $lowest_place } above the floor and { $stands_out } out: heads can meet it
    .limit = The limit is { $limit } above the floor.

handle-out-of-reach =
    .handle = open, its handle is { $height_of_the_grip } above the floor; at most { $limit } wanted
    .lower-edge = open, its lower edge is { $height_of_the_grip } above the floor; at most { $limit } wanted

hand-force-too-high =
    .open = takes { $largest_hand_force } to open, when opened { $at }; at most { $limit } wanted
    .close = takes { $largest_hand_force } to close, when opened { $at }; at most { $limit } wanted

leaves-meet =
    .hit = its two leaves hit each other when opened { $met_at }

top-edge-hits-panel =
    .swings = its top edge swings into the panel above when opened { $at }, rising { $rise }

fitting-hits-shelf =
    .body = the fitting's body reaches { $overlap } into the { $obstacle }
    .hits = { $hits } the { $obstacle } when opened { $met_at }

## Load and lift

door-too-heavy =
    .over = { $fitting } is rated to { $most_carried }; the door is { $over } over
    .range = Its { $what } is likely { $likely }, at least { $low }, at most { $high }.

door-too-light =
    .under = { $fitting } is rated from { $least_carried }; the door is { $under } under

size-covers-part-of-mass-range =
    .over = at its heaviest ({ $greatest_load }) { $over } over the most for { $fitting }
    .under = at its lightest ({ $least_load }) { $under } under the least for { $fitting }
    .carries = { $fitting } is rated for { $what } from { $least } to { $most }; the likely { $likely } fits.

door-outside-size-span =
    .under = { $what } { $value }: { $outside_its_span_by } under the least for { $fitting } ({ $limit })
    .over = { $what } { $value }: { $outside_its_span_by } over the most for { $fitting } ({ $limit })

lift-cannot-work =
    .cannot = { $fitting }: { $why }
    .angle-not-reached = { $fitting }: rated at { $angle_of_the_limit }, the door opens to { $end_angle }
    .from = The strut does not reach from { $from } open on.
    .mend = What to do: { $mend }.

falls-when-let-go =
    .not-open = does not stay open at { $falls_from }
    .heaviest-not-open = at its heaviest it does not stay open at { $falls_from }
    .heaviest-falls = at its heaviest it falls when let go at { $falls_from } open
    .shuts = It falls shut in { $time } and arrives at the hand with { $speed }.
    .rests = It comes down to { $at }.

springs-open =
    .rises = at its lightest it does not stay shut at { $celsius }
    .moments = Opening moment { $push } against { $friction } of friction.

one-sided-fitting-racks =
    .twists = { $card } lifts at the { $side } only; up to { $twist } twist the door
    .wide = The door is { $width } wide and only { $height } high.
    .alone = Nothing else holds the door, which is { $width } wide.

## Cards

card-example-fails =
    .distances = { $distances ->
            [one] 1 distance of its worked example comes
           *[other] { $distances } distances of its worked example come
        } out wrong by up to { $largest_difference }
    .bores = the numbers of bores of its own worked example do not come out
    .bore-count = { $face }: the example lists { $listed ->
            [one] 1 bore
           *[other] { $listed } bores
        }, the card has { $has }
    .distance = { $face }, bore { $bore } of the card, { $way }: the example says { $listed }, the card gives { $found }

card-unproved =
    .used = { $doors ->
            [one] 1 door uses
           *[other] { $doors } doors use
        } it, and no worked example proves its numbers

## Accepted findings that are back

reopened =
    .graver = It was accepted (“{ $reason }”) and is back: it was { $was } and is { $is }.
    .more = It was accepted (“{ $reason }”) and is back: it has more to say than it had.
    .worse = It was accepted (“{ $reason }”) and is back: { $number } was { $was } and is { $is }.
