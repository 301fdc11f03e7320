/** Where on the page a job has its place. */
import type { Job } from '@/lib/domain/assess';
import type { anchorOf } from '@/lib/wire/views/said-line';

type PlaceKind = Parameters<typeof anchorOf>[0];

/** The kind of thing that a job is about, as its anchor names it. */
export const placeKind = (kind: Job['kind']): PlaceKind => {
  switch (kind) {
    case 'operation':
    case 'check':
    case 'stopgap':
    case 'change':
      return kind;
    case 'decide':
    case 'finding':
      return 'finding';
    case 'restore':
    case 'renew':
    case 'retorque':
    case 'recheck':
    case 'verify':
      return 'joint';
  }
};
