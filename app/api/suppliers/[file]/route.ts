/** Offers and items as files, for a lead or an owner: there are prices in one of them. */
import { database } from '@/lib/server/database';
import { fileAnswer } from '@/lib/server/file-answer';
import { itemClaims, offerClaims } from '@/lib/server/queries/suppliers';
import { writeItemsFile, writeOffersFile } from '@/lib/wire/supply-files';

export const dynamic = 'force-dynamic';

interface Asked {
  readonly params: Promise<{ readonly file: string }>;
}

export const GET = async (_request: Request, { params }: Asked): Promise<Response> => {
  const { file } = await params;
  const answered = {
    leadsOnly: 'Suppliers and their prices are for a lead or an owner.',
    missing: 'There is no such file here.',
    name: file === 'items.csv' ? file : 'offers.csv',
  };
  return fileAnswer(answered, async () => {
    if (file === 'offers.csv') return writeOffersFile(await offerClaims(database()));
    return file === 'items.csv' ? writeItemsFile(await itemClaims(database())) : null;
  });
};
