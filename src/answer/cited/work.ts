/** A published work that the program's own texts name: what a list of references needs of it. */

export type WorkType =
  | 'article-journal'
  | 'book'
  | 'chapter'
  | 'dataset'
  | 'document'
  | 'paper-conference'
  | 'report'
  | 'software'
  | 'standard'
  | 'thesis'
  | 'webpage';

export interface Work {
  /** Stable: author and year. */ readonly id: string;
  readonly type: WorkType;
  /** `Family, Given` each, in order; a body stands without a comma. */ readonly authors: readonly string[];
  /** Null where the work gives none, or it is not known. */ readonly year: number | null;
  /** Null where only the place of publication is known. */ readonly title: string | null;
  /** Journal, collection or meeting. */ readonly container?: string;
  readonly volume?: string;
  readonly issue?: string;
  readonly pages?: string;
  readonly publisher?: string;
  /** Of a report: with its series, e.g. `NASA SP-125`. */ readonly number?: string;
  readonly edition?: string;
  readonly doi?: string;
  readonly url?: string;
  /** How the program's texts name it. */ readonly named: RegExp;
}

type Rest = Omit<Work, 'id' | 'type' | 'authors' | 'year' | 'title' | 'named'>;

/** @param authors `Family, Given; Family, Given` */
export function work(
  id: string,
  type: WorkType,
  authors: string,
  year: number | null,
  title: string | null,
  named: RegExp,
  rest: Rest = {},
): Work {
  return {
    id,
    type,
    authors: authors === '' ? [] : authors.split('; '),
    year,
    title,
    ...rest,
    named,
  };
}

/** An article: journal, volume with its issue in brackets, pages. */
export function article(
  id: string,
  authors: string,
  year: number,
  title: string | null,
  [container, volume, pages]: readonly [string, string, string?],
  named: RegExp,
  rest: Rest = {},
): Work {
  const [, number = volume, issue] = /^(.+)\((.+)\)$/.exec(volume) ?? [];
  return work(id, 'article-journal', authors, year, title, named, {
    container,
    volume: number,
    ...(issue !== undefined && { issue }),
    ...(pages !== undefined && { pages }),
    ...rest,
  });
}
