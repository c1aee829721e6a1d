/** Write the pages of documentation that are made from the program itself. Run after a build: `npm run docs`. */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root, say } from './house.mjs';

const load = (path) => import(new URL(`../dist/${path}`, import.meta.url).href);
const { studyFilePage } = await load('study/referencePage.js');
const { studyJsonSchema } = await load('study/jsonSchema.js');
const { quantitiesPage } = await load('answer/quantitiesPage.js');
const { propellants } = JSON.parse(readFileSync(join(root, 'data', 'propellants.json'), 'utf8'));

const pages = {
  'docs/study-file.md': studyFilePage(propellants),
  'docs/study.schema.json': `${JSON.stringify(studyJsonSchema(), null, 2)}\n`,
  'docs/quantities.md': quantitiesPage(),
};
for (const [path, text] of Object.entries(pages)) writeFileSync(join(root, path), text);
say(`wrote ${Object.keys(pages).join(', ')}`);
// The questions are answered, held to their bands and drawn by a test; it writes docs/questions.md and its pictures.
const { status } = spawnSync('npx', ['vitest', 'run', 'tests/answer/questions'], {
  cwd: root,
  stdio: 'inherit',
  env: { ...process.env, PLUMELINE_WRITE_DOCS: '1' },
});
if (status !== 0) process.exit(status ?? 1);
say('wrote docs/questions.md and docs/pictures/questions');
