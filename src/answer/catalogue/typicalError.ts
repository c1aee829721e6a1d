/** How far the models lie from measurement, one line each with where it is known from; shared by several quantities. */

export const TYPICAL_ERROR = {
  stated: 'As stated: that of the input, ± where the study gives one.',
  geometry: 'Exact geometry of what is modelled; metal is made to its own tolerances.',
  ofTable: 'Against a textbook table (Sutton & Biblarz table 5-5, from memory), 14 rows:',
  gasAtThroat:
    'As the chamber’s gas; one-dimensional, so that the curved sonic surface moves the wall’s own pressure by up to some 15 % (L. H. Back, from memory).',
  gasAtLip:
    'No measured exit state was at hand; between composition held and following it moves by tens of per cent at high area ratios (tests of both).',
  vacuumThrust:
    'Within 2 % in vacuum of seven public engines that dump nothing, but for one (2.6 %); at sea level within 3 % (docs/methods/losses.md).',
  fullThrust:
    'As the thrust in vacuum while the gas fills the nozzle; where it would not, there is nothing to measure.',
  criteria:
    'Published criteria differ from each other by 15 to 20 %, below Mach 2.5 by more (docs/methods/nozzle-separation.md).',
  ringThatWanders:
    'As far as the criteria stand apart: told beside it. The ring itself wanders (no figure found).',
  standardAir:
    'Several per cent against a real day below 30 km; above 200 km density by factors (common practice, no source).',
  layer:
    '±20 %: friction on plates scatters by 10 % (Hopkins & Inouye 1971, from memory), as much again for acceleration and wall temperature (no source).',
  bartz:
    'From 45 % too high at the throat to 20 % too low: measured constants 0.0148 to 0.0257 for 0.026 (NASA TN D-2832, 1965, at second hand); too high in solid motors as well (H. Hahm, Y. Kang, J. KSPE 16(2), 2012).',
  cooling:
    'As the heat that arrives, and another ±10 to 20 % from wall to coolant (common statement of these correlations, from memory).',
  budget: 'The sum is within 2 % of engines that dump nothing, but for one; each item has its own band.',
  basePressure:
    'Band of three models; on four measured plugs the value is 4 to 40 % high, all within the band (Chutkey et al. 2014; docs/methods/nozzle-plug.md).',
  plugWall:
    'Wall pressure 12 to 16 % above that of a published viscous computation of tested plugs (docs/methods/nozzle-plug.md).',
  nozzleWall:
    'Near the throat measured wall pressures lie up to 15 % below the mean (L. H. Back, from memory); farther on some per cent of a finer net.',
  jetEdge: 'Within 0.4 % of a second computation of the same ideal jet; no measured edge was at hand.',
  slipstream:
    'A band from none to all of the base drag of bodies without a jet; no plug was measured in it (from memory).',
  surfaces: 'Two ways to the same thrust agree within 0.3 %, or the answer says why not.',
  closure: 'It is itself an error: how well the computed field closes.',
  count: 'A count.',
} as const;
