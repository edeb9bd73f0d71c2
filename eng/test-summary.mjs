// Prints the slowest tests, the reason of every skip, and the closing line; fails on a skip that the list does not allow.
// Usage: node test-summary.mjs RESULTS_FOLDER ALLOWED_SKIPS_FILE
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const [folder, allowedFile] = process.argv.slice(2);
const tests = readdirSync(folder)
  .filter((name) => name.endsWith(".ctrf"))
  .flatMap((name) => JSON.parse(readFileSync(join(folder, name), "utf8")).results.tests);
const allowed = readFileSync(allowedFile, "utf8")
  .split("\n")
  .map((line) => line.trim())
  .filter((line) => line !== "" && !line.startsWith("#"));

const count = (status) => tests.filter((test) => test.status === status).length;
const reason = (test) => (test.message ?? "no reason given").trim();

console.log("Slowest tests:");
for (const test of [...tests].sort((a, b) => b.duration - a.duration).slice(0, 10)) {
  console.log(`  ${(test.duration / 1000).toFixed(2).padStart(7)} s  ${test.name}`);
}

let unexpected = 0;
for (const test of tests.filter((one) => one.status === "skipped" || one.status === "pending")) {
  const known = allowed.some((start) => reason(test).startsWith(start));
  unexpected += known ? 0 : 1;
  console.log(`${known ? "Skipped" : "Skipped without leave"}: ${test.name}: ${reason(test)}`);
}

for (const test of tests.filter((one) => one.status === "failed")) {
  console.log(`Failed: ${test.name}`);
}

const skipped = count("skipped") + count("pending");
console.log(`${count("passed")} passed, ${count("failed") + count("other")} failed, ${skipped} skipped`);
process.exit(tests.length === 0 || count("failed") + count("other") > 0 || unexpected > 0 ? 1 : 0);
