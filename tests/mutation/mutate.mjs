// Changes the sources in one small place after another and tells which changes no test notices.
import { appendFileSync, existsSync, mkdirSync, renameSync, rmSync } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import { readReach } from "./choice.mjs";
import { Runner } from "./runner.mjs";
import { mutantsOfRoom, projectFolder, readSource, rooms, sampled, testFiles } from "./sources.mjs";
import { testMutant } from "./testMutant.mjs";
import { scoreLine } from "./score.mjs";

const { values } = parseArgs({
  options: {
    room: { type: "string" },
    file: { type: "string", default: "" },
    line: { type: "string" },
    count: { type: "string", default: "60" },
    seed: { type: "string", default: "1" },
    cases: { type: "string", default: "10" },
    seconds: { type: "string", default: "2,10" },
    keep: { type: "string" },
    reach: { type: "boolean", default: false },
  },
});

const cache = path.join(projectFolder, "node_modules/.cache/blowcell");
const reachFile = path.join(cache, "reach.jsonl");

/** Runs all tests once on marked sources, with few random cases, because these reach what many reach. */
async function measureReach() {
  mkdirSync(cache, { recursive: true });
  const unfinished = `${reachFile}.part`;
  rmSync(unfinished, { force: true });
  const runner = new Runner({ REACHED_FUNCTIONS: unfinished, CASE_COUNT: "5" });
  const said = await runner.ask({ files: testFiles(), limit: 1e6 });
  runner.close();
  for (const { file, test } of said.failed) process.stdout.write(`fails without a mutant: ${file} ${test}\n`);
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
  const tests = state === "survived" ? ` (${ran} tests, ${left} left)` : by ? ` by ${by}` : "";
  return `${state} ${mutant.file}:${mutant.line} ${mutant.kind} \`${from}\` → \`${mutant.to}\`${tests}\n`;
}

function chosenMutants(room) {
  const all = mutantsOfRoom(room, values.file).filter(({ line }) => !values.line || line === Number(values.line));
  return sampled(all, Number(values.count), `${values.seed} ${room}`);
}

async function mutateRoom(room, means) {
  const states = [];
  for (const mutant of chosenMutants(room)) {
    const outcome = await testMutant(mutant, means);
    states.push(outcome.state);
    process.stdout.write(lineOf(mutant, outcome));
    if (values.keep) appendFileSync(values.keep, `${JSON.stringify({ room, ...mutant, ...outcome })}\n`);
  }
  process.stdout.write(scoreLine(room, states));
}

if (values.reach || !existsSync(reachFile)) await measureReach();
const runner = new Runner({ CASE_COUNT: values.cases });
const reach = readReach(reachFile);
const means = { reach, runner, kills: openKills(), seconds: values.seconds.split(",").map(Number), times: Number(values.cases) };
for (const room of values.room ? [values.room] : rooms) await mutateRoom(room, means);
runner.close();
