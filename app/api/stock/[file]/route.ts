/** The list for a stocktake as a file: every place with what the books have. For everybody, since it shows no price. */
import { database } from '@/lib/server/database';
import { fileAnswer } from '@/lib/server/file-answer';
import { countRows } from '@/lib/server/queries/stock';
import { writeCountFile } from '@/lib/wire/count-file';

export const dynamic = 'force-dynamic';

interface Asked {
  readonly params: Promise<{ readonly file: string }>;
}

export const GET = async (_request: Request, { params }: Asked): Promise<Response> => {
  const { file } = await params;
  return fileAnswer(
    { leadsOnly: null, missing: 'There is no such file here.', name: 'counts.csv' },
    async () =>
      file === 'counts.csv' ? writeCountFile(await countRows(database(), new Date().toISOString())) : null,
  );
};
