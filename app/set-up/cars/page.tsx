import type { Metadata } from 'next';
import { StartCar } from '@/components/set-up/start-car';
import { database } from '@/lib/server/database';
import { startCarView } from '@/lib/server/queries/set-up/plans';
import { Frame } from '../frame';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Begin a car' };

export default function Page() {
  return (
    <Frame
      current="cars"
      title="Begin a car"
      says="It stands in the first stage of its plan. Options and paint can be chosen later."
      page={async () => <StartCar view={await startCarView(database())} />}
    />
  );
}
