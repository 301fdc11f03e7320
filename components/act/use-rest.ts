import { useEffect, useState } from 'react';

/** Seconds that a PIN must rest after too many wrong ones; counts itself down. */
export const useRest = (): { readonly seconds: number; readonly begin: (seconds: number) => void } => {
  const [seconds, setSeconds] = useState(0);
  const isResting = seconds > 0;
  useEffect(() => {
    if (!isResting) return;
    const timer = setInterval(() => {
      setSeconds((left) => Math.max(0, left - 1));
    }, 1000);
    return () => {
      clearInterval(timer);
    };
  }, [isResting]);
  return { seconds, begin: setSeconds };
};
