/** "31 Jan 2026, 09:30" in the reader's own time. */
export const dayText = (when: string): string =>
  new Date(when).toLocaleString('en-GB', {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
  });
