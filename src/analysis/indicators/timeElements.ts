// Splits the time of a work unit into the time elements of ISO 22400-2 without loss.
import type { CountedElement } from "#cell/words/elementWords.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";

/** Seconds. */
export interface TimeElements {
  /** Planned busy time. */
  readonly PBT: number;
  /** Actual unit busy time, AUPT + ADET. */
  readonly AUBT: number;
  /** Actual unit processing time, APT + AUST. */
  readonly AUPT: number;
  /** Actual production time. */
  readonly APT: number;
  /** Actual unit set-up time. */
  readonly AUST: number;
  /** Actual unit delay time. */
  readonly ADET: number;
  /** Actual unit down time. */
  readonly ADOT: number;
  /** Actual order execution time: the run is one order that occupies the work unit for all planned time. */
  readonly AOET: number;
  /** Processing time outside PBT; no other element includes it. */
  readonly overtime: number;
}

export interface ElementSeconds {
  readonly element: CountedElement;
  readonly seconds: number;
}

/** PBT = APT + AUST + ADET + ADOT, in whole microseconds, so that no planned time is lost or counted twice. */
export function timeElements(times: readonly ElementSeconds[]): TimeElements {
  const ticks = (element: CountedElement): number => {
    const seconds = times.filter((time) => time.element === element).reduce((sum, time) => sum + time.seconds, 0);
    return Math.round(seconds * TICKS_PER_SECOND);
  };
  const [apt, aust, adet, adot] = [ticks("APT"), ticks("AUST"), ticks("ADET"), ticks("ADOT")];
  const seconds = (sum: number): number => sum / TICKS_PER_SECOND;
  const PBT = seconds(apt + aust + adet + adot);
  return {
    PBT,
    AUBT: seconds(apt + aust + adet),
    AUPT: seconds(apt + aust),
    APT: seconds(apt),
    AUST: seconds(aust),
    ADET: seconds(adet),
    ADOT: seconds(adot),
    AOET: PBT,
    overtime: seconds(ticks("overtime")),
  };
}
