/** The colours that are not the pressure ramp, in both themes. Contrasts are held by tests/telling/look/. */

/** `print`: black ink on white paper. */
export type Theme = 'light' | 'dark' | 'print';

/** Those of screens. */
export const THEMES: readonly Theme[] = ['light', 'dark'];

export type ColourToken =
  | 'paper'
  | 'paper-2'
  | 'ink'
  | 'ink-2'
  | 'ink-3'
  | 'rule'
  | 'rule-2'
  | 'engine-1'
  | 'engine-2'
  | 'engine-3'
  | 'engine-4';

export const COLOURS: Readonly<Record<Theme, Readonly<Record<ColourToken, string>>>> = {
  light: {
    paper: '#fafaf7',
    'paper-2': '#f1f1ec',
    ink: '#1a1e26',
    'ink-2': '#454c59',
    'ink-3': '#626a78',
    rule: '#d5d6d3',
    'rule-2': '#868d99',
    'engine-1': '#9c3d00',
    'engine-2': '#86206a',
    'engine-3': '#00634f',
    'engine-4': '#1a1e26',
  },
  dark: {
    paper: '#14171b',
    'paper-2': '#1c2026',
    ink: '#eeede8',
    'ink-2': '#bcc1ca',
    'ink-3': '#969da9',
    rule: '#343a43',
    'rule-2': '#717988',
    'engine-1': '#ff9c52',
    'engine-2': '#f192d3',
    'engine-3': '#5fd0b0',
    'engine-4': '#eeede8',
  },
  print: {
    paper: '#ffffff',
    'paper-2': '#f4f4f4',
    ink: '#000000',
    'ink-2': '#333333',
    'ink-3': '#595959',
    rule: '#d0d0d0',
    'rule-2': '#808080',
    'engine-1': '#9c3d00',
    'engine-2': '#86206a',
    'engine-3': '#00634f',
    'engine-4': '#000000',
  },
};
