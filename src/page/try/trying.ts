// The state of the place Try: the settings of the levers, what is known of the changed cell, and what was kept.
import { batch, computed, signal, type ReadonlySignal } from "@preact/signals";
import type { Job, Pool } from "#page/answer/pool.ts";
import type { GivenScenario } from "#page/file/given.ts";
import type { Finding } from "#page/trial/concludeTrial.ts";
import type { Lever } from "#page/trial/lever.ts";
import type { Levers } from "#page/trial/openLevers.ts";
import type { Trial } from "#page/trial/openTrial.ts";
import { conductRuns, type Done, type Rough } from "./conductRuns.ts";
import { positionIn, settingsWith } from "./leverSettings.ts";

interface Variant {
  readonly set: readonly string[];
  readonly finding: Finding;
}

export interface Pace {
  readonly made: number;
  readonly wanted: number;
  readonly secondsLeft: number | undefined;
}

export interface Trying {
  readonly given: GivenScenario;
  readonly levers: ReadonlySignal<Levers | undefined>;
  readonly set: ReadonlySignal<readonly string[]>;
  /** Without a run; undefined until the worker answers. */
  readonly trial: ReadonlySignal<Trial | undefined>;
  /** Of the present settings; undefined until the first replication. */
  readonly shown: ReadonlySignal<Rough | Done | undefined>;
  /** Of the scenario as it is. */
  readonly before: ReadonlySignal<Rough | Done | undefined>;
  readonly progress: ReadonlySignal<Pace | undefined>;
  readonly fault: ReadonlySignal<string | undefined>;
  readonly variants: ReadonlySignal<readonly Variant[]>;
  readonly canUndo: ReadonlySignal<boolean>;
  readonly canRedo: ReadonlySignal<boolean>;
  /** While a slider is dragged; `commit` makes it a step that can be undone. */
  readonly move: (lever: Lever, position: number) => void;
  readonly commit: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly reset: () => void;
  readonly keep: () => void;
  readonly drop: (variant: Variant) => void;
  readonly show: (set: readonly string[]) => void;
  readonly positionOf: (lever: Lever) => number;
  /** Mean good parts an hour of settings that were run to the final answer; follows each further one. */
  readonly partsOf: (set: readonly string[]) => number | undefined;
  /** Runs what the settings of the address ask for; other settings than the present ones can be undone. */
  readonly follow: (set: readonly string[]) => void;
  /** Drops all work. */
  readonly leave: () => void;
}

const millisecondsOfSecond = 1000;
/** Milliseconds since the page was opened. */
const clock = (): number => Number(document.timeline.currentTime);

export const mostVariants = 6;
/** Results of settings that were tried; the oldest are dropped. */
const mostDone = 30;

export function openTrying(given: GivenScenario, pool: Pool, write: (set: readonly string[]) => void): Trying {
  const levers = signal<Levers | undefined>(undefined);
  const set = signal<readonly string[]>([]);
  const trial = signal<Trial | undefined>(undefined);
  const shown = signal<Rough | Done | undefined>(undefined);
  const before = signal<Rough | Done | undefined>(undefined);
  const progress = signal<Pace | undefined>(undefined);
  const fault = signal<string | undefined>(undefined);
  const variants = signal<readonly Variant[]>([]);
  const past = signal<readonly (readonly string[])[]>([]);
  const future = signal<readonly (readonly string[])[]>([]);
  let committed: readonly string[] | undefined;
  const known = new Map<string, { readonly trial: Trial; readonly done: Done }>();
  let isFollowed = false;
  let job: Job | undefined;
  let base: Job | undefined;
  const fail = (error: unknown): void => {
    fault.value = String(error);
  };
  const allLevers = (): readonly Lever[] => (levers.value ? [...levers.value.first, ...levers.value.more] : []);

  const remember = (key: string, found: { readonly trial: Trial; readonly done: Done }): void => {
    known.set(key, found);
    const [oldest] = known.keys();
    if (known.size > mostDone && oldest !== undefined) known.delete(oldest);
  };
  const likelyWarmup = (): number => {
    const { value } = before;
    const warmup = value && "made" in value ? value.made.settled.scenario.run.warmup : 0;
    return warmup === "auto" ? 0 : warmup;
  };
  const runAll = async (own: Job, tried: readonly string[], isBase: boolean): Promise<void> => {
    const answer = await own.ask("openTrial", { given, set: tried });
    const isShown = (): boolean => !isBase || set.value.length === 0;
    if (isShown()) trial.value = answer;
    if (!answer.cell) return;
    const begun = clock();
    const done = await conductRuns(own, answer.cell.scenario, {
      likelyWarmup: likelyWarmup(),
      onRough: (rough) => {
        (isBase ? before : shown).value = rough;
      },
      onMade: (made, wanted) => {
        const secondsLeft = ((clock() - begun) / millisecondsOfSecond / made) * (wanted - made);
        if (isShown()) progress.value = { made, wanted, secondsLeft };
      },
    });
    remember(JSON.stringify(tried), { trial: answer, done });
    batch(() => {
      (isBase ? before : shown).value = done;
      if (isShown()) progress.value = undefined;
    });
  };
  const runBase = (): void => {
    if (base) return;
    base = pool.begin();
    // The answer first: the levers of a large cell take longer.
    runAll(base, [], true).catch(fail);
    base.ask("openLevers", { given, set: [] }).then((found) => {
      levers.value = found;
    }, fail);
  };
  const follow = (wanted: readonly string[]): void => {
    if (isFollowed && JSON.stringify(wanted) === JSON.stringify(set.value)) return;
    isFollowed = true;
    job?.cancel();
    job = undefined;
    committed ??= wanted;
    batch(() => {
      set.value = wanted;
      fault.value = undefined;
      const found = known.get(JSON.stringify(wanted));
      trial.value = found?.trial;
      shown.value = found?.done;
      progress.value = undefined;
    });
    if (wanted.length > 0 && !shown.value) {
      job = pool.begin();
      runAll(job, wanted, false).catch(fail);
    }
    runBase();
  };
  /** At once, so that the next key finds the slider where the last one left it. */
  const go = (wanted: readonly string[]): void => {
    follow(wanted);
    write(wanted);
  };
  /** What can be undone from now on. */
  const addStep = (wanted: readonly string[]): void => {
    past.value = [...past.value, committed ?? []];
    future.value = [];
    committed = wanted;
  };
  const step = (wanted: readonly string[]): void => {
    if (JSON.stringify(wanted) === JSON.stringify(committed ?? [])) return;
    batch(() => {
      addStep(wanted);
      go(wanted);
    });
  };
  /** Another address than the one that was written can be undone like any other step. */
  const arrive = (wanted: readonly string[]): void => {
    batch(() => {
      if (committed && JSON.stringify(wanted) !== JSON.stringify(set.value)) addStep(wanted);
      follow(wanted);
    });
  };
  const travel = (from: typeof past, to: typeof past): void => {
    const wanted = from.value.at(-1);
    if (wanted === undefined) return;
    batch(() => {
      from.value = from.value.slice(0, -1);
      to.value = [...to.value, committed ?? []];
      committed = wanted;
      go(wanted);
    });
  };
  const present = computed(() => (set.value.length === 0 ? before.value : shown.value));
  const partsOf = (wanted: readonly string[]): number | undefined => {
    // Both change after each run.
    void [before.value, shown.value];
    const conclusion = known.get(JSON.stringify(wanted))?.done.conclusion;
    return conclusion?.kind === "found" ? conclusion.parts?.mean : undefined;
  };
  return {
    given,
    levers,
    set,
    trial,
    shown: present,
    before,
    progress,
    fault,
    variants,
    canUndo: computed(() => past.value.length > 0),
    canRedo: computed(() => future.value.length > 0),
    move: (lever, position) => go(settingsWith(allLevers(), set.value, lever, position)),
    commit: () => step(set.value),
    undo: () => travel(past, future),
    redo: () => travel(future, past),
    reset: () => step([]),
    show: (wanted) => step(wanted),
    keep() {
      const { value } = present;
      if (!value || !("made" in value) || value.conclusion.kind === "stuck") return;
      const others = variants.value.filter((each) => JSON.stringify(each.set) !== JSON.stringify(set.value));
      variants.value = [...others, { set: set.value, finding: value.conclusion }].slice(-mostVariants);
    },
    drop(variant) {
      variants.value = variants.value.filter((each) => each !== variant);
    },
    positionOf: (lever) => positionIn(lever, set.value),
    partsOf,
    follow: arrive,
    leave() {
      isFollowed = false;
      job?.cancel();
      job = undefined;
      if (!("made" in (before.value ?? {}))) {
        base?.cancel();
        base = undefined;
      }
    },
  };
}
