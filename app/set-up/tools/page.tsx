import type { Metadata } from 'next';
import { AddAdapter } from '@/components/set-up/add-adapter';
import { AddTool } from '@/components/set-up/add-tool';
import { ToolList } from '@/components/set-up/tool-list';
import { database } from '@/lib/server/database';
import { toolsView } from '@/lib/server/queries/set-up/tools';
import { Frame } from '../frame';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Tools' };

export default function Page() {
  return (
    <Frame
      current="tools"
      title="Tools"
      says="What turns, how far it may be believed, and until when."
      page={async () => {
        const view = await toolsView(database());
        return (
          <>
            <ToolList view={view} hasPages />
            <AddTool taken={view.tools.map(({ id }) => id)} />
            <AddAdapter taken={view.adapters.map(({ id }) => id)} />
          </>
        );
      }}
    />
  );
}
