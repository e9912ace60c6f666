// Gives a test run its own temporary folder, and removes it after the run.
import { chmodSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";

export default function temporaryFolder(): () => void {
  const folder = mkdtempSync(path.join(tmpdir(), "blowcell-tests-"));
  // Programs that a test starts as another user must reach their files.
  chmodSync(folder, 0o755);
  process.env["TMPDIR"] = folder;
  return () => rmSync(folder, { recursive: true, force: true });
}
