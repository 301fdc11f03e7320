import type { Metadata } from 'next';
import { EnrolForm } from '@/components/sign-in/enrol-form';
import { NoLink } from '@/components/sign-in/no-link';
import { SignInStrip } from '@/components/sign-in/sign-in-strip';
import '@/components/sign-in/sign-in.css';
import { enrollingOf, needsPassword } from '@/lib/server/auth/enrolment';
import { SECRET_FAULTS, isSecretFault } from '@/lib/server/auth/secret-rules';
import { database } from '@/lib/server/database';
import { shopSetting } from '@/lib/server/load/shop';

export const dynamic = 'force-dynamic';

export const metadata: Metadata = { title: 'Your own password and PIN' };

interface PageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export default async function Page({ searchParams }: PageProps) {
  const { token, says } = await searchParams;
  const { name: shop } = await shopSetting(database());
  const enrolling = typeof token === 'string' ? await enrollingOf(database(), token) : null;
  const said = typeof says === 'string' ? says.split(',') : [];
  return (
    <>
      <SignInStrip shop={shop} />
      <main className="desk">
        {enrolling === null || typeof token !== 'string' ? (
          <NoLink />
        ) : (
          <EnrolForm
            token={token}
            name={enrolling.name}
            wantsPassword={needsPassword(enrolling.roles)}
            faults={{
              password: said.filter((code) => code.startsWith('password-')).map(faultWords),
              pin: said.filter((code) => code.startsWith('pin-')).map(faultWords),
            }}
            isBusy={said.includes('busy')}
          />
        )}
      </main>
    </>
  );
}

const faultWords = (code: string): string =>
  isSecretFault(code) ? SECRET_FAULTS[code] : 'The two are not the same. Type both again.';
