/** Plan revisions: documents kept under their hash, before the shop releases them. */
import 'server-only';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { planHash } from '@/lib/wire/plan-hash';
import type { Database } from '@/lib/server/database';
import { keptFor } from './kept';

/** The document of a revision, or null. A frozen document never changes, so that it is read once. */
export const loadPlan = async (db: Database, hash: string): Promise<PlanDocument | null> => {
  const { plans } = keptFor(db);
  const before = plans.get(hash);
  if (before !== undefined) return before;
  const found = await db.planRevision.findUnique({ where: { hash }, select: { document: true } });
  if (found === null) return null;
  // Only `keepPlan` writes here, and it takes nothing but documents.
  const document = found.document as unknown as PlanDocument;
  plans.set(hash, document);
  return document;
};

/** Those of them that are there, by hash. */
export const loadPlans = async (
  db: Database,
  hashes: readonly string[],
): Promise<Readonly<Record<string, PlanDocument>>> => {
  const found = await Promise.all(
    [...new Set(hashes)].map(async (hash) => [hash, await loadPlan(db, hash)] as const),
  );
  return Object.fromEntries(
    found.flatMap(([hash, document]) => (document === null ? [] : [[hash, document]])),
  );
};

/** Those that cars may be begun on, by hash. */
export const loadReleased = async (db: Database): Promise<Readonly<Record<string, PlanDocument>>> => {
  const released = await db.planRelease.findMany({ select: { id: true }, orderBy: { id: 'asc' } });
  return loadPlans(
    db,
    released.map(({ id }) => id),
  );
};

/**
 * Keeps a document and answers its hash. It does nothing by itself: `release-plan` puts it on the shop's books.
 * Keeping the same document twice is one keeping; another document under the same model and revision is refused.
 */
export const keepPlan = async (
  db: Database,
  document: PlanDocument,
): Promise<{ readonly hash: string } | { readonly taken: string }> => {
  const hash = planHash(document);
  const { plan: model, revision } = document;
  const text = JSON.stringify(document);
  // Written raw: the order of the keys is the order of the stages, and only `json` text keeps it.
  await db.$executeRaw`
    INSERT INTO plan_revision (hash, model, revision, document) VALUES (${hash}, ${model}, ${revision}, ${text}::json)
    ON CONFLICT DO NOTHING`;
  const kept = await db.planRevision.findUnique({
    where: { model_revision: { model, revision } },
    select: { hash: true },
  });
  return kept?.hash === hash ? { hash } : { taken: `${model} ${revision}` };
};
