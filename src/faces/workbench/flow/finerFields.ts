/** Fields of the page’s own, finer than the server’s. */

import { signal } from '@preact/signals';
import type { ListedFlow } from '../../flows/flowList.ts';

export const finerFields = signal<{ readonly mark: string; readonly fields: readonly ListedFlow[] }>({
  mark: '',
  fields: [],
});
