/** The data rows over the local server, fetched when a study needs them and kept. */

import type { CoolantRow, DataShelf } from '../../answer/shelf.ts';
import { ProblemError } from '../../numerics/problem.ts';
import type { PropellantRecord, SpeciesRecord, TransportRecord } from '../../physics/gas/records.ts';
import type { CoolantRecord, WallMaterialRecord } from '../../physics/heat/index.ts';

interface SpeciesIndex {
  readonly fileOfElement: Readonly<Record<string, string>>;
}

export function fetchedShelf(): DataShelf {
  const files = new Map<string, Promise<unknown>>();

  function load<Content>(address: string): Promise<Content> {
    const known = files.get(address);
    if (known !== undefined) return known as Promise<Content>;
    const loading = fetchJson(`/data/${address}`);
    files.set(address, loading);
    // A failed load is not kept: the server may be back the next time.
    loading.catch(() => files.delete(address));
    return loading as Promise<Content>;
  }

  return {
    async species(elements) {
      const { fileOfElement } = await load<SpeciesIndex>('species/index.json');
      const unknown = elements.filter((element) => fileOfElement[element] === undefined);
      if (unknown.length > 0) {
        throw new ProblemError({
          code: 'element-without-species',
          what: `The data has no gas species of ${unknown.join(', ')}.`,
          why: 'The composition of the burnt gas cannot be worked out without them.',
          mend: `Use propellants made of ${Object.keys(fileOfElement).join(', ')}.`,
        });
      }
      const names = new Set(elements.map((element) => fileOfElement[element]));
      const order = [...new Set(Object.values(fileOfElement))].filter((name) => names.has(name));
      const contents = await Promise.all(
        order.map((name) => load<{ species: readonly SpeciesRecord[] }>(`species/${name}.json`)),
      );
      return contents
        .flatMap((content) => content.species)
        .filter((row) => Object.keys(row.elements).every((element) => elements.includes(element)));
    },
    async propellants() {
      const content = await load<{ propellants: readonly PropellantRecord[] }>('propellants.json');
      return content.propellants;
    },
    async coolants() {
      return (await load<{ coolants: readonly CoolantRow[] }>('coolants/index.json')).coolants;
    },
    coolant(id) {
      return load<CoolantRecord>(`coolants/${id}.json`);
    },
    async walls() {
      return (await load<{ walls: readonly WallMaterialRecord[] }>('walls.json')).walls;
    },
    async transport() {
      const content = await load<{ species: readonly TransportRecord[] }>('transport.json');
      return content.species;
    },
  };
}

async function fetchJson(address: string): Promise<unknown> {
  const reply = await fetch(address).catch(() => null);
  if (reply?.ok) return reply.json();
  throw new ProblemError({
    code: 'data-not-reachable',
    what: `The data file ${address} cannot be loaded.`,
    why: 'Without it there are no species or propellants to compute with.',
    mend: 'See whether the program that serves this page is still running, then reload.',
  });
}
