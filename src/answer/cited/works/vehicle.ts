/** Flight, cycles, masses. */

import { article, type Work, work } from '../work.ts';

export const VEHICLE_WORKS: readonly Work[] = [
  work(
    'martinez-sanchez-16512',
    'document',
    'Martinez-Sanchez, M.',
    null,
    '16.512 Rocket Propulsion, lecture 25',
    /MIT 16\.512/,
    { publisher: 'Massachusetts Institute of Technology' },
  ),
  work(
    'sobin-bissell-1974',
    'report',
    'Sobin, A. J.; Bissell, W. R.',
    1974,
    'Turbopump Systems for Liquid Rocket Engines',
    /SP-8107/,
    { number: 'NASA SP-8107', publisher: 'NASA' },
  ),
  work('akin-mer', 'document', 'Akin, D. L.', null, 'Mass Estimating Relations', /D\. L\. Akin/, {
    publisher: 'University of Maryland',
  }),
  work(
    'zandbergen-2015',
    'paper-conference',
    'Zandbergen, B. T. C.',
    2015,
    'Simple Mass and Size Estimation Relationships of Pump Fed Rocket Engines',
    /Zandbergen/,
    { container: '6th European Conference for Aeronautics and Space Sciences (EUCASS)' },
  ),
  work(
    'humble-1995',
    'book',
    'Humble, R. W.; Henry, G. N.; Larson, W. J.',
    1995,
    'Space Propulsion Analysis and Design',
    /Space Propulsion Analysis and Design|Humble, Henry/,
    { publisher: 'McGraw-Hill' },
  ),
  work('fleeman-2001', 'book', 'Fleeman, E. L.', 2001, 'Tactical Missile Design', /Fleeman, \*?Tactical/, {
    publisher: 'AIAA',
  }),
  work('hoerner-1965', 'book', 'Hoerner, S. F.', 1965, 'Fluid-Dynamic Drag', /Hoerner/, {
    publisher: 'published by the author',
  }),
  work('lawden-1963', 'book', 'Lawden, D. F.', 1963, 'Optimal Trajectories for Space Navigation', /Lawden/, {
    publisher: 'Butterworths',
  }),
  article(
    'culler-fried-1957',
    'Culler, G. J.; Fried, B. D.',
    1957,
    null,
    ['Journal of Applied Physics', '28', '672'],
    /Culler, B\. Fried/,
  ),
  work('iers-2010', 'report', 'Petit, G.; Luzum, B.', 2010, 'IERS Conventions (2010)', /IERS\s+Conventions/, {
    number: 'IERS Technical Note 36',
  }),
  work(
    'wgs-84',
    'standard',
    'National Imagery and Mapping Agency',
    null,
    'Department of Defense World Geodetic System 1984',
    /TR8350\.2/,
    { number: 'NIMA TR8350.2' },
  ),
];
