import { Button } from '@/components/ui/button';
import type { SignOffView } from '@/lib/wire/views/sign-off';

const WORDS = {
  snug: 'Only run up: sign it snug',
  final: 'Bring it to final now',
  recheck: 'Try it again instead',
  verify: 'Verify it',
} as const;

interface OthersProps {
  readonly view: SignOffView;
  readonly mode: SignOffView['next'];
  readonly onChoose: (next: SignOffView['next']) => void;
}

/** Other acts that the joint would take now. They weigh less than the one that is asked. */
export function Others({ view, mode, onChoose }: OthersProps) {
  const offered = (['snug', 'final', 'recheck', 'verify'] as const).filter(
    (act) => act !== mode && view.acts[act].isOffered,
  );
  return offered.map((act) => (
    <Button
      key={act}
      kind="quiet"
      onClick={() => {
        onChoose(act);
      }}
    >
      {act === 'final' && view.joint.level !== 'open' && view.joint.level !== 'snug'
        ? 'Torque it again in full'
        : WORDS[act]}
    </Button>
  ));
}
