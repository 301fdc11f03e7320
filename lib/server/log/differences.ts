/** Where rows and log part: each row that one of them has otherwise, or alone. */
import { storedJson } from '@/lib/wire/canonical-json';

type Named = readonly (readonly [name: string, row: unknown])[];

/** Text of a row as the store would keep it: fields that are undefined are none. */
const text = storedJson;

export const differences = (
  stream: string,
  told: Named,
  kept: Named,
): readonly { readonly stream: string; readonly version: null; readonly says: string }[] => {
  const rows = new Map(kept.map(([name, row]) => [name, text(row)]));
  const found: string[] = [];
  for (const [name, row] of told) {
    const there = rows.get(name);
    if (there === undefined) found.push(`row ${name} is missing, the log tells of it`);
    else if (there !== text(row)) found.push(`row ${name} says something else than the log`);
    rows.delete(name);
  }
  for (const name of rows.keys()) found.push(`row ${name} stands there, the log does not tell of it`);
  return found.map((says) => ({ stream, version: null, says }));
};
