// Draws the shipped scenarios at random times: every number is a number, the ports are those of the valve, and the size stays.
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { scenePicture } from "#report/picture/scenePicture.ts";
import type { Scene } from "#report/scene/scene.ts";
import { sceneAt } from "#report/scene/sceneAt.ts";
import { firstCases } from "../../../support/caseCount.ts";
import { recorded, shippedFiles } from "../scene/shippedScenes.ts";

/** Each kind of delivery, an operator, stops and a takeaway come first. */
const first = [
  "two-station",
  "canister-accumulator-head",
  "bottle-continuous",
  "one-operator-four-molds",
  "everything",
];
const isFirst = (file: string): boolean => first.some((name) => file.endsWith(`/${name}.yaml`));
const files = [...shippedFiles.filter(isFirst), ...shippedFiles.filter((file) => !isFirst(file))];

/** Everything that has a state in words of its own. */
function statesIn({ screw, valve, rams, stations, masks, servers }: Scene): readonly string[] {
  const places = servers.flatMap((server) => server.places);
  return [screw, ...(valve ? [valve] : []), ...rams, ...stations, ...masks, ...places].map(({ state }) => state);
}

describe("a shipped scenario", { timeout: 120_000 }, () => {
  it.each(firstCases(files, first.length))("is drawn at any time: %s", (file) => {
    const { record } = recorded(file, 0.5);
    const sizes = new Set<string>();
    fc.assert(
      fc.property(fc.double({ min: record.from, max: record.until, noNaN: true }), (seconds) => {
        const scene = sceneAt(record, seconds);
        const { code } = scenePicture(scene, { id: "p", width: "wide", chosen: "", units: "si" });
        sizes.add(/viewBox="([^"]*)"/u.exec(code)![1]!);
        expect(code).not.toMatch(/NaN|undefined|Infinity|null/u);
        const open = [...code.matchAll(/class="port open" data-port="([^"]*)"/gu)].map(([, name]) => name);
        const openTo = scene.valve?.openTo ?? null;
        expect(open).toEqual(openTo === null ? [] : [openTo]);
        for (const state of statesIn(scene)) expect(code).toContain(state);
      }),
    );
    expect(sizes.size).toBe(1);
  });
});
