// The style of the picture, for pages that have the style of reports too.

/** Colors come from the variables of the page, so that light, dark and print need nothing more. */
export const pictureStyle = `.scene svg{display:block;width:100%;height:auto;font-size:12px}
.scene .resource{cursor:pointer}
.steel{fill:var(--panel);stroke:var(--ink);stroke-width:1.25}
.half{fill:var(--line)}
.shaft{stroke-width:1}
.pellets{fill:var(--blue);opacity:.35}
.flight{fill:none;stroke:var(--ink);stroke-width:3}
.channel,.inside,.hollow{fill:var(--paper);stroke:var(--ink);stroke-width:1}
.channel-wall{fill:none;stroke:var(--ink);stroke-width:8}
.channel-melt{fill:none;stroke:var(--band);stroke-width:5.5}
.channel-melt.flowing{stroke:var(--blue)}
.bar,.ram,.figure{fill:var(--ink)}
.figure.away{fill:none;stroke:var(--quiet);stroke-dasharray:2 2}
.edge,.wall{fill:none;stroke:var(--ink);stroke-width:1}
.wall{stroke:var(--blue);stroke-width:2.5}
.arrow{fill:none;stroke:var(--ink);stroke-width:2}
.set-point{stroke:var(--ink);stroke-width:2}
.capacity{stroke:var(--ink);stroke-width:1.5;stroke-dasharray:3 3}
.clock{fill:var(--paper);stroke:var(--ink);stroke-width:1.25}
.sector{fill:none;stroke:var(--green)}
.empty{fill:none;stroke:var(--quiet);stroke-dasharray:4 4}
.over{stroke:var(--ink);stroke-width:2}
.over-edge{stroke:var(--paper);stroke-width:5}
.chosen{fill:none;stroke:var(--link);stroke-width:2}
.is-chosen .name{text-decoration:underline;text-decoration-thickness:2px;text-underline-offset:2px}
svg .mass{font-weight:600}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}`;
