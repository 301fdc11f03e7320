import { Field } from '@/components/ui/field';

interface TabletFieldsProps {
  readonly name: string;
  readonly minutes: string;
  readonly onName: (name: string) => void;
  readonly onMinutes: (minutes: string) => void;
}

/** What people call it, and how long it may lie about. */
export function TabletFields({ name, minutes, onName, onMinutes }: TabletFieldsProps) {
  return (
    <div className="two">
      <Field
        label="Its name"
        hint="as it is called in the shop: Bench 2"
        value={name}
        maxLength={60}
        autoComplete="off"
        onChange={(event) => onName(event.target.value)}
        required
      />
      <Field
        label="Locks after minutes at rest"
        hint="from 1 to 240; 5 is usual"
        type="number"
        inputMode="numeric"
        min={1}
        max={240}
        value={minutes}
        onChange={(event) => onMinutes(event.target.value)}
        required
      />
    </div>
  );
}
