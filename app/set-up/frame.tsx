import type { ReactNode } from 'react';
import { NotForYou } from '@/components/set-up/not-for-you';
import { StepBar } from '@/components/set-up/step-bar';
import { Steps } from '@/components/set-up/steps';
import '@/components/set-up/set-up.css';
import { FollowShop } from '@/components/shop/follow';
import { ShopStrip } from '@/app/shop-strip';
import { hasRole, present } from '@/lib/server/auth/session';
import type { Present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { loadShop } from '@/lib/server/load/shop';
import { setUpSteps } from '@/lib/server/queries/set-up/steps';
import type { SetUpStep } from '@/lib/wire/views/set-up';

interface FrameProps {
  /** Null: the page that holds all steps. */
  readonly current: SetUpStep['key'] | null;
  readonly title: string;
  readonly says: string;
  /** The page itself, made only for somebody who may see it. */
  readonly page: (who: Present) => Promise<ReactNode> | ReactNode;
}

/** Every page of the set-up: who may see it, where one is, and the page. */
export async function Frame({ current, title, says, page }: FrameProps) {
  const who = await present();
  const strip = <ShopStrip current="set-up" who={who.person} />;
  if (!hasRole(who, ['lead', 'owner']))
    return (
      <>
        {strip}
        <NotForYou />
      </>
    );
  const { version } = await loadShop(database());
  const { steps, isBeginning } = await setUpSteps(database());
  return (
    <>
      {strip}
      <FollowShop version={version} />
      <main className="pg set-up">
        <div className="pagetop">
          <div>
            <h1>{title}</h1>
            <p className="dim">{says}</p>
          </div>
        </div>
        {current === null ? (
          await page(who)
        ) : (
          <div className="set-up-cols">
            <Steps steps={steps} current={current} />
            <div className="set-up-page">
              {await page(who)}
              {isBeginning ? <StepBar steps={steps} current={current} /> : null}
            </div>
          </div>
        )}
      </main>
    </>
  );
}
