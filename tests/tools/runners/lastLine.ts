// Ends every test run with one line: the numbers of passed and failed tests.
import type { Reporter, SerializedError, TestModule } from "vitest/node";

export default class LastLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly SerializedError[]): void {
    const tests = modules.flatMap((module) => [...module.children.allTests()]);
    const passed = tests.filter((test) => test.result().state === "passed").length;
    const failedTests = tests.filter((test) => test.result().state === "failed").length;
    // A file that cannot be loaded and an error outside any test are failures too.
    const brokenModules = modules.filter((module) => module.errors().length > 0).length;
    const failed = failedTests + brokenModules + unhandledErrors.length;
    process.stdout.write(`${passed} passed, ${failed} failed\n`);
  }
}
