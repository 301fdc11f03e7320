/** `slipmark log verify`: hashes and folds every stream again and compares the rows. */
import { randomUUID } from 'node:crypto';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { shopSetting } from '@/lib/server/load/shop';
import { verifyLog } from '@/lib/server/log/verify';
import type { Fault, Verified } from '@/lib/server/log/verify';
import { runCommand } from '@/lib/server/run-command';
import { asJson } from './answer';
import type { Answer } from './answer';

export interface VerifyOptions {
  readonly car?: string;
  readonly json?: boolean;
  /** Who places a hold on each car that has a fault. */
  readonly holdAs?: string;
}

export const verifyShopLog = async (url: string, options: VerifyOptions): Promise<Answer> => {
  const db = openDatabase(url, 2);
  try {
    const { name } = await shopSetting(db);
    const verified = await verifyLog(db, options.car);
    if (verified.streams === 0 && options.car !== undefined)
      return { exit: 2, out: [], problems: [`There is no car ${options.car} in this shop.`] };
    const held = options.holdAs === undefined ? [] : await hold(db, verified.faults, options.holdAs);
    const exit = verified.faults.length === 0 ? 0 : 1;
    return { exit, out: options.json === true ? asJson(verified) : [...told(verified, name), ...held] };
  } finally {
    await db.$disconnect();
  }
};

const told = ({ streams, entries, faults }: Verified, shop: string): readonly string[] => [
  ...faults.map(
    ({ stream, version, says }) =>
      `${stream.padEnd(14)}${version === null ? 'rows' : `entry ${String(version)}`.padEnd(4)}  ${says}`,
  ),
  faults.length === 0
    ? `${shop}: ${String(entries)} entries in ${String(streams)} streams: every hash fits, and the rows say the same.`
    : `${shop}: ${String(faults.length)} faults among ${String(entries)} entries in ${String(streams)} streams. Nothing was changed: rows stay in force until somebody has looked.`,
  'A stream that was rewritten as a whole, with its head and its rows, is not found by this: only by a head noted elsewhere.',
];

/** A hold is somebody's act and goes the way of every act. */
const hold = async (db: Database, faults: readonly Fault[], person: string): Promise<readonly string[]> => {
  const { zone } = await shopSetting(db);
  const cars = new Set(faults.flatMap(({ stream }) => (stream.startsWith('car:') ? [stream.slice(4)] : [])));
  const said: string[] = [];
  for (const car of cars) {
    const now = new Date().toISOString();
    const answer = await runCommand(db, zone, {
      command: {
        id: randomUUID(),
        doneAt: now,
        claim: {
          type: 'place-hold',
          car,
          scope: 'gate',
          reason: 'its log and its rows part: see `slipmark log verify`',
        },
      },
      actor: person,
      present: null,
      device: null,
      lastContact: null,
      isInOrder: true,
      now,
    });
    said.push(
      `${car}: ${answer.outcome === 'accepted' ? 'held at its gate' : `no hold was placed (${answer.outcome})`}`,
    );
  }
  return said;
};
