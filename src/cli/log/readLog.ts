// Streams a log file through the CSV parser into a reader of rows, in bounded memory.
import { CsvError, parse, type Parser } from "csv-parse";
import { issueOf, logIssueCodes } from "#analysis/log/logColumns.ts";
import { logReader, type LogSummary } from "#analysis/log/logReader.ts";
import type { StepRecord } from "#analysis/log/logRecord.ts";
import type { Zone } from "#analysis/log/logTimes.ts";
import type { Host } from "#cli/machine/host.ts";
import { openBytes, type OpenedBytes } from "#cli/machine/readBytes.ts";
import { unreadable } from "#cli/machine/readTextFile.ts";
import type { Issue } from "#foundation/issue.ts";
import { decoderOf } from "./logText.ts";

/** A row with more characters comes from a quote that is never closed. */
const longestRow = 1_000_000;
/** Below this size a bar would only flicker. */
const barFrom = 20_000_000;
const MEGABYTE = 1_000_000;

export interface LogCall {
  readonly path: string;
  readonly columns: readonly string[];
  readonly stops: readonly string[];
  readonly steps: readonly string[];
  readonly zone: Zone | undefined;
}

export interface LogTaker {
  readonly take: (record: StepRecord) => void;
  /** The log is refused whatever follows. */
  readonly isRefused: () => boolean;
}

export async function readLog(call: LogCall, taker: LogTaker, host: Host): Promise<LogSummary> {
  let opened: OpenedBytes;
  try {
    opened = openBytes(call.path);
  } catch (error) {
    const reading = unreadable(call.path, error);
    return failed("issue" in reading ? [reading.issue] : []);
  }
  if (isScenario(call.path)) return failed([misread("log-scenario", call.path)]);
  const bar = opened.size > barFrom ? await host.showProgress(Math.ceil(opened.size / MEGABYTE), "MB") : undefined;
  try {
    const summary = await readPieces(opened, call, taker, host, (bytes) => bar?.show(bytes / MEGABYTE));
    const place = { file: call.path, line: 1, column: 1 };
    const issues = summary.issues.map((issue) => (issue.option === undefined ? { place, ...issue } : issue));
    return { ...summary, issues };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const { lines } = error as { readonly lines?: unknown };
    const place = { file: call.path, line: typeof lines === "number" ? lines : 1, column: 1 };
    const message = `The log is broken: ${error.message.split("\n")[0] ?? ""}.`;
    return failed([issueOf("log-broken", message, "Check the quotes in this line and before it.", { place })]);
  } finally {
    bar?.end();
  }
}

const failed = (issues: readonly Issue[]): LogSummary => ({ rows: 0, problems: [], words: [], issues });

const isScenario = (path: string): boolean => /\.(?:ya?ml|json)$/iu.test(path);

/** Begins as compressed files and old workbooks do. */
function isWorkbook(piece: Buffer): boolean {
  return ["504b0304", "d0cf11e0"].includes(piece.subarray(0, 4).toString("hex"));
}

function misread(code: "log-workbook" | "log-scenario", file: string): Issue {
  const message =
    code === "log-workbook" ? "The log is a workbook or a compressed file, not text." : "A scenario is no log.";
  return issueOf(code, message, logIssueCodes[code][1], { place: { file, line: 1, column: 1 } });
}

async function readPieces(
  { pieces }: OpenedBytes,
  { path, columns, stops, steps, zone }: LogCall,
  { take, isRefused }: LogTaker,
  host: Host,
  show: (bytes: number) => void,
): Promise<LogSummary> {
  let begun: { readonly reader: ReturnType<typeof logReader>; readonly parser: Parser } | undefined;
  let read = 0;
  let decoder: ReturnType<typeof decoderOf> | undefined;
  for (const piece of pieces) {
    if (decoder === undefined && isWorkbook(piece)) return failed([misread("log-workbook", path)]);
    decoder ??= decoderOf(piece);
    const text = decoder.decode(piece);
    if (begun === undefined) {
      const { delimiter } = decoder;
      const reader = logReader(take, { columns, stops, steps, zone, delimiter });
      begun = { reader, parser: rowParser(reader, delimiter) };
    }
    await written(begun.parser, text);
    if (isRefused()) return begun.reader.end();
    read += piece.length;
    show(read);
    await host.breathe();
  }
  if (begun === undefined) return failed([issueOf("log-empty", "The log is empty.", "Check the file.")]);
  await ended(begun.parser);
  const summary = begun.reader.end();
  return { ...summary, words: [...summary.words, ...(decoder?.words ?? [])] };
}

/** Rows go to the reader; the parser keeps none. */
function rowParser(reader: ReturnType<typeof logReader>, delimiter: string): Parser {
  const parser = parse({
    delimiter,
    relax_column_count: true,
    skip_empty_lines: true,
    trim: true,
    max_record_size: longestRow,
    on_record: (cells: readonly string[], { lines }) => {
      reader.row(cells, lines);
      return null;
    },
  });
  parser.on("error", () => undefined);
  return parser.resume();
}

/** The parser gives its error here and as an event, for which `rowParser` listens. */
function written(parser: Parser, text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    parser.write(text, (error) => {
      if (error) reject(error);
      else resolve();
    });
  });
}

function ended(parser: Parser): Promise<void> {
  return new Promise((resolve, reject) => {
    parser.once("error", reject);
    parser.once("end", resolve);
    parser.end();
  });
}
