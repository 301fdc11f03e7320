import type { LogKind } from '@/lib/wire/views/log';

interface LogAddress {
  readonly kind: LogKind | 'everything';
  readonly by: string | null;
  /** A car's id, or `shop` for the books; null = all of it. */
  readonly of: string | null;
  readonly page?: number;
}

/** What is shown stands in the address, so that it can be kept and sent. */
export const logAddress = ({ kind, by, of, page = 1 }: LogAddress): string => {
  const path = of === null || of === 'shop' ? '/log' : `/cars/${encodeURIComponent(of)}/log`;
  const query = new URLSearchParams({
    ...(of === 'shop' ? { of } : {}),
    ...(kind === 'everything' ? {} : { kind }),
    ...(by === null ? {} : { by }),
    ...(page === 1 ? {} : { page: String(page) }),
  }).toString();
  return query === '' ? path : `${path}?${query}`;
};
