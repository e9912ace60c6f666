// What sets the pace, as a map: the ideal cycle over two levers, with the present cell marked.
import { useSignal, useSignalEffect } from "@preact/signals";
import { h, type ComponentChild, type TargetedEvent } from "preact";
import type { Pool } from "#page/answer/pool.ts";
import { plainNumber } from "#report/words/digits.ts";
import type { Lever } from "#page/trial/lever.ts";
import type { PaceCell } from "#page/trial/openPaceRow.ts";
import { useUnits } from "#page/units/unitsOfPage.ts";
import { mapPicture } from "./mapPicture.ts";
import { mapAxis, mapWords, positionWords, type IdealGrid, type PaceGrid } from "./paceGrid.ts";
import { settingsWith } from "./leverSettings.ts";
import type { Trying } from "./trying.ts";

interface PaceMapProps {
  readonly trying: Trying;
  readonly pool: Pool;
}

export function PaceMap({ trying, pool }: PaceMapProps): ComponentChild {
  const { levers, set } = trying;
  const axes = useSignal<readonly [number, number]>([0, 1]);
  const grid = useSignal<IdealGrid | undefined>(undefined);
  const units = useUnits();
  const isOpen = useSignal(false);
  const all = levers.value ? [...levers.value.first, ...levers.value.more] : [];
  useSignalEffect(() => {
    if (!isOpen.value || !levers.value) return undefined;
    const known = [...levers.value.first, ...levers.value.more];
    const [x, y] = axes.value.map((number) => known[number]);
    if (!x || !y) return undefined;
    return drawGrid({ trying, pool, known, x, y, set: set.value }, (found) => {
      grid.value = found;
    });
  });
  if (all.length < 2) return null;
  const choice = (label: string, place: 0 | 1): ComponentChild =>
    h(
      "label",
      {},
      `${label} `,
      h(
        "select",
        {
          onChange: ({ currentTarget }: TargetedEvent<HTMLSelectElement>) => {
            const chosen = currentTarget.selectedIndex;
            const [x, y] = axes.value;
            axes.value = place === 0 ? [chosen, chosen === y ? x : y] : [chosen === x ? y : x, chosen];
          },
        },
        all.map(({ id, name }, i) => h("option", { key: id, selected: i === axes.value[place] }, name)),
      ),
    );
  return h(
    "section",
    { class: "map", "aria-label": "What sets the pace, as a map" },
    h("h2", {}, "What sets the pace, as a map"),
    h(
      "details",
      {
        open: isOpen.value,
        onToggle: ({ currentTarget }: TargetedEvent<HTMLDetailsElement>) => {
          isOpen.value = currentTarget.open;
        },
      },
      h("summary", {}, "The ideal cycle over two levers"),
      h("div", { class: "controls" }, choice("Across", 0), choice("Down", 1)),
      grid.value
        ? h(Grid, { grid: { ...grid.value, units, simulated: simulatedIn(grid.value, trying) } })
        : h("p", { class: "quiet" }, "The ideal cycles are computed."),
    ),
  );
}

interface Asked {
  readonly trying: Trying;
  readonly pool: Pool;
  readonly known: readonly Lever[];
  readonly x: Lever;
  readonly y: Lever;
  readonly set: readonly string[];
}

const simulatedIn = ({ settings }: IdealGrid, { partsOf }: Trying): PaceGrid["simulated"] =>
  settings.map((row) => row.map(partsOf));

/** Row by row; the returned function drops the rest. */
function drawGrid({ trying, pool, known, x, y, set }: Asked, show: (grid: IdealGrid) => void): () => void {
  const job = pool.begin();
  const [across, down] = [mapAxis(x, trying.positionOf(x), 7), mapAxis(y, trying.positionOf(y), 5)];
  const rows: (readonly PaceCell[] | undefined)[] = down.map(() => undefined);
  const settings = down.map((row) =>
    across.map((column) => settingsWith(known, settingsWith(known, set, y, row), x, column)),
  );
  const display = (): void => show({ x, y, across, down, rows: [...rows], settings, at });
  const at = { x: across.indexOf(trying.positionOf(x)), y: down.indexOf(trying.positionOf(y)) };
  // Until the first row comes, nothing of other settings is shown.
  display();
  settings.forEach((cells, i) => {
    void job.ask("openPaceRow", { tried: { given: trying.given, set: [] }, cells }).then((found) => {
      rows[i] = found;
      display();
    });
  });
  return () => job.cancel();
}

function Grid({ grid }: { readonly grid: PaceGrid }): ComponentChild {
  const { x, y, across, down, units } = grid;
  return [
    h("p", {}, mapWords(grid)),
    h(
      "p",
      { class: "quiet" },
      "Numbers are those of the ideal cycle; where settings were run, the simulated one is below.",
    ),
    h("div", {
      class: "picture",
      tabIndex: 0,
      role: "region",
      "aria-label": "Map, picture",
      dangerouslySetInnerHTML: { __html: mapPicture(grid).code },
    }),
    h(
      "div",
      { class: "numbers", tabIndex: 0, role: "region", "aria-label": "Map, table" },
      h(
        "table",
        {},
        h("caption", {}, `Ideal cycle in seconds a shot, and what sets the pace: ${x.name} across, ${y.name} down`),
        h(
          "thead",
          {},
          h(
            "tr",
            {},
            h("th", { scope: "col" }, y.name),
            across.map((at) => h("th", { key: at, scope: "col" }, positionWords(x, at, units))),
          ),
        ),
        h(
          "tbody",
          {},
          down.map((at, i) =>
            h(
              "tr",
              { key: at },
              h("th", { scope: "row" }, positionWords(y, at, units)),
              across.map((column, k) => h("td", { key: column }, cellWords(grid, i, k))),
            ),
          ),
        ),
      ),
    ),
  ];
}

function cellWords({ rows, simulated, at }: PaceGrid, i: number, k: number): string {
  const row = rows[i];
  if (row === undefined) return "…";
  const cell = row[k];
  if (!cell) return "not possible";
  const parts = simulated[i]?.[k];
  const run = parts === undefined ? "" : `; simulated ${plainNumber(parts)} good parts an hour`;
  const isPresent = at.x === k && at.y === i;
  return `${cell.secondsPerShot.toFixed(2)} s, ${cell.pace.join(" and ")}${run}${isPresent ? " (present cell)" : ""}`;
}
