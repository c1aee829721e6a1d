import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { CoolantRow, DataShelf } from '../../answer/shelf.ts';
import { ProblemError } from '../../numerics/problem.ts';
import type { PropellantRecord, SpeciesRecord, TransportRecord } from '../../physics/gas/records.ts';
import type { CoolantRecord, WallMaterialRecord } from '../../physics/heat/index.ts';

/** What `data/species/index.json` tells: which file holds the species whose rarest element is this one. */
interface SpeciesIndex {
  readonly fileOfElement: Readonly<Record<string, string>>;
}
interface SpeciesFile {
  readonly species: readonly SpeciesRecord[];
}
interface PropellantFile {
  readonly propellants: readonly PropellantRecord[];
}
interface TransportFile {
  readonly species: readonly TransportRecord[];
}

/** `src/faces/disk` and `dist/faces/disk` lie equally deep, so one relative address serves both. */
const dataFolder = new URL('../../../data/', import.meta.url);

/**
 * The data rows from the files beside the program, read when first asked for and kept.
 *
 * A mixture of C, H and O reads `base.json` and `carbon.json` only. The rows come in the files' own order,
 * which does not depend on the order of the elements asked for.
 */
export function openDataShelf(): DataShelf {
  const files = new Map<string, Promise<unknown>>();

  function read<Content>(address: string): Promise<Content> {
    const known = files.get(address);
    if (known !== undefined) return known as Promise<Content>;
    const reading = readJson(address);
    files.set(address, reading);
    // A failed reading is not kept: the file may be there the next time.
    reading.catch(() => files.delete(address));
    return reading as Promise<Content>;
  }

  return {
    async species(elements) {
      const { fileOfElement } = await read<SpeciesIndex>('species/index.json');
      const unknown = elements.filter((element) => fileOfElement[element] === undefined);
      if (unknown.length > 0) throw elementWithoutSpecies(unknown, Object.keys(fileOfElement));
      const wanted = new Set(elements);
      const names = new Set(elements.map((element) => fileOfElement[element]));
      const order = [...new Set(Object.values(fileOfElement))].filter((name) => names.has(name));
      const contents = await Promise.all(order.map((name) => read<SpeciesFile>(`species/${name}.json`)));
      return contents
        .flatMap((content) => content.species)
        .filter((row) => Object.keys(row.elements).every((element) => wanted.has(element)));
    },
    async propellants() {
      return (await read<PropellantFile>('propellants.json')).propellants;
    },
    async coolants() {
      return (await read<{ coolants: readonly CoolantRow[] }>('coolants/index.json')).coolants;
    },
    coolant(id) {
      return read<CoolantRecord>(`coolants/${id}.json`);
    },
    async walls() {
      return (await read<{ walls: readonly WallMaterialRecord[] }>('walls.json')).walls;
    },
    async transport() {
      return (await read<TransportFile>('transport.json')).species;
    },
  };
}

async function readJson(address: string): Promise<unknown> {
  const path = fileURLToPath(new URL(address, dataFolder));
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (cause) {
    throw new ProblemError({
      code: 'data-file-missing',
      what: `The data file ${path} cannot be read (${cause instanceof Error ? cause.message : String(cause)}).`,
      why: 'Without it there are no species or propellants to compute with.',
      mend: 'Install the program again, with its data folder beside it.',
      where: path,
    });
  }
  try {
    return JSON.parse(text);
  } catch (cause) {
    throw new ProblemError({
      code: 'data-file-damaged',
      what: `The data file ${path} is damaged (${cause instanceof Error ? cause.message : String(cause)}).`,
      why: 'Numbers from a damaged file cannot be trusted.',
      mend: 'Install the program again.',
      where: path,
    });
  }
}

function elementWithoutSpecies(unknown: readonly string[], known: readonly string[]): ProblemError {
  return new ProblemError({
    code: 'element-without-species',
    what: `The data has no gas species of ${unknown.join(', ')}.`,
    why: 'The composition of the burnt gas cannot be worked out without them.',
    mend: `Use propellants made of ${known.join(', ')}.`,
  });
}
