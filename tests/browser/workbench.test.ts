/** The workbench in a real browser, on a copy of the example study. */

import { rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import {
  axeFindings,
  context,
  forgive,
  keepSentences,
  ledgerText,
  number,
  onDisk,
  open,
  page,
  pictures,
  ready,
  server,
  slider,
  studyFile,
  textOf,
  useWorkbench,
  withoutSentences,
} from './studyPage.ts';

useWorkbench();

describe('the altitude scale', () => {
  beforeEach(withoutSentences);
  it('follows drag, keys, wheel and click, and climbs in steps where motion is to be reduced', async () => {
    await open();
    const now = async () => Number(await slider().getAttribute('aria-valuenow'));
    const before = { ledger: await ledgerText(), drawing: await page.locator('.stage').innerHTML() };
    await expect.poll(() => slider().getAttribute('aria-valuetext')).toBe('0 kilometres, 1.01 bar');
    const box = await slider().boundingBox();
    if (box === null) throw new Error('the slider is not visible');
    const x = box.x + box.width / 2;
    await page.mouse.move(x, box.y + box.height - 2);
    await page.mouse.down();
    for (let i = 1; i <= 10; i++) await page.mouse.move(x, box.y + box.height * (1 - 0.03 * i));
    await page.mouse.up();
    expect(await now()).toBeGreaterThan(8);
    expect(await now()).toBeLessThan(16);
    await expect.poll(() => ledgerText()).not.toBe(before.ledger);
    await expect.poll(() => page.locator('.stage').innerHTML()).not.toBe(before.drawing);

    await slider().focus();
    await page.keyboard.press('Home');
    await expect.poll(() => now()).toBe(0);
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => now()).toBe(0.5);
    await page.keyboard.press('PageUp');
    await expect.poll(() => now()).toBe(5.5);
    await page.keyboard.press('PageDown');
    await expect.poll(() => now()).toBe(0.5);
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => now()).toBe(0);
    await page.keyboard.press('End');
    await expect.poll(() => slider().getAttribute('aria-valuetext')).toBe('vacuum, no air');
    await page.keyboard.press('Home');
    await expect.poll(() => now()).toBe(0);
    for (let i = 0; i < 24; i++) await page.keyboard.press('ArrowUp');
    // U.S. Standard Atmosphere 1976, table I: 12 000 m geometric, 1.9399e4 Pa
    await expect.poll(() => slider().getAttribute('aria-valuetext')).toBe('12 kilometres, 0.19 bar');

    await page.mouse.click(x, box.y + box.height / 2);
    const middle = await now();
    expect(middle).toBeGreaterThan(15);
    expect(middle).toBeLessThan(26);
    await page.mouse.wheel(0, -100);
    await expect.poll(() => now()).toBeCloseTo(middle + 0.5, 6);

    await slider().focus();
    await page.keyboard.press('Home');
    await page.getByRole('button', { name: 'Climb' }).click();
    await expect.poll(() => now()).toBe(1);
    await expect.poll(() => now(), { timeout: 5000 }).toBe(2);
    await page.getByRole('button', { name: 'Stop' }).click();
  });
});

describe('editing', () => {
  beforeEach(withoutSentences);
  it('writes an input to the file, keeps the comments, and can be undone', async () => {
    await open();
    const original = await onDisk();
    const comments = original.split('\n').filter((line) => line.trim().startsWith('#'));
    expect(comments.length).toBeGreaterThan(0);
    const first = await ledgerText();
    const field = page.locator('input[id^="field-"][id$="chamber.pressure"]').first();
    const before = await field.inputValue();
    await field.fill('130 bar');
    await field.press('Enter');
    await expect.poll(onDisk).toContain('130 bar');
    await expect.poll(ledgerText).not.toBe(first);
    // The first estimate is marked; what stays is the full answer.
    await expect.poll(ledgerText, { timeout: 60_000 }).not.toContain('≈');
    const written = await onDisk();
    for (const comment of comments) expect(written).toContain(comment);

    const changed = await ledgerText();
    await page.reload();
    await ready();
    await expect
      .poll(() => page.locator('input[id^="field-"][id$="chamber.pressure"]').first().inputValue())
      .toBe('130 bar');
    await expect.poll(() => ledgerText()).toBe(changed);

    // the history belongs to the visit; make one more edit and take it back
    const again = page.locator('input[id^="field-"][id$="chamber.pressure"]').first();
    await again.fill(before);
    await again.press('Enter');
    await expect.poll(onDisk).not.toContain('130 bar');
    await expect.poll(ledgerText).toBe(first);
    await page.keyboard.press('Control+z');
    await expect.poll(onDisk).toBe(written);
    await expect.poll(ledgerText).toBe(changed);
    await page.keyboard.press('Control+Shift+z');
    await expect.poll(ledgerText).toBe(first);
  });

  it('steps an input with the arrow keys', async () => {
    await open();
    const field = page.locator('input[id^="field-"][id$="chamber.pressure"]').first();
    const before = Number.parseFloat(await field.inputValue());
    await field.focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    await expect.poll(onDisk).toContain(`${before + 2} bar`);
  });

  it('refuses a wrong pressure in place', async () => {
    await open();
    const original = await onDisk();
    const field = page.locator('input[id^="field-"][id$="chamber.pressure"]').first();
    for (const wrong of ['-5 bar', '100 bananas', 'many', '12 m']) {
      await field.fill(wrong);
      await field.press('Enter');
      const fault = page.locator('.inputs .fault').first();
      await fault.waitFor();
      await expect.poll(() => field.getAttribute('aria-invalid'), { message: wrong }).toBe('true');
      expect((await textOf(fault)).length).toBeGreaterThan(20);
      await expect.poll(() => onDisk()).toBe(original);
      await field.press('Escape');
      await expect.poll(() => field.getAttribute('aria-invalid')).toBe('false');
      await expect.poll(() => page.locator('.inputs .fault').count()).toBe(0);
    }
  });

  it('takes up a change made elsewhere, also a broken one', async () => {
    await open();
    const original = await onDisk();
    const question = 'Which of the two would you take?';
    await writeFile(studyFile(), original.replace(/^question:.*$/m, `question: ${question}`));
    await expect.poll(() => textOf(page.locator('h1'))).toBe(question);

    await writeFile(studyFile(), `${original}\n  broken: [`);
    await page.locator('.faults').waitFor();
    await expect.poll(() => textOf(page.locator('.faults'))).toMatch(/line \d+, column \d+/);
    const status = page.locator('header [role=status]');
    await expect
      .poll(() => textOf(status))
      .toMatch(/^study\.yaml has (a fault|faults); shown as it was before$/);
    // the last good picture stays
    await expect.poll(() => page.locator('.stage svg').count()).toBeGreaterThan(0);

    await writeFile(studyFile(), original);
    await page.locator('.faults').waitFor({ state: 'detached' });

    // A wrong value is told beside its field too.
    await writeFile(studyFile(), original.replace('pressure: 100 bar', 'pressure: many bars'));
    const field = page.locator('input[id="field-engines.bell.chamber.pressure"]');
    await expect.poll(() => field.getAttribute('aria-invalid')).toBe('true');
    await expect
      .poll(() => textOf(page.locator('.fault-line')))
      .toMatch(/^Alder B: in study\.yaml, .*many bars/);
    await writeFile(studyFile(), original);
    await page.locator('.faults').waitFor({ state: 'detached' });
    await expect.poll(() => field.getAttribute('aria-invalid')).toBe('false');

    await rm(studyFile());
    await page.locator('.faults').waitFor();
    await expect.poll(() => textOf(page.locator('.faults'))).toMatch(/^study\.yaml cannot be read now/);
    await expect.poll(() => textOf(status)).toBe('study.yaml cannot be read now; shown as it was before');
    await writeFile(studyFile(), original);
    await page.locator('.faults').waitFor({ state: 'detached' });
    // The server says so of the file that is not there; the browser logs the refused reading.
    forgive(/status of 422/);
  });
});

describe('studies of other shapes', () => {
  beforeEach(withoutSentences);
  const wide = `  wide:
    like: bell
    name: Alder W
    nozzle: { kind: bell, areaRatio: 60, length: 80 % }
`;
  const withFourth = (text: string) => text.replace(/^vehicles:/m, `${wide}\nvehicles:`);
  const rewrite = async (change: (text: string) => string) => {
    const changed = change(await onDisk());
    await writeFile(studyFile(), changed);
  };
  const names = () => page.locator('.engine-name b').allTextContents();

  it('shows one engine alone', async () => {
    await rewrite((text) =>
      text
        .replace(/^ {2}# The same chamber[\s\S]*?areaRatio: 60 \}\n/m, '')
        .replace(/^compare:.*\n/m, '')
        .replace(/^needs:[\s\S]*?(?=^sources:)/m, ''),
    );
    await open();
    await expect.poll(() => names()).toEqual(['Alder B']);
    await expect.poll(() => textOf(page.locator('table.ledger'))).not.toContain('Alder P');
  });

  it('lets two of four be chosen, each keeping its own style', async () => {
    await rewrite(withFourth);
    await open();
    await expect.poll(() => names()).toEqual(['Alder B', 'Alder P']);
    await page.getByLabel('Second engine').selectOption('wide');
    await expect.poll(() => names()).toEqual(['Alder B', 'Alder W']);
    await expect.poll(() => page.locator('.engine-name b').last().getAttribute('class')).toBe('text-4');
    // choosing the engine of the other side swaps the two
    await page.getByLabel('First engine').selectOption('wide');
    await expect.poll(() => names()).toEqual(['Alder W', 'Alder B']);
    await expect.poll(() => page.locator('.engine-name b').first().getAttribute('class')).toBe('text-4');
  });

  it('greys an engine that cannot be computed, says why at its cause, and recovers', async () => {
    await rewrite((text) => withFourth(text).replace('other: plug', 'other: wide'));
    await open();
    const field = page.locator('input[id="field-engines.wide.nozzle.areaRatio"]');
    await field.fill('1000');
    await field.press('Enter');
    await page.locator('.layers.failed-4').waitFor({ state: 'attached' });
    await expect.poll(() => field.getAttribute('aria-invalid')).toBe('true');
    await expect.poll(() => textOf(page.locator('.fault-line'))).toContain('Alder W');
    await expect.poll(() => textOf(page.locator('table.ledger'))).toContain('failed');
    await expect.poll(() => onDisk()).toContain('1000');
    await expect.poll(() => axeFindings('failed engine')).toEqual([]);
    await page.keyboard.press('Control+z');
    await page.locator('.layers.failed-4').waitFor({ state: 'detached' });
    await expect.poll(() => page.locator('.fault-line').count()).toBe(0);
  });

  it('tells of an engine that failed while two others are compared', async () => {
    await rewrite((text) =>
      withFourth(text).replace('areaRatio: 60, length: 80 % }\n', 'areaRatio: 1000 }\n'),
    );
    await open();
    await expect.poll(() => names()).toEqual(['Alder B', 'Alder P']);
    await expect
      .poll(() => textOf(page.locator('.stage-place .fault')))
      .toMatch(/^Alder W, not shown here, cannot be computed\. /);
  });

  it('shows published figures beside the computed ones', async () => {
    await rewrite((text) =>
      text.replace(
        /^( {4}nozzle: \{ kind: bell.*\n)/m,
        '$1    published:\n      - { quantity: thrust, value: 800 kN, at: vacuum, source: an invented leaflet }\n      - { quantity: chamberPressure, value: 90 bar, source: an invented leaflet }\n',
      ),
    );
    await open();
    await page.getByRole('button', { name: 'Alder B, published figures: 1 of 2 met' }).click();
    const shown = await textOf(page.getByRole('tabpanel'));
    expect(shown).toContain('thrust in vacuum');
    expect(shown).toMatch(/90 bar published, 100\.0 bar computed\+10 bar, \+11 %, outside its digits/);
    await expect.poll(() => axeFindings('published figures')).toEqual([]);
  });

  it('says what is wrong with a study that is broken from the start, and opens once it is mended', async () => {
    const good = await onDisk();
    await writeFile(studyFile(), good.replace('areaRatio: 25', 'areaRatio: lots'));
    await open();
    await expect.poll(() => textOf(page.locator('.faults'))).toMatch(/line \d+, column \d+.*lots/);
    await expect.poll(() => axeFindings('broken study')).toEqual([]);
    await writeFile(studyFile(), good);
    await page.locator('table.ledger').waitFor();
    await expect.poll(() => page.locator('.faults').count()).toBe(0);
  });
});

describe('an edit while the file changes elsewhere', () => {
  beforeEach(withoutSentences);
  it('is made on the new text, and both changes stand', async () => {
    await open();
    const original = await onDisk();
    // No change is announced in time: the page finds out only when it writes.
    await page.route('**/api/changes', (route) => route.abort());
    await page.reload();
    await ready();
    forgive(/./);
    await writeFile(studyFile(), original.replace(/^question:.*$/m, 'question: Which one?'));
    const field = page.locator('input[id="field-engines.bell.chamber.pressure"]');
    await field.fill('130 bar');
    await field.press('Enter');
    await expect.poll(onDisk).toContain('130 bar');
    await expect.poll(() => onDisk()).toContain('question: Which one?');
    await expect.poll(() => textOf(page.locator('h1'))).toBe('Which one?');
    forgive(/409|ERR_FAILED/);
  });
});

describe('the theme', () => {
  beforeEach(withoutSentences);
  it('follows the system, can be turned, and is remembered', async () => {
    await open({ dark: true });
    const now = () => page.evaluate(() => document.documentElement.dataset.theme);
    await expect.poll(() => now()).toBe('dark');
    await page.getByRole('button', { name: 'Light' }).click();
    await expect.poll(() => now()).toBe('light');
    await page.reload();
    await ready();
    await expect.poll(() => now()).toBe('light');
  });
});

const sentence = (id: string) => page.locator(`#sentence-${id}`);
const stateOf = (id: string) => textOf(sentence(id).locator('.state'));
const openSentences = () => page.getByRole('tab', { name: 'Sentences' }).click();

/** Until the verdicts on screen are the last word. */
const settled = () =>
  page.locator('.sentences-head', { hasText: /safe to say/ }).waitFor({ timeout: 25_000 });

describe('sentences with their verdicts', () => {
  it('are checked, and each opens to what stands behind it', async () => {
    await open();
    await openSentences();
    await settled();
    await expect.poll(() => stateOf('vacuum-gain')).toMatch(/^Safe to say, holds/);
    await expect.poll(() => stateOf('always-better')).toMatch(/^Don’t say, never holds/);
    // Told apart without colour: a silhouette of its own for each verdict.
    const drawn = (id: string) => sentence(id).locator('.verdict-mark').first().innerHTML();
    const marks = await Promise.all(['vacuum-gain', 'always-better', 'pad-gain'].map(drawn));
    expect(new Set(marks).size).toBe(3);
    await page.getByRole('button', { name: /^A plug is always better/ }).click();
    const details = await textOf(sentence('always-better').locator('.details'));
    for (const part of [
      'True instead',
      'Numbers that decide',
      'What matters most',
      'Strong words',
      'The test',
    ])
      expect(details).toContain(part);
    await expect.poll(() => axeFindings('verdicts')).toEqual([]);
    await sentence('always-better').locator('.number').first().click();
    await expect.poll(() => textOf(page.locator('.card'))).toContain('What it means');
  });

  it('change when an input is edited, and the change is told', async () => {
    await keepSentences('vacuum-gain', 'thrust-grows', 'pad-gain', 'always-better');
    await open();
    await openSentences();
    await settled();
    const was = await stateOf('vacuum-gain');
    await page.getByRole('tab', { name: 'Inputs' }).click();
    const field = page.locator('input[id="field-engines.plug.nozzle.areaRatio"]');
    await field.fill('27');
    await field.press('Enter');
    const strip = page.locator('.verdict-strip');
    await strip.locator('.change').first().waitFor({ timeout: 25_000 });
    await expect.poll(() => textOf(strip)).toContain('safe to say → don’t say');
    await expect.poll(() => textOf(strip)).toMatch(/\d+ safe to say, .*\d+ don’t say/);
    await openSentences();
    await expect.poll(() => stateOf('vacuum-gain')).not.toBe(was);
    await expect.poll(() => textOf(sentence('vacuum-gain'))).toContain('Changed by the last edit');
    await page.keyboard.press('Control+z');
    await expect.poll(() => stateOf('vacuum-gain'), { timeout: 25_000 }).toBe(was);
  });

  it('are added, changed and removed in the page; a wrong test is told beside its field first', async () => {
    await keepSentences('vacuum-gain', 'always-better');
    await open();
    await openSentences();
    const original = await onDisk();
    await page.getByRole('button', { name: 'Add a sentence' }).click();
    const words = page.getByLabel('Words to be said');
    await expect.poll(() => words.evaluate((element) => element === document.activeElement)).toBe(true);
    await words.fill('The bell burns more than a ton in four seconds.');
    const test = page.getByLabel('Test that decides them');
    await test.fill('bell.massFlow > 1 bar');
    const fault = page.locator('.editor .fault');
    await fault.waitFor();
    await expect.poll(() => textOf(fault)).toMatch(/At sign \d+.*pressure/);
    await expect.poll(() => test.getAttribute('aria-invalid')).toBe('true');
    await expect.poll(() => page.getByRole('button', { name: 'Keep in the study' }).isDisabled()).toBe(true);
    await expect.poll(() => onDisk()).toBe(original);
    await expect.poll(() => axeFindings('editor')).toEqual([]);
    await test.fill('bell.massFlow * 4 s > 1000 kg');
    await fault.waitFor({ state: 'detached' });
    await test.fill('bell.massFlow > 225 kg/s');
    const provisional = page.locator('.editor .draft-verdict');
    await expect.poll(() => textOf(provisional), { timeout: 25_000 }).toMatch(/Safe to say.*provisional/);
    await expect.poll(() => onDisk()).toBe(original);
    await expect.poll(() => axeFindings('a provisional verdict')).toEqual([]);
    await page.getByRole('button', { name: 'Keep in the study' }).click();
    await expect.poll(onDisk).toContain('bell.massFlow > 225 kg/s');
    const added = sentence('bell-burns-more-than');
    await expect.poll(() => textOf(added), { timeout: 25_000 }).toContain('Safe to say');
    const comments = original.split('\n').filter((line) => line.trim().startsWith('#'));
    for (const comment of comments) await expect.poll(() => onDisk()).toContain(comment);

    await added.getByRole('button', { name: /^The bell burns/ }).click();
    await added.getByRole('button', { name: 'Change words or test' }).click();
    await page.getByLabel(/^Meant to be said/).uncheck();
    await page.getByRole('button', { name: 'Keep in the study' }).click();
    await expect.poll(onDisk).toMatch(/bell-burns-more-than[^-]*\n {4}said: false\n/);

    await added.getByRole('button', { name: 'Change words or test' }).click();
    await page.getByRole('button', { name: 'Remove' }).click();
    await expect.poll(onDisk).not.toContain('bell-burns-more-than');
  });
});

describe('the pedigree of a number', () => {
  beforeEach(withoutSentences);
  it('opens by the keyboard, takes the focus, tells span, inputs and model, and Escape goes back', async () => {
    await open();
    const isp = number('Alder B, specific impulse');
    await isp.focus();
    await page.keyboard.press('Enter');
    const card = page.locator('.card');
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('card-heading');
    await card.locator('.span').waitFor({ timeout: 25_000 });
    const told = await textOf(card);
    for (const part of ['What it means', 'Equation', 'How sure it is', 'Spoken', 'Source', 'Limits'])
      expect(told).toContain(part);
    expect(told).toMatch(/lies between 2\d\d\s?s and 30\d\s?s/);
    // Thrust over mass flow hangs on the pressure in the chamber; more of it, more of the other.
    await expect
      .poll(() => textOf(card.locator('.hangs-on tr', { hasText: 'chamber pressure' })))
      .toMatch(/\+0\.\d/);
    await expect.poll(() => axeFindings('pedigree')).toEqual([]);
    const page2 = await card.getByRole('link').getAttribute('href');
    const reply = await page.request.get(new URL(page2 ?? '', server.url).href);
    expect(reply.status()).toBe(200);
    expect(await reply.text()).toMatch(/^# /);
    await page.keyboard.press('Escape');
    await expect.poll(() => card.count()).toBe(0);
    await expect.poll(() => isp.evaluate((element) => element === document.activeElement)).toBe(true);
    await isp.click();
    await card.getByRole('button', { name: 'Close' }).click();
    await expect.poll(() => page.locator('.inputs').count()).toBe(1);
  });

  it('is there for ledger, engine, match, inputs and losses, and makes a sentence', async () => {
    await open();
    const opens = async (name: string, words: string) => {
      await number(name).first().click();
      await expect.poll(() => textOf(page.locator('.card'))).toContain(words);
      await page.keyboard.press('Escape');
    };
    await opens('Alder P, made for', 'match');
    await opens('Alder B, what it is', 'area ratio');
    await opens('Alder P, the gas', 'What it means');
    await opens('Alder B, .* in the drawing', 'What it means');
    await opens('Short answer at the pad', 'Worked out from several numbers');
    await opens('Short answer Alder B and Alder P', 'altitude at which the two tie');
    await number('Chamber pressure').first().click();
    await expect.poll(() => textOf(page.locator('.card'))).toContain('as set in the study');
    await page.keyboard.press('Escape');
    await page.getByRole('tab', { name: 'Models' }).click();
    await opens('Alder B, delivered', 'specific impulse');
    await number('Alder B, specific impulse').first().click();
    await page.getByRole('button', { name: 'Make a sentence' }).click();
    const test = page.getByLabel('Test that decides them');
    await expect.poll(() => test.inputValue()).toMatch(/^bell\.specificImpulse\(0 km\) is about 29\d\.\d s$/);
    await page.getByRole('button', { name: 'Cancel' }).click();
  });

  it('gives each number its span, and says where a difference is too close to call', async () => {
    await writeFile(studyFile(), (await onDisk()).replace('areaRatio: 60, kept', 'areaRatio: 25, kept'));
    await open();
    await page.locator('.span-words').first().waitFor({ timeout: 90_000 });
    await slider().focus();
    await page.keyboard.press('End');
    await expect.poll(() => textOf(page.locator('table.ledger'))).toContain('too close to call');
  });
});

describe('what no computation decides', () => {
  it('stands beside the sentences with its source, marked as reported', async () => {
    const facts = [
      'facts:',
      '  - id: first-book',
      '    say: The book on flow separation appeared in 1973.',
      '    sources: [separation-1973]',
      '',
    ];
    await keepSentences('vacuum-gain');
    await writeFile(studyFile(), `${await onDisk()}\n${facts.join('\n')}`);
    await open();
    await openSentences();
    const fact = page.locator('.sentence', { hasText: 'appeared in 1973' });
    await expect.poll(() => textOf(fact)).toMatch(/Reported, not computed.*Source: R\. H\. Schmucker/);
    await expect.poll(() => axeFindings('facts')).toEqual([]);
  });
});

describe('a study that is opened', () => {
  it('shows what it is, then one engine after the other, and says what still follows', async () => {
    await withoutSentences();
    await open();
    const fresh = await context.newPage();
    await fresh.addInitScript(() => {
      const seen: string[] = [];
      Object.assign(globalThis, { seenStates: seen });
      const text = (place: string) =>
        [...document.querySelectorAll(place)].map((one) => one.textContent ?? '').join(' | ');
      const look = () => {
        const cells = text('table.ledger tbody tr:first-child td.value');
        const state = [text('header [role=status]'), text('.answer'), cells, text('.engine-name')].join('\n');
        if (seen.at(-1) !== state) seen.push(state);
      };
      new MutationObserver(look).observe(document, { subtree: true, childList: true, characterData: true });
    });
    await fresh.goto(server.url);
    await expect
      .poll(() => textOf(fresh.locator('header [role=status]')), { timeout: 60_000 })
      .toBe('saved in study.yaml');
    const seen = await fresh.evaluate(() => (globalThis as unknown as { seenStates: string[] }).seenStates);
    const at = (what: RegExp): number => seen.findIndex((state) => what.test(state));
    const order = [
      at(/^opening the study …/),
      at(/Alder B and Alder P are being worked out; the short answer follows …\nfollows … \| follows …/),
      at(/Alder P is being worked out; .*\n\d+\.\d s.* \| follows …\n.*bell of .*being worked out …$/),
      at(/^working it out …\nThe short answer follows …\n\d+\.\d s.* \| \d+\.\d s/),
      at(/^jets and finer steps of altitude follow …\nThe lead changes/),
      at(/^saved in study\.yaml\nThe lead changes/),
    ];
    expect(order).not.toContain(-1);
    expect(order).toEqual([...order].sort((a, b) => a - b));
    await fresh.close();
  });
});

describe('a sweep tried out', () => {
  beforeEach(withoutSentences);
  it('follows a quantity against an input, refines, and tells what it found', async () => {
    await open();
    await number('Alder B, specific impulse').first().click();
    await page.getByRole('button', { name: 'Sweep against …' }).click();
    // A number read at the pad is followed at the pad.
    const at = page.getByRole('combobox', { name: /^at/ });
    await expect.poll(() => at.inputValue()).toBe('pad');
    await at.selectOption('vacuum');
    const chart = page.locator('.sweep-chart');
    await chart.waitFor({ timeout: 60_000 });
    await page.locator('.sweep-chart:not(.provisional)').waitFor({ timeout: 60_000 });
    // In vacuum a larger area ratio gives more, without an end.
    const [, low = '', high = ''] =
      /Alder B in vacuum rises from ([\d.]+)\s?s at area ratio 5 to ([\d.]+)\s?s at area ratio 100\./.exec(
        await textOf(page.locator('.findings')),
      ) ?? [];
    expect(Number(high)).toBeGreaterThan(Number(low));
    await expect.poll(() => axeFindings('sweep')).toEqual([]);
    await page.getByRole('combobox', { name: /^against/ }).selectOption('propellants.ratio');
    await expect
      .poll(() => textOf(page.locator('.findings')), { timeout: 25_000 })
      .toMatch(/Alder B in vacuum is highest at mixture ratio 3\.\d/);
    await page.getByRole('button', { name: 'Keep in the study' }).click();
    await expect
      .poll(onDisk)
      .toMatch(
        /\n {2}- id: specificImpulse-propellants-ratio\n {4}of: \[bell\.specificImpulse\(vacuum\), plug\.specificImpulse\(vacuum\)\]\n/,
      );
    const show = page.getByRole('combobox', { name: /^Show/ });
    await expect.poll(() => show.inputValue()).toBe('specificImpulse-propellants-ratio');
    await expect
      .poll(() => textOf(page.locator('.findings')), { timeout: 25_000 })
      .toMatch(/Alder B in vacuum is highest at mixture ratio 3\.\d/);
    await show.selectOption('');
    await page.getByRole('combobox', { name: /^Follow/ }).selectOption('plug.leastWall');
    await page.getByRole('combobox', { name: /^Follow/ }).selectOption('throat.diameter');
    await chart.waitFor({ timeout: 25_000 });
  });

  it('takes its ends either way round, in any unit, and follows a flight over time', async () => {
    await open();
    await page.getByRole('tab', { name: 'Sweeps' }).click();
    const show = page.getByRole('combobox', { name: /^Show/ });
    await show.selectOption('');
    await page.getByLabel('Sweep from').fill('40');
    await page.getByLabel('Sweep from').press('Tab');
    await page.getByLabel('Sweep to').fill('10');
    await page.getByLabel('Sweep to').press('Tab');
    await expect.poll(() => textOf(page.locator('.sweeps'))).toContain('Taken from 10 to 40.');
    await expect
      .poll(() => textOf(page.locator('.findings')), { timeout: 60_000 })
      .toMatch(/rises from [\d.]+\s?s at area ratio 10 to [\d.]+\s?s at area ratio 40\./);
    await page.getByLabel('Sweep to').fill('3 bar');
    await page.getByLabel('Sweep to').press('Tab');
    await expect.poll(() => textOf(page.locator('.sweeps .fault'))).toMatch(/is expected/);
    await page.getByRole('combobox', { name: /^Follow/ }).selectOption('flight.points.speed');
    const against = page.getByRole('combobox', { name: /^against/ });
    await expect.poll(() => textOf(against)).toBe('time since lift-off');
    await page.getByLabel('Sweep to').fill('1 min');
    await page.getByLabel('Sweep to').press('Tab');
    await expect
      .poll(() => textOf(page.locator('.findings')), { timeout: 60_000 })
      .toMatch(/Alder booster.* rises from 0\s?m\/s at .*0\s?s to [\d.]+\s?m\/s at .*(60\s?s|1\s?min)/);
  });

  it('becomes a map with a second input, which can be stopped, and kept in the study', async () => {
    await open();
    await number('Alder B, specific impulse').first().click();
    await page.getByRole('button', { name: 'Sweep against …' }).click();
    await page.getByRole('combobox', { name: /^at/ }).selectOption('vacuum');
    await page.locator('.sweep-chart').waitFor({ timeout: 60_000 });
    await page.getByRole('combobox', { name: /^and/ }).selectOption('chamber.pressure');
    await page.getByRole('button', { name: 'Stop' }).click();
    await expect.poll(() => page.getByRole('button', { name: 'Stop' }).count()).toBe(0);
    await page.getByRole('combobox', { name: /^of/ }).selectOption('plug');
    await expect
      .poll(() => page.locator('.sweep-chart .levels path').count(), { timeout: 60_000 })
      .toBeGreaterThan(2);
    await expect.poll(() => axeFindings('map')).toEqual([]);
    await page.getByRole('button', { name: 'Keep in the study' }).click();
    await expect
      .poll(onDisk)
      .toMatch(
        /maps:\n {2}- id: specificImpulse-nozzle-areaRatio-chamber-pressure\n {4}of: plug\.specificImpulse\(vacuum\)\n {4}across: \{ over: nozzle\.areaRatio \}\n {4}up: \{ over: chamber\.pressure \}\n/,
      );
  });
});

describe('vehicles', () => {
  beforeEach(withoutSentences);
  it('tell what they carry with either engine, and follow an input that is changed', async () => {
    await open();
    await page.getByRole('tab', { name: 'Vehicles' }).click();
    const panel = page.locator('.vehicles');
    await expect.poll(() => textOf(panel)).toMatch(/Alder booster carries .* to 200.km/);
    await expect
      .poll(() => textOf(panel))
      .toMatch(/With Alder P instead of Alder B, Alder booster carries .* more/);
    const payload = async () => textOf(number('Alder booster with Alder B, Payload').first());
    const before = await payload();
    const picture = page.getByRole('img', { name: /Alder booster on its way up/ });
    await expect.poll(() => picture.locator('path').count()).toBeGreaterThan(8);
    await expect.poll(() => axeFindings('vehicles')).toEqual([]);
    await page.getByText('Its inputs').click();
    const dry = page.getByRole('textbox', { name: 'Alder booster, Dry mass of the first stage' });
    await dry.fill('18 t');
    await dry.press('Enter');
    await expect.poll(payload, { timeout: 20_000 }).not.toBe(before);
    await expect.poll(() => onDisk()).toContain('dry: 18 t');
    await dry.fill('-3 t');
    await dry.press('Enter');
    await expect.poll(async () => textOf(panel.getByRole('alert'))).toContain('dry');
    await dry.press('Escape');
    await number('Alder booster with Alder P, Payload').first().click();
    await expect.poll(() => textOf(page.locator('.card'))).toContain('Alder booster, payload to the orbit');
    await page.keyboard.press('Escape');
    // Numbers in its words lead to where they come from, and so do its inputs.
    await panel.locator('.finding').nth(1).getByRole('button').first().click();
    await expect
      .poll(() => textOf(page.locator('.card')))
      .toContain('booster.payload(engine = plug) - booster.payload');
    await page.keyboard.press('Escape');
    await page.getByText('Its inputs').click();
    await panel.getByRole('button', { name: 'Dry mass of the first stage' }).click();
    await expect.poll(() => textOf(page.locator('.card'))).toMatch(/Alder booster, .*18 t/s);
  }, 60_000);
});

describe('whether it is worth it', () => {
  it('is worked out on request, can be stopped, and answers the needs of the study', async () => {
    await writeFile(studyFile(), (await onDisk()).replace(/^sentences:$[\s\S]*?(?=^needs:$)/m, ''));
    await open();
    await page.getByRole('tab', { name: 'Worth' }).click();
    const panel = page.getByRole('tabpanel');
    const begin = panel.getByRole('button', { name: 'Work it out' });
    await expect.poll(() => begin.count()).toBe(2);
    await begin.first().click();
    await panel.getByRole('button', { name: 'Stop' }).click();
    await expect.poll(() => begin.count()).toBe(2);
    await begin.last().click();
    await panel.getByText('It is so where').waitFor({ timeout: 40_000 });
    await expect.poll(() => textOf(panel)).toMatch(/It is so where area ratio .* is at least/);
    await begin.click();
    await panel.getByText('On one basis: same throat area.').waitFor({ timeout: 60_000 });
    await expect.poll(() => textOf(panel)).toMatch(/specific impulse in vacuum\d/);
    await expect.poll(() => textOf(panel)).toContain('What a little more is worth to Alder booster');
    await expect.poll(() => axeFindings('worth')).toEqual([]);
    await number('Alder booster, first stage, one second').first().click();
    await expect.poll(() => textOf(page.locator('.card'))).toContain('payload for a little more');
    await page.keyboard.press('Escape');
    // No test names a rate; the step it stands for is one, and so is its sweep.
    const rate = number('Alder booster, first stage, one kilogram of dry mass').first();
    await rate.click();
    const card = page.locator('.card');
    await card.getByRole('button', { name: 'Make a sentence' }).click();
    await expect
      .poll(() => page.locator('.sentences textarea, .sentences input').first().inputValue())
      .toMatch(/Alder booster carries about \d+ kg less\.$/);
    await page.getByRole('tab', { name: 'Worth' }).click();
    // Of another study it would be untrue.
    await writeFile(studyFile(), (await onDisk()).replace('areaRatio: 60, kept', 'areaRatio: 50, kept'));
    await expect.poll(() => begin.count(), { timeout: 20_000 }).toBe(2);
  }, 150_000);
});

describe('access for everyone', () => {
  it.each([
    // 720 is 200 % of 1440.
    { width: 1440, height: 900, isDark: false, narrower: [1000, 720] },
    { width: 390, height: 844, isDark: true, narrower: [] },
  ])(
    'keeps to the width, has controls of 24 by 24 pixels or more, and axe finds nothing (from %o)',
    async ({ width, height, isDark, narrower }) => {
      await keepSentences('vacuum-gain', 'pad-gain', 'always-better');
      await open({ width, height, dark: isDark });
      const small = await page.evaluate(() =>
        [...document.querySelectorAll('button, input, select, [role=slider], [role=tab]')]
          .map((element) => ({ name: element.outerHTML.slice(0, 120), box: element.getBoundingClientRect() }))
          .filter(({ box }) => box.width > 0 && (box.width < 24 || box.height < 24))
          .map(({ name, box }) => `${name} ${box.width}×${box.height}`),
      );
      expect(small).toEqual([]);
      for (const each of [...narrower, width]) {
        await page.setViewportSize({ width: each, height });
        await expect.poll(() => page.evaluate(() => innerWidth)).toBe(each);
        const wide = () => page.evaluate(() => document.documentElement.scrollWidth);
        await expect.poll(wide, { message: `at ${each}` }).toBeLessThanOrEqual(each);
      }

      const found: string[] = [];
      const check = async (where: string) => found.push(...(await axeFindings(where)));
      const picture = (theme: string) =>
        page.screenshot({ path: join(pictures, `${width}-${theme}.png`), fullPage: width < 760 });
      const inputs = page.getByRole('tab', { name: 'Inputs', exact: true });
      const [first, then] = isDark ? (['dark', 'light'] as const) : (['light', 'dark'] as const);
      await picture(first);
      const tabs = await page.getByRole('tab').allTextContents();
      expect(tabs.length).toBeGreaterThan(5);
      for (const tab of tabs) {
        await page.getByRole('tab', { name: tab, exact: true }).click();
        await check(`${tab}, ${first}`);
      }
      await number('.*thrust').first().click();
      await check(`card, ${first}`);
      await page.keyboard.press('Escape');

      // The other theme differs by colours alone.
      await inputs.click();
      await page.emulateMedia({ colorScheme: then });
      await expect.poll(() => page.evaluate(() => document.documentElement.dataset.theme)).toBe(then);
      await picture(then);
      await check(`inputs, ${then}`);
      for (const tab of ['Sentences', 'Models']) {
        await page.getByRole('tab', { name: tab, exact: true }).click();
        await check(`${tab}, ${then}`);
      }
      await number('.*thrust').first().click();
      await check(`card, ${then}`);
      expect(found).toEqual([]);
    },
    150_000,
  );
});
