/** Hands a file to the browser to be saved. */
export const saveFile = (name: string, blob: Blob): void => {
  const address = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
};
