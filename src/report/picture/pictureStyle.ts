// The style of the picture, for pages that have the style of reports too.

/** Colors come from the variables of the page, so that light, dark and print need nothing more. */
export const pictureStyle = `.scene svg{display:block;width:100%;height:auto;font-size:12px}
@media screen{.scene svg{max-height:85vh}}
.scene .resource{cursor:pointer}
.scene .steel{fill:var(--panel);stroke:var(--ink);stroke-width:1.25}
.scene .half{fill:var(--line)}
.scene .shaft{stroke-width:1}
.scene .pellets{fill:var(--blue);opacity:.35}
.scene .flight{fill:none;stroke:var(--ink);stroke-width:3}
.scene .channel,.scene .inside,.scene .hollow{fill:var(--paper);stroke:var(--ink);stroke-width:1}
.scene .channel-wall{fill:none;stroke:var(--ink);stroke-width:8}
.scene .channel-melt{fill:none;stroke:var(--band);stroke-width:5.5}
.scene .channel-melt.flowing{stroke:var(--blue)}
.scene .bar,.scene .ram,.scene .figure{fill:var(--ink)}
.scene .figure.away{fill:none;stroke:var(--quiet);stroke-dasharray:2 2}
.scene .edge,.scene .wall{fill:none;stroke:var(--paper);stroke-width:1}
.scene .wall{stroke:var(--blue);stroke-width:2.5}
.scene .arrow{fill:none;stroke:var(--ink);stroke-width:2}
.scene .set-point{stroke:var(--ink);stroke-width:2}
.scene .capacity{stroke:var(--ink);stroke-width:1.5;stroke-dasharray:3 3}
.scene .clock{fill:var(--paper);stroke:var(--ink);stroke-width:1.25}
.scene .sector{fill:none;stroke:var(--green)}
.scene .empty{fill:none;stroke:var(--quiet);stroke-dasharray:4 4}
.scene .over{stroke:var(--ink);stroke-width:2}
.scene .over-edge{stroke:var(--paper);stroke-width:5}
.scene .chosen{fill:none;stroke:var(--link);stroke-width:2}
.scene .is-chosen .name{text-decoration:underline;text-decoration-thickness:2px;text-underline-offset:2px}
.scene .mass{font-weight:600}
.scene .unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}`;
