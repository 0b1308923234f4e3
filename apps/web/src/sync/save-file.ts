/** Hands a file to the browser to save. */
export function saveFile(blob: Blob, name: string): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken the address up by then.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
