import type { OverAltitudePanel } from '../../../telling/figures/overAltitude.ts';
import { SCREEN_TYPE } from '../../../telling/look/formats.ts';
import { textWidth } from '../../../telling/look/measureText.ts';
import { formatAltitude } from '../../../telling/numbers/formatNumber.ts';
import type { ShownEngine } from '../state/pair.ts';
import { matchedAltitude, matchWords, wordsOff } from './matchMarks.ts';
import { TracedNumber } from './TracedNumber.tsx';

interface MatchButtonsProps {
  readonly panel: OverAltitudePanel;
  readonly engines: readonly ShownEngine[];
}

/** Over the drawn words of each match lies a button of the same size, so that its number too tells where it comes from. */
export function MatchButtons({ panel, engines }: MatchButtonsProps) {
  return (
    <>
      {engines.map(({ id, result, input, side }) => {
        const altitude = matchedAltitude(result);
        if (altitude === null) return null;
        const words = matchWords(input);
        const width = textWidth(words, SCREEN_TYPE.small, 600) + 8;
        const right = panel.plot.x + panel.plot.width + wordsOff;
        const left = side === 'first' ? panel.strip.x - wordsOff - width + 4 : right - 4;
        const top = panel.axis.y(altitude) - 1.5 * SCREEN_TYPE.small;
        return (
          <div
            key={id}
            class="over-words"
            style={{ left: `${left}px`, top: `${top}px`, width: `${width}px` }}
          >
            <TracedNumber
              quantity="matched.altitude"
              engine={id}
              shown={formatAltitude(altitude)}
              condition=""
              label={`${input.name}, ${words}`}
              expression={`${id}.matched.altitude`}
            >
              <span class="unseen">{formatAltitude(altitude)}</span>
            </TracedNumber>
          </div>
        );
      })}
    </>
  );
}
