// The style of the place Try: levers, before and after, variants, and the map.

const screen = `.try{display:grid;grid-template-columns:minmax(0,1fr);gap:.5rem}
.try>*{margin:0}.try h2{margin:1.25rem 0 .5rem}
.try .made{min-height:2.5em}
.try .caution{border-left:.4rem solid var(--orange);background:var(--tint);padding:.3rem .7rem;font-size:.9rem}
.try .caution p,.try .caution ul{margin:.1rem 0;max-width:none}
.try .sure{min-height:1.5em}
.axis .bars li{grid-template-columns:4rem minmax(0,1fr) 10rem}
.axis .ends{display:flex;justify-content:space-between}
.levers{display:grid;grid-template-columns:repeat(auto-fill,minmax(17rem,1fr));gap:.75rem 1.5rem;padding:.5rem 0}
.lever{display:grid;align-content:start}
.lever .name{font-weight:600}
.lever input{width:100%;min-width:0;height:2rem;accent-color:var(--link)}
.lever output{font-size:.9rem;font-variant-numeric:tabular-nums;overflow-wrap:anywhere}
.lever.moved output{font-weight:600}
.settings pre{white-space:pre-wrap;overflow-wrap:anywhere;margin:.5rem 0 0}
.variants th,.variants td{min-width:9rem;overflow-wrap:anywhere}
.variants button+button{margin-left:.4rem}
.files{list-style:none;padding:0;margin:.75rem 0}
.map select{max-width:100%}
.present{fill:none;stroke:var(--ink);stroke-width:4}`;

const printed = `@media print{.levers input,.settings .controls,.map .controls,.variants button{display:none}}`;

export const tryStyle = `${screen}\n${printed}`;
