import { expect, test } from 'vitest';
import { sentencesHtml } from '../../src/telling/page/sentencesHtml.ts';
import { check } from '../answer/sentences/closedForms.ts';

test('the page has each sentence with its verdict and what is true, and trusts no text', async () => {
  const sentences = await check(
    [
      { say: 'It passes <b>much</b> gas.', holds: 'a.massFlow > 90 kg/s' },
      { say: 'It passes little.', holds: 'a.massFlow < 90 kg/s', said: false },
      { say: 'It is old.' },
    ],
    () => 100,
    { flips: false },
    '3.5',
  );
  const html = sentencesHtml(sentences);
  expect(html).toContain('1 safe to say, 1 don’t say, 1 not checked.');
  expect(html).toContain('“It passes &lt;b&gt;much&lt;/b&gt; gas.”');
  expect(html).toMatch(/don’t say.*Kept to be discussed.*Instead: The propellant flow of a is 100/s);
  // What all tested sentences have in common stands above the table, and once.
  expect(html).toMatch(/All were tested so: .*With(?:out)? losses.*<table>/s);
  expect(html.match(/With(?:out)? losses/g)).toHaveLength(1);
  expect(sentencesHtml([])).toBe('');
});
