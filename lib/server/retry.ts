/** Which failures of the database only mean "once more", and doing it once more. */
import 'server-only';

const TRIES = 6;

interface Shaped {
  readonly code?: unknown;
  readonly cause?: { readonly kind?: unknown; readonly originalCode?: unknown };
  readonly meta?: {
    readonly driverAdapterError?: {
      readonly cause?: { readonly kind?: unknown; readonly originalCode?: unknown };
    };
  };
}

/**
 * A conflict of two transactions comes in three shapes: P2034 from a model query; P2010 around the driver's error from
 * a raw one; and, raised at COMMIT, the bare driver's error with no code at all. A unique violation is one too: two
 * who make the same stream at once; the second then finds it there.
 */
export const isConflict = (error: unknown): boolean => {
  if (typeof error !== 'object' || error === null) return false;
  const { code, cause, meta } = error as Shaped;
  const driver = meta?.driverAdapterError?.cause ?? cause;
  return (
    code === 'P2034' ||
    driver?.kind === 'TransactionWriteConflict' ||
    driver?.kind === 'UniqueConstraintViolation' ||
    driver?.originalCode === '40001' ||
    driver?.originalCode === '40P01'
  );
};

/** No connection or no transaction to be had in time, or the line broke: nothing is known to be done. */
export const isOutOfReach = (error: unknown): boolean => {
  if (typeof error !== 'object' || error === null) return false;
  const { code, cause, meta } = error as Shaped;
  const kind = (meta?.driverAdapterError?.cause ?? cause)?.kind;
  return (
    ['P1001', 'P1002', 'P1008', 'P1017', 'P2024', 'P2028'].includes(String(code)) ||
    ['ConnectionClosed', 'DatabaseNotReachable', 'SocketTimeout', 'TooManyConnections'].includes(
      String(kind),
    ) ||
    ['57P01', '57P02', '57P03', 'ECONNREFUSED', 'ECONNRESET'].includes(String(code)) ||
    (error instanceof Error &&
      /Connection terminated|timeout exceeded when trying to connect/.test(error.message))
  );
};

/**
 * Runs it again after a conflict, the whole of it, with a growing and uneven pause. Safe only because a command's id
 * is claimed inside: what did get through is found and not done twice.
 */
export const withRetries = async <Value>(run: () => Promise<Value>): Promise<Value> => {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await run();
    } catch (error) {
      if (attempt >= TRIES || !isConflict(error)) throw error;
      await new Promise((resolve) => setTimeout(resolve, Math.random() * Math.min(200, 10 * 2 ** attempt)));
    }
  }
};
