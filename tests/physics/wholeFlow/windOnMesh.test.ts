import { expect, test } from 'vitest';
import { expandPerfect } from '../../../src/physics/gas/index.ts';
import { chamberAndNozzleContour, nozzleModel } from '../../../src/physics/nozzle/index.ts';
import { preparePlug, prepareRound, roundSize, sizeOfPlug } from '../../../src/physics/wholeFlow/index.ts';
import { jetRoom } from '../../../src/physics/wholeFlow/jetRoom.ts';
import { plugMesh } from '../../../src/physics/wholeFlow/plugMesh.ts';
import { plugRoom } from '../../../src/physics/wholeFlow/plugRoom.ts';
import { roundMesh } from '../../../src/physics/wholeFlow/roundMesh.ts';
import { expectWindToStay, windBeyond } from './windOnMesh.ts';

const R = 0.1;
const SHAPE = { contractionRatio: 3, characteristicLength: 1, convergingAngle: Math.PI / 6 };
const expansion = expandPerfect({ gamma: 1.2, molarMass: 0.022, temperature: 3500, pressure: 100e5 });
const ends = { chamber: windBeyond, air: windBeyond, pressed: windBeyond };
const thickAndThin = [2e5, 100];

test.each([
  ['from chamber to lip', null],
  ['left 3 throat radii behind the throat', 3 * R],
] as const)('a uniform flow along the axis stays so on the mesh of a bell, %s', (_, through) => {
  const { wall } = chamberAndNozzleContour({ kind: 'bell', areaRatio: 30, length: 0.8 }, R, SHAPE);
  const prepared = prepareRound({ expansion, wall, throatRadius: R, kernel: null });
  for (const ambient of thickAndThin) {
    const shape = { ...prepared.shape, through };
    const room = jetRoom(expansion, prepared.lip, ambient);
    expectWindToStay(roundMesh(shape, room, roundSize(prepared, 8, 8), ends).blocks);
  }
});

test.each(['annular', 'linear'] as const)('and on that of a plug (%s)', (form) => {
  const nozzle = nozzleModel({ kind: 'plug', form, areaRatio: 30, kept: 0.3 }, expansion);
  const { wall, plug } = nozzle.contour!(R, SHAPE);
  const engine = {
    expansion,
    cowl: wall,
    plug: plug!.wall,
    width: plug!.width ?? null,
    throatRadius: R,
    kernel: null,
  };
  const prepared = preparePlug(engine);
  expect(prepared.shape.symmetry).toBe(form === 'linear' ? 'flat' : 'round');
  for (const ambient of thickAndThin) {
    const room = plugRoom(engine, prepared.shape, ambient);
    expectWindToStay(plugMesh(prepared.shape, room, sizeOfPlug(prepared, 8, 8), ends));
  }
});
