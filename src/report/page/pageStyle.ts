// The style of a page in light, dark and print; nothing is fetched.

// In gray print blue is the darkest, then green, then orange areas; all words on them keep a contrast of 4.5.
const light = `--paper:#fff;--ink:#16202a;--quiet:#55626e;--line:#d5dbe0;--panel:#f4f6f8;--link:#00609c;
--blue:#0d4a80;--green:#17835a;--amber:#f2ab68;--orange:#a84300;--gray:#5b6670;--tint:#fdf1e8;--on:#fff;--onamber:#16202a;--band:#cfe3f1`;

const dark = `--paper:#12181e;--ink:#e8edf1;--quiet:#a3b0bb;--line:#33404b;--panel:#1a222a;--link:#6db9ea;
--blue:#78bdee;--green:#2fa57e;--amber:#ffd08a;--orange:#f59b5c;--gray:#9aa7b2;--tint:#33241a;--on:#0c1116;--onamber:#0c1116;--band:#1f3d52`;

const text = `*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:16px/1.5 system-ui,"Segoe UI",Roboto,"Liberation Sans",sans-serif}
.page{max-width:64rem;margin:0 auto;padding:1.5rem 1.25rem 3rem}
h1{font-size:1.05rem;line-height:1.3;margin:0;color:var(--quiet);overflow-wrap:anywhere}
h2{font-size:1.2rem;margin:2.5rem 0 .5rem;padding-top:.75rem;border-top:2px solid var(--ink);overflow-wrap:anywhere}
h3{font-size:1.05rem;margin:1.5rem 0 .5rem;overflow-wrap:anywhere}
p{max-width:46rem;margin:.5rem 0}
.finding{font-size:1.6rem;line-height:1.25;font-weight:600;max-width:56rem;margin:.75rem 0 1rem}
.warnings,.unusual{margin:1rem 0;padding:.5rem .75rem .5rem 2rem;border-left:.5rem solid var(--line);background:var(--panel);break-inside:avoid}
.warnings{border-color:var(--orange);background:var(--tint)}
.unusual{font-size:.9rem}
.quiet{color:var(--quiet)}
a{color:var(--link)}
nav{font-size:.9rem}nav ul{display:flex;flex-wrap:wrap;gap:.25rem 1.25rem;list-style:none;padding:0;margin:1rem 0}
dl{display:grid;grid-template-columns:max-content 1fr;gap:.2rem 1rem;margin:.75rem 0}
dt{color:var(--quiet)}dd{margin:0;overflow-wrap:anywhere}
:focus-visible{outline:3px solid var(--link);outline-offset:2px}
pre{overflow:auto;background:var(--panel);padding:.75rem;font-size:.85rem;line-height:1.4;border:1px solid var(--line)}
footer{margin-top:2.5rem;border-top:1px solid var(--line);color:var(--quiet);font-size:.9rem}`;

const figures = `figure{margin:1rem 0 1.5rem}
.picture{overflow-x:auto}
.picture>svg{display:block;width:100%;min-width:60rem;height:auto;font-size:12px}
.sheet{display:grid;min-width:60rem}
.sheet>svg{grid-area:1/1;display:block;height:auto;font-size:12px}
.sheet>svg:first-child{width:100%}
.sheet>.names{position:sticky;left:0;background:var(--paper)}
.legend{display:flex;flex-wrap:wrap;gap:.2rem 1.1rem;list-style:none;padding:0;margin:.5rem 0;font-size:.8rem}
.legend li{display:flex;gap:.35rem;align-items:center}
.bars{list-style:none;padding:0;margin:.5rem 0;font-size:.85rem;line-height:1.3}
.bars li{display:grid;grid-template-columns:minmax(0,4fr) minmax(0,6fr) minmax(0,5fr);gap:.1rem .75rem;align-items:center;padding:.22rem 0;break-inside:avoid}
.bars .name{font-weight:600}.bars .part .name{font-weight:400;padding-left:1rem}
.bars .head{color:var(--quiet);font-size:.8rem}
.track{display:block;overflow:visible;font-size:12px}
figcaption{max-width:52rem;font-size:.95rem;margin:.5rem 0}
details{margin:.25rem 0}
summary{cursor:pointer;color:var(--link);font-size:.9rem;padding:.2rem 0}
.numbers{overflow:auto;max-height:26rem;border:1px solid var(--line)}
.numbers+.numbers{margin-top:.75rem}
table{border-collapse:collapse;font-size:.8rem;width:100%}
caption{text-align:left;padding:.3rem .5rem;color:var(--quiet)}
th,td{text-align:left;padding:.15rem .5rem;border-bottom:1px solid var(--line);vertical-align:top}
th{background:var(--panel);font-weight:600;vertical-align:bottom}tbody th{vertical-align:top}
.number{text-align:right;font-variant-numeric:tabular-nums}td.number,td.date{white-space:nowrap}`;

const marks = `svg text{fill:var(--ink);stroke:var(--paper);stroke-width:3px;paint-order:stroke;stroke-linejoin:round}
svg .quiet{fill:var(--quiet)}
svg .name{font-weight:600}
.grid{stroke:var(--line)}
.base{stroke:var(--ink)}
.box{stroke:var(--paper);stroke-width:.75}
.melt,.delivery,.regrind{fill:var(--blue)}
.move,.air,.cooling,.removal,.extra,.good{fill:var(--green)}
.shift{fill:var(--gray)}
.wait{fill:var(--tint)}
.box.wait{stroke:var(--orange);stroke-width:1}
.stopped{fill:var(--ink)}
.setup,.changeover,.poor{fill:var(--amber)}
.planned{fill:var(--band)}
.off,.pause{fill:var(--line)}
.moment{stroke:var(--orange);stroke-width:3}
.rest{stroke:var(--quiet);stroke-dasharray:1 4;stroke-width:1.5}
.hatch{fill:none;stroke:var(--paper);stroke-width:1.2;opacity:.6}
.hatch.pause{stroke:var(--quiet)}
.hatch.setup,.hatch.changeover{stroke:var(--onamber);opacity:.45}
.hatch.regrind{stroke-width:2;opacity:.85}
.hatch.wait{stroke:var(--orange);stroke-width:1.5;opacity:.75}
svg .on{fill:var(--on);stroke-width:4px;font-weight:600}
svg .on.melt,svg .on.delivery,svg .on.regrind{stroke:var(--blue)}
svg .on.move,svg .on.air,svg .on.cooling,svg .on.removal,svg .on.extra{stroke:var(--green)}
svg .on.shift{stroke:var(--gray)}
svg .on.stopped{stroke:var(--ink)}
svg .on.setup,svg .on.changeover{fill:var(--onamber);stroke:var(--amber)}
svg .on.wait,svg .on.rest,svg .on.pause,svg .on.off{fill:var(--ink);stroke:var(--paper)}
svg .wait-name{fill:var(--orange);font-weight:600}
.path-edge{stroke:var(--paper);stroke-width:8}
.change-edge{stroke-width:5}
.change{stroke:var(--ink);stroke-width:2;stroke-linecap:square}
.path{stroke:var(--ink);stroke-width:3.5;stroke-linecap:square}
.path.tied{stroke-dasharray:5 5;stroke-linecap:butt}
.path-step{stroke:var(--ink);stroke-width:1.5}
.whisker{stroke:var(--ink);stroke-width:1.75}
.dot{fill:var(--paper);stroke:var(--ink);stroke-width:1.75}
.ring{fill:none;stroke:var(--ink);stroke-width:1.75}
.band{fill:var(--band)}
.mean{stroke:var(--blue);stroke-width:2}
.mark{stroke:var(--ink);stroke-width:1.5;stroke-dasharray:6 4}
.bin{fill:var(--green);stroke:var(--paper);stroke-width:.75}
.median{fill:var(--ink)}
.constant{stroke:var(--green);stroke-width:4}
.limit{stroke:var(--ink);stroke-width:3}
.beyond{fill:var(--tint)}
.difference{stroke:var(--blue);stroke-width:12}`;

const printed = `@page{margin:14mm}
@media print{:root{${light}}
html{-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{font-size:10.5pt}.page{max-width:none;padding:0}
nav{display:none}
h2{break-after:avoid}figure .picture,.finding,dl{break-inside:avoid}
.picture,.numbers,pre{overflow:visible;max-height:none}
.sheet,.picture>svg{min-width:0}.legend,.bars{font-size:8pt}
pre{white-space:pre-wrap;overflow-wrap:anywhere}
details:not([open]){display:none}
table{font-size:7.5pt}th,td{padding:.1rem .3rem}tr{break-inside:avoid}}`;

export const pageStyle = [
  `:root{color-scheme:light dark;${light}}`,
  `@media (prefers-color-scheme:dark){:root{${dark}}}`,
  text,
  figures,
  marks,
  printed,
  `@media (max-width:40rem){.page{padding:1rem .9rem 2rem}dl{grid-template-columns:1fr;gap:0}dd{margin-bottom:.4rem}
.finding{font-size:1.3rem}
.bars li{grid-template-columns:1fr auto;column-gap:.75rem;padding:.3rem 0}.bars .track{grid-column:1/-1;grid-row:2;margin:.2rem 0}.bars li>:last-child{text-align:right}}`,
].join("\n");
