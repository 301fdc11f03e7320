'use client';

import { useId, useState } from 'react';
import type { FieldSpec } from '@/components/act/form';
import { fingerprintOf } from '@/components/act/fingerprint';
import { Glyph } from '@/components/ui/glyph';

interface PhotoFieldProps {
  readonly spec: Extract<FieldSpec, { kind: 'photo' }>;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

/** Taken with the device's camera, or chosen; the fingerprint of its bytes goes on record. */
export function PhotoField({ spec, value, onChange }: PhotoFieldProps) {
  const id = useId();
  const [name, setName] = useState('');
  const take = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    setName(file.name);
    onChange(await fingerprintOf(await file.arrayBuffer()));
  };
  return (
    <div className="afield fld">
      <label className="label" htmlFor={id}>
        {spec.label}
      </label>
      <span className="small dim">{spec.hint}</span>
      <input
        id={id}
        type="file"
        accept="image/*"
        capture="environment"
        onChange={(event) => {
          void take(event.target.files?.[0]);
        }}
      />
      {value === '' ? null : (
        <p className="small">
          <Glyph name="photo" size={20} /> {name}, fingerprint {value.slice(0, 12)}
        </p>
      )}
    </div>
  );
}
