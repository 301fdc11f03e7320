import type { Metadata } from 'next';
import { SignInStrip } from '@/components/sign-in/sign-in-strip';
import { TabletForm } from '@/components/sign-in/tablet-form';
import '@/components/sign-in/sign-in.css';
import { database } from '@/lib/server/database';
import { shopSetting } from '@/lib/server/load/shop';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Enrol this tablet' };

interface PageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export default async function Page({ searchParams }: PageProps) {
  const { code, says } = await searchParams;
  const { name } = await shopSetting(database());
  return (
    <>
      <SignInStrip shop={name} />
      <main className="desk">
        <TabletForm code={typeof code === 'string' ? code.slice(0, 20) : ''} isWrong={says === 'wrong'} />
      </main>
    </>
  );
}
