/** Offers text, bytes or a blob to the user as a file of this name, as the browser saves files. */
export function saveFile(name: string, content: string | Uint8Array<ArrayBuffer> | Blob): void {
  const address = URL.createObjectURL(content instanceof Blob ? content : new Blob([content]));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has begun to read by the next task; freeing at once would take it away in some.
  setTimeout(() => URL.revokeObjectURL(address), 0);
}
