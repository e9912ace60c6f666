// A cooling wall between two surroundings by finite volumes, in numbers without units; it shares no formula with the series.

/*
 * The wall has thickness 1 and diffusivity 1, so that time is the Fourier number, and starts at 1. Each volume keeps its heat; between
 * centers heat flows by Fourier's law. From a face to its surroundings half a volume and the transfer of the face are in series. Steps
 * are explicit, Patankar, Numerical Heat Transfer and Fluid Flow, 1980, chapter 4 [M].
 */

export interface WallFaces {
  /** Biot numbers and temperatures of the surroundings, between 0 and 1. */
  readonly inside: { readonly biot: number; readonly temperature: number };
  readonly outside: { readonly biot: number; readonly temperature: number };
  readonly volumes?: number;
}

/** Share of the largest stable step. */
const STABLE = 0.8;

/** The Fourier number at which no point of the wall is above a temperature. */
export function hottestByVolumes({ inside, outside, volumes = 120 }: WallFaces, target: number): number {
  const width = 1 / volumes;
  const step = (STABLE * width * width) / 4;
  // 1/Bi is the resistance of a face where the wall's own is 1.
  const through = ({ biot }: WallFaces["inside"]) => (biot === 0 ? 0 : 1 / (1 / biot + width / 2));
  const [left, right] = [through(inside), through(outside)];
  let heat = new Float64Array(volumes).fill(1);
  let next = new Float64Array(volumes);
  let before = 1;
  for (let count = 1; ; count += 1) {
    for (let at = 0; at < volumes; at += 1) {
      const own = heat[at]!;
      const fromLeft = at === 0 ? left * (inside.temperature - own) : (heat[at - 1]! - own) / width;
      const fromRight = at === volumes - 1 ? right * (outside.temperature - own) : (heat[at + 1]! - own) / width;
      next[at] = own + ((fromLeft + fromRight) * step) / width;
    }
    [heat, next] = [next, heat];
    const hottest = peak(heat);
    if (hottest <= target) return step * (count - (target - hottest) / (before - hottest));
    before = hottest;
  }
}

/** The top of the parabola through the hottest volume and its neighbors; at a face its mirror image stands for the missing neighbor. */
function peak(heat: Float64Array): number {
  const at = heat.indexOf(Math.max(...heat));
  const own = heat[at]!;
  const [left, right] = [heat[at - 1] ?? own, heat[at + 1] ?? own];
  const curve = left - 2 * own + right;
  return curve === 0 ? own : own - ((right - left) * (right - left)) / (8 * curve);
}
