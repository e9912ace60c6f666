// The machine for the commands: output, color, terminal width, reading and writing of files.
import { arch, availableParallelism, platform } from "node:os";
import { styleText } from "node:util";
import { leaveOnSignals } from "./leaveOnSignals.ts";
import { mayColor } from "./mayColor.ts";
import { Outlets, leave } from "./outlets.ts";
import { readTextFile, type TextFile } from "./readTextFile.ts";
import { secondsLeft, timeLeft } from "./timeLeft.ts";
import { prepareFolder, whatIs, writeFiles, type OutputFile } from "./writer.ts";

type Outlet = "output" | "error";
export type Paint = "bold" | "dim" | "red" | "yellow" | "cyan";

export interface Progress {
  /** Tasks that are done, the parts of those under way included. */
  show(done: number): void;
  end(): void;
}

export interface Host {
  /** Prints results only. */
  print(text: string): void;
  /** Prints issues, progress and advice to standard error. */
  report(text: string): void;
  /** Colors text for a terminal that supports color. */
  paint(outlet: Outlet, paint: Paint, text: string): string;
  /** Columns of the terminal, 80 where there is none. */
  readonly width: number;
  /** Processors that may be used. */
  readonly cores: number;
  /** Seconds since an arbitrary moment, to time stages; never used for a result. */
  seconds(): number;
  /** Seconds that the processors have worked for this process, to decide where work is done; never used for a result. */
  processorSeconds(): number;
  /** A bar on standard error, where that is a terminal; it is drawn once the work takes long. */
  showProgress(tasks: number, what?: string): Promise<Progress | undefined>;
  /** The system under the program, for a report of a fault. */
  readonly system: string;
  readText(path: string): TextFile;
  /** Undefined where nothing is there. */
  whatIs(path: string): "folder" | "other" | undefined;
  /** Tries whether results can be written there, and finishes what a killed call left. Throws MachineFailure. */
  prepareFolder(folder: string): void;
  writeFiles(folder: string, files: readonly OutputFile[], obsolete?: readonly string[]): Promise<void>;
  /** Lets interrupts through; long work calls it every few milliseconds. */
  breathe(): Promise<void>;
  /** Sets the exit code unless a worse one is set. */
  leave(code: number): void;
  /** Ends the process after all output is written. */
  end(): void;
}

/** Seconds; a bar for shorter work would flicker. */
const worthShowing = 2;
/** Seconds after which a bar is drawn, even if nothing is done yet. */
const patience = 1;

async function openBar(tasks: number, what: string): Promise<Progress> {
  const { default: progress } = await import("cli-progress");
  const begun = process.uptime();
  const elapsed = (): number => process.uptime() - begun;
  const bar = new progress.SingleBar({
    format: (options, { value, total, progress: share }) =>
      `${progress.Format.BarFormat(share, options)} ${Math.floor(value)} of ${total} ${what}, ${timeLeft(share, elapsed())}`,
    clearOnComplete: true,
    // A signal ends the program at once and can restore nothing, so cursor and wrapping stay as they are.
    hideCursor: false,
    linewrap: true,
  });
  let isDrawn = false;
  return {
    show(done) {
      const left = secondsLeft(done / tasks, elapsed()) ?? Infinity;
      if (!isDrawn && (elapsed() < patience || elapsed() + left < worthShowing)) return;
      if (!isDrawn) bar.start(tasks, done);
      else bar.update(done);
      isDrawn = true;
    },
    end: () => void (isDrawn && bar.stop()),
  };
}

export function openHost(): Host {
  if (process.pid === 1) leaveOnSignals();
  const outlets = new Outlets();
  return {
    print: (text) => void outlets.output.write(text),
    report: (text) => void outlets.error.write(text),
    paint: (outlet, paint, text) =>
      mayColor(outlets[outlet], process.env) ? styleText(paint, text, { validateStream: false }) : text,
    get width() {
      const { columns } = outlets.output;
      // A pseudo-terminal without a size reports 0.
      return columns > 0 ? columns : 80;
    },
    cores: availableParallelism(),
    seconds: () => process.uptime(),
    processorSeconds() {
      const { user, system } = process.cpuUsage();
      return (user + system) / 1e6;
    },
    showProgress: (tasks, what = "runs") =>
      outlets.error.isTTY && process.env["TERM"] !== "dumb" ? openBar(tasks, what) : Promise.resolve(undefined),
    system: `Node ${process.version}, ${platform()} ${arch()}`,
    readText: readTextFile,
    whatIs,
    prepareFolder,
    writeFiles,
    breathe: () => new Promise((resolve) => void setImmediate(resolve)),
    leave,
    end: () => outlets.end(),
  };
}
