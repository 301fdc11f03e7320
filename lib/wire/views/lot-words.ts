/** From which lots something goes in, in words. */
import type { FittedClaim } from '@/lib/domain/car/hardware';
import type { HardwareView } from './sign-off';

/** The fasteners that get a new one; null where that serves the joint as a whole; nothing where none goes in. */
export const freshAt = ({ places }: HardwareView): readonly number[] | null => {
  const fresh = places.filter(({ isNew }) => isNew);
  return fresh.some(({ fastener }) => fastener === null)
    ? null
    : fresh.flatMap(({ fastener }) => fastener ?? []);
};

/** `lot L-1`, `lot L-1 at 1, 2; lot L-2 at 3`, `lot not said`; empty where nothing traced goes in and nothing was chosen. */
export const lotWords = (line: HardwareView, claims: readonly FittedClaim[]): string => {
  const fresh = freshAt(line);
  const named = claims.flatMap(({ fasteners }) => fasteners ?? []);
  const isForAll = claims.length === 0 || claims.some(({ fasteners }) => fasteners === undefined);
  const unsaid = isForAll ? [] : (fresh ?? []).filter((fastener) => !named.includes(fastener));
  const isOne = claims.length === 1 && unsaid.length === 0;
  const said = claims.map(({ lot, fasteners }) => {
    const at = isOne || fasteners === undefined ? '' : ` at ${fasteners.join(', ')}`;
    return `${lot === undefined ? 'lot not said' : `lot ${lot}`}${at}`;
  });
  if (!line.isTracedByLot) return claims.some(({ lot }) => lot !== undefined) ? said.join('; ') : '';
  if (claims.length === 0) return fresh === null || fresh.length > 0 ? 'lot not said' : '';
  return [...said, ...(unsaid.length === 0 ? [] : [`lot not said at ${unsaid.join(', ')}`])].join('; ');
};
