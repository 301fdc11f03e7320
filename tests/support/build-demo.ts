/** For `npm test`, which sows the demo beside its other checks. */
import { prepareDemo } from './demo-cluster';

await prepareDemo();
