'use client';

import { Button } from '@/components/ui/button';

/** The page's own print sheet leaves out what only a screen needs. */
export function PrintButton() {
  return <Button onClick={() => window.print()}>Print</Button>;
}
