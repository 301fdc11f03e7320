/** The parts that come off the donor: what the plan expects of each, and what became of it on this car. */
import type { DonorPart } from '@/lib/wire/views/car';
import { anchorOf } from '@/lib/wire/views/said-line';
import { partKeys, partWords } from './matters';
import type { Seen } from './seen';

/** In the plan's order; a part that the chosen options leave out does not stand here. */
export const donorParts = (seen: Seen): readonly DonorPart[] =>
  partKeys(seen).flatMap((key): readonly DonorPart[] => {
    const entry = seen.plan.document.parts?.[key];
    if (entry?.origin !== 'donor') return [];
    const row = seen.car.parts[key];
    const piece = row?.piece ?? 1;
    return [
      {
        href: `#${anchorOf('part', key)}`,
        name: seen.words.thing(key),
        grade: entry.grade ?? '',
        found: foundWords(seen, key),
        lookedAt: entry.lookedAt ?? '',
        outside: entry.outside ?? '',
        state: partWords(seen, key),
        piece: piece === 1 ? '' : `piece ${String(piece)}${condemned(seen, key)}`,
        critical: entry.critical === true,
      },
    ];
  });

const foundWords = ({ car }: Seen, key: string): string => {
  const component = car.components[key];
  return component === undefined || component.grade === null
    ? ''
    : `${component.grade}${component.place === null ? '' : `, ${component.place}`}`;
};

/** The finding that the piece before it was given up for. */
const condemned = ({ car }: Seen, key: string): string => {
  const found = Object.entries(car.findings)
    .filter(([, { about, replaced }]) => replaced && about.kind === 'part' && about.key === key)
    .map(([id]) => id);
  return found.length === 0 ? '' : `, for ${found.join(', ')}`;
};
