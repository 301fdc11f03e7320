import { redirect } from 'next/navigation';
import { hasRole, present } from '@/lib/server/auth/session';

export const dynamic = 'force-dynamic';

/** Whoever gives work begins at the board, whoever does it at their own. */
export default async function Page(): Promise<never> {
  redirect(hasRole(await present(), ['lead', 'owner']) ? '/board' : '/my-work');
}
