/** bench/RESULTS.md holds a section for each bench; each writes its own and leaves the others as they are. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const path = fileURLToPath(new URL('RESULTS.md', import.meta.url));

/** @param text Markdown below the heading `# title`; replaces the section of that title or is put last */
export function writeSection(title, text) {
  const now = existsSync(path) ? readFileSync(path, 'utf8') : '';
  const sections = now.split(/^(?=# )/m).map((section) => section.trim());
  const mine = `# ${title}\n\n${text.trim()}`;
  const at = sections.findIndex((section) => section.startsWith(`# ${title}\n`));
  if (at < 0) sections.push(mine);
  else sections[at] = mine;
  writeFileSync(path, `${sections.filter((section) => section !== '').join('\n\n')}\n`);
}
