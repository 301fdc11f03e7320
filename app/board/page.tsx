import type { Metadata } from 'next';
import { Suspense } from 'react';
import { Board } from '@/components/board/board';
import { BoardWaiting } from '@/components/board/board-waiting';
import { EmptyBoard } from '@/components/board/empty-board';
import { FloorSays } from '@/components/board/floor-says';
import { Legend } from '@/components/board/legend';
import { FollowFloor } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import type { Person } from '@/lib/domain/shop/rows';
import { present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { boardView } from '@/lib/server/queries/board';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Track board' };

export default async function Page() {
  // Before anything is sent, so that who is not signed in is sent away with a plain redirect.
  const { person } = await present();
  return (
    <>
      <ShopStrip current="board" who={person} />
      <main className="board">
        <Suspense fallback={<BoardWaiting />}>
          <Floor who={person} />
        </Suspense>
      </main>
    </>
  );
}

async function Floor({ who }: { readonly who: Person }) {
  const view = await boardView(database(), who);
  return (
    <>
      <div className="pagetop">
        <div>
          <h1>Track board</h1>
          <FloorSays view={view} />
        </div>
        {view.empty === null ? <Legend /> : null}
      </div>
      {view.empty === null ? (
        <Board view={view} />
      ) : (
        <>
          <FollowFloor clock={view.clock} />
          <EmptyBoard empty={view.empty} />
        </>
      )}
    </>
  );
}
