/** An approved order as a file, for a lead or an owner: there are prices in it. */
import { database } from '@/lib/server/database';
import { fileAnswer } from '@/lib/server/file-answer';
import { purchaseRows } from '@/lib/server/queries/purchases';
import { writeCsv } from '@/lib/wire/csv';

export const dynamic = 'force-dynamic';

interface Asked {
  readonly params: Promise<{ readonly file: string }>;
}

export const GET = async (_request: Request, { params }: Asked): Promise<Response> => {
  const { file } = await params;
  const [, id] = /^(\d{1,9})\.csv$/u.exec(file) ?? [];
  const answered = {
    leadsOnly: 'Orders and their prices are for a lead or an owner.',
    missing: 'There is no such order here.',
    name: `order-${id ?? ''}.csv`,
  };
  return fileAnswer(answered, async () => {
    const rows = id === undefined ? null : await purchaseRows(database(), id);
    return rows === null ? null : writeCsv(rows);
  });
};
