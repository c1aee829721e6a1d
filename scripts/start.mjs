/** `npm start`: install, build, and serve the workbench with a copy of the example study. */
import { cpSync, existsSync } from 'node:fs';
import { join } from 'node:path';
import { install, requireNode, root, run, say } from './house.mjs';

requireNode();
say('starting. The first time takes a minute or two; later starts take a few seconds.');
install();
const { build } = await import('./build.mjs');
build();

const study = join(root, 'studies', 'alder-booster');
if (!existsSync(study)) {
  cpSync(join(root, 'examples', 'alder-booster'), study, { recursive: true });
  say('copied the example to studies/alder-booster, yours to change; delete it to start afresh.');
}
const open = [join(root, 'bin', 'plumeline.mjs'), 'open', study, ...process.argv.slice(2)];
process.exit(run(process.execPath, open) ? 0 : 1);
