/** Hands a file to the person, made on this device. */
export function hand(text: string, name: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser may still be asking where to put it.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
