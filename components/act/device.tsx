'use client';

import { createContext, use } from 'react';
import type { ReactNode } from 'react';

const Context = createContext(false);

/**
 * At a desk that is no tablet of the shop only whoever is signed in signs: nobody else's PIN is looked at there, so that
 * what needs somebody else's is not offered.
 */
export function Device({
  isOneHand,
  children,
}: {
  readonly isOneHand: boolean;
  readonly children: ReactNode;
}) {
  return <Context value={isOneHand}>{children}</Context>;
}

export const useIsOneHand = (): boolean => use(Context);
