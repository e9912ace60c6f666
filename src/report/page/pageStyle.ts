// The style of a page in light, dark and print; nothing is fetched.

const light = `--paper:#fff;--ink:#16202a;--quiet:#55626e;--line:#d5dbe0;--panel:#f4f6f8;--link:#0072b2;
--blue:#0072b2;--green:#00795a;--orange:#b34700;--gray:#5b6670;--tint:#fdf1e8;--on:#fff;--band:#cfe3f1`;

const dark = `--paper:#12181e;--ink:#e8edf1;--quiet:#a3b0bb;--line:#33404b;--panel:#1a222a;--link:#6db9ea;
--blue:#5fb0e5;--green:#3fbf97;--orange:#f59b5c;--gray:#9aa7b2;--tint:#33241a;--on:#0c1116;--band:#1f3d52`;

const text = `*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:16px/1.5 system-ui,"Segoe UI",Roboto,"Liberation Sans",sans-serif}
.page{max-width:64rem;margin:0 auto;padding:1.5rem 1.25rem 3rem}
h1{font-size:1.6rem;line-height:1.2;margin:0 0 .75rem;overflow-wrap:anywhere}
h2{font-size:1.2rem;margin:2.5rem 0 .5rem;padding-top:.75rem;border-top:2px solid var(--ink);overflow-wrap:anywhere}
h3{font-size:1.05rem;margin:1.5rem 0 .5rem;overflow-wrap:anywhere}
p{max-width:46rem;margin:.5rem 0}
.finding{font-size:1.15rem;max-width:52rem}
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
.picture svg{display:block;width:100%;min-width:44rem;height:auto;font-size:12px}
figcaption{max-width:52rem;font-size:.95rem;margin:.5rem 0}
details{margin:.25rem 0}
summary{cursor:pointer;color:var(--link);font-size:.9rem;padding:.2rem 0}
.numbers{overflow:auto;max-height:26rem;border:1px solid var(--line)}
.numbers+.numbers{margin-top:.75rem}
table{border-collapse:collapse;font-size:.8rem;width:100%}
caption{text-align:left;padding:.3rem .5rem;color:var(--quiet)}
th,td{text-align:left;padding:.15rem .5rem;border-bottom:1px solid var(--line);vertical-align:top}
th{background:var(--panel);font-weight:600;vertical-align:bottom}
.number{text-align:right;font-variant-numeric:tabular-nums}td.number,td.date{white-space:nowrap}`;

const marks = `svg text{fill:var(--ink);stroke:var(--paper);stroke-width:3px;paint-order:stroke;stroke-linejoin:round}
svg .quiet{fill:var(--quiet)}
svg .name{font-weight:600}
.grid{stroke:var(--line)}
.base{stroke:var(--ink)}
.box{stroke:var(--paper);stroke-width:.75}
.melt,.delivery{fill:var(--blue)}
.move,.air,.cooling,.removal,.extra{fill:var(--green)}
.shift{fill:var(--gray)}
.wait{fill:var(--tint)}
.box.wait{stroke:var(--orange);stroke-width:1}
.stopped{fill:var(--ink)}
.setup,.changeover{fill:var(--orange)}
.planned{fill:var(--band)}
.off,.pause{fill:var(--line)}
.moment{stroke:var(--orange);stroke-width:3}
.rest{stroke:var(--quiet);stroke-dasharray:1 4;stroke-width:1.5}
.hatch{fill:none;stroke:var(--paper);stroke-width:1.2;opacity:.6}
.hatch.pause{stroke:var(--quiet)}
.hatch.wait{stroke:var(--orange);stroke-width:1.5;opacity:.75}
svg .on{fill:var(--on);stroke-width:4px;font-weight:600}
svg .on.melt,svg .on.delivery{stroke:var(--blue)}
svg .on.move,svg .on.air,svg .on.cooling,svg .on.removal,svg .on.extra{stroke:var(--green)}
svg .on.shift{stroke:var(--gray)}
svg .on.stopped{stroke:var(--ink)}
svg .on.setup,svg .on.changeover{stroke:var(--orange)}
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
.band{fill:var(--band)}
.mean{stroke:var(--blue);stroke-width:2}
.mark{stroke:var(--ink);stroke-width:1.5;stroke-dasharray:6 4}
.bin{fill:var(--green);stroke:var(--paper);stroke-width:.75}
.median{fill:var(--ink)}
.difference{stroke:var(--blue);stroke-width:12}`;

const printed = `@page{margin:14mm}
@media print{:root{${light}}
html{-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{font-size:10.5pt}.page{max-width:none;padding:0}
nav{display:none}
h2{break-after:avoid}figure .picture,.finding,dl{break-inside:avoid}
.picture,.numbers,pre{overflow:visible;max-height:none}
.picture svg{min-width:0}
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
  `@media (max-width:40rem){.page{padding:1rem .9rem 2rem}dl{grid-template-columns:1fr;gap:0}dd{margin-bottom:.4rem}}`,
].join("\n");
