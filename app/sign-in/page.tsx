import type { Metadata } from 'next';
import { cookies, headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { Bench } from '@/components/sign-in/bench';
import { Desk } from '@/components/sign-in/desk';
import { SignInStrip } from '@/components/sign-in/sign-in-strip';
import { deviceCookie } from '@/lib/server/auth/cookies';
import { ownPath } from '@/lib/server/auth/next-auth';
import { FORM_HEADER } from '@/lib/server/auth/passed-headers';
import { presentOrNull } from '@/lib/server/auth/session';
import { signInSays } from '@/lib/server/auth/sign-in-again';
import { database } from '@/lib/server/database';
import { signInView } from '@/lib/server/queries/sign-in';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Sign in' };

interface PageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export default async function Page({ searchParams }: PageProps) {
  const asked = await searchParams;
  const only = (name: string): string | undefined =>
    typeof asked[name] === 'string' ? asked[name] : undefined;
  const to = ownPath(only('to'));
  if ((await presentOrNull()) !== null) redirect(to);
  const at = only('at');
  const name = only('name') ?? '';
  const view = await signInView(database(), {
    door: at === 'desk' || at === 'bench' ? at : null,
    name: name === '' ? null : name,
    deviceToken: (await cookies()).get(deviceCookie())?.value ?? null,
  });
  const token = (await headers()).get(FORM_HEADER) ?? '';
  const says = signInSays(only('says'));
  const Door = view.at === 'desk' ? Desk : Bench;
  return (
    <>
      <SignInStrip shop={view.shop} place={view.at === 'desk' ? 'at the desk' : 'at the bench'} />
      <Door view={view} token={token} to={to} name={name} says={says} />
    </>
  );
}
