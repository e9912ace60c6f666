// The style of the place Learn: exercises, drills and the sheet to print.

const screen = `.lesson{display:grid;grid-template-columns:minmax(0,1fr);gap:.75rem}
.lesson .watch{grid-template-columns:minmax(0,1fr)}
.lesson .watch>.stage{grid-column:1/-1}
.lesson>*,.lessons{margin:0}
.lesson h2:focus,.verdict:focus{outline:none}
.lesson>button{justify-self:start}
.lessons{padding-left:0;list-style:none;display:grid;gap:.4rem;justify-items:start}
.lessons button{text-align:left}
.exercise{border:1px solid var(--line);border-radius:.4rem;padding:.75rem;background:var(--panel)}
.exercise fieldset{border:0;padding:0;margin:0 0 .75rem}
.exercise legend{font-weight:600;padding:0}
.exercise label{display:block;padding:.35rem 0}
.exercise .reason{margin:0 0 .5rem 1.6rem;font-size:.95rem}
.exercise .verdict{margin:0;font-weight:600}
.lesson figcaption{font-weight:600}
.blanks{columns:14rem 3}
.blanks li{padding:.5rem 0}
.blank{display:inline-block;width:10rem;border-bottom:1px solid var(--ink)}`;

const printed = `@media screen{.key.shut{display:none}}
@media print{.places,#learn button,#learn .back{display:none}.key{break-before:page}.reel{min-width:0}}`;

export const learnStyle = `${screen}\n${printed}`;
