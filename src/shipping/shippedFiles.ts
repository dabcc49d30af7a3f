/** One file of the built app: its path from the page that holds it, and the SHA-256 of its bytes in hex. */
export type ShippedFile = { readonly path: string; readonly sha256: string };

/** All files that make one version of the app; `version` differs as soon as any of them does. */
export type ShippedFiles = { readonly version: string; readonly files: readonly ShippedFile[] };

/** Stands in the worker's source where the build writes the list of files, as JSON. */
export const SHIPPED_FILES_MARK = '__SHIPPED_FILES__';

const CACHE_PREFIX = 'vampwright ';

/** The name under which a version is kept on the device. */
export function cacheName({ version }: ShippedFiles): string {
  return `${CACHE_PREFIX}${version}`;
}

/**
 * The kept versions that can go once `current` is the one in use: all but it and the one kept last
 * before it, whose open pages may still ask for their files. `names` in the order in which they were made;
 * names that are not ours stay.
 */
export function outdatedCaches(names: readonly string[], current: ShippedFiles): string[] {
  const older = names.filter((n) => n.startsWith(CACHE_PREFIX) && n !== cacheName(current));
  return older.slice(0, -1);
}

/** SHA-256 of bytes, in hex. */
export async function sha256Of(bytes: BufferSource): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
