import type { SignInView } from '@/lib/wire/views/sign-in';

export interface DoorProps {
  readonly view: SignInView;
  readonly token: string;
  readonly to: string;
  /** As it was typed or pressed before. */
  readonly name: string;
  readonly says: 'wrong' | 'resting' | 'busy' | 'form' | 'out' | 'enrolled' | 'no-tablet' | 'tablet' | null;
}

/** The same page again, at this or the other door. */
export const doorHref = (at: 'desk' | 'bench', to: string, name = ''): string => {
  const query = new URLSearchParams({ at });
  if (name !== '') query.set('name', name);
  if (to !== '/board') query.set('to', to);
  return `/sign-in?${query.toString()}`;
};
