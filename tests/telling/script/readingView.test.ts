import { expect, test } from 'vitest';
import { readingFile } from '../../../src/faces/package/readingFile.ts';
import type { Study } from '../../../src/study/model.ts';
import { readScript } from '../../../src/study/script/index.ts';
import { type ScriptAnswer, scriptFound } from '../../../src/telling/script/index.ts';
import { numbers } from './told.ts';

function answerOf(text: string): ScriptAnswer {
  const read = readScript(text);
  const study = { engines: [], vehicles: [] } as unknown as Study;
  return scriptFound({ text, read, study, told: numbers(), judged: [], byHand: [], record: null }, null)
    .answer;
}

test('one page with every line and its seconds, that asks for nothing else', () => {
  const page = readingFile(answerOf('---\npace: 60\n---\n# T\n\n## S\n\nOne two three. {pause=2s}\n'));
  // Three words at sixty a minute, and two seconds of silence.
  expect(page).toContain('<p data-seconds="5.0">One two three.</p>');
  expect(page).toContain("default-src 'none'");
  expect(page).not.toMatch(/(?:src|href)=|https?:|url\(/);
  expect(page).toContain('not for building');
});

test('hostile words are inert', () => {
  const page = readingFile(
    answerOf(
      '# \\<script\\>x\\</script\\>\n\n## "\\>\\<img src=x onerror=y\\>\n\n\\<b onclick="z"\\> \u202e &lt;i&gt;\n',
    ),
  );
  const body = page.slice(page.indexOf('<body>'), page.lastIndexOf('<script>'));
  expect(body).not.toMatch(/<(?:script|img|b|i)\b/);
  expect(body).toContain('&lt;img src=x onerror=y&gt;');
  expect(page).not.toContain('\u202e');
  expect(page.match(/<script>/g)).toHaveLength(1);
});
