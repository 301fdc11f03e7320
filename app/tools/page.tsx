import type { Metadata } from 'next';
import { ToolList } from '@/components/set-up/tool-list';
import '@/components/set-up/set-up.css';
import { ShopStrip } from '@/app/shop-strip';
import { hasRole, present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { toolsView } from '@/lib/server/queries/set-up/tools';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Tools' };

/** For everybody: what hangs on the wall, whether it may be believed, and a way to say that it fell. */
export default async function Page() {
  const who = await present();
  const view = await toolsView(database());
  return (
    <>
      <ShopStrip current="tools" who={who.person} />
      <main className="pg set-up">
        <div className="pagetop">
          <div>
            <h1>Tools</h1>
            <p className="dim">A tool that fell or went astray is suspect from the moment you say so.</p>
          </div>
        </div>
        <div className="set-up-page">
          <ToolList view={view} hasPages={hasRole(who, ['lead', 'owner'])} />
        </div>
      </main>
    </>
  );
}
