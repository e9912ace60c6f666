// Hopper, barrel and screw; the screw moves back in proportion to the melt gathered before it.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { mass } from "#report/scene/sceneQuantities.ts";
import { fittedWords, line, words } from "#report/charts/chart.ts";
import { element, type Child } from "#report/charts/markup.ts";
import { filledBox } from "#report/charts/patterns.ts";
import type { SceneMelt, SceneScrew } from "#report/scene/scene.ts";
import { barrel, type MeltPlace } from "./meltPlace.ts";
import { meltWords } from "./pictureWords.ts";
import { statePlate, type Place } from "./statePlate.ts";

/** Where no masses are given, the shot takes this share of the stroke. */
const unknownShot = 0.6;

/** A shot below this share of the capacity is drawn a second time, enlarged. */
const smallShot = 0.4;

const nozzleGap = 8;
const flightPitch = 16;

/** Share of the capacity that a full shot takes. */
export function shotOfCapacity({ shotGrams, capacityGrams }: SceneMelt): number {
  return shotGrams === null || capacityGrams === null ? unknownShot : Math.min(1, shotGrams / capacityGrams);
}

export function screwDrawing(id: string, screw: SceneScrew, place: MeltPlace, units: UnitSystem): readonly Child[] {
  const { melt } = screw;
  const front = place.nozzle - nozzleGap;
  const moved = melt ? melt.share * shotOfCapacity(melt) * place.stroke : 0;
  const tip = Math.round((front - moved) * 100) / 100;
  const gathered = { x: tip, y: barrel.top + 4, width: place.nozzle - tip, height: barrel.bottom - barrel.top - 8 };
  return [
    ...hopper(place),
    element("g", { class: "gathered" }, ...filledBox(id, "melt", gathered)),
    ...flights(tip, place),
    ...walls(place),
    ...(melt ? scale(melt, place) : []),
    ...(screw.turns ? turning(tip, place) : []),
    ...statePlate(id, screw, place.screwWords, { remark: screw.turns ? "turns" : "" }),
    ...(melt ? massLines(melt, place.massWords, units) : []),
  ];
}

function hopper({ back }: MeltPlace): readonly Child[] {
  const x = back + 8;
  const d = `M${x - 34} ${barrel.top - 40}H${x + 26}L${x + 8} ${barrel.top}H${x - 8}Z`;
  return [
    element("path", { d, class: "steel" }),
    element("path", {
      d: `M${x - 24} ${barrel.top - 28}H${x + 18}L${x + 7} ${barrel.top}H${x - 7}Z`,
      class: "pellets",
    }),
    words("hopper", x - 38, barrel.top - 26, { anchor: "end", style: "quiet" }),
  ];
}

/** The shaft reaches out of the barrel, so that its movement shows at its end too. */
function flights(tip: number, { back, nozzle }: MeltPlace): readonly Child[] {
  const end = endOfShaft(tip, { back, nozzle });
  const [top, bottom] = [barrel.top + 5, barrel.bottom - 5];
  const slants: string[] = [];
  for (let x = tip - 14; x > back + 2; x -= flightPitch) slants.push(`M${x.toFixed(2)} ${bottom}l6 ${top - bottom}`);
  const cone = `M${tip - 10} ${barrel.axis - 9}L${tip} ${barrel.axis}L${tip - 10} ${barrel.axis + 9}Z`;
  return [
    element("rect", { x: end, y: barrel.axis - 6, width: tip - end - 8, height: 12, class: "steel shaft" }),
    element("path", { d: cone, class: "steel" }),
    element("path", { d: slants.join(""), class: "flight" }),
    element("rect", { x: end - 10, y: barrel.axis - 12, width: 12, height: 24, class: "steel" }),
  ];
}

/** 20 stay outside when the screw is at its front. */
function endOfShaft(tip: number, { back, nozzle }: Pick<MeltPlace, "back" | "nozzle">): number {
  return tip - (nozzle - back - nozzleGap + 20);
}

function walls({ back, nozzle, valve }: MeltPlace): readonly Child[] {
  const wall = (y: number) => element("rect", { x: back, y, width: nozzle - back, height: 6, class: "steel" });
  const outlet = { x: nozzle, y: barrel.axis - 4, width: valve - nozzle, height: 8, class: "channel" };
  return [wall(barrel.top - 2), wall(barrel.bottom - 4), element("rect", outlet)];
}

/** The set-point of the shot as a line, the capacity as a dashed one. */
function scale(melt: SceneMelt, { nozzle, stroke }: MeltPlace): readonly Child[] {
  const at = (share: number): number => nozzle - nozzleGap - share * stroke;
  const shot = at(shotOfCapacity(melt));
  const limit = melt.capacityGrams === null ? [] : [line(at(1), barrel.top - 6, at(1), barrel.bottom + 6, "capacity")];
  return [...limit, line(shot, barrel.top - 6, shot, barrel.bottom + 6, "set-point")];
}

/** Around the end of the shaft. */
function turning(tip: number, place: MeltPlace): readonly Child[] {
  const x = endOfShaft(tip, place) - 9;
  const [from, to] = [barrel.axis - 16, barrel.axis + 16];
  return [
    element("path", { d: `M${x} ${from}A14 19 0 0 0 ${x} ${to}M${x} ${to}l-7 -3M${x} ${to}l-2 -8`, class: "arrow" }),
  ];
}

function massLines(melt: SceneMelt, { x, y, width }: Place, units: UnitSystem): readonly Child[] {
  const { capacityGrams } = melt;
  const limit = capacityGrams === null ? "" : `, dashed: ${mass(capacityGrams, units)} capacity`;
  return [
    words(fittedWords(`melt: ${meltWords(melt, units)}`, width), x, y + 14, { style: "mass" }),
    words(fittedWords(`mark: full shot${limit}`, width), x, y + 30, { style: "quiet" }),
  ];
}

/** A small shot a second time, so that its growth can be seen; nothing where the shot is large. */
export function shotInset(id: string, { melt }: SceneScrew, { inset, stroke }: MeltPlace): readonly Child[] {
  if (melt === null || melt.capacityGrams === null) return [];
  const ratio = shotOfCapacity(melt);
  if (ratio >= smallShot) return [];
  const times = Math.max(1, Math.floor(inset.width / (ratio * stroke)));
  const { x, y } = inset;
  const width = times * ratio * stroke;
  const full = { x, y, width, height: 16 };
  return [
    element("rect", { ...full, class: "steel" }),
    // Melt lies at the nozzle, on the right, as in the barrel.
    ...filledBox(id, "melt", { ...full, x: x + width * (1 - melt.share), width: width * melt.share }),
    words(fittedWords(`shot, enlarged × ${times}`, inset.width), x, y + 30, { style: "quiet" }),
  ];
}
