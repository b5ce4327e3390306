### Remedies: buttons are verbs with their object; effects are clauses, no capital, no full stop.

remedy =
    .make-reveal = Make it a reveal (bores stay on the fitting)
    .bores-to-fitting = Move the bores back to the fitting
    .undo-tweak = Undo the tweak
    .take-size = Take { $fitting }
    .lower-box = Hang the box { $by } lower
    .plug-and-redrill = Plug and drill again
    .refit = Refit the opening to the drilled door
    .pack-out = Pack the fitting out to the frame
    .two-leaves = Make the door of two leaves
    .one-leaf = Make the door of one leaf
    .move-rows = Move the rows onto the fitting's grid
    .plug-cups = Plug the cups
    .even-reveals = Make the reveals even
    .top-gap = Make the top gap { $to }
    .thickness = Make the leaf { $to } thick

effect =
    .largest-offset = largest offset { $was } to { $is }
    .door-width = door width { $was } to { $is }
    .door-height = door height { $was } to { $is }
    .same-size = the door keeps its size
    .overlay = { $edge } overlay { $was } to { $is }
    .gap = { $edge } gap { $was } to { $is }
    .no-bore-moves = no bore moves in the box
    .bores-move = bores move by up to { $by } in the box, one from { $was } to { $is } below the door's top edge
    .underside = its underside goes from { $was } to { $is } above the floor
    .bores-stay = bores stay
    .packing = packing { $was } to { $is }
    .bores-move-in = the door's bores move in by { $by }
    .leaves-alike = upper and lower leaf alike, joint { $joint } below the underside above the opening, gap { $gap }
    .leaf-like-upper = one leaf, built like the upper one
    .first-shelf-bore = first shelf bore { $was } to { $is } below the top end of the side
    .fewer-bores = { $bores ->
            [one] 1 bore
           *[other] { $bores } bores
        } fewer in the list of drilled bores
    .reveal = { $edge } reveal of { $door } { $was } to { $is }
    .top-gap-grows = the top gap grows by { $by } and the door becomes as much lower
    .thickness = thickness { $was } to { $is }
    .sags-at-most = it sags by at most { $sag }
    .in-place-of = in place of { $fitting }
    .both-sides = { $door }: a fitting at both sides in place of { $fitting }
    .bores-agree = its { $bores ->
            [one] 1 bore agrees
           *[other] { $bores } bores agree
        } with the drilled panel
    .all-agree = every drilled panel of the box agrees with it
    .others-differ = { $panels ->
            [one] 1 other drilled panel still differs
           *[other] { $panels } other drilled panels still differ
        }
    .see-sizes = the sizes tab says what it is rated for
    .cut-again = cut the panel again, or make a new one
    .plug = plug { $bores ->
            [one] 1 bore
           *[other] { $bores } bores
        } as listed
    .drill = drill { $bores ->
            [one] 1 bore
           *[other] { $bores } bores
        } as listed
    .not-drilled = then the panel counts as not drilled
    .drilled-size = the door has its drilled size, its bores at most { $off } off the fitting
    .load = { $load }
    .turns = { $turns } of { $of } turns
    .bores-follow-size = the fitting's bores follow that size
