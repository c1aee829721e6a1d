/** `npm start`: install, build, and serve the workbench with a copy of the example study. */
import { cpSync, existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { install, requireNode, root, say } from './house.mjs';
import { stopWithParent } from './stopWithParent.mjs';

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
// In this very process, so that whatever stops it (Ctrl+C, SIGTERM) stops the server.
stopWithParent();
const program = join(root, 'bin', 'plumeline.mjs');
process.argv.splice(1, process.argv.length, program, 'open', study, ...process.argv.slice(2));
await import(pathToFileURL(program).href);
