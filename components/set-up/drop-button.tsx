'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { DropDialog } from './drop-dialog';

/** One tap for the news, one more for what it was. */
export function DropButton({ tool }: { readonly tool: { readonly id: string; readonly name: string } }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button onClick={() => setOpen(true)}>
        It fell<span className="vh">: {tool.id}</span>
      </Button>
      {open ? <DropDialog tool={tool} onClose={() => setOpen(false)} /> : null}
    </>
  );
}
