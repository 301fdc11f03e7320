/** For `npm test`: what the type check and the tests read that is not in a fresh clone. */
import { fileURLToPath } from 'node:url';
import { prepareClient, prepareTypes } from './prepare';

const root = fileURLToPath(new URL('../../../', import.meta.url));

await prepareClient(root);
await prepareTypes(root);
