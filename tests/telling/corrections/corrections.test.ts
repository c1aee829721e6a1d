import { describe, expect, test } from 'vitest';
import { changeWords, packageChanges } from '../../../src/telling/corrections/changes.ts';
import {
  correctionNote,
  correctionsIn,
  plainWords,
} from '../../../src/telling/corrections/correctionNote.ts';
import type { Published } from '../../../src/telling/corrections/published.ts';
import { escapeMarkdown } from '../../../src/telling/scene/safeText.ts';

const before: Published = {
  question: 'Which?',
  shortAnswer: 'A leads. By 3 s.',
  numbers: [{ key: 'a thrust', of: 'Engine A', label: 'thrust in vacuum', shown: '800 kN' }],
  table: new Map([
    ['engines.a.massFlow', '1 kg/s'],
    ['engines.a.areaRatio', '25'],
  ]),
  items: [
    {
      kind: 'sentence',
      id: 'grows',
      say: 'It grows.',
      verdict: 'safe to say',
      wording: 'It grows by 3 %.',
      instead: null,
      numbers: { 'a.thrust(vacuum)': 'about 800 kN' },
    },
  ],
  script: { one: 'It gives about 800 kN.', two: 'So it grows.' },
  figures: { 'cut-16x9': 'aa', gone: 'bb' },
};
const now: Published = {
  ...before,
  numbers: [{ ...before.numbers[0]!, shown: '812 kN' }],
  table: new Map([
    ['engines.a.massFlow', '1.02 kg/s'],
    ['engines.a.areaRatio', '25'],
  ]),
  items: [
    { ...before.items[0]!, verdict: 'say with care', numbers: { 'a.thrust(vacuum)': 'about 812 kN' } },
    { ...before.items[0]!, id: 'new', say: 'New.' },
  ],
  script: { one: 'It gives about 812 kN.', three: 'So it grows.' },
  figures: { 'cut-16x9': 'ac', fresh: 'cc' },
};

describe('what differs between two packages', () => {
  test('nothing between two that are the same', () => {
    expect(packageChanges(before, before)).toEqual([]);
    expect(correctionNote(null, [], '2026-11-26', 'Caution.')).toBeNull();
    expect(correctionNote('kept as it is', [], '2026-11-26', 'Caution.')).toBe('kept as it is');
  });

  test('verdicts, spoken numbers, printed numbers, sentences, figures by their hash, and how many others', () => {
    expect(packageChanges(before, now).map(changeWords)).toEqual([
      'the verdict on “It grows.”: safe to say → say with care',
      'a.thrust(vacuum), for sentence grows: about 800 kN → about 812 kN',
      'sentence new: nothing → New.',
      'the line one of the script: It gives about 800 kN. → It gives about 812 kN.',
      'the line two of the script: So it grows. → gone',
      'the line three of the script: nothing → So it grows.',
      'Engine A, thrust in vacuum: 800 kN → 812 kN',
      'figures drawn anew: cut-16x9',
      'figures gone: gone',
      'figures new: fresh',
      'in all 1 of 2 numbers of numbers.csv as shown',
    ]);
  });

  test('the note keeps the old value to be seen, and earlier days below, as they were written', () => {
    const first = correctionNote(null, packageChanges(before, now), '2026-11-26', 'Caution.')!;
    expect(first).toContain('## 2026-11-26');
    expect(first).toContain('- Engine A, thrust in vacuum: ~~800 kN~~ → **812 kN**');
    expect(first).toContain('Caution.');
    const edited = first
      .replace('Engine A, thrust', 'As a viewer noticed: Engine A, thrust')
      .replace('Caution.', 'Caution.\n\nWrite to us about others.');
    const second = correctionNote(edited, packageChanges(now, before), '2026-12-01', 'Caution.')!;
    expect(second.indexOf('## 2026-12-01')).toBeLessThan(second.indexOf('## 2026-11-26'));
    expect(second).toContain('As a viewer noticed');
    expect(second.match(/Write to us about others\./g)?.length).toBe(1);
    expect(second.match(/Caution\./g)?.length).toBe(1);
    expect(second.match(/^# /gm)?.length).toBe(1);
    const [latest, older] = correctionsIn(second);
    expect([latest!.day, older!.day]).toEqual(['2026-12-01', '2026-11-26']);
    expect(latest!.lines.map(plainWords)).toContain('Engine A, thrust in vacuum: was 812 kN, is 800 kN');
    // What is gone is told once, not “was was”.
    expect(older!.lines.concat(latest!.lines).map(plainWords)).toContain(
      'Sentence new: no longer there: was New.',
    );
  });

  test('hostile words stay words in Markdown', () => {
    const evil =
      '[x](javascript:alert(1)) <script>a</script> ![p](http://e.x/i.png) **b** `c` www.evil.example\n# head \u202e';
    const safe = escapeMarkdown(evil);
    expect(safe).not.toMatch(/(?<![\\&])[[\]<>*`#!]|javascript:|http:|www\.|[\n\u202e]/);
    expect(plainWords(safe)).toBe(evil.replace('\n', ' ').replace('\u202e', ''));
  });
});
