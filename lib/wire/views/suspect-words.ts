/** Why a tool is not to be believed, in the shop's words. */
import type { SuspectReason } from '@/lib/domain/base/vocabulary';

export const SUSPECT_WORDS: Readonly<Record<SuspectReason, string>> = {
  dropped: 'it fell',
  lost: 'it was lost, or out of the house',
  overdue: 'it was used after its calibration ran out',
  'as-found': 'it was found to read wrong',
  other: 'something else happened to it',
};
