import type { ComponentProps, ReactNode } from 'react';
import { NotForYou } from '@/components/set-up/not-for-you';
import { ShopStrip } from '@/app/shop-strip';
import { hasRole, present } from '@/lib/server/auth/session';
import type { Present } from '@/lib/server/auth/session';

interface ForLeadsProps {
  readonly current?: ComponentProps<typeof ShopStrip>['current'];
  /** The page itself, made only for somebody who may see it. */
  readonly page: (who: Present) => Promise<ReactNode> | ReactNode;
}

/** A page for leads and owners below the head of every page; others are told so, and nothing of it is made. */
export async function ForLeads({ current, page }: ForLeadsProps) {
  const who = await present();
  return (
    <>
      <ShopStrip current={current} who={who.person} />
      {hasRole(who, ['lead', 'owner']) ? await page(who) : <NotForYou />}
    </>
  );
}
