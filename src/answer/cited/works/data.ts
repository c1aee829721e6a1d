/** Collections that rows of data were taken from. */

import { type Work, work } from '../work.ts';

export const DATA_WORKS: readonly Work[] = [
  work(
    'nist-webbook',
    'dataset',
    'National Institute of Standards and Technology',
    null,
    'NIST Chemistry WebBook, NIST Standard Reference Database Number 69',
    /NIST WebBook/,
  ),
  work('crc-handbook', 'book', '', null, 'CRC Handbook of Chemistry and Physics', /CRC Handbook/, {
    publisher: 'CRC Press',
  }),
  work(
    'active-tables',
    'dataset',
    'Argonne National Laboratory',
    null,
    'Active Thermochemical Tables',
    /Active Thermochemical Tables/,
  ),
  work('janaf', 'book', 'Chase, M. W.', 1998, 'NIST-JANAF Thermochemical Tables', /JANAF/, { edition: '4' }),
  work('vdi-heat-atlas', 'book', 'VDI', null, 'VDI Heat Atlas', /VDI Heat Atlas/, { publisher: 'Springer' }),
  work(
    'perry-handbook',
    'book',
    'Perry, R. H.; Green, D. W.',
    null,
    'Perry’s Chemical Engineers’ Handbook',
    /Perry 8th ed/,
    {
      edition: '8',
      publisher: 'McGraw-Hill',
    },
  ),
  work(
    'chemicals-library',
    'software',
    '',
    null,
    'chemicals, a library of chemical properties',
    /"chemicals"/,
  ),
];
