"""The lay: where every piece and strip lies on the cloth. Knows no quilts.

In reading order: `problem` (what to lay), `lay` (what was found), `refuse` and
`refuse_places` (what cannot be laid), `lay_file` (both as JSON); `ticks` (the
problem in whole numbers), `start`, `rows`, `completion` and `plain` (a lay in a
millisecond), `shares` (how a run is divided), `tries` and `improve` (the search),
`tree`, `renew` and `pursue` (a lay changed part by part), `build` and `builds`
(the exact search), `tidy` (the same lay in good order); `places`, `rest`,
`partition` and `ask` (what has its place, and what is free round it), `shuffle`
and `around` (the search there), `names` (which piece is which), `several` (runs
on several cloths); `needs`, `sums`, `tariff`, `division`, `bars`, `prices`,
`simplex`, `dual`, `beside` and `bound` (what no lay goes below); `slabs` and
`cuts` (the cut order); `solve` (all of it), `repair` (a lay after a change);
`check`, `check_cuts`, `check_places` and `fault` (the second opinion, which
shares no code with the rest).
"""
