/** `npm test`: install, find a browser, lint, check types and layers, build, run every test, close with a count. */
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findOrInstallBrowser } from './browser.mjs';
import { fail, install, requireNode, root, run, runTool, say, toolPath } from './house.mjs';

requireNode();
say('running every check and test; about twelve minutes on two cores, longer the first time.');
install();

const browser = findOrInstallBrowser();
if (!browser) {
  fail(
    'no Chromium or Chrome found. Install one (Debian: apt-get install chromium) or set CHROME to its path.',
  );
}
process.env.CHROME = browser;
say(`browser: ${browser}`);

function check(name, ok) {
  if (!ok) fail(`${name} failed; the lines above say where.`);
}

say('lint …');
check('lint (biome)', run(process.execPath, [toolPath('@biomejs/biome', 'biome'), 'check', '.']));
check('lint (oxlint)', runTool('oxlint', 'oxlint', ['--type-aware', 'src', 'tests']));
say('types …');
check('type check', runTool('@typescript/native', 'tsc', ['-p', 'tsconfig.json', '--noEmit']));
say('layers …');
check('layer rule', run(process.execPath, ['scripts/layers.mjs']));
const { build } = await import('./build.mjs');
build();

say('tests …');
const report = join(mkdtempSync(join(tmpdir(), 'plumeline-')), 'report.json');
const only = process.argv.slice(2);
const passedAll = runTool('vitest', 'vitest', [
  'run',
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${report}`,
  ...only,
]);

let counts;
try {
  counts = JSON.parse(readFileSync(report, 'utf8'));
} catch (error) {
  fail(`the tests left no report: ${error.message}`);
}
const {
  numPassedTests: passed,
  numFailedTests: failed,
  numPendingTests: skipped,
  numTotalTestSuites: suites,
} = counts;
say(`${suites} groups in ${root}`);
console.log(`${passed} passed, ${failed} failed, ${skipped} skipped`);
process.exit(passedAll && failed === 0 && passed > 0 ? 0 : 1);
