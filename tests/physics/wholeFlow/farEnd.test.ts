import { expect, test } from 'vitest';
import {
  apartFlow,
  cellAt,
  type FlowPoint,
  flowKernel,
  middleOf,
  perfectFieldGas,
  type SideKind,
} from '../../../src/physics/euler/index.ts';
import { expandPerfect } from '../../../src/physics/gas/index.ts';
import { chamberAndNozzleContour } from '../../../src/physics/nozzle/index.ts';
import { BEHIND, prepareRound, roundSize } from '../../../src/physics/wholeFlow/index.ts';
import { jetRoom } from '../../../src/physics/wholeFlow/jetRoom.ts';
import { roundMesh } from '../../../src/physics/wholeFlow/roundMesh.ts';

test('that gas leaves against the air’s pressure far behind a bell sends back next to nothing of a pulse', () => {
  const throatRadius = 0.1;
  const expansion = expandPerfect({ gamma: 1.2, molarMass: 0.022, temperature: 3500, pressure: 100e5 });
  const spec = { kind: 'bell', areaRatio: 15, length: 0.8 } as const;
  const { wall } = chamberAndNozzleContour(spec, throatRadius, {
    contractionRatio: 3,
    characteristicLength: 1,
    convergingAngle: Math.PI / 6,
  });
  const prepared = prepareRound({ expansion, wall, throatRadius, kernel: null });
  const [ambient, height] = [6e4, 0.05];
  const still: FlowPoint = { density: 0.8, u: 0, v: 0, pressure: ambient, share: 0 };
  const sound = Math.sqrt((1.4 * ambient) / still.density);
  const { lip, shape } = prepared;
  const room = jetRoom(expansion, lip, ambient);
  const far: SideKind = { is: 'far', air: still };
  const gas = perfectFieldGas(1.4);
  // Air at rest, a pulse two lip radii wide in the middle of the fine part.
  const pulseWith = (pressed: SideKind) =>
    apartFlow({
      blocks: roundMesh(shape, room, roundSize(prepared, 8, 8), { chamber: far, air: far, pressed }).blocks,
      gases: { inner: gas, outer: gas },
      kernel: flowKernel(32),
      start: (x, y) => {
        const away = Math.hypot(x - shape.lip - 0.5 * room.fine, y) / (2 * lip.radius);
        return { ...still, pressure: ambient * (1 + height * Math.exp(-(away ** 2))) };
      },
    });
  const [held, free] = [pulseWith({ is: 'pressed', pressure: ambient }), pulseWith(far)];
  // To the end and back to the fine part it has 1.4 times the whole length.
  let most = 0;
  for (let k = 1; k <= 6; k++) {
    for (const flow of [held, free]) {
      const until = (k * room.long) / sound / 4;
      while (flow.time < until * (1 - 1e-9)) flow.advance(0.8, until - flow.time);
    }
    const [one, other] = [held, free].map(({ fields }) => fields[BEHIND]!);
    const { mesh } = one!;
    for (let j = 0; j < mesh.nj; j++)
      for (let i = 0; i < mesh.ni && middleOf(mesh, i, 0)[0] < shape.lip + room.fine; i++) {
        const at = cellAt(mesh, i, j);
        most = Math.max(most, Math.abs(one!.pressure[at]! - other!.pressure[at]!) / ambient / height);
      }
  }
  expect(most).toBeLessThan(1e-3);
});
