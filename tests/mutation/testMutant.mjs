// Decides whether the tests notice a mutant.
import { inOrder, inParts, testsFor } from "./choice.mjs";
import { mutated } from "./mutants.mjs";
import { readSource } from "./sources.mjs";

const escaped = (name) => name.replaceAll(/[.*+?^${}()|[\]\\/]/g, String.raw`\$&`);

function runOf(tests, mutant, times) {
  const files = [...new Set(tests.map(({ file }) => file))];
  const pattern = `^(?:${tests.map(({ test }) => escaped(test)).join("|")})$`;
  const expected = tests.reduce((sum, { time }) => sum + time, files.length * 0.3);
  const changed = mutant && { file: mutant.file, text: mutated(readSource(mutant.file), mutant) };
  return { files, pattern, ...(changed && { changed }), limit: 5 + times * expected };
}

/** Tests that fail without a mutant show nothing; by their keys, once tried. */
const alone = new Map();
const keyOf = ({ file, test }) => `${file}\n${test}`;

async function failsAlone(test, { runner, times }) {
  const key = keyOf(test);
  if (!alone.has(key)) alone.set(key, (await runner.ask(runOf([test], undefined, times)))?.failed.length !== 0);
  return alone.get(key);
}

/**
 * `killed` with the test that failed, `survived`, `invalid` where the mutant is no program, or `unreached` where no test reaches it.
 * Tests run in parts of so many seconds; `times` is how much longer they may take than measured.
 */
export async function testMutant(mutant, means) {
  const { reach, runner, kills, seconds, times } = means;
  const all = inOrder(testsFor(reach, mutant), kills(mutant.file), mutant.file);
  const tests = all.filter((test) => alone.get(keyOf(test)) !== true);
  if (tests.length === 0) return { state: "unreached" };
  const { parts, left } = inParts(tests, seconds);
  for (const part of parts) {
    const said = await runner.ask(runOf(part, mutant, times));
    if (said === undefined || said.isStopped) return { state: "killed", by: "time or memory" };
    if (said.fault) return { state: "invalid" };
    const [first] = said.failed;
    // The run ended at this test.
    const measured = first && part.find((test) => keyOf(test) === keyOf(first));
    if (measured && (await failsAlone(measured, means))) return testMutant(mutant, means);
    if (first) kills(mutant.file, first);
    if (first) return { state: "killed", by: `${first.file} ${first.test}` };
    if (said.errors.length > 0) return { state: "killed", by: said.errors[0] };
  }
  return { state: "survived", ran: tests.length - left, left };
}
