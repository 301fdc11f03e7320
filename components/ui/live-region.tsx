type Urgency = 'polite' | 'assertive';

/** Two empty regions that a screen reader listens to. The layout has one pair, and each open dialog its own. */
export function LiveRegion() {
  return (
    <div className="vh" data-live>
      <p role="status" />
      <p role="alert" />
    </div>
  );
}

/**
 * Says something without moving the focus. While a dialog is open the page behind it is inert and its regions are
 * silent, so the dialog's own speak instead.
 */
export const announce = (text: string, urgency: Urgency = 'polite'): void => {
  const role = urgency === 'polite' ? 'status' : 'alert';
  const inDialog = document.querySelector(`dialog[open] [data-live] [role=${role}]`);
  const region = inDialog ?? document.querySelector(`[data-live] [role=${role}]`);
  if (region === null) return;
  // The same words twice in a row would not be spoken again.
  region.textContent = region.textContent === text ? `${text}\u00a0` : text;
};
