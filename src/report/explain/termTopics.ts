// The terms of the trade and of statistics that answers and tables use, each explained in a few lines.
import { fitTerms } from "./fitTerms.ts";
import { elasticityMethods } from "#analysis/bottleneck/elasticityMethods.ts";
import { cautions } from "#report/words/cautions.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import type { Topic } from "./topic.ts";

type Term = Omit<Topic, "kind">;

const statistics: readonly Term[] = [
  {
    names: ["±", "+-", "plus minus", "half width", "confidence interval", "interval", "what does ± mean"],
    meaning:
      "The 95 % confidence interval of a mean over the replications. It says how sure the mean is, not how much single hours vary.",
    details: [
      [
        "smaller",
        "Four times as many replications halve it; `--precision` repeats the run, at least 10 times, until it is small.",
      ],
      ["compare", "Two cells differ where the interval of their difference excludes zero."],
    ],
    more: ["replication", "common random numbers"],
  },
  {
    names: ["chance", "chance of the due date", "wilson", "look", "looks"],
    meaning:
      "The share of the runs of an order that are done by the due date, with the interval of Wilson at 95 % confidence.",
    details: [
      ["decision", "`yes` where the interval lies above the wanted chance, `no` where it lies below."],
      ["looks", "Runs are added until it is decided; all looks share the error of 5 %."],
    ],
    more: ["promise.csv"],
  },
  {
    names: ["control variate", "control variates", "rare stop", "rare stops", "few stops", "known rate"],
    meaning:
      "A correction for stops that are too rare for the run. The mean repair time of a stop is known from its interval and repair. The mean and its interval are corrected for what the replications hold above or below that.",
    details: [
      [
        "where",
        "throughput.csv names the stops in the column `control`; replications.csv has the values as they were.",
      ],
      ["without it", "Give the run the length that the answer names."],
    ],
    more: ["±", "throughput.csv", "run.length"],
  },
  {
    names: ["simultaneous interval", "Bonferroni", "best layouts"],
    meaning:
      "Intervals of c pairs of layouts that hold together with 95 % confidence: each holds with 1 − 0.05 / c (Bonferroni). The best layouts are those that no other one exceeds by more; the true best is among them with 95 % confidence.",
    example: "blowcell compare one.yaml two.yaml three.yaml --against previous",
    more: ["±", "common random numbers", "simultaneous_half_width_95"],
  },
  {
    names: ["worthwhile", "worthwhile difference", "indifference zone"],
    meaning:
      "The smallest difference between two layouts that matters to a choice; 1 % of the first layout where none is named, about the error of measured step times. The chosen layout is within it of the best with the confidence that is asked for. A larger one needs fewer replications.",
    example: 'blowcell choose one.yaml two.yaml --worthwhile "12"',
    more: ["choose", "selection", "choose.csv"],
  },
  {
    names: ["selection", "sequential selection", "Kim-Nelson", "best layout"],
    meaning:
      "All layouts get 20 replications with common random numbers. Then the layouts that are left get more, and one that lies too far behind another is dropped (Kim and Nelson 2001).",
    more: ["choose", "worthwhile", "need", "Pareto set", "options"],
  },
  {
    names: ["need", "parts in time"],
    meaning:
      'A choice with `--need` drops a layout once its runs show that it cannot make the parts with the wanted chance (Wald\'s sequential test). Half of the allowed error is for this test. `--by "cost per hour"` then finds the cheapest layout that can.',
    example: 'blowcell choose cell.yaml --need "120000 parts in 5 d"',
    more: ["choose", "selection", "--chance"],
  },
  {
    names: ["Pareto set", "efficient", "efficient layouts"],
    meaning:
      "The layouts than which no other one makes at least as many good parts for less investment, or for a lower cost of an hour. By the means.",
    more: ["choose", "choose.csv"],
  },
  {
    names: ["payback"],
    meaning:
      "Extra investment over the gain an hour, without interest and tax. With `costs.price` the gain is margin: price times good parts, less cost. Without it the gain is the lower cost of the good parts that both layouts make.",
    example: "costs: { currency: EUR, machine: 35 per h, investment: 180000 }",
    more: ["costs.investment", "costs.price", "payback.csv"],
  },
  {
    names: ["replication"],
    meaning: "One run of the cell with random numbers of its own. All replications together give means and intervals.",
    example: "run: { replications: 20 }",
    more: ["±", "run.replications", "seed"],
  },
  {
    names: ["9 of 10", "9 of 10 such weeks", "single run", "spread of a week"],
    meaning:
      "The range in which 9 of 10 single runs of this length lie. It is wider than ±, the interval of the mean, and more replications do not narrow it.",
    details: [
      ["19 replications or more", "Order statistics of the replications."],
      ["fewer", "Prediction interval by Student's t."],
    ],
    more: ["±", "totals.csv", "single_low_90"],
  },
  {
    names: ["more than the model explains", "model and measured"],
    meaning:
      "A measured number agrees with the model within 1 %, or within the range of 9 of 10 single runs. Any other difference has a cause that the scenario does not enter, or a wrong step time.",
    example: 'blowcell run cell.yaml --measured "395 shots per h"',
    more: ["measured", "measured.csv", "single run"],
  },
  {
    names: ["best case", "no stops", "no rejects"],
    meaning: "The scenario enters no stops or no rejects. A real cell makes less.",
    more: ["stops", "quality"],
  },
  {
    names: ["warm-up", "warmup"],
    meaning:
      "Statistics: the time at the start of a run that is not counted, because the cell is not yet in its steady state. `auto` finds it from the run (MSER-5). It is not the start-up of the machine.",
    more: ["start-up", "run.warmup", "warmup-not-found"],
  },
  {
    names: ["start-up"],
    meaning: "Machine: what a start costs after a rest, heating, purge and scrap. It is not the warm-up of statistics.",
    example: "startUp: { afterOff: 8 h, heatUp: 2 h, scrap: 20 cycles, purge: 3 kg }",
    more: ["startUp", "warm-up"],
  },
  {
    names: ["common random numbers", "random numbers", "stream", "draw"],
    meaning:
      "All cells of a comparison draw the same random numbers for the same step of the same station. Differences then come from the cells and not from chance, so their intervals are smaller.",
    details: [["correlation", "The nearer it is to 1, the more this gained."]],
    more: ["seed", "comparison.csv", "±"],
  },
  {
    names: ["critical path"],
    meaning:
      "The chain of steps that decided when the last shot was done: each step on it started the moment the one before ended. Time off the path can be longer without delaying a shot.",
    more: ["bottleneck", "slack", "critical_share"],
  },
  {
    names: ["slack"],
    meaning:
      "Seconds a shot by which a circuit may grow before it sets the pace. No slack: it sets the pace, or is as slow as what does. Where the order of service is not fixed, a longer step also changes the order, so there is no slack; `run --slack` tests it instead.",
    unit: "s a shot",
    more: ["ideal cycle", "circuits.csv", "tested slack"],
  },
  {
    names: ["tested slack"],
    meaning:
      "Seconds by which one step may become longer, each time and at all identical resources, before good parts fall by 1 %. Runs with the same random numbers, with and without the longer step, find it by bisection in each replication. ± is the 95 % interval over the replications.",
    unit: "s",
    example: "blowcell run scenarios/slow-trimmer.yaml --slack",
    more: ["slack", "slack.csv", "common random numbers"],
  },
  {
    names: ["ideal cycle", "at mean times", "order found by running"],
    meaning:
      "Seconds a shot with every step at its mean time, no stops and no rejects. With a fixed order of stations no run can beat it. Where the order varies, the cell is run at mean times instead: order found by running.",
    unit: "s a shot",
    more: ["circuit", "slack", "ideal-cycle.csv"],
  },
  {
    names: ["circuit"],
    meaning:
      "Steps that must follow each other around and around, such as one station's cycle or the screw's. The slowest circuit sets the ideal cycle.",
    more: ["ideal cycle", "circuits.csv", "slack"],
  },
  {
    names: ["bottleneck", "sets the pace"],
    meaning:
      "The step with the largest share of the critical path. It sets the pace; shortening another step brings little. Three views stand side by side: critical path, utilization, and slack in the ideal cycle.",
    more: ["critical path", "slack", "bottleneck.csv", "elasticity"],
  },
  {
    names: ["what one change buys", "gain", "changes of the cell", "is it the screw or the cooling"],
    meaning:
      "Good parts that one change of the cell adds, in the same replications with and without it. Its own cost is not counted.",
    details: [
      ["none", "No difference seen: the interval for all changes together includes 0."],
      ["at most", "A change that was not run, bounded by the critical path."],
      ["depth", "`--changes full` runs all in all replications, `--changes off` none."],
    ],
    more: ["changes.csv", "common random numbers", "elasticity"],
  },
  {
    names: ["lost", "lost parts", "varying times and waits", "causes acting together", "parts on their way"],
    meaning:
      "From the parts of the ideal cycle in the planned time to the good parts made. A cause loses what the same cell makes more without it.",
    details: [
      ["varying", "What the cell without all causes lacks of the ideal cycle."],
      ["together", "What all causes lose together beyond the sum of each alone."],
    ],
    more: ["lost.csv", "what one change buys", "ideal cycle"],
  },
  {
    names: ["utilization", "longest active period"],
    meaning:
      "Share of time in which a resource is active. The longest active period looks at each instant which resource has been active for the longest time without a pause.",
    more: ["bottleneck", "longest_active_share"],
  },
  {
    names: ["elasticity", "sensitivity"],
    meaning:
      "Change of good parts in percent for 1 % more time in a step. −0.6 means: 1 % longer costs 0.6 %. Where the critical path does not give it, replications are made again with the step 2 % longer and shorter. They are at most half as many as those of the run.",
    example: "blowcell run scenarios/one-operator.yaml --sensitivity full",
    details: Object.values(elasticityMethods).map(({ name, meaning }) => [name, meaning]),
    more: ["elasticity_method", "bottleneck"],
  },
];

const machine: readonly Term[] = [
  {
    names: ["screw", "plasticator", "extruder"],
    meaning:
      "The screw with its drive and the melt in front of it. Answers and pages say screw; `plasticator` is the same resource in CSV files and in `stops`.",
    more: [stateNames.recharging, stateNames.holdingShot, "delivery"],
  },
  {
    names: ["valve shift", "selector valve"],
    meaning:
      "The selector valve moves between neutral, where all ports are blocked, and the port of one station. It is not a work shift.",
    example: "valve: { shift: 0.3 s }",
    more: ["valve.shift", "work shift", stateNames.shifting],
  },
  {
    names: ["work shift", "shift"],
    meaning: "Hours of a day in which the cell is planned to produce. It is not a valve shift.",
    example: "calendar: { from: 2026-03-23, shifts: [{ start: 06:00, end: 14:00 }] }",
    more: ["calendar", "valve shift", stateNames.offShift],
  },
  {
    names: ["die zone"],
    meaning:
      "Continuous extrusion: the place under the die, for one mold at a time, and the way there. As a circuit it is the time that the die needs for a mold: travel in, close, cut and travel out, or with `dieZone: shared` close, cut and the longer of both travels.",
    example: "delivery: { kind: continuous, dieZone: exclusive }",
    more: ["delivery.dieZone", "steps.travelIn", "steps.travelOut"],
  },
  {
    names: ["removal"],
    meaning:
      "The parts leave the open mold, by machine or by an operator. It is the step `remove` in scenarios, the state `removal` of a station and `removing` of an operator; `delivery.removal` says where it happens.",
    more: ["steps.remove", stateNames.noOperatorFree, "delivery.removal"],
  },
  {
    names: [
      "operators",
      "operator",
      "people",
      "how do i let two operators serve four molds",
      "two operators four molds",
    ],
    meaning:
      "People of the cell. Say how many there are, and what they are needed for: each `by: operator` waits for a free one. Two operators who remove the parts of four molds:",
    example: `crew: { operators: 2 }
stations:
  count: 4
  cavities: 2
  steps: { close: 0.6 s, blow: 0.5 s, cool: 7.5 s, vent: 0.5 s, open: 0.6 s, remove: { time: 3 s, by: operator } }`,
    more: ["crew", stateNames.noOperatorFree, stateNames.operatorOnTheWay, "crew.walk", "crew.priorities"],
  },
  {
    names: ["why does the screw wait", "screw waits", "why the screw waits"],
    meaning:
      "Mostly because it holds a full shot and no mold is open and empty: the molds set the pace. With `rechargeStarts: mold-closed` it may also wait for the mold to close. Waiting of the screw is normal where the molds set the pace.",
    more: [stateNames.holdingShot, stateNames.awaitingClosedMold, "bottleneck"],
  },
  {
    names: ["set-up", "set up"],
    meaning:
      "The kind of a state in which a resource is made ready for work, or a station waits for that: heat-up, purge, changeover. It is no work: the utilization does not count it.",
    more: [
      stateNames.heating,
      stateNames.purging,
      stateNames.changeover,
      stateNames.awaitingHeatUp,
      "startUp",
      "changes",
    ],
  },
  {
    names: ["waiting", "wait"],
    meaning:
      "The kind of a state in which a resource lacks something. Waiting is normal: what sets the pace hardly waits, all others do.",
    more: ["states", "bottleneck", "time-by-state.csv"],
  },
  {
    names: ["machine stop"],
    meaning: "A failure or planned stop of one resource, with a time to the next and a repair.",
    example: "stops: [{ name: heater band, resource: plasticator, between: 40 h, repair: 30 min }]",
    more: ["stops", stateNames.stopped, "stops.csv"],
  },
  {
    names: ["shot"],
    meaning: "The melt of one delivery: parts and flash of all cavities of a mold.",
    more: ["shot mass", "shotCapacity", "shots per hour"],
  },
  {
    names: ["parison"],
    meaning: "The tube of melt that the die forms and the mold closes on. A mold with several cavities takes several.",
    more: [stateNames.parisonDrop, "sag", "hang time"],
  },
  {
    names: ["flash"],
    meaning: "Melt that leaves the mold with the part and is cut off. It goes to regrind.",
    more: ["product.flash", "regrind"],
  },
  {
    names: ["sag"],
    meaning: "Share by which a hanging parison has grown longer under its own weight.",
    unit: "share",
    more: ["sag of the parison when the mold has closed", "sagLimit", "hang time"],
  },
  {
    names: ["hang time", "hang"],
    meaning: "Time from the end of the drop until the mold has closed; in continuous extrusion from the catch.",
    unit: "s",
    more: ["hang_s", "sag", "maxHang"],
  },
  {
    names: ["time at heat"],
    meaning:
      "Time that melt spends between hopper and die, every wait included. Heat-sensitive plastics bear it for a limited time.",
    unit: "s",
    more: ["mean time at heat from hopper to die", "holdUp", "maxTimeAtHeat"],
  },
  {
    names: ["demold temperature"],
    meaning:
      "Temperature of the thickest place when the mold begins to open. The wall cools from the end of inflation until then, stops and vent included.",
    unit: "°C",
    more: ["product.demoldTemperature", "maxDemold", "demold_temperature_c"],
  },
  {
    names: ["server"],
    meaning:
      "One station that parts pass after the mold, such as a conveyor, trimmer or leak test, with places to work and a buffer before it.",
    example: "takeaway: { trimmer: { time: 2 s, buffer: 10 } }",
    more: ["takeaway", stateNames.starved, stateNames.blocked],
  },
  {
    names: ["process window"],
    meaning:
      "Limits that a simulation of times does not see: cooling, sag, shear, shot mass, clamp force, air, time at heat. Each row has a value, its limits, a remedy and a source. It needs `product.material`.",
    more: ["window rows", "window.csv", "product.material"],
  },
  {
    names: ["distribution", "distributions"],
    meaning:
      "A time or rate that varies is written as a distribution in place of a plain value. Begin with `triangular`; measured values go to `empirical`.",
    example: "cool: { triangular: [7.0 s, 7.5 s, 9.0 s] }",
    more: ["triangular", "uniform", "normal", "lognormal", "gamma", "exponential", "weibull", "empirical"],
  },
  {
    names: ["estimate"],
    meaning: "In place of a time of blow, cool or vent: it is computed by the process window, with its inputs given.",
    example: "cool: estimate",
    more: ["estimate-inputs-missing", "process window"],
  },
  {
    names: ["path", "path of a key"],
    meaning:
      "Where a key stands, with dots between. A station is called by its name or its number from 0. Errors show paths, and `--set` takes them.",
    example: 'blowcell run cell.yaml --set "stations.left.steps.cool=7 s"',
    more: ["set", "keys"],
  },
];

const safety: Term = {
  names: ["safety", "cautions", "caution"],
  meaning: cautions,
  more: [stateNames.venting, stateNames.beingCleared],
};

export const termTopics: readonly Topic[] = [...statistics, ...fitTerms, ...machine, safety].map((term) => ({
  ...term,
  kind: "term",
}));
