/** A name that no other attempt has: 26 letters and digits of luck. Works on pages that are not served securely too. */
export const newId = (): string =>
  [...crypto.getRandomValues(new Uint8Array(26))].map((byte) => (byte & 31).toString(32)).join('');
