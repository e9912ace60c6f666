// The machine for the commands: output, color, terminal width, reading and writing of files.
import { arch, availableParallelism, platform } from "node:os";
import { styleText } from "node:util";
import { leaveOnSignals } from "./leaveOnSignals.ts";
import { mayColor } from "./mayColor.ts";
import { Outlets, leave } from "./outlets.ts";
import { readTextFile, type TextFile } from "./readTextFile.ts";
import { prepareFolder, whatIs, writeFiles, type OutputFile } from "./writer.ts";

type Outlet = "output" | "error";
export type Paint = "bold" | "dim" | "red" | "yellow" | "cyan";

interface Progress {
  advance(tasks: number): void;
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
  /** A bar on standard error, where that is a terminal. */
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

async function openBar(tasks: number, what: string): Promise<Progress> {
  const { default: progress } = await import("cli-progress");
  const bar = new progress.SingleBar({
    format: (options, { value, total, eta, progress: share }) => {
      const left = value === 0 ? "estimating the time left" : `${progress.Format.TimeFormat(eta, options, 1)} left`;
      return `${progress.Format.BarFormat(share, options)} ${value} of ${total} ${what}, ${left}`;
    },
    clearOnComplete: true,
    // A signal ends the program at once and can restore nothing, so cursor and wrapping stay as they are.
    hideCursor: false,
    linewrap: true,
  });
  bar.start(tasks, 0);
  return { advance: (done) => bar.increment(done), end: () => bar.stop() };
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
