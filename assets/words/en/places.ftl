### Where something is. Names that people gave are said as they are.

place =
    .within = { $of_box }, { $part }
    .of = the { $part } of { $of_box }

box-name =
    .only = { $name }
    .one-of-several = { $name } (box { $number })

part-name =
    .left-side = left side
    .right-side = right side
    .top = top
    .bottom = bottom
    .back = back
    .frame = face frame
    .fixed-shelf = fixed shelf
    .fixed-shelf-of-several = fixed shelf { $number } from the top
    .loose-shelf = loose shelf
    .loose-shelf-of-several = loose shelf { $number } from the top
    .divider = divider
    .divider-of-several = divider { $number } from the left
    .opening = opening
    .opening-of-several = opening { $number } from the top
    .door = door
    .door-of-several = door { $number } from the top
    .upper-leaf = { $door }, upper leaf
    .lower-leaf = { $door }, lower leaf
    .obstacle = { $name }
    .card = card { $name }
    .job = job
