import Link from 'next/link';
import type { ReactNode } from 'react';
import { CarTag } from '@/components/shop/plate';
import type { LogKind, LogView } from '@/lib/wire/views/log';
import { logAddress } from './log-address';

const KINDS: readonly (LogKind | 'everything')[] = [
  'everything',
  'signatures',
  'warnings',
  'moves',
  'refused',
  'struck',
];

/** Whose log, which kind of entry, and by whom. */
export function LogFilters({ view }: { readonly view: LogView }) {
  const { kind, by, of, people, cars } = view;
  const whose = (value: string | null): WhoseProps => ({
    isOn: value === of,
    href: logAddress({ kind, by, of: value }),
  });
  return (
    <nav className="filters" aria-label="Filters">
      <section className="sheet of" aria-labelledby="whose">
        <header>
          <h2 id="whose">Whose</h2>
        </header>
        <ul>
          <Whose {...whose(null)}>
            <b>The whole shop</b>
          </Whose>
          {cars.map(({ id, chassis, colour }) => (
            <Whose key={id} {...whose(id)}>
              <CarTag chassis={chassis} colour={colour} />
            </Whose>
          ))}
          <Whose {...whose('shop')}>
            <span>
              <b>The shop’s books</b>
              <span className="small dim">people, tools, stock, plans</span>
            </span>
          </Whose>
        </ul>
      </section>
      <section className="fl" aria-labelledby="what">
        <h2 className="label" id="what">
          What
        </h2>
        <p>
          {KINDS.map((value) => (
            <Choice key={value} isOn={value === kind} href={logAddress({ kind: value, by, of })}>
              {value}
            </Choice>
          ))}
        </p>
      </section>
      <section className="fl" aria-labelledby="who">
        <h2 className="label" id="who">
          Who
        </h2>
        <p>
          <Choice isOn={by === null} href={logAddress({ kind, by: null, of })}>
            anyone
          </Choice>
          {people.map(({ id, name, initials }) => (
            <Choice key={id} isOn={id === by} href={logAddress({ kind, by: id, of })}>
              <span className="vh">{name}</span>
              <span aria-hidden="true" title={name}>
                {initials}
              </span>
            </Choice>
          ))}
        </p>
      </section>
    </nav>
  );
}

interface WhoseProps {
  readonly isOn: boolean;
  readonly href: string;
}

function Whose({ isOn, href, children }: WhoseProps & { readonly children: ReactNode }) {
  return (
    <li className={isOn ? 'on' : ''}>
      <Link href={href} aria-current={isOn ? 'page' : undefined} prefetch={false}>
        {children}
      </Link>
    </li>
  );
}

interface ChoiceProps {
  readonly isOn: boolean;
  readonly href: string;
  readonly children: ReactNode;
}

/** One value of a filter: a link, since what is shown stands in the address. */
function Choice({ isOn, href, children }: ChoiceProps) {
  return (
    <Link className={isOn ? 'on' : ''} href={href} aria-current={isOn ? 'true' : undefined} prefetch={false}>
      {children}
    </Link>
  );
}
