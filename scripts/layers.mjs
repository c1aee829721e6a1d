/** Check the import rule between the layers, and that the checker really saw the code. */

import { createRequire } from 'node:module';
import { join } from 'node:path';
import { cruise } from 'dependency-cruiser';
import extractTSConfig from 'dependency-cruiser/config-utl/extract-ts-config';
import { fail, root, say } from './house.mjs';

process.chdir(root);
const config = createRequire(import.meta.url)(join(root, '.dependency-cruiser.cjs'));
const result = await cruise(
  ['src'],
  { ...config.options, ruleSet: { forbidden: config.forbidden }, validate: true, outputType: 'json' },
  undefined,
  { tsConfig: extractTSConfig(join(root, 'tsconfig.json')) },
);
const { summary } = JSON.parse(result.output);
for (const { rule, from, to } of summary.violations) say(`${rule.name}: ${from} → ${to}`);
if (summary.totalCruised === 0 || summary.totalDependenciesCruised === 0)
  fail('the layer check saw no code.');
if (summary.error > 0) fail(`${summary.error} imports break the layer rule.`);
say(
  `layers: ${summary.totalCruised} modules, ${summary.totalDependenciesCruised} imports, none against the rule.`,
);
