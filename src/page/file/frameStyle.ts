// The style of the page beyond that of a report: controls, timeline, chart with cursor, and words.

const frame = `.page{max-width:76rem}
.skip{position:absolute;left:.5rem;top:-4rem;padding:.4rem .8rem;background:var(--paper);z-index:2}
.skip:focus{top:.5rem}
.choices{display:flex;flex-wrap:wrap;gap:.4rem 1.5rem;align-items:center;font-size:.9rem;padding-bottom:1rem}
.choices .issues{flex-basis:100%}
main:focus{outline:none}
button,select,input{font:inherit;color:inherit}
button,select{background:var(--panel);border:1px solid var(--quiet);border-radius:.3rem;padding:.3rem .7rem;min-height:2.2rem}
button{cursor:pointer}
button:hover{border-color:var(--link)}
button[aria-disabled=true]{color:var(--quiet);border-style:dashed;cursor:default}
input[type=file]{max-width:100%}
.places{display:flex;gap:.5rem;margin:1rem 0}
.places [aria-current]{border-width:2px;border-color:var(--ink);font-weight:600}
.issues dl{margin:.2rem 0 .8rem;font-size:.9rem}
.issues p{margin:0}`;

const watch = `.watch{display:grid;grid-template-columns:minmax(0,1fr);gap:.75rem}
.stage{border:1px solid var(--line);border-radius:.4rem;padding:.5rem}
.words{min-height:9rem}
.words p{margin:.4rem 0}
.words .does{font-size:1.15rem;font-weight:600}
.words .caution{border-left:.4rem solid var(--orange);background:var(--tint);padding:.3rem .7rem}
.controls{display:flex;flex-wrap:wrap;gap:.5rem;align-items:center}
.controls .play{min-width:6rem;font-weight:600}
.timeline{display:flex;flex-wrap:wrap;gap:.25rem 1rem;align-items:center}
.timeline input{flex:1 1 14rem;min-width:0;accent-color:var(--link);height:2rem}
.timeline output{font-variant-numeric:tabular-nums;min-width:11rem;text-align:right}
.timing{margin:0}
.reel{position:relative;min-width:60rem;cursor:pointer}
.cursor{position:absolute;top:0;bottom:0;width:0;border-left:3px solid var(--orange);pointer-events:none}
.curtain{position:absolute;top:0;bottom:0;right:0;border-left:3px solid var(--ink);background:var(--panel);display:grid;place-items:center;color:var(--quiet)}
.keys dl{grid-template-columns:max-content 1fr}
kbd{font:inherit;border:1px solid var(--quiet);border-radius:.25rem;padding:0 .35rem;background:var(--panel)}
.spoken{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
@media (min-width:75rem){.watch{grid-template-columns:minmax(0,3fr) minmax(16rem,1fr)}
.watch>*{grid-column:1/-1}.watch>.stage{grid-column:1}.watch>.words{grid-column:2}}
@media (min-width:100rem){html{font-size:125%}body{font-size:1rem}}
@media (max-width:40rem){.controls button{flex:1 1 40%}.timeline output{min-width:0;text-align:left}.stage{padding:.25rem}}`;

const printed = `@media print{.skip,.choices,.controls,.timeline,.stretch,.keys,.words button,footer details,.spoken{display:none}
.watch{grid-template-columns:minmax(0,1fr)}.watch>*{grid-column:1}
.reel{min-width:0}.stage{border:0;padding:0;break-inside:avoid}.words select{border:0;background:none;appearance:none}}`;

export const frameStyle = [frame, watch, printed].join("\n");
