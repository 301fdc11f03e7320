/** Sows the demo shop once for all browser tests, into a cluster that is kept. */
import { stopPostmaster } from '@/lib/cli/starting/postmaster';
import { copyDatabase, urlAs } from '@/lib/cli/starting/roles';
import { keepCluster, keptCluster } from './kept-cluster';
import { PASSWORDS, startTestCluster, TEMPLATE } from './postgres-global';

export const DEMO_TEMPLATE = 'slipmark_demo_template';

export const prepareDemo = async (): Promise<void> => {
  if (keptCluster() !== null) return;
  const { url, cluster, stop } = await startTestCluster();
  try {
    await copyDatabase(url, DEMO_TEMPLATE, TEMPLATE);
    // Loaded only now, like everything that rests on the client, which a fresh clone has to make first.
    const [{ openDatabase }, { seedDemo }] = await Promise.all([
      import('@/lib/server/database'),
      import('@/seed/demo'),
    ]);
    const db = openDatabase(urlAs(url, 'app', PASSWORDS, DEMO_TEMPLATE), 4);
    await seedDemo(db, () => undefined);
    await db.$disconnect();
    await stopPostmaster(cluster.folder);
    keepCluster(cluster.folder);
  } finally {
    await stop();
  }
};
