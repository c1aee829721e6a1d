import { effect } from '@preact/signals';
import { render } from 'preact';
import { FONT_FAMILY, themeCss } from '../../telling/look/themeCss.ts';
import { followFiner } from './flow/finer.ts';
import { followFlows } from './flow/flows.ts';
import { App } from './parts/App.tsx';
import { followFind } from './state/find/findBox.ts';
import { followLive } from './state/live.ts';
import { followLiveSaid } from './state/liveSaid.ts';
import { followScript } from './state/scriptStore.ts';
import { followSpans } from './state/spans.ts';
import { openStudy } from './state/studyFile.ts';
import { followSweep } from './state/sweepTrial.ts';
import { followVerdicts } from './state/verdicts.ts';
import { theme } from './state/view.ts';

const fontFiles = [
  [400, 'Regular'],
  [600, 'SemiBold'],
  [700, 'Bold'],
] as const;

/** The colours of both themes, from the one place that has them, and the same font files that figures use. */
function adoptLook(): void {
  const sheet = new CSSStyleSheet();
  const fonts = fontFiles.map(
    ([weight, name]) =>
      `@font-face{font-family:'${FONT_FAMILY}';font-weight:${weight};font-display:swap;` +
      `src:url(/fonts/SourceSans3-${name}.ttf) format('truetype')}`,
  );
  sheet.replaceSync(
    `${fonts.join('')}:root{${themeCss('light')}}:root[data-theme=dark]{${themeCss('dark')}}` +
      `@media print{:root[data-theme=dark]{${themeCss('light')}}}`,
  );
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
}

adoptLook();
effect(() => {
  document.documentElement.dataset.theme = theme.value;
});
const place = document.getElementById('workbench');
if (place === null) throw new Error('The page has no element with the id workbench');
render(<App />, place);
followVerdicts();
followSpans();
followSweep();
followScript();
followFind();
followLive();
followLiveSaid();
followFlows();
followFiner();
openStudy().catch(reportError);
