// Changes the sources in one small place after another and tells which changes no test notices.
import { appendFileSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import { readReach } from "./choice.mjs";
import { Runner } from "./runner.mjs";
import { scoreLine } from "./score.mjs";
import { mutantsOfRoom, projectFolder, readSource, rooms, sampled, testFiles } from "./sources.mjs";
import { testMutant } from "./testMutant.mjs";
import { tryTogether } from "./together.mjs";

const { values } = parseArgs({
  options: {
    // Which mutants: of one room or all, of files whose path contains a text, of one line.
    room: { type: "string" },
    file: { type: "string", default: "" },
    line: { type: "string" },
    count: { type: "string", default: "60" },
    seed: { type: "string", default: "1" },
    // Files of tests whose paths contain one of these texts, in the order of these.
    tests: { type: "string" },
    // How hard the tests try: random cases, and processor seconds of the parts in which tests run for a single mutant.
    cases: { type: "string", default: "5" },
    seconds: { type: "string", default: "1,6" },
    // Without the runs of single mutants; without the run of many.
    quick: { type: "boolean", default: false },
    single: { type: "boolean", default: false },
    // A file to which outcomes are added; mutants in it are not tried again.
    keep: { type: "string" },
    // Notes again which test reaches which function.
    reach: { type: "boolean", default: false },
  },
});

const cache = path.join(projectFolder, "node_modules/.cache/blowcell");
const reachFile = path.join(cache, "reach.jsonl");
const say = (line) => process.stdout.write(`${line}\n`);

/** Runs all tests once on marked sources, with few random cases, because these reach what many reach. */
async function measureReach() {
  mkdirSync(cache, { recursive: true });
  const unfinished = `${reachFile}.part`;
  rmSync(unfinished, { force: true });
  const runner = new Runner({ REACHED_FUNCTIONS: unfinished, CASE_COUNT: "5" });
  const { failed } = await runner.ask({ files: testFiles(), limit: 1e6 });
  runner.close();
  for (const { file, test } of failed) say(`fails without a mutant: ${file} ${test}`);
  renameSync(unfinished, reachFile);
}

/** Which tests killed mutants of a file: a second argument adds one. */
function openKills() {
  const all = new Map();
  return (file, killer) => {
    const kills = all.get(file) ?? all.set(file, new Map()).get(file);
    const key = killer && `${killer.file}\n${killer.test}`;
    if (key) kills.set(key, (kills.get(key) ?? 0) + 1);
    return kills;
  };
}

function lineOf(mutant, { state, by, ran, left }) {
  const from = readSource(mutant.file).slice(mutant.start, mutant.end).replaceAll(/\s+/g, " ");
  const tests = ran === undefined ? (by ? ` by ${by}` : "") : ` (${ran} tests, ${left} left)`;
  return `${state} ${mutant.file}:${mutant.line} ${mutant.kind} \`${from}\` → \`${mutant.to}\`${tests}`;
}

const chosen = (values.room ? values.room.split(",") : rooms)
  .flatMap((room) => {
    const all = mutantsOfRoom(room, values.file).filter(({ line }) => !values.line || line === Number(values.line));
    return sampled(all, Number(values.count), `${values.seed} ${room}`).map((mutant) => ({ ...mutant, room }));
  })
  .map((mutant, id) => ({ ...mutant, id }));

/** Undefined: all, the short ones first. */
const named = values.tests?.split(",").flatMap((part) => testFiles().filter((file) => file.includes(part)));

const outcomes = new Map();
const keyOf = ({ file, start, end, to }) => [file, start, end, to].join();

function recall(lines) {
  const kept = new Map(lines.filter((line) => line !== "").map((line) => [keyOf(JSON.parse(line)), JSON.parse(line)]));
  for (const mutant of chosen) if (kept.has(keyOf(mutant))) outcomes.set(mutant.id, kept.get(keyOf(mutant)));
}

function conclude(mutant, outcome) {
  outcomes.set(mutant.id, outcome);
  say(lineOf(mutant, outcome));
  if (values.keep) appendFileSync(values.keep, `${JSON.stringify({ ...mutant, ...outcome })}\n`);
}

if (values.keep && existsSync(values.keep)) recall(readFileSync(values.keep, "utf8").split("\n"));
if (values.reach || !existsSync(reachFile)) await measureReach();
const reach = readReach(reachFile);
/** What runs while a module is loaded cannot be switched, and the core is another program. */
const isSwitchable = ({ file, inside }) => inside >= 0 && !file.startsWith("src/core/");
const together = values.single ? [] : chosen.filter((mutant) => isSwitchable(mutant) && !outcomes.has(mutant.id));
if (together.length > 0) {
  const means = {
    files: named && [...new Set(named)],
    tests: reach.tests,
    cases: values.cases,
    seconds: 1.5,
    said: say,
  };
  const killed = await tryTogether(together, means);
  for (const mutant of together)
    if (killed.has(mutant.id)) conclude(mutant, { state: "killed", by: killed.get(mutant.id) });
  if (values.quick) for (const mutant of together) if (!killed.has(mutant.id)) conclude(mutant, { state: "survived" });
}
const runner = new Runner({ CASE_COUNT: values.cases });
const seconds = values.seconds.split(",").map(Number);
const means = { reach, runner, kills: openKills(), seconds, times: 2 };
if (!values.quick)
  for (const mutant of chosen) if (!outcomes.has(mutant.id)) conclude(mutant, await testMutant(mutant, means));
runner.close();
for (const room of rooms) {
  const own = chosen.filter((mutant) => mutant.room === room && outcomes.has(mutant.id));
  if (own.length > 0)
    say(
      scoreLine(
        room,
        own.map(({ id }) => outcomes.get(id).state),
      ),
    );
}
