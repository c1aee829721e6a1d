import { type CatalogueEntry, UNIT } from './entry.ts';
import { TYPICAL_ERROR } from './typicalError.ts';

const jet = { model: 'plume', place: 'altitude' } as const;
const CHARACTERISTICS = 'A. H. Shapiro, Compressible Fluid Flow, vol. 1, 1953, ch. 15 (from memory)';
const NACA = 'Ames Research Staff, NACA Report 1135, 1953';

/** Of the jet behind the nozzle, at each outside pressure. */
export const plumeQuantities: readonly CatalogueEntry[] = [
  {
    ...jet,
    name: 'plume.boundaryTurn',
    aliases: ['plumeTurn'],
    label: 'turn of the jet’s edge at the lip',
    dimension: 'angle',
    unit: UNIT.degree,
    digits: 3,
    meaning: 'How far the edge of the jet turns as it leaves the lip: outwards positive, inwards negative.',
    equation: 'Δθ = ν(p_a) − ν(p_lip); over-expanded: minus the turn of the shock with p₂/p₁ = p_a/p_lip',
    source: NACA,
    typicalError:
      'Within 0.001° of Prandtl–Meyer angles for an ideal gas; real edges mix and thicken (no figure found).',
    limits:
      'No boundary layer, which real edges have. In vacuum the turn to the lowest pressure that the data of the gas reach: a lower bound.',
  },
  {
    ...jet,
    name: 'plume.boundaryAngle',
    aliases: ['plumeAngle'],
    label: 'direction of the jet’s edge behind the lip',
    dimension: 'angle',
    unit: UNIT.degree,
    digits: 3,
    meaning:
      'Angle between the edge of the jet right behind the lip and the axis; above 90° it runs forwards.',
    equation: 'θ = θ_lip + Δθ',
    source: NACA,
    typicalError:
      'Within 0.001° of Prandtl–Meyer angles for an ideal gas; real edges mix and thicken (no figure found).',
    limits: 'As for the turn.',
  },
  {
    ...jet,
    name: 'plume.boundaryMach',
    label: 'Mach number at the jet’s edge',
    dimension: 'ratio',
    unit: UNIT.one,
    digits: 3,
    meaning: 'Speed of the gas along the edge of the jet over its own speed of sound.',
    equation: 'M at p_a behind the lip’s expansion or shock',
    source: NACA,
    typicalError:
      'Within 0.001° of Prandtl–Meyer angles for an ideal gas; real edges mix and thicken (no figure found).',
    limits: 'As for the turn; mixing with the air is left out.',
  },
  {
    ...jet,
    name: 'plume.boundaryPressure',
    label: 'pressure at the jet’s edge',
    dimension: 'pressure',
    unit: UNIT.bar,
    unitForSmall: UNIT.pascal,
    digits: 3,
    meaning: 'That of the surroundings, or the lowest that the data of the gas reach.',
    equation: 'p_b = max(p_a, p_lowest)',
    source: CHARACTERISTICS,
    typicalError:
      'Within 0.001° of Prandtl–Meyer angles for an ideal gas; real edges mix and thicken (no figure found).',
    limits: 'Far above the air the gas freezes and thins out beyond what its data describe.',
  },
  {
    ...jet,
    name: 'plume.fullyExpandedMach',
    aliases: ['jetMach'],
    label: 'Mach number of the jet, fully expanded',
    dimension: 'ratio',
    unit: UNIT.one,
    digits: 3,
    meaning: 'What the gas would reach if it came down to the pressure around it without loss.',
    equation: 'M_j on the isentrope at p = p_a',
    source: NACA,
    typicalError: 'Exact for the ideal expansion; no measured jet enters.',
    limits: 'A measure of the jet, not a place in it.',
  },
  {
    ...jet,
    name: 'plume.fullyExpandedDiameter',
    aliases: ['jetDiameter'],
    label: 'diameter of the jet, fully expanded',
    dimension: 'length',
    unit: UNIT.metre,
    unitForSmall: UNIT.millimetre,
    digits: 3,
    meaning: 'How wide the jet would be if it came down to the pressure around it without loss.',
    equation: 'D_j = D_t √(A/A*(M_j))',
    source: NACA,
    typicalError: 'Exact for the ideal expansion; no measured jet enters.',
    limits: 'A measure of the jet, not a place in it.',
  },
  {
    ...jet,
    name: 'plume.cellLength',
    aliases: ['cellLength'],
    label: 'length of the first shock cell',
    dimension: 'length',
    unit: UNIT.metre,
    unitForSmall: UNIT.millimetre,
    digits: 2,
    meaning:
      'From the lip to where the jet has swelled and shrunk once: the distance between two bright knots.',
    equation: 'L₁ = 1.3063 D_j √(M_j² − 1)',
    source:
      'L. Prandtl, Phys. Z. 5, 1904, 599; D. C. Pack, Quart. J. Mech. Appl. Math. 3, 1950, 173 (from memory)',
    typicalError: 'Real first cells are 10 to 20 % shorter (from memory).',
    limits:
      'For jets within a factor of three of their matched pressure (common practice, no source), else null; real first cells are 10 to 20 % shorter (from memory).',
  },
  {
    ...jet,
    name: 'plume.machDisk',
    aliases: ['machDisk'],
    label: 'distance of the Mach disk',
    dimension: 'length',
    unit: UNIT.metre,
    unitForSmall: UNIT.millimetre,
    digits: 2,
    meaning: 'How far behind the lip a shock stands across the axis, if there is one.',
    equation: 'x_M = 0.69 D_e M_e √(γ p_e/p_a)',
    source: 'C. H. Lewis, D. J. Carlson, AIAA J. 2(4), 1964, 776 (from memory)',
    typicalError: 'A fit to measured cold jets (from memory); no hot jet was at hand.',
    limits:
      'Under-expanded jets, up to a chamber pressure of 17 000 times the ambient, the end of what was measured; none below p_e/p_a = 2.06, where the disk has shrunk to nothing (A. L. Addy, AIAA J. 19, 1981, for a sonic orifice; from memory).',
  },
  ...(['firstCrossing', 'boundary'] as const).flatMap((of): readonly CatalogueEntry[] => {
    const what = of === 'boundary' ? 'the jet’s edge' : 'the first shock in the jet';
    const limits =
      of === 'boundary'
        ? 'Computed until the flow turns subsonic behind a shock, or to eight lip radii; from there a sketch, and marked so. Air at rest.'
        : 'Where the lines of the net first run together; the shock itself is weak there.';
    const along = of === 'boundary' ? ({ along: 'jet' } as const) : {};
    const common = {
      typicalError: TYPICAL_ERROR.jetEdge,
      ...jet,
      ...along,
      dimension: 'length',
      source: CHARACTERISTICS,
      limits,
    } as const;
    return [
      {
        ...common,
        name: `plume.${of}.axial`,
        label: `${what}: distance from the throat`,
        unit: UNIT.metre,
        unitForSmall: UNIT.millimetre,
        digits: 3,
        meaning: 'Along the axis from the throat plane.',
        equation: 'method of characteristics, p = p_a on the edge',
      },
      {
        ...common,
        name: `plume.${of}.radius`,
        label: `${what}: distance from the axis`,
        unit: UNIT.metre,
        unitForSmall: UNIT.millimetre,
        digits: 3,
        meaning: 'From the axis.',
        equation: 'method of characteristics, p = p_a on the edge',
      },
    ];
  }),
];
