'use client';

import { Button } from './button';

/** The page's own print sheet makes paper of it. */
export function PrintButton({ what }: { readonly what: string }) {
  return <Button onClick={() => window.print()}>Print {what}</Button>;
}
