/** Remarks stand where what they are about stands: in its own row, or in that of the work that it belongs to. */
import type { RowView } from '@/lib/wire/views/car';
import type { Seen } from './seen';

/** The rows with the remarks about them, and about the lines of their work, the newest last. */
export const withRemarks = <Row extends RowView>(seen: Seen, rows: readonly Row[]): readonly Row[] => {
  const notes = Object.values(seen.car.notes).sort((a, b) => a.at.localeCompare(b.at));
  if (notes.length === 0) return rows;
  return rows.map((row) => {
    const own = keyOf(row.id);
    const inside = new Set(row.body.flatMap(({ id }) => (id === null ? [] : [keyOf(id)])));
    const here = notes.filter(({ of }) => of === own || inside.has(of));
    if (here.length === 0) return row;
    const told = here.map(({ of, text, by, at }, index): readonly [string, string] => [
      // Labels are told apart by their number.
      here.length === 1 ? 'Remark' : `Remark ${String(index + 1)}`,
      `${of === own ? '' : `${seen.words.thing(of)}: `}${text} (${seen.tag(by, at).name}, ${seen.when(at)})`,
    ]);
    return { ...row, facts: [...row.facts, ...told] };
  });
};

/** `joint:J-110@L` → `J-110@L`. */
const keyOf = (anchor: string): string => anchor.slice(anchor.indexOf(':') + 1);
