'use client';

import { useNow } from '@/components/act/use-now';
import type { FieldSpec } from '@/components/act/form';

/** How long a timed check must still hold. The server's clock decides; this one only shows it. */
export function HoldClock({ spec }: { readonly spec: Extract<FieldSpec, { kind: 'clock' }> }) {
  const now = useNow(true);
  const begun = Date.parse(spec.begunAt);
  const left = now === null ? spec.holdsMs : Math.max(0, begun + spec.holdsMs - now);
  return (
    <div className="clock">
      <span className="label">{left === 0 ? 'It has held long enough' : spec.label}</span>
      <p className="num" role="timer" aria-label={`${text(left)} left`}>
        {text(left)}
      </p>
      <span className="small dim">
        of {text(spec.holdsMs)}
        {spec.by === '' ? '' : `, begun by ${spec.by}`}
      </span>
    </div>
  );
}

/** `3:42`, `1:03:42`. */
const text = (milliseconds: number): string => {
  const seconds = Math.ceil(milliseconds / 1000);
  const parts = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  const [hours = 0, minutes = 0, rest = 0] = parts;
  const two = (count: number): string => String(count).padStart(2, '0');
  return hours > 0 ? `${String(hours)}:${two(minutes)}:${two(rest)}` : `${String(minutes)}:${two(rest)}`;
};
