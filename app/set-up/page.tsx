import type { Metadata } from 'next';
import { Overview } from '@/components/set-up/overview';
import { database } from '@/lib/server/database';
import { setUpSteps } from '@/lib/server/queries/set-up/steps';
import { Frame } from './frame';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Set up' };

/** The first page of a new shop’s owner, and later the way to everything on the shop’s books. */
export default function Page() {
  return (
    <Frame
      current={null}
      title="Set up the shop"
      says="Every step can be left out and done later; nothing is made up for you."
      page={async () => <Overview view={await setUpSteps(database())} />}
    />
  );
}
