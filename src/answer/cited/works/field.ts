/** The whole flow as a field: finite volumes. */

import { article, type Work } from '../work.ts';

const JCP = 'Journal of Computational Physics';

export const FIELD_WORKS: readonly Work[] = [
  article(
    'toro-1994',
    'Toro, E. F.; Spruce, M.; Speares, W.',
    1994,
    'Restoration of the Contact Surface in the HLL-Riemann Solver',
    ['Shock Waves', '4', '25'],
    /E\. F\. Toro/,
  ),
  article(
    'einfeldt-1988',
    'Einfeldt, B.',
    1988,
    'On Godunov-Type Methods for Gas Dynamics',
    ['SIAM Journal on Numerical Analysis', '25', '294'],
    /B\. Einfeldt/,
  ),
  article(
    'van-leer-1974',
    'van Leer, B.',
    1974,
    'Towards the Ultimate Conservative Difference Scheme, II',
    [JCP, '14', '361'],
    /van Leer, J\. Comput\. Phys\. 14/,
  ),
  article(
    'quirk-1994',
    'Quirk, J. J.',
    1994,
    'A Contribution to the Great Riemann Solver Debate',
    ['International Journal for Numerical Methods in Fluids', '18', '555'],
    /J\. J\. Quirk/,
  ),
  article(
    'abgrall-karni-2001',
    'Abgrall, R.; Karni, S.',
    2001,
    'Computations of Compressible Multifluids',
    [JCP, '169', '594'],
    /R\. Abgrall, S\. Karni/,
  ),
  article(
    'shu-osher-1988',
    'Shu, C.-W.; Osher, S.',
    1988,
    'Efficient Implementation of Essentially Non-Oscillatory Shock-Capturing Schemes',
    [JCP, '77', '439'],
    /Shu, S\. Osher/,
  ),
  article(
    'osher-sanders-1983',
    'Osher, S.; Sanders, R.',
    1983,
    'Numerical Approximations to Nonlinear Conservation Laws with Locally Varying Time and Space Grids',
    ['Mathematics of Computation', '41', '321'],
    /Osher, R\. Sanders/,
  ),
  article(
    'berger-oliger-1984',
    'Berger, M. J.; Oliger, J.',
    1984,
    'Adaptive Mesh Refinement for Hyperbolic Partial Differential Equations',
    [JCP, '53', '484'],
    /Berger, J\. Oliger/,
  ),
];
