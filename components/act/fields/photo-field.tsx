'use client';

import { useDesk } from '@/components/act/desk-context';
import type { FieldSpec } from '@/components/act/form';
import { unsentName } from '@/components/act/forms/photos';
import { TakePhotos } from '@/components/photos/take-photos';

interface PhotoFieldProps {
  readonly spec: Extract<FieldSpec, { kind: 'photo' }>;
  readonly onChange: (name: string, value: string | readonly string[]) => void;
}

/** Photographs in a form of an act: they wait on the device under this act until it is accepted. */
export function PhotoField({ spec, onChange }: PhotoFieldProps) {
  const { desk } = useDesk();
  const { name, label, most, act } = spec;
  return (
    <TakePhotos
      place={{ person: desk.me.id, car: desk.car, act }}
      label={most === 1 ? label : `${label}, if they help`}
      most={most}
      onTell={(kept, unsent) => {
        onChange(name, kept);
        onChange(unsentName(name), String(unsent));
      }}
    />
  );
}
