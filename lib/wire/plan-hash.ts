/** The name of a frozen plan revision: two documents with the same hash say the same. */
import { createHash } from 'node:crypto';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { canonicalJson } from './canonical-json';

/** SHA-256 of the canonical text, in hexadecimal; comments, blanks and the order of keys don't count. */
export const planHash = (document: PlanDocument): string =>
  createHash('sha256').update(canonicalJson(document), 'utf8').digest('hex');
