/** Rows of data about coolants and walls that a study uses, with where they come from. */

import type { Study } from '../../study/model.ts';
import { coolantRowOf } from '../materials.ts';
import type { DataShelf } from '../shelf.ts';

export interface DataRowUsed {
  /** e.g. `data of methane as a coolant` */ readonly name: string;
  readonly source: string;
}

export async function dataRowsUsed(study: Study, shelf: DataShelf): Promise<readonly DataRowUsed[]> {
  const cooled = study.engines.filter(({ cooling }) => cooling !== null);
  if (cooled.length === 0) return [];
  const [coolants, walls] = await Promise.all([shelf.coolants(), shelf.walls()]);
  const fluids = cooled.flatMap((engine) => coolantRowOf(engine, engine.cooling!.coolant, coolants) ?? []);
  const metals = cooled.flatMap(({ cooling }) =>
    walls.filter(({ id }) => id === cooling!.wall || id === cooling!.skirtWall),
  );
  const rows: DataRowUsed[] = [];
  for (const row of new Set(fluids)) {
    const { name, source } = await shelf.coolant(row.id);
    const limits = [row.wall, row.bulk].flatMap((limit) => limit?.source ?? []);
    rows.push({ name: `data of ${name} as a coolant`, source: [source, ...limits].join('; ') });
  }
  for (const { name, source, limit } of new Set(metals)) {
    rows.push({ name: `data of ${name}`, source: `${source}; ${limit.source}` });
  }
  return rows;
}
