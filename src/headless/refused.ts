/** An argument or a file was wrong: one line, exit code 2. Anything else is a defect: exit code 1. */
export class Refused extends Error {}

/** Bad input speaks in sentences thrown as plain Errors; the engine's own error classes are defects. */
export const asInput = <T>(read: () => T): T => {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof Error) || error.constructor !== Error) throw error;
    throw new Refused(error.message);
  }
};
