import type { Metadata, Viewport } from 'next';
import localFont from 'next/font/local';
import { cookies } from 'next/headers';
import type { ReactNode } from 'react';
// First: it says in which order the layers of style count.
import './globals.css';
import { Device } from '@/components/act/device';
import { LiveRegion } from '@/components/ui/live-region';
import { Sprite } from '@/components/ui/sprite';
import { seatEvenLocked } from '@/lib/server/auth/session';
import { takesPins } from '@/lib/server/auth/tablets';
import { LockGate } from './lock-gate';

export const metadata: Metadata = {
  title: { default: 'Slipmark', template: '%s · Slipmark' },
  description: 'What has been done to a car, what stands in its way, and who has signed for it.',
};

export const viewport: Viewport = { width: 'device-width', initialScale: 1 };

// A page made beforehand would carry no nonce, and its scripts would be refused.
export const dynamic = 'force-dynamic';

const text = localFont({
  src: '../node_modules/@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2',
  weight: '200 800',
  variable: '--font-text',
});

const plate = localFont({
  src: '../node_modules/@fontsource-variable/sofia-sans-condensed/files/sofia-sans-condensed-latin-wght-normal.woff2',
  weight: '1 1000',
  variable: '--font-plate',
});

export default async function Layout({ children }: { readonly children: ReactNode }) {
  const theme = (await cookies()).get('slipmark-theme')?.value;
  // Out of reach: the page below says so itself.
  const seat = await seatEvenLocked().catch(() => null);
  return (
    <html
      lang="en"
      className={`${text.variable} ${plate.variable}`}
      data-theme={theme === 'light' || theme === 'dark' ? theme : undefined}
      // The theme may have been changed in the page since.
      suppressHydrationWarning
    >
      <body>
        <LiveRegion />
        <Sprite />
        <Device isOneHand={seat !== null && !takesPins(seat.standing)}>{children}</Device>
        <LockGate />
      </body>
    </html>
  );
}
