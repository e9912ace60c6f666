// The imports that each folder of src may have, one rule for each folder, with its reason.

/** A folder of `src`; what it may import from (a folder alone means its own files, not the folders in it); why. */
type Rule = readonly [folder: string, mayImport: string, reason: string];

export const rules: readonly Rule[] = [
  ["foundation", "", "everything rests on it"],

  ["core", "core/border core/state core/observed core/loop", "the entry calls every part of the core"],
  ["core/border", "", "numbers that the core and the engine share"],
  ["core/state", "core/border", "records in memory hold data and know no step"],
  ["core/observed", "core/border core/state", "statistics read the state and never change it"],
  ["core/loop", "core/border core/state core/observed", "operations change the state and report to the statistics"],

  ["engine", "foundation", "a calendar is arithmetic on dates"],
  ["engine/distributions", "core/border foundation", "sampling tables have the layout that the core reads"],
  ["engine/compiler", "core/border engine/distributions foundation", "a step table becomes the numbers of the core"],
  ["engine/run", "core core/border engine/compiler engine/distributions", "a compiled table is run by the core"],

  ["physics/numeric", "foundation", "pure numerics"],
  ["physics/materials", "foundation", "plain data, with the dimension of each property"],
  ["physics/air", "physics/numeric", "formulas need numerics only"],
  ["physics/cooling", "physics/numeric foundation", "formulas need numerics only"],
  ["physics/parison", "physics/materials physics/numeric", "melt properties decide sag and shear"],
  ["physics/screw", "physics/numeric foundation", "formulas need numerics only"],
  [
    "physics/window",
    "physics/air physics/cooling physics/materials physics/parison physics/screw foundation",
    "the window is a list of rules over all formulas",
  ],

  [
    "scenario",
    "engine/distributions foundation physics/materials physics/window scenario/values",
    "the types of what was read; numbers of the process window are named by its key table",
  ],
  ["scenario/values", "foundation", "a single value knows no key"],
  ["scenario/distributions", "engine/distributions foundation scenario/values", "a distribution is a kind of value"],
  [
    "scenario/keys",
    "foundation physics/materials physics/window scenario/distributions scenario/order scenario/values",
    "a key names the value that stands behind it; physical quantities come from the tables of physics",
  ],
  ["scenario/writing", "", "a text is changed at the places of its values; nothing is read from it"],
  [
    "scenario/order",
    "engine foundation scenario scenario/values",
    "a due date is a moment of the calendar; the keys, the call and the resolving read an order alike",
  ],
  ["scenario/starter", "scenario scenario/keys", "a starter scenario shows the keys with their meanings"],
  [
    "scenario/reading",
    "engine/distributions foundation scenario/distributions scenario/keys scenario/values",
    "text is read by the description of the keys",
  ],
  [
    "scenario/resolving",
    "engine engine/distributions foundation physics/materials physics/window scenario scenario/distributions scenario/keys scenario/order scenario/reading scenario/values",
    "what was read becomes a scenario, so it sees everything below",
  ],

  ["cell/words", "engine/compiler engine/distributions scenario", "names of states and steps, built on the step table"],
  [
    "cell/table",
    "cell/words engine/compiler engine/distributions foundation scenario",
    "the cycle of stations, valve and crew; its masses hold an invariant",
  ],
  [
    "cell/delivery",
    "cell/table cell/words engine/compiler engine/distributions foundation scenario",
    "each kind of melt delivery completes the cycle",
  ],
  [
    "cell/layers",
    "cell/delivery cell/table cell/words engine/compiler engine/distributions foundation physics/screw physics/window scenario scenario/resolving",
    "each layer changes a finished table; the cooling of the wall decides which shots are rejects",
  ],
  [
    "cell/records",
    "cell/delivery cell/layers cell/table cell/words engine/distributions engine/run physics/parison physics/window scenario",
    "records are worded by the plan that made them; the melt temperature of the running rate decides the sag",
  ],
  [
    "cell/run",
    "cell/delivery cell/layers cell/records cell/table cell/words engine engine/compiler engine/distributions engine/run foundation scenario scenario/resolving",
    "a run takes a plan and leaves records",
  ],

  [
    "analysis/ideal",
    "cell/delivery cell/layers cell/records cell/run cell/words engine/distributions foundation scenario scenario/resolving",
    "the ideal cycle runs the plan once at mean times",
  ],
  [
    "analysis/statistics",
    "analysis/ideal cell/layers cell/run engine/distributions foundation scenario",
    "warm-up starts from the ideal period",
  ],
  ["analysis/selection", "analysis/statistics foundation", "selection is arithmetic on paired values"],
  [
    "analysis/replication",
    "analysis/ideal analysis/statistics cell/layers cell/records cell/run engine/distributions scenario",
    "one replication is measured with its plan",
  ],
  [
    "analysis/window",
    "analysis/ideal cell/delivery cell/table cell/words engine/distributions foundation physics/numeric physics/window scenario scenario/values",
    "the window of a station takes its times from the ideal cycle; heated molds need a root",
  ],
  [
    "analysis/indicators",
    "analysis/ideal analysis/replication analysis/statistics analysis/window cell/run cell/words engine/distributions scenario",
    "indicators and costs are made of measures",
  ],
  [
    "analysis/bottleneck",
    "analysis/ideal analysis/replication analysis/statistics cell/layers cell/words foundation scenario scenario/resolving",
    "the bottleneck is read from critical path, utilization and slack",
  ],
  [
    "analysis/changes",
    "analysis/bottleneck analysis/ideal analysis/indicators analysis/replication analysis/statistics analysis/window cell/run cell/words engine/distributions foundation scenario",
    "a change is a cell of its own, held against the study that the caller has",
  ],
  [
    "analysis/study",
    "analysis/bottleneck analysis/changes analysis/ideal analysis/indicators analysis/replication analysis/statistics analysis/window cell/layers cell/records cell/run cell/words engine engine/distributions foundation physics/parison scenario scenario/resolving",
    "a study brings all findings together",
  ],
  [
    "analysis/promise",
    "analysis/changes analysis/ideal analysis/indicators analysis/replication analysis/statistics analysis/study analysis/window cell/records cell/run cell/words engine/distributions foundation scenario scenario/resolving",
    "an order is run with its own calendar, and what it uses has the names and rates of a study; a deadlock is reported as a study does",
  ],
  [
    "analysis/choice",
    "analysis/ideal analysis/indicators analysis/replication analysis/selection analysis/statistics analysis/study analysis/window scenario",
    "a choice observes replications of layouts and asks the selection",
  ],

  ["analysis/log", "foundation", "rows of a log know no fit and no cell"],
  [
    "analysis/match",
    "analysis/log analysis/statistics analysis/study cell/layers cell/records cell/words scenario",
    "a match reads the records of a log and the events of runs alike; a study says which states are waits",
  ],
  [
    "analysis/fit",
    "analysis/log engine/distributions foundation",
    "records of a log become distributions that the engine can draw from",
  ],

  [
    "report/words",
    "analysis/ideal analysis/indicators analysis/replication analysis/statistics analysis/study analysis/window cell/words foundation scenario scenario/resolving",
    "words for findings, and for what is left out of them; no layout",
  ],
  [
    "report/scene",
    "analysis/study cell/layers cell/records cell/table cell/words engine/distributions foundation physics/parison report/words scenario scenario/resolving",
    "the scene is what the record of a run shows; sag and wall temperature are formulas of physics",
  ],
  [
    "report/tables/asked",
    "analysis/choice analysis/promise analysis/replication analysis/statistics analysis/study report/tables report/words",
    "tables that only some runs have, with the columns that all tables share",
  ],
  [
    "report/tables",
    "analysis/bottleneck analysis/ideal analysis/indicators analysis/replication analysis/study analysis/window cell/records cell/words foundation report/fit report/match report/tables/asked report/words scenario scenario/resolving",
    "tables are findings in columns; the list of all tables has those of a fit and a match",
  ],
  [
    "report/match",
    "analysis/match analysis/statistics cell/layers foundation report/charts report/fit report/page report/tables report/words scenario",
    "a match has its own table, answer and page; warnings of a log read as those of a fit",
  ],
  [
    "report/fit",
    "analysis/fit analysis/log engine/distributions foundation report/charts report/charts/fit report/page report/tables report/words",
    "a fit has no scenario, so that its table, answer and page are its own",
  ],
  ["report/charts/fit", "report/charts", "pictures of one fit, with the frame of every chart"],
  [
    "report/explain",
    "analysis/bottleneck analysis/indicators analysis/promise analysis/replication cell/words foundation physics/window report/tables report/words scenario/distributions scenario/keys",
    "what can be explained is what the tables of every room say",
  ],
  [
    "report/charts/calendar",
    "analysis/study cell/records foundation report/charts report/tables report/words scenario",
    "the chart of a calendar uses the frame of every chart",
  ],
  [
    "report/charts/order",
    "analysis/promise report/charts report/words",
    "a chart of an order uses the frame of every chart",
  ],
  [
    "report/charts",
    "analysis/ideal analysis/replication analysis/study cell/records foundation report/tables report/tables/asked report/words scenario",
    "a chart draws a finding or a table",
  ],
  [
    "report/picture",
    "foundation report/charts report/scene report/words",
    "a picture draws a scene with the marks and looks of the charts",
  ],
  [
    "report/answers",
    "analysis/bottleneck analysis/ideal analysis/indicators analysis/promise analysis/replication analysis/statistics analysis/study analysis/window cell/words foundation report/tables report/tables/asked report/words scenario scenario/resolving",
    "a terminal answer is words in lines; its rows are the resources of the bottleneck, its costs have the names of their measures",
  ],
  [
    "report/page",
    "analysis/indicators analysis/promise analysis/replication analysis/study analysis/window cell/records cell/words foundation report/answers report/charts report/charts/calendar report/charts/order report/tables report/tables/asked report/words scenario scenario/resolving",
    "a page puts words, charts and tables together",
  ],
  [
    "report/choice",
    "analysis/choice analysis/indicators analysis/replication analysis/statistics foundation report/charts report/page report/tables report/tables/asked report/words scenario",
    "the answer to a choice in words, in a chart and on a page",
  ],
  [
    "report/lessons",
    "analysis/ideal analysis/study cell/records cell/words foundation report/words scenario scenario/keys scenario/reading scenario/values",
    "a lesson is read like a scenario, and its numbers come from the records and ideal cycles of its cells",
  ],
  [
    "report/drills",
    "analysis/ideal cell/records cell/words report/charts report/lessons report/words scenario",
    "a drill takes its key from a record, and what a change is worth from an ideal cycle",
  ],

  ["page/file", "report/charts report/page report/picture", "the file around the page has the style of a report"],
  [
    "page/answer",
    "analysis/ideal analysis/replication analysis/statistics analysis/study cell/records foundation page/file page/promise page/trial report/answers report/drills report/lessons report/page report/scene scenario",
    "the worker reads, runs and words one scenario",
  ],
  ["page/units", "foundation", "a choice of units is no conversion"],
  [
    "page/frame",
    "foundation page/answer page/file page/learn page/order page/try page/units page/watch report/words scenario/reading",
    "the frame asks the worker and shows the places; files that are dropped are decoded as the command does",
  ],
  [
    "page/learn",
    "page/answer page/file page/watch report/charts report/drills report/lessons report/scene",
    "lessons and drills come solved from the worker; a prediction shows the panels of Watch behind a curtain",
  ],
  [
    "page/trial",
    "analysis/changes analysis/ideal analysis/replication analysis/statistics analysis/study cell/words foundation page/file report/answers report/tables report/words scenario scenario/distributions scenario/reading scenario/resolving scenario/values",
    "the worker finds the levers of a scenario, tries settings and words what they give",
  ],
  [
    "page/try",
    "analysis/ideal analysis/replication analysis/statistics analysis/study foundation page/answer page/file page/trial page/units report/charts report/words scenario",
    "the place moves levers, asks for runs and shows what comes of them",
  ],
  [
    "page/promise",
    "analysis/changes analysis/promise analysis/study foundation page/file scenario scenario/order",
    "the worker reads an order and runs it as the command does",
  ],
  [
    "page/order",
    "analysis/promise analysis/replication foundation page/answer page/file page/promise page/units report/answers report/charts report/charts/order report/words scenario scenario/order scenario/resolving",
    "the place asks for the runs of the procedure, and shows its answer in the words of the command",
  ],
  [
    "page/watch",
    "foundation page/answer page/units report/charts report/picture report/scene report/words scenario scenario/resolving",
    "a place shows scenes and never makes them",
  ],
  ["page", "page/answer page/file page/frame", "the scripts of the page start its worker and its frame"],

  ["cli/machine", "foundation page/file scenario/reading", "files, streams and the process; no command"],
  ["cli/call", "cli/machine foundation scenario/order", "what a call may say; an order may be given in the call"],
  [
    "cli/output",
    "analysis/study cli/call cli/machine foundation page/file report/tables report/words scenario",
    "results go out by one way",
  ],
  [
    "cli/labor",
    "analysis/bottleneck analysis/changes analysis/choice analysis/promise analysis/replication analysis/statistics analysis/study cli/call cli/machine cli/output foundation scenario",
    "who does the work, in this thread or in others",
  ],
  [
    "cli/sweep",
    "analysis/study cli/call cli/machine cli/output foundation report/answers report/page report/tables/asked scenario scenario/reading",
    "the points of a sweep, their journal, and the report that sweep and merge share",
  ],
  ["cli/log", "analysis/log cli/machine foundation", "the bytes of a log become rows"],
  [
    "cli/choose",
    "analysis/choice analysis/indicators analysis/replication cli/call cli/machine cli/output foundation report/choice report/tables/asked",
    "what a choice is asked for, and how its result goes out",
  ],
  [
    "cli/commands",
    "analysis/choice analysis/fit analysis/ideal analysis/log analysis/match analysis/promise analysis/statistics analysis/study analysis/window cell/words cli/call cli/choose cli/labor cli/log cli/machine cli/output cli/sweep foundation page/file report/answers report/explain report/fit report/lessons report/match report/page report/tables report/tables/asked scenario scenario/keys scenario/reading scenario/resolving scenario/starter scenario/writing",
    "a command wires readers, studies and answers; a fit of the screw or valve has its own key of a scenario",
  ],
  [
    "cli",
    "analysis/replication cli/call cli/commands cli/labor cli/machine foundation",
    "the program picks the command; a worker runs replications",
  ],
];
