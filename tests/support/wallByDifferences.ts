// The temperatures of a cooling wall by finite differences, from the heat equation and Newton's distribution of cooling.

/*
 * Independent of the eigenvalue series: each node holds the heat of its slice. Heat flows between neighbors by Fourier's law, and
 * each face passes heat to its surroundings. The first time steps are backward Euler, because the trapezoidal rule would turn the
 * initial jump into an oscillation. The others are trapezoidal: Crank and Nicolson, Proc. Camb. Phil. Soc. 43 (1947) 50 [M].
 */

export interface WallByDifferences {
  /** m */
  readonly wall: number;
  /** m²/s */
  readonly diffusivity: number;
  /** W/(m K) */
  readonly conductivity: number;
  /** °C, uniform at the start */
  readonly start: number;
  /** Surroundings of each face: temperature in °C and heat transfer coefficient in W/(m² K), Infinity for perfect contact. */
  readonly inside: { readonly temperature: number; readonly transfer: number };
  readonly outside: { readonly temperature: number; readonly transfer: number };
  readonly slices?: number;
  readonly steps?: number;
}

export interface WallProfile {
  readonly insideFace: number;
  readonly moldFace: number;
  readonly mean: number;
}

const PERFECT = 1e12;

/** dT/dt of node i = left·T(i−1) + own·T(i) + right·T(i+1) + given. */
interface Row {
  readonly left: number;
  readonly own: number;
  readonly right: number;
  readonly given: number;
}

function rowsOf(wall: WallByDifferences, slices: number): readonly Row[] {
  const spacing = wall.wall / slices;
  const heatCapacity = (wall.conductivity / wall.diffusivity) * spacing;
  const between = wall.conductivity / spacing;
  return Array.from({ length: slices + 1 }, (_, node) => {
    const atEnd = node === 0 || node === slices;
    const touching = node === 0 ? wall.inside : wall.outside;
    const face = atEnd ? Math.min(PERFECT, touching.transfer) : 0;
    const left = node === 0 ? 0 : between;
    const right = node === slices ? 0 : between;
    const capacity = atEnd ? heatCapacity / 2 : heatCapacity;
    return {
      left: left / capacity,
      own: -(left + right + face) / capacity,
      right: right / capacity,
      given: (face * touching.temperature) / capacity,
    };
  });
}

/** One step of the theta rule; theta 1 is backward Euler, 1/2 the trapezoidal rule. The matrix is solved by elimination. */
function stepped(rows: readonly Row[], before: readonly number[], dt: number, theta: number): number[] {
  const at = (node: number) => before[node] ?? 0;
  const upper: number[] = [];
  const right: number[] = [];
  rows.forEach((row, node) => {
    const change = row.left * at(node - 1) + row.own * at(node) + row.right * at(node + 1);
    const known = at(node) + dt * ((1 - theta) * change + row.given);
    const pivot = 1 - dt * theta * row.own + dt * theta * row.left * (upper[node - 1] ?? 0);
    upper[node] = (-dt * theta * row.right) / pivot;
    right[node] = (known + dt * theta * row.left * (right[node - 1] ?? 0)) / pivot;
  });
  const after: number[] = [];
  for (let node = rows.length - 1; node >= 0; node -= 1) {
    after[node] = (right[node] ?? 0) - (upper[node] ?? 0) * (after[node + 1] ?? 0);
  }
  return after;
}

/** The wall after `time` seconds. */
export function wallByDifferences(wall: WallByDifferences, time: number): WallProfile {
  const slices = wall.slices ?? 400;
  const steps = wall.steps ?? 800;
  const rows = rowsOf(wall, slices);
  const settling = 20;
  const dt = time / (steps + settling / 4);
  let profile: readonly number[] = Array.from({ length: slices + 1 }, () => wall.start);
  for (let step = 0; step < settling; step += 1) profile = stepped(rows, profile, dt / 4, 1);
  for (let step = 0; step < steps; step += 1) profile = stepped(rows, profile, dt, 0.5);
  const ends = ((profile[0] ?? 0) + (profile[slices] ?? 0)) / 2;
  const mean = (profile.reduce((sum, each) => sum + each, 0) - ends) / slices;
  return { insideFace: profile[0] ?? NaN, moldFace: profile[slices] ?? NaN, mean };
}
