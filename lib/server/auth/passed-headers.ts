/** What `proxy.ts` tells the page behind it. It writes them over whatever a request brings under these names. */

/** Which page is asked for, so that signing in leads back to it. */
export const PATH_HEADER = 'x-slipmark-path';
/** The token that the sign-in form sends along. */
export const FORM_HEADER = 'x-slipmark-form';
