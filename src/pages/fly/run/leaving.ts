/**
 * Freezes the flight when nobody can fly it: the page hidden, or the keys gone to another window while one was
 * down. Returns the way to stop watching.
 */
export const whenLeft = (
  running: () => boolean,
  keyDown: () => boolean,
  freeze: (why: string) => void,
  release: () => void,
): (() => void) => {
  const onHidden = () => {
    if (document.hidden && running()) freeze('The page was hidden.');
  };
  const onBlur = () => {
    if (keyDown() && running()) freeze('The keys went to another window.');
    release();
  };
  document.addEventListener('visibilitychange', onHidden);
  window.addEventListener('blur', onBlur);
  return () => {
    document.removeEventListener('visibilitychange', onHidden);
    window.removeEventListener('blur', onBlur);
  };
};
