/** For `npm test`, which builds them while the linter leaves a core free. */
import { preparePages } from '@/lib/cli/starting/prepare';
import { PAGES, ROOT } from './browser-global';

await preparePages(ROOT, PAGES);
