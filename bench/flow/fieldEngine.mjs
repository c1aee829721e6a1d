/** The engine of the measurements: a bell of area ratio 15, in air of 0.6 bar unless said otherwise. */

/** [m] */
export const throatRadius = 0.1;

/** By a kernel, then by cells across and what it begins from. @param load modules of the build's physics */
export async function preparedEngine(load) {
  const { expandPerfect } = await load('gas/index');
  const { chamberAndNozzleContour } = await load('nozzle/index');
  const { prepareRound, roundFlow, roundSize } = await load('wholeFlow/index');
  const expansion = expandPerfect({ gamma: 1.2, molarMass: 0.022, temperature: 3500, pressure: 100e5 });
  const shape = { contractionRatio: 3, characteristicLength: 1, convergingAngle: Math.PI / 6 };
  const { wall } = chamberAndNozzleContour({ kind: 'bell', areaRatio: 15, length: 0.8 }, throatRadius, shape);
  return (kernel) => {
    const prepared = prepareRound({ expansion, wall, throatRadius, kernel });
    return (across, from, { ambient = 60_000, coarsest = 8 } = {}) => {
      const air = { pressure: ambient, density: ambient / (287 * 260), speed: 0 };
      return roundFlow(prepared, { air, leavesAt: null }, roundSize(prepared, coarsest, across), from);
    };
  };
}
