import { effect } from '@preact/signals';
import { render } from 'preact';
import { themeCss } from '../../telling/look/themeCss.ts';
import { App } from './parts/App.tsx';
import { openStudy } from './state/studyStore.ts';
import { theme } from './state/view.ts';

/** The colours of both themes, from the one place that has them. */
function adoptColours(): void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(
    `:root{${themeCss('light')}}:root[data-theme=dark]{${themeCss('dark')}}` +
      `@media print{:root[data-theme=dark]{${themeCss('light')}}}`,
  );
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
}

adoptColours();
effect(() => {
  document.documentElement.dataset.theme = theme.value;
});
const place = document.getElementById('workbench');
if (place === null) throw new Error('The page has no element with the id workbench');
render(<App />, place);
openStudy().catch(reportError);
