import { describe, expect, it } from 'vitest';
import { checkAnalogies } from '../../../src/answer/analogies/index.ts';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import { shelf } from '../solveText.ts';
import { type MeantVerdicts, meantVerdicts } from './meantVerdicts.ts';
import { checkedStarter, starterText, studyFrom } from './openStarter.ts';

export type StarterName = keyof typeof meantVerdicts;

/** Each sentence and each likeness of these studies gets the verdict that it is meant to get. */
export function holdVerdicts(names: readonly StarterName[]): void {
  describe.each(names)('in %s', (name) => {
    const study = studyFrom(starterText(name));
    const meant: MeantVerdicts = meantVerdicts[name];

    it('each sentence has the verdict meant', async () => {
      const checked = await checkedStarter(name, study);
      const found = Object.fromEntries(checked.map(({ id, verdict }) => [id, verdict]));
      expect(found).toEqual(meant.sentences);
    });

    it('what is meant to be said can be said, and what is kept to be discussed cannot', () => {
      for (const { id, said } of study.sentences)
        expect(['safe to say', 'say with care'].includes(meant.sentences[id] ?? ''), id).toBe(said);
    });

    it.runIf(study.analogies.length > 0)('each likeness has the verdict meant', async () => {
      const checked = await checkAnalogies(study, await localCrew(study, shelf));
      const found = Object.fromEntries(checked.map(({ id, verdict }) => [id, verdict]));
      expect(found).toEqual(meant.analogies);
    });
  });
}
