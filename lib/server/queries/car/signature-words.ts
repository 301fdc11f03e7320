/** What a signature was given for, as it stands before the thing's name. */
export const ACT_WORDS: Readonly<Record<string, string>> = {
  'finish-operation': 'Finished',
  'snug-joint': 'Snug:',
  'final-joint': 'Final:',
  'verify-joint': 'Verified:',
  'recheck-joint': 'Tried again:',
  'pass-check': 'Passed:',
  'remove-stopgap': 'Taken out:',
  'fit-part': 'Fitted:',
};
