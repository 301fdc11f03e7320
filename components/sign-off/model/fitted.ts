/** What goes in and from which lots: as it stands on the sheet, as the signature claims it, and as it is read before the PIN. */
import type { FittedClaim } from '@/lib/domain/car/hardware';
import { lotWords } from '@/lib/wire/views/lot-words';
import type { HardwareView } from '@/lib/wire/views/sign-off';

/** The plan's item that a claim is about. */
export const lineOf = ({ item, insteadOf }: FittedClaim): string => insteadOf ?? item;

/** What somebody chose for a line, else what is proposed for it. */
export const claimsFor = (
  line: Pick<HardwareView, 'item' | 'proposed'>,
  chosen: readonly FittedClaim[],
): readonly FittedClaim[] => {
  const own = chosen.filter((claim) => lineOf(claim) === line.item);
  return own.length === 0 ? line.proposed : own;
};

/** All that the signature will claim of hardware. */
export const fittedClaims = (
  lines: readonly HardwareView[],
  chosen: readonly FittedClaim[],
): { readonly hardware?: readonly FittedClaim[] } => {
  const hardware = lines.flatMap((line) => claimsFor(line, chosen));
  return hardware.length === 0 ? {} : { hardware };
};

/** ` In it: lock nut M8, lot L-9101.`; empty where nothing traced goes in and nothing was chosen. */
export const fittedWords = (lines: readonly HardwareView[], chosen: readonly FittedClaim[]): string => {
  const said = lines.flatMap((line) => {
    const claims = claimsFor(line, chosen);
    const other = claims.find(({ insteadOf }) => insteadOf !== undefined);
    const name = line.substitutes.find(({ item }) => item === other?.item)?.name ?? line.name;
    const words = [name, ...(other === undefined ? [] : [`instead of ${line.name}`]), lotWords(line, claims)];
    const isSaid = words[1] !== '' || words.length > 2;
    return isSaid ? [words.filter((each) => each !== '').join(', ')] : [];
  });
  return said.length === 0 ? '' : ` In it: ${said.join('; ')}.`;
};
