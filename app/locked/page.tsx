import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { ownPath } from '@/lib/server/auth/next-auth';
import { seatEvenLocked } from '@/lib/server/auth/session';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Locked' };

interface PageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

/** Nothing of the shop: what a locked tablet gets in place of any page. The cover over it comes with the layout. */
export default async function Page({ searchParams }: PageProps) {
  const { to } = await searchParams;
  const path = ownPath(typeof to === 'string' ? to : null);
  const seat = await seatEvenLocked();
  if (seat === null) redirect(`/sign-in?to=${encodeURIComponent(path)}`);
  if (!seat.isLocked) redirect(path);
  return (
    <main className="pg">
      <h1>Locked</h1>
      <p>
        <a href={`/sign-in?to=${encodeURIComponent(path)}`}>Sign in anew</a>
      </p>
    </main>
  );
}
