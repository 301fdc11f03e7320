import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Frame } from '@/app/set-up/frame';
import { Calibrate } from '@/components/set-up/calibrate';
import { ToolHistory } from '@/components/set-up/tool-history';
import { ToolTouches } from '@/components/set-up/tool-touches';
import { hasRole, present } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { isTool } from '@/lib/server/queries/set-up/tools';
import { toolPageView } from '@/lib/server/queries/set-up/tool-page';
import { decoded } from '@/lib/wire/decoded';

export const dynamic = 'force-dynamic';

interface PageProps {
  readonly params: Promise<{ readonly tool: string }>;
}

export const generateMetadata = async ({ params }: PageProps): Promise<Metadata> => ({
  title: `Tool ${decoded((await params).tool)}`,
});

export default async function Page({ params }: PageProps) {
  const id = decoded((await params).tool);
  // Before anything is sent; whoever may not see tools learns nothing of which there are.
  const who = await present();
  if (hasRole(who, ['lead', 'owner']) && !(await isTool(database(), id))) notFound();
  return (
    <Frame
      current="tools"
      title={`Tool ${id}`}
      says="What it can do, until when it is believed, and what rests on it."
      page={async () => {
        const view = await toolPageView(database(), id);
        if (view === null) return null;
        return (
          <>
            <ToolHistory view={view} />
            <ToolTouches view={view} />
            <Calibrate tool={view.tool} today={view.today} />
          </>
        );
      }}
    />
  );
}
