/** Comma-separated values (RFC 4180) as cells with their places. Empty lines and lines that begin with # are left out. */

export interface CsvCell {
  readonly text: string;
  /** From 1. */ readonly line: number;
  readonly column: number;
}

export function readCsv(text: string): readonly (readonly CsvCell[])[] {
  const rows: CsvCell[][] = [];
  let [line, lineStart, at] = [1, 0, text.startsWith('\ufeff') ? 1 : 0];
  let row: CsvCell[] = [];
  const end = (): void => {
    const empty = row.length === 1 && row[0]!.text.trim() === '';
    if (row.length > 0 && !empty && !row[0]!.text.startsWith('#')) rows.push(row);
    row = [];
  };
  while (at < text.length) {
    const place = { line, column: at - lineStart + 1 };
    let cell = '';
    if (text[at] === '"') {
      at++;
      while (at < text.length && !(text[at] === '"' && text[at + 1] !== '"')) {
        if (text[at] === '"') at++;
        if (text[at] === '\n') {
          line++;
          lineStart = at + 1;
        }
        cell += text[at]!;
        at++;
      }
      at++;
    }
    while (at < text.length && !',\r\n'.includes(text[at]!)) cell += text[at++]!;
    row.push({ text: cell, ...place });
    if (text[at] === ',') {
      at++;
      if (at >= text.length || '\r\n'.includes(text[at]!))
        row.push({ text: '', line, column: at - lineStart + 1 });
      else continue;
    }
    if (text[at] === '\r') at++;
    if (text[at] === '\n') at++;
    line++;
    lineStart = at;
    end();
  }
  end();
  return rows;
}
