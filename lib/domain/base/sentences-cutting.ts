/** Words of refusals at the saw. */
import type { Sentences } from './words';

type CuttingCode = 'rest-not-there' | 'bar-too-short' | 'cut-not-wanted' | 'not-sawn';

export const cuttingSentences: Sentences<CuttingCode> = {
  'rest-not-there': ({ item, length }, called) =>
    `No rest of ${length} of ${called(item)} lies in the rack any more: it is sawn already, or was not there at the last count. Look at the plan again: it is worked out from what is left.`,
  'bar-too-short': ({ item, length, pieces }, called) =>
    `${pieces} with their cuts do not come out of ${length} of ${called(item)}. Name what was sawn from this bar.`,
  'cut-not-wanted': ({ car, piece, length, count, left }) =>
    `${car} wants ${left === 0 ? 'no' : `only ${String(left)}`} “${piece}” of ${length} any more, not ${String(count)}: the others are sawn already, or their work is done. Look at the plan again: it is worked out from what is left.`,
  'not-sawn': ({ car, piece, length, count, sawn }) =>
    `Of “${piece}” of ${length} for ${car}, ${sawn === 0 ? 'none is' : sawn === 1 ? 'one is' : `${String(sawn)} are`} sawn and not built in, not ${String(count)}. Name as many as there are.`,
};
