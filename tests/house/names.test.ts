import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const tracked = execFileSync('git', ['ls-files', '-z'], { cwd: root, encoding: 'utf8' })
  .split('\0')
  .filter((name) => /\.(ts|tsx|mjs|cjs|json|md|yaml|yml|css|html|py|txt)$/.test(name))
  .filter((name) => name !== 'package-lock.json');

describe('the house', () => {
  test('has no unfinished marks', () => {
    const marks = new RegExp(['TO' + 'DO', 'FIX' + 'ME', 'XX' + 'X\\b', '\\bHA' + 'CK\\b'].join('|'));
    const found = tracked.filter((name) => marks.test(readFileSync(join(root, name), 'utf8')));
    expect(found).toEqual([]);
  });

  test('puts no module in another’s place where files of tests share a process', () => {
    const shared = tracked.filter((name) => /^tests\/(?!browser|faces|house)/.test(name));
    expect(shared.length).toBeGreaterThan(200);
    const found = shared.filter((name) =>
      /\bvi\.((do)?mock|resetModules|stub\w+|spyOn|useFakeTimers)[<(]/i.test(
        readFileSync(join(root, name), 'utf8'),
      ),
    );
    expect(found).toEqual([]);
  });

  test('links in its documents lead somewhere', () => {
    const broken: string[] = [];
    const names = new Set(tracked);
    const pictures = new Set(
      execFileSync('git', ['ls-files', '-z'], { cwd: root, encoding: 'utf8' }).split('\0'),
    );
    const folders = new Set(
      [...names].flatMap((name) => name.split('/').map((_, i, parts) => parts.slice(0, i).join('/'))),
    );
    for (const doc of tracked.filter((name) => name.endsWith('.md'))) {
      const text = readFileSync(join(root, doc), 'utf8');
      for (const [, target] of text.matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/g)) {
        if (!target || /^[a-z]+:/.test(target)) continue;
        const parts = [...doc.split('/').slice(0, -1), ...target.split('/')];
        const path: string[] = [];
        for (const part of parts) {
          if (part === '..') path.pop();
          else if (part && part !== '.') path.push(part);
        }
        const joined = path.join('/');
        if (!names.has(joined) && !pictures.has(joined) && !folders.has(joined))
          broken.push(`${doc}: ${target}`);
      }
    }
    expect(broken).toEqual([]);
  });
});
