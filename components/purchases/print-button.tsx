'use client';

import { Button } from '@/components/ui/button';

/** The page's own print sheet makes the order of it. */
export function PrintButton() {
  return <Button onClick={() => window.print()}>Print the order</Button>;
}
