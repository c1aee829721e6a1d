import { type CatalogueEntry, SOURCE, UNIT } from './entry.ts';
import { TYPICAL_ERROR } from './typicalError.ts';

const common = { source: SOURCE.separation, model: 'nozzle-separation', place: 'altitude' } as const;

const ofPlace = {
  ...common,
  part: { kinds: ['criterion'], needed: false, example: '0 km, criterion stark' },
} as const;

/** Of gas that leaves the wall, or does not: at every outside pressure, and for the engine at sea level. */
export const separationQuantities: readonly CatalogueEntry[] = [
  {
    ...ofPlace,
    name: 'separation.place.axial',
    label: 'where the gas leaves the wall',
    dimension: 'length',
    unit: UNIT.millimetre,
    digits: 3,
    meaning: 'Distance from the throat at which a criterion lets the gas go; the lip where it stays.',
    equation: 'x where p_wall = p_sep, between the stations of the flow field',
    typicalError: TYPICAL_ERROR.ringThatWanders,
    limits:
      'The deciding criterion’s place stands between the earliest and the latest of all that count; each is an axisymmetric mean of a ring that wanders.',
  },
  {
    ...ofPlace,
    name: 'separation.place.areaRatio',
    label: 'area ratio where the gas leaves the wall',
    dimension: 'ratio',
    unit: UNIT.one,
    digits: 3,
    meaning: 'Cross-section over the throat’s at the place where a criterion lets the gas go.',
    equation: 'ε_s = (r_s/r_t)²',
    typicalError: TYPICAL_ERROR.ringThatWanders,
    limits: 'As for the distance from the throat.',
  },
  {
    ...ofPlace,
    name: 'separation.place.mach',
    label: 'Mach number where the gas leaves the wall',
    dimension: 'ratio',
    unit: UNIT.one,
    digits: 3,
    meaning: 'Mach number along the wall just upstream of that place.',
    equation: 'M at the wall of the flow field',
    typicalError: TYPICAL_ERROR.ringThatWanders,
    limits: 'Outside the boundary layer.',
  },
  {
    ...ofPlace,
    name: 'separation.place.pressure',
    label: 'wall pressure where the gas leaves the wall',
    dimension: 'pressure',
    unit: UNIT.bar,
    unitForSmall: UNIT.pascal,
    digits: 3,
    meaning: 'Pressure on the wall just upstream of that place.',
    equation: 'p_wall(x_s)',
    typicalError: TYPICAL_ERROR.ringThatWanders,
    limits: 'As for the distance from the throat.',
  },
  {
    ...common,
    name: 'separation.counted',
    label: 'criteria that count here',
    dimension: 'ratio',
    unit: UNIT.one,
    digits: 1,
    meaning: 'How many of the published criteria were fitted to what they would judge here.',
    equation: 'number of criteria inside their ranges',
    typicalError: TYPICAL_ERROR.count,
    limits: 'Most ranges are from memory.',
  },
  {
    ...common,
    name: 'separation.lettingGo',
    label: 'criteria by which the gas leaves the wall',
    dimension: 'ratio',
    unit: UNIT.one,
    digits: 1,
    meaning: 'How many of those let the gas go before the lip.',
    equation: 'number of criteria whose place lies ahead of the lip',
    typicalError: TYPICAL_ERROR.count,
    limits: 'A count is no probability.',
  },
  {
    ...common,
    name: 'separation.thrust',
    label: 'thrust over all criteria',
    dimension: 'force',
    unit: UNIT.kilonewton,
    unitForSmall: UNIT.newton,
    digits: 3,
    meaning:
      'Least and greatest thrust by the criteria that count and the span of the pressure behind the place.',
    equation: 'F = p₀ A_t C_F,full + ∫_s^lip (κ p_a − p_wall) dA,  κ = 0.95 to 1',
    part: { kinds: ['end'], needed: true, example: '0 km, end least' },
    typicalError: 'It is itself a span: over all criteria that count, and the pressure behind the place.',
    limits: 'Free separation; jets that jump back onto the wall are not followed.',
  },
  {
    ...common,
    name: 'separation.specificImpulse',
    label: 'specific impulse over all criteria',
    dimension: 'time',
    unit: UNIT.second,
    digits: 3,
    meaning: 'That thrust over the best value of the weight flow.',
    equation: 'F / (ṁ g₀)',
    part: { kinds: ['end'], needed: true, example: '0 km, end least' },
    typicalError: 'It is itself a span: over all criteria that count, and the pressure behind the place.',
    limits: 'As for the thrust over all criteria.',
  },
  {
    ...common,
    name: 'separation.massFlow',
    label: 'mass flow here',
    dimension: 'massFlow',
    unit: UNIT.kilogramPerSecond,
    unitForSmall: UNIT.gramPerSecond,
    digits: 4,
    meaning: 'The engine’s mass flow while the throat chokes; less where the outside presses harder.',
    equation: 'ṁ = ṁ* (ρu)(p_a)/(ρu)_t for a jet from the bare throat',
    part: { kinds: ['end'], needed: false, example: '0 km, end least' },
    typicalError:
      'Exact while the throat chokes, as the mass flow is; else between a bare throat and gas held by the wall.',
    limits:
      'One-dimensional. Between a bare throat and gas held by the wall to the lip; the wall of a rocket nozzle is too steep for that.',
  },
  {
    ...common,
    name: 'separation.criteria.ratio',
    label: 'share of the outside pressure at which the gas lets go',
    dimension: 'ratio',
    unit: UNIT.one,
    digits: 3,
    meaning: 'Wall pressure over outside pressure at which a criterion lets the gas go.',
    equation: 'p_sep/p_a, each criterion’s own',
    part: { kinds: ['criterion'], needed: true, example: 'criterion schmucker' },
    typicalError: TYPICAL_ERROR.criteria,
    limits: 'Published criteria differ from each other by 15 to 20 % and more.',
    place: 'engine',
  },
  {
    ...common,
    name: 'separation.criteria.limitAmbient',
    label: 'outside pressure up to which the nozzle flows full',
    dimension: 'pressure',
    unit: UNIT.bar,
    unitForSmall: UNIT.pascal,
    digits: 3,
    meaning: 'At a higher outside pressure this criterion lets the gas go before the lip.',
    equation: 'p_a where p_wall(lip) = p_sep',
    part: { kinds: ['criterion'], needed: true, example: 'criterion schmucker' },
    typicalError: TYPICAL_ERROR.criteria,
    limits: 'As for the criterion.',
    place: 'engine',
  },
  {
    ...common,
    name: 'separation.lowestFullThrottle',
    aliases: ['lowestFullThrottle'],
    label: 'lowest full throttle at the pad',
    dimension: 'ratio',
    unit: UNIT.percent,
    digits: 2,
    meaning:
      'Least chamber pressure, as a share of the design’s, at which the gas stays on the wall to the lip; above 100 %: not even at full thrust.',
    equation: 'p_c/p_c,design = p_a/p_a,limit, the gas scaled',
    typicalError:
      'As the criteria: 15 to 20 %; the scaled gas adds up to 4 % in area ratio at a tenth of the throttle.',
    limits: 'Between the criteria that count there; the gas at other chamber pressures is scaled.',
    place: 'engine',
    part: { kinds: ['criterion', 'end'], needed: false, example: 'criterion Schmucker 1973' },
  },
  {
    ...common,
    name: 'separation.throttle.share',
    label: 'chamber pressure over the design’s',
    dimension: 'ratio',
    unit: UNIT.percent,
    digits: 3,
    meaning: 'Throttle at which the place is given.',
    equation: 'p_c/p_c,design',
    typicalError: TYPICAL_ERROR.stated,
    limits: 'None.',
    place: 'engine',
    notAsked: {
      why: 'It says at which throttle a place is given.',
      instead:
        'Ask for the place at that throttle, e.g. separation.place.areaRatio(sea level, throttle = 60 %).',
    },
  },
];

/** Name of the quantity at a path inside `separation` of an engine or a row. */
export function nameInSeparation(inside: string): string {
  const key = inside.split('.').slice(1);
  const last = key.at(-1) ?? '';
  const holder = key.at(-2) ?? '';
  if (['place', 'earliest', 'latest', 'rising', 'falling'].includes(holder))
    return `separation.place.${last}`;
  if (key.includes('lowestFullThrottle')) return 'separation.lowestFullThrottle';
  if (last === 'low' || last === 'high') return `separation.${holder === 'massFlows' ? 'massFlow' : holder}`;
  return `separation.${key.filter((part) => part !== 'seaLevel').join('.')}`;
}
