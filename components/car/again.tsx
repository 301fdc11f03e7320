'use client';

import { useRouter } from 'next/navigation';
import { useEffect } from 'react';

/** A timer of a browser holds no longer than this. */
const LONGEST_MS = 2 ** 31 - 1;

/** When a wait is over, only time has passed and nobody says so: the page asks again by itself. */
export function Again({ at }: { readonly at: string | null }) {
  const router = useRouter();
  useEffect(() => {
    if (at === null) return;
    const left = Date.parse(at) - Date.now() + 1000;
    if (left > LONGEST_MS) return;
    const timer = setTimeout(() => router.refresh(), Math.max(1000, left));
    return () => clearTimeout(timer);
  }, [at, router]);
  return null;
}
