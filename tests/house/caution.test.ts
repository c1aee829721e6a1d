/** Opens every kind of output there is and finds the caution in it. The package has its own test beside it. */
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CAUTION, SOLID_MIXTURE_HAZARD } from '../../src/answer/caution.ts';
import { type RunningServer, serveStudy } from '../../src/faces/server/serveStudy.ts';
import { CAUTION_SHORT } from '../../src/telling/caution.ts';
import { buildWorkbenchIfOlder } from '../browser/built.ts';
import { launchChromium } from '../browser/chromium.ts';
import { runMain } from '../faces/cli/runMain.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const example = join(root, 'examples', 'alder-booster');
let place: string;

beforeAll(async () => {
  place = await mkdtemp(join(tmpdir(), 'plumeline-caution-'));
});
afterAll(() => rm(place, { recursive: true, force: true }));

const oneLine = (text: string): string => text.replace(/\s+/g, ' ');

describe('the caution', () => {
  test('says what the work is not for, whose it is, and what the propellants do, solid mixtures included', () => {
    expect(CAUTION).toMatch(/explanation and comparison/);
    expect(CAUTION).toMatch(/not for building, pressurising or firing/);
    expect(CAUTION).toMatch(/local law and codes/);
    expect(CAUTION).toMatch(/licensed people/);
    expect(CAUTION).toMatch(/solid mixtures/);
    expect(CAUTION).toMatch(/burn, poison or detonate/);
    expect(CAUTION_SHORT).toMatch(/not for building or firing hardware; local law and codes apply/);
  });

  test('stands in what the command line prints, for people and for programs', async () => {
    expect(oneLine((await runMain(['solve', example])).out)).toContain(CAUTION);
    expect(JSON.parse((await runMain(['solve', example, '--json'])).out).caution).toBe(CAUTION);
    // A small study, checked quickly, for what sentences and claims print.
    const small = join(root, 'starters', 'larger-or-smaller-throat');
    const talk = join(place, 'talk.txt');
    await writeFile(talk, 'Rowan bell pushes twice as hard as the narrow one.\n');
    for (const args of [
      ['check', small],
      ['claims', talk, '--study', small],
    ]) {
      expect(oneLine((await runMain(args)).out)).toContain(CAUTION);
      expect(JSON.parse((await runMain([...args, '--json'])).out).caution).toBe(CAUTION);
    }
    expect(oneLine((await runMain(['--help'])).out)).toMatch(
      /not for building, pressurising or firing hardware/,
    );
    expect((await runMain(['schema'])).out).toMatch(/not for building or firing hardware/);
  });

  test('stands in every new study, and each solid mixture is warned of by name', async () => {
    for (const starter of await readdir(join(root, 'starters'))) {
      const folder = join(place, starter);
      expect((await runMain(['new', folder, '--from', starter])).status).toBe(0);
      expect(await readFile(join(folder, 'study.yaml'), 'utf8')).toMatch(
        /not for building or firing hardware/,
      );
    }
    const solid = join(place, 'solid', 'study.yaml');
    await runMain(['new', join(place, 'solid')]);
    const text = (await readFile(solid, 'utf8')).replace(
      /propellants: \{ oxidiser.*\}/,
      'propellants: { mixture: { AP: 68 %, Al: 18 %, HTPB: 14 % } }',
    );
    await writeFile(solid, text);
    const printed = await runMain(['solve', solid]);
    expect(oneLine(printed.out)).toContain(SOLID_MIXTURE_HAZARD);
  });

  test('stands in the documents', async () => {
    for (const name of ['README.md', 'docs/study-file.md']) {
      expect(oneLine(await readFile(join(root, name), 'utf8'))).toMatch(
        /not for building, pressurising or firing hardware/,
      );
    }
  });

  test('stands in the workbench, in sight', async () => {
    buildWorkbenchIfOlder();
    const browser = await launchChromium();
    let server: RunningServer | null = null;
    try {
      server = await serveStudy({ folder: example, port: 0 });
      const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
      await page.goto(server.url);
      const words = page.locator('footer .caution');
      await words.waitFor();
      expect(oneLine((await words.textContent()) ?? '')).toContain(CAUTION);
      const box = await words.boundingBox();
      expect(box !== null && box.y + box.height <= 900).toBe(true);
    } finally {
      await server?.close();
      await browser.close();
    }
  });
});
