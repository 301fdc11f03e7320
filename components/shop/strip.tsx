import Link from 'next/link';
import type { ReactNode } from 'react';
import { SignOut } from '@/components/sign-in/sign-out';
import { Glyph } from '@/components/ui/glyph';
import { LineToServer } from './line-to-server';
import { ThemeChoice } from './theme-choice';

type Page =
  | 'board'
  | 'my-work'
  | 'verify'
  | 'hardware'
  | 'order'
  | 'cutting'
  | 'stock'
  | 'tools'
  | 'log'
  | 'set-up';

interface StripProps {
  /** Which of the pages one is on; none on those that are reached from others. */
  readonly current?: Page;
  readonly who: { readonly name: string; readonly roles: readonly string[] };
  readonly shop: string;
  /** How many joints wait for this person's eyes. */
  readonly eyes: ReactNode;
}

interface Entry {
  readonly page: Page;
  readonly href: string;
  readonly says: string;
  readonly roles: readonly string[] | 'anyone';
}

/** Only what there is: a link to a page to come would be a dead end. */
const PAGES: readonly Entry[] = [
  { page: 'board', href: '/board', says: 'Track board', roles: 'anyone' },
  { page: 'my-work', href: '/my-work', says: 'My work', roles: 'anyone' },
  { page: 'verify', href: '/verify', says: 'Verify', roles: 'anyone' },
  { page: 'hardware', href: '/hardware', says: 'Hardware', roles: 'anyone' },
  { page: 'order', href: '/order', says: 'Week’s order', roles: ['lead', 'owner'] },
  { page: 'cutting', href: '/cutting', says: 'Cutting', roles: 'anyone' },
  { page: 'stock', href: '/stock', says: 'Stock', roles: 'anyone' },
  { page: 'tools', href: '/tools', says: 'Tools', roles: 'anyone' },
  { page: 'log', href: '/log', says: 'Log', roles: 'anyone' },
  { page: 'set-up', href: '/set-up', says: 'Set up', roles: ['lead', 'owner'] },
];

/** The head of every page: where one is, who one is, and the line to the server. */
export function Strip({ current, who, shop, eyes }: StripProps) {
  const pages = PAGES.filter(
    ({ roles }) => roles === 'anyone' || roles.some((role) => who.roles.includes(role)),
  );
  const links = pages.map(({ page, href, says }) => (
    <Link key={page} href={href} prefetch={false} aria-current={page === current ? 'page' : undefined}>
      {says}
      {page === 'verify' ? eyes : null}
    </Link>
  ));
  return (
    <header className="strip">
      <Link className="mark" href="/board" prefetch={false}>
        <Glyph name="final" />
        Slipmark
      </Link>
      <nav aria-label="Main">{links}</nav>
      <span className="shopname">{shop}</span>
      <div className="who">
        <LineToServer />
        <span className="nm">
          <span>
            <b>{who.name}</b>, {who.roles.join(', ')}
          </span>
        </span>
        <button className="menu" type="button" popoverTarget="menu">
          Menu
          {eyes}
        </button>
      </div>
      <div className="menusheet" id="menu" popover="auto" role="group" aria-label="Menu">
        <nav aria-label="Main, in the menu">{links}</nav>
        <p className="small dim">
          {shop}
          <br />
          <b>{who.name}</b>, {who.roles.join(', ')}
        </p>
        <ThemeChoice />
        <SignOut />
      </div>
    </header>
  );
}
