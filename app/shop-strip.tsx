import { cache, Suspense } from 'react';
import type { ComponentProps } from 'react';
import { Strip } from '@/components/shop/strip';
import type { Person } from '@/lib/domain/shop/rows';
import { database } from '@/lib/server/database';
import { shopSetting } from '@/lib/server/load/shop';
import { eyesWaiting } from '@/lib/server/queries/verify';

type ShopStripProps = Pick<ComponentProps<typeof Strip>, 'current'> & { readonly who: Person };

/** The head of every page, with how many joints wait for this person's eyes. */
export async function ShopStrip({ current, who }: ShopStripProps) {
  const { name } = await shopSetting(database());
  // The page does not wait for it.
  const eyes = (
    <Suspense fallback={null}>
      <EyesCount who={who} />
    </Suspense>
  );
  return <Strip current={current} who={who} shop={name} eyes={eyes} />;
}

/** The links stand twice, in the strip and in its menu, and are counted once. */
const eyesOf = cache((who: Person) => eyesWaiting(database(), who, new Date().toISOString()));

async function EyesCount({ who }: { readonly who: Person }) {
  const count = await eyesOf(who);
  if (count === 0) return null;
  return (
    <span className="count">
      {count}
      <span className="vh">{count === 1 ? ' joint waits for you' : ' joints wait for you'}</span>
    </span>
  );
}
