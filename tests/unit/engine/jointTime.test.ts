// Holds the joint time of several resources to a count of every instant.
import fc from "fast-check";
import { expect, it } from "vitest";
import { compileTable } from "#engine/compiler/program.ts";
import { Simulation } from "#engine/run/simulation.ts";
import type { StepTable } from "#engine/compiler/stepTable.ts";
import { ticks } from "../../support/runTable.ts";

const classes = 4;
const end = 60;
/** The time of a resource in a class, and the class. */
const stay = fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 0, max: classes - 1 }));
const stays = fc.array(stay, { minLength: 1, maxLength: 8 });

type Stays = readonly (readonly [number, number])[];

/** A state for each class; a resource begins in the class of its first stay. */
function staying(all: readonly Stays[]): StepTable {
  const states = Array.from({ length: classes }, (_, i) => ({ name: `class ${i}`, kind: "working" as const }));
  return {
    resources: all.map((own, r) => ({
      name: `r${r}`,
      states: states.toSorted((a) => (a.name === `class ${own[0]![1]}` ? -1 : 0)),
    })),
    places: [],
    processes: all.map((own, r) => ({
      name: `r${r}`,
      resource: `r${r}`,
      steps: own.map(([time, to], i) => ({
        name: `stay ${i}`,
        shows: [{ resource: `r${r}`, state: `class ${to}` }],
        time: ticks(time),
      })),
    })),
  };
}

function classAt(own: Stays, tick: number): number {
  let begun = 0;
  for (let i = 0; ; i++) {
    const [time, to] = own[i % own.length]!;
    if (tick < begun + time) return to;
    begun += time;
  }
}

it("counts every instant for the lowest class present", () => {
  fc.assert(
    fc.property(fc.tuple(stays, stays, stays), fc.nat({ max: end }), (all, from) => {
      const program = compileTable(staying(all));
      const classOf = Uint8Array.from(program.states, ({ name }) => Number(name.replace("class ", "")));
      const simulation = new Simulation(program, { seed: "joint", replication: 0, classOf });
      simulation.runUntil(from);
      simulation.restartObservation();
      simulation.runUntil(end);
      simulation.settle();
      const expected = Array.from({ length: Math.max(...classOf) + 1 }, () => 0);
      for (let tick = from; tick < end; tick++) expected[Math.min(...all.map((own) => classAt(own, tick)))]! += 1;
      expect(Array.from(simulation.jointTicks)).toEqual(expected);
    }),
    { seed: 20260752 },
  );
});
