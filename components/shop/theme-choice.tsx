'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';

const CHOICES = [
  ['light', 'Light'],
  ['dark', 'Dark'],
  ['', 'As the device'],
] as const;

const YEAR = 365 * 24 * 60 * 60;

/** Light, dark, or as the device is set. Kept in a cookie, so that the server's first page is right already. */
export function ThemeChoice() {
  const [chosen, setChosen] = useState<string | null>(null);

  const choose = (theme: string): void => {
    document.cookie = `slipmark-theme=${theme}; path=/; max-age=${theme === '' ? 0 : YEAR}; samesite=lax`;
    if (theme === '') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme;
    setChosen(theme);
  };

  return (
    <div className="themes" role="group" aria-label="Light or dark">
      {CHOICES.map(([theme, says]) => (
        <Button key={theme} aria-pressed={chosen === theme} onClick={() => choose(theme)}>
          {says}
        </Button>
      ))}
    </div>
  );
}
