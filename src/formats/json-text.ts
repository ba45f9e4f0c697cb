/** JSON from a file's text; an Error sentence naming the file when it is none. */
export const parseJson = (text: string, file: string): unknown => {
  try {
    return JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text);
  } catch (error) {
    const reason = error instanceof Error ? error.message.replaceAll(/\s+/g, ' ') : 'unreadable';
    throw new Error(`${file}: must be JSON, was not (${reason})`);
  }
};
