### What is said of fittings and their sizes. Reasons are clauses: no capital, no full stop.

fitting-name =
    .size = { $card }, size { $size }

load-name =
    .mass = mass
    .moment = lift moment at { $at }

reason =
    .load = { $what } { $low } to { $high }, likely { $likely }; rated from { $least } to { $most }
    .no-load-given = no rating for { $what } { $value }, only from { $from } to { $to }
    .angle-not-reached = the lift moment is limited at { $at } and the door opens only to { $end }
    .under = { $what } { $value }: { $by } under the least ({ $limit })
    .over = { $what } { $value }: { $by } over the most ({ $limit })
    .too-little = { $what } { $value }: { $by } under the least ({ $least })
    .beyond-adjustment = the door must move { $by } { $way } and the fitting adjusts by { $most }
    .adjustment = moving the door { $by } { $way } leaves { $left } of adjustment
    .folding-leaves = upper leaf { $upper }, lower leaf { $lower }, heights { $ratio } to 1
    .too-strong = even the weakest setting lifts more than this door weighs
    .too-weak = even the strongest setting lifts less than this door weighs
    .turns = { $likely } of { $of } turns balance the door ({ $low } to { $high } over its mass range)
    .turns-light = { $likely } of { $of } turns balance the door ({ $low } to { $high } over its mass range); if it is light, even the weakest setting is too strong
    .turns-heavy = { $likely } of { $of } turns balance the door ({ $low } to { $high } over its mass range); if it is heavy, even the strongest setting is too weak
    .turns-both = { $likely } of { $of } turns balance the door ({ $low } to { $high } over its mass range); if it is light, even the weakest setting is too strong; if it is heavy, even the strongest is too weak
    .falls-from-open = the heaviest door falls from open at { $celsius }: closing moment { $closing } against { $friction } of friction
    .rises-from-closed = the lightest door does not stay shut at { $celsius }: opening moment { $opening } against { $friction } of friction
    .no-motion = { $why }; { $mend }
    .no-drive = { $why }; { $mend }

advice =
    .no-card = No card of this job is for this opening kind.
    .suits-well = { $fitting } suits this door: its whole { $what } range lies well inside the rating.
    .suits-near = { $fitting } suits this door: its whole { $what } range lies inside the rating, near a limit.
    .turns = Set it to { $turns } of { $of } turns.
    .at-limit = { $fitting } is at its limit: { $why }.
    .unsuitable = { $fitting } does not suit this door: { $why }.
    .nearest = Nearest is { $fitting }: { $why }.
    .no-better = No other size does better.
    .none-fully = No size fits fully.
    .none = No size of any card suits this door.

proof =
    .proved = proved: its own worked example comes out
    .no-example = not proved: it has no worked example; type the one on its data sheet
    .fails = not proved: { $distances ->
            [one] 1 distance of its own worked example does
           *[other] { $distances } distances of its own worked example do
        } not come out; compare it with its data sheet
